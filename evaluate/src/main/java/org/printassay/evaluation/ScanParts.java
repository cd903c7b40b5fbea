package org.printassay.evaluation;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.calibrate.part.ChannelOrder;
import org.printassay.calibrate.part.ChartItself;
import org.printassay.chart.Chart;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.icc.IccProfile;
import org.printassay.locate.Locator;
import org.printassay.problem.InputPath;
import org.printassay.problem.Problem;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.sample.PatchSample;
import org.printassay.sample.Sampling;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.ScanFiles;
import org.printassay.scan.ScanImage;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Sheet;

/**
 * The scans of one print: sheets, parts of a sheet, repeats. A part that does not show the sheet
 * code is placed by its markers once another has told the chart.
 */
public final class ScanParts {
    private static final int PASSES = 2;

    /** One of several scans may hold as little of the sheet as this. */
    private static final double LEAST_OF_A_PART = 0.05;

    private final List<Path> files;
    private final ToldApart names;
    private final Meaning meaning;
    private final Progress progress;
    private final List<Warning> warnings = new ArrayList<>();

    private ScanParts(List<Path> files, Meaning meaning, Progress progress) {
        this.files = files;
        this.names = ToldApart.of(files);
        this.meaning = meaning;
        this.progress = rising(progress);
    }

    /** What the codes of a scan mean. */
    @FunctionalInterface
    public interface Meaning {
        /** Light and colour of a scan's codes. */
        ScanColour of(ScanInfo scan) throws Problem;
    }

    /**
     * What was read.
     *
     * @param parts one a file, in their order
     * @param files the files
     * @param warnings what the user must know about how they were taken
     */
    public record Read(List<ScanPart> parts, List<SourceFile> files, List<Warning> warnings) {}

    /**
     * Reads scans.
     *
     * @param expected the chart that the user names; without it the sheet codes tell
     */
    public static Read read(
            List<Path> files, Meaning meaning, Optional<Chart> expected, Progress progress)
            throws Problem {
        try (Checksums checksums = Checksums.of(files)) {
            if (files.size() > 1) {
                // A scan that is named twice is refused before the work.
                checksums.await();
            }
            ScanParts reading = new ScanParts(files, meaning, progress);
            List<ScanPart> parts = reading.read(expected);
            for (int i = 0; i < parts.size(); i++) {
                Optional<String> fault = ChannelOrder.fault(parts.get(i).samples());
                if (fault.isPresent()) {
                    throw Problem.input(reading.names.name(i), fault.get());
                }
            }
            return new Read(parts, checksums.await(), reading.warnings);
        }
    }

    /** A scan that is read again does not take back what was told. */
    private static Progress rising(Progress progress) {
        double[] most = new double[1];
        return share -> {
            most[0] = Math.max(most[0], share);
            progress.reached(most[0]);
        };
    }

    private List<ScanPart> read(Optional<Chart> expected) throws Problem {
        int count = files.size();
        @Nullable ScanPart[] parts = new ScanPart[count];
        Problem first = null;
        Optional<Chart> known = expected;
        for (int i = 0; i < count; i++) {
            try {
                parts[i] = part(i, expected);
                if (known.isEmpty()) {
                    known = Optional.of(parts[i].samples().located().chart());
                }
            } catch (Problem problem) {
                if (count == 1 || problem.kind() != Problem.Kind.CHART || expected.isPresent()) {
                    throw problem;
                }
                first = first == null ? problem : first;
            }
        }
        List<ScanPart> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            ScanPart part = parts[i];
            if (part == null) {
                if (known.isEmpty() && first != null) {
                    throw first;
                }
                part = part(i, known);
            }
            refuseSame(all, part, i);
            all.add(part);
            refuseOther(all.get(0), part, i);
        }
        refuseTooLittle(all);
        return all;
    }

    private ScanPart part(int i, Optional<Chart> chart) throws Problem {
        try {
            return sampled(i, chart);
        } catch (Problem problem) {
            throw names.told(problem, i);
        }
    }

    private ScanPart sampled(int i, Optional<Chart> chart) throws Problem {
        Path file = files.get(i);
        int count = files.size();
        double share = 1.0 / (PASSES * count);
        double least = count == 1 ? Locator.LEAST_PATCHES : LEAST_OF_A_PART;
        ScanImage scan = ScanFiles.open(file);
        ScanColour colour = meaning.of(scan.info());
        WatchedScan watched = new WatchedScan(scan, progress, PASSES * i * share, share);
        SheetSamples samples = Sampling.read(watched, colour.codeLight(), chart, least);
        if (ChartItself.isShownBy(new ScanPart(samples, colour))) {
            throw Problem.chart(
                    scan.info().name(),
                    "is the chart's own file, not a scan of its print: every patch has exactly the"
                            + " code it is drawn in. Print it, scan the print, and name the scan.");
        }
        if (samples.located().photographed()) {
            warnings.add(photograph(scan.info()));
            if (colour.trust().absolute()) {
                colour = ScanColour.photographed(scan.info());
                samples = Sampling.read(scan, colour.codeLight(), chart, least);
            }
        }
        return new ScanPart(samples, colour);
    }

    /**
     * By the profile in the scan file, or the one that the user names.
     *
     * @throws Problem input, when that one cannot be read
     */
    public static Meaning profiled(Optional<Path> profile) throws Problem {
        if (profile.isEmpty()) {
            return ScanColour::embedded;
        }
        String name = ScanFiles.displayName(profile.get());
        byte[] bytes = InputPath.bytes(profile.get(), name, "profile", IccProfile.MOST_BYTES);
        return scan -> ScanColour.given(name, bytes, scan);
    }

    /**
     * A scan that was saved twice, in other formats, is no repeat: noise makes every patch of a
     * second scan another, in its last digits at least.
     */
    private void refuseSame(List<ScanPart> before, ScanPart part, int i) throws Problem {
        List<LinearRgb> lights = lights(part);
        for (int k = 0; k < before.size(); k++) {
            ScanPart other = before.get(k);
            boolean ofOneSheet =
                    other.samples().located().sheet().number()
                            == part.samples().located().sheet().number();
            if (ofOneSheet && !lights.isEmpty() && lights.equals(lights(other))) {
                throw Problem.usage(
                        names.name(i)
                                + " and "
                                + names.name(k)
                                + " are the same scan, saved twice: every patch in them is equal."
                                + " Name each scan once.");
            }
        }
    }

    private static List<LinearRgb> lights(ScanPart part) {
        return part.samples().samples().stream().map(PatchSample::linear).toList();
    }

    private void refuseOther(ScanPart first, ScanPart other, int i) throws Problem {
        Chart a = first.samples().located().chart();
        Chart b = other.samples().located().chart();
        if (!a.id().equals(b.id()) || a.print() != b.print()) {
            throw Problem.chart(
                    names.name(i),
                    "shows another print than "
                            + names.name(0)
                            + ". Evaluate each print on its own.");
        }
    }

    /** Parts must cover most of each sheet together. */
    private void refuseTooLittle(List<ScanPart> parts) throws Problem {
        Map<Integer, Set<String>> seen = new TreeMap<>();
        for (ScanPart part : parts) {
            Set<String> of =
                    seen.computeIfAbsent(
                            part.samples().located().sheet().number(), k -> new HashSet<>());
            for (PatchSample sample : part.samples().samples()) {
                of.add(sample.patch().id());
            }
        }
        for (int i = 0; i < parts.size(); i++) {
            Sheet sheet = parts.get(i).samples().located().sheet();
            int covered = seen.getOrDefault(sheet.number(), Set.of()).size();
            if (covered < Locator.LEAST_PATCHES * sheet.patches().size()) {
                throw Problem.chart(
                        names.name(i),
                        "and the other scans hold only "
                                + covered
                                + " of "
                                + sheet.patches().size()
                                + " patches of sheet "
                                + sheet.number()
                                + " together. Scan the missing parts too.");
            }
        }
    }

    private static Warning photograph(ScanInfo scan) {
        return new Warning(
                WarningCode.PHOTOGRAPH,
                scan.name()
                        + " is a photograph taken at an angle, or a scan of a sheet that did not lie"
                        + " flat: light was not controlled, and levels and colours are approximate."
                        + " Scan the sheet on a flatbed.");
    }
}

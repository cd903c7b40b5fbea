package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.sheet.RectMm;
import org.printassay.surface.Along;
import org.printassay.surface.BandDetector;
import org.printassay.surface.ContrastSensitivity;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;
import org.printassay.surface.LineColour;
import org.printassay.surface.LineDetector;
import org.printassay.surface.SuspectInks;
import org.printassay.surface.SwathPattern;
import org.printassay.surface.TintTrace;

/** Lines and bands of all scans of a print, told apart by whose they are; grain and the rest. */
final class SurfaceJudge {
    /** Lines of two scans nearer than this are one: two placements. */
    static final double SAME_MM = 0.4;

    private static final double SAME_PERIOD = 0.03;

    /** A sheet turned by more than this lies otherwise in the scanner. */
    private static final double TURNED_DEGREES = 45;

    private static final double BARE_L = 100;

    private final ReadingSet readings;
    private final List<SurfaceView> scans = new ArrayList<>();

    private SurfaceJudge(ReadingSet readings) {
        this.readings = readings;
    }

    /**
     * Judges all of it.
     *
     * @param parts all scans
     * @param fine those whose pixels hold the detail that they pretend: lines, bands and grain are
     *     told by these alone
     * @param scattered those whose equal patches lie far apart: steps in their vignettes may be the
     *     scanner's
     */
    static PrintSurface judge(
            List<ScanPart> parts,
            List<ScanPart> fine,
            List<ScanPart> scattered,
            ReadingSet readings,
            Optional<Feed> feed) {
        SurfaceJudge judge = new SurfaceJudge(readings);
        for (ScanPart part : fine) {
            if (!part.samples().surface().traces().isEmpty()) {
                judge.look(part);
            }
        }
        List<ScanPart> sharp = fine.isEmpty() ? parts : fine;
        List<ScanPart> even = sharp.stream().filter(part -> !scattered.contains(part)).toList();
        RectMm page = parts.get(0).samples().located().sheet().page();
        boolean judged = !judge.scans.isEmpty();
        List<PrintLine> lines = judge.lines();
        List<PrintBand> bands = judge.bands();
        List<PrintLine> prints =
                lines.stream().filter(l -> l.cause() != SurfaceCause.SCANNER).toList();
        List<PrintLine> sure = lines.stream().filter(l -> l.cause() == SurfaceCause.PRINT).toList();
        return new PrintSurface(
                judged ? prints : null,
                pattern(sure.isEmpty() ? prints : sure, page),
                judged
                        ? bands.stream().filter(b -> b.cause() != SurfaceCause.SCANNER).toList()
                        : null,
                lines.stream().filter(l -> l.cause() == SurfaceCause.SCANNER).toList(),
                bands.stream().filter(b -> b.cause() == SurfaceCause.SCANNER).toList(),
                page,
                feed.map(side -> side.along(page)).orElse(null),
                ContrastSensitivity.USUAL,
                GrainJudge.judge(fine, judge.scans, readings),
                SharpnessJudge.judge(sharp),
                VignetteJudge.judge(even));
    }

    private void look(ScanPart part) {
        int sheet = part.samples().located().sheet().number();
        Map<String, Double> lightness = new HashMap<>();
        for (Reading reading : readings.readings()) {
            Lab lab = reading.labRelative() != null ? reading.labRelative() : reading.lab();
            if (lab != null && reading.sheet() == sheet) {
                lightness.put(reading.id(), lab.l());
            }
        }
        List<TintTrace> traces = new ArrayList<>();
        for (TintTrace trace : part.samples().surface().traces()) {
            Double l = trace.bare() ? Double.valueOf(BARE_L) : lightness.get(trace.id());
            if (l != null) {
                traces.add(trace.at(l));
            }
        }
        double sigma = PrintBlur.sigmaMm(part.samples());
        List<FoundLine> lines = new ArrayList<>();
        List<FoundLine> streaks = new ArrayList<>();
        List<FoundBand> bands = new ArrayList<>();
        for (Along along : Along.values()) {
            List<TintTrace> same = traces.stream().filter(t -> t.along() == along).toList();
            Map<Boolean, List<TintTrace>> bare =
                    same.stream().collect(Collectors.partitioningBy(TintTrace::bare));
            lines.addAll(LineDetector.find(bare.getOrDefault(false, List.of()), sigma));
            streaks.addAll(LineDetector.find(bare.getOrDefault(true, List.of()), sigma));
            bands.addAll(BandDetector.find(same, ContrastSensitivity.USUAL));
        }
        scans.add(new SurfaceView(part, traces, sigma, lines, streaks, bands));
    }

    private List<PrintLine> lines() {
        List<PrintLine> all = new ArrayList<>();
        for (SurfaceView scan : scans) {
            List<FoundLine> streaks = new ArrayList<>();
            for (FoundLine line : scan.lines()) {
                boolean known =
                        all.stream()
                                .anyMatch(o -> o.sheet() == scan.sheet() && same(o.line(), line));
                if (known) {
                    continue;
                }
                SurfaceCause cause = cause(scan, line);
                if (cause == SurfaceCause.SCANNER) {
                    if (streaks.stream().anyMatch(o -> scan.isSameStreak(o, line))) {
                        continue;
                    }
                    streaks.add(line);
                }
                all.add(new PrintLine(scan.sheet(), line, cause, inks(scan, line, cause)));
            }
        }
        all.sort(
                Comparator.comparingInt(PrintLine::sheet)
                        .thenComparing(l -> l.line().along())
                        .thenComparingDouble(l -> l.line().positionMm()));
        return all;
    }

    /** Suspect inks; a streak of the scanner has none, and colour tells only where it is none. */
    private static List<String> inks(SurfaceView scan, FoundLine line, SurfaceCause cause) {
        if (cause == SurfaceCause.SCANNER) {
            return List.of();
        }
        List<Rgb8> shows = codes(scan, line.shows());
        List<Rgb8> lacks = codes(scan, line.lacks());
        return cause == SurfaceCause.PRINT
                ? SuspectInks.of(
                        shows,
                        lacks,
                        LineColour.of(scan.tints(line.along(), line.shows()), scan.sigmaMm(), line))
                : SuspectInks.of(shows, lacks);
    }

    private static boolean same(FoundLine one, FoundLine other) {
        return one.along() == other.along()
                && one.contrast() > 0 == other.contrast() > 0
                && Math.abs(one.positionMm() - other.positionMm()) <= SAME_MM;
    }

    private static List<Rgb8> codes(SurfaceView scan, List<String> ids) {
        return scan.traces().stream()
                .filter(trace -> ids.contains(trace.id()))
                .map(TintTrace::rgb)
                .distinct()
                .toList();
    }

    private SurfaceCause cause(SurfaceView scan, FoundLine line) {
        Boolean turns = null;
        for (SurfaceView other : scans) {
            if (other.sheet() == scan.sheet()
                    && other.turnedAgainst(scan) > TURNED_DEGREES
                    && !scan.isInSameColumn(other, line)) {
                List<TintTrace> tints = other.tints(line.along(), line.shows());
                Optional<Boolean> there =
                        other.lines().stream().anyMatch(o -> same(o, line))
                                ? Optional.of(true)
                                : LineDetector.shows(tints, other.sigmaMm(), line, SAME_MM);
                turns = either(turns, there);
            }
        }
        if (turns != null) {
            return turns ? SurfaceCause.PRINT : SurfaceCause.SCANNER;
        }
        if (scan.hasStreak(line)) {
            return SurfaceCause.SCANNER;
        }
        if (!scan.alongColumns(line.along())) {
            return SurfaceCause.PRINT;
        }
        return scan.paperShows(line)
                .or(() -> scan.isStreak(line))
                .map(streak -> streak ? SurfaceCause.SCANNER : SurfaceCause.PRINT)
                .orElse(SurfaceCause.UNDECIDED);
    }

    private SurfaceCause cause(SurfaceView scan, FoundBand band) {
        Boolean turns = null;
        for (SurfaceView other : scans) {
            double turned = other.turnedAgainst(scan);
            // A sheet turned by half has the scanner's bands along the same axis again.
            if (other.sheet() == scan.sheet()
                    && turned > TURNED_DEGREES
                    && turned < 180 - TURNED_DEGREES) {
                List<TintTrace> tints = other.tints(band.along(), band.shows());
                Optional<Boolean> there =
                        other.bands().stream().anyMatch(o -> same(o, band))
                                ? Optional.of(true)
                                : BandDetector.shows(tints, band);
                turns = either(turns, there);
            }
        }
        if (turns != null) {
            return turns ? SurfaceCause.PRINT : SurfaceCause.SCANNER;
        }
        if (band.onPaper()) {
            return SurfaceCause.SCANNER;
        }
        return scan.paperWouldShowBands(band.along()) ? SurfaceCause.PRINT : SurfaceCause.UNDECIDED;
    }

    /** One scan that has it decides; one that cannot tell changes nothing. */
    private static @Nullable Boolean either(@Nullable Boolean known, Optional<Boolean> told) {
        boolean decided = told.isEmpty() || Boolean.TRUE.equals(known);
        return decided ? known : told.get();
    }

    private List<PrintBand> bands() {
        List<PrintBand> all = new ArrayList<>();
        for (SurfaceView scan : scans) {
            for (FoundBand band : scan.bands()) {
                boolean known =
                        all.stream()
                                .anyMatch(o -> o.sheet() == scan.sheet() && same(o.band(), band));
                if (!known) {
                    all.add(new PrintBand(scan.sheet(), band, cause(scan, band)));
                }
            }
        }
        all.sort(Comparator.comparingDouble((PrintBand b) -> b.band().overThreshold()).reversed());
        return all;
    }

    private static boolean same(FoundBand one, FoundBand other) {
        return one.along() == other.along()
                && Math.abs(one.periodMm() / other.periodMm() - 1) <= SAME_PERIOD;
    }

    /**
     * The repeat that the strongest line stands on, with others of its sheet, axis and polarity.
     */
    private static @Nullable SwathPattern pattern(List<PrintLine> lines, RectMm page) {
        PrintLine strongest =
                lines.stream()
                        .max(Comparator.comparingDouble(l -> l.line().strength()))
                        .orElse(null);
        if (strongest == null) {
            return null;
        }
        FoundLine line = strongest.line();
        List<Double> row =
                lines.stream()
                        .filter(l -> l.sheet() == strongest.sheet())
                        .map(PrintLine::line)
                        .filter(l -> l.along() == line.along())
                        .filter(l -> l.contrast() > 0 == line.contrast() > 0)
                        .map(FoundLine::positionMm)
                        .sorted()
                        .toList();
        double length = line.along() == Along.Y ? page.height() : page.width();
        return SwathPattern.of(row, length, line.positionMm());
    }
}

package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.calibrate.light.LightFit;
import org.printassay.calibrate.part.PartResult;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Xyz;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Warning;
import org.printassay.sheet.Patch;

/**
 * The light of one print's patches in its scans, free of uneven and stray light, before colour.
 *
 * @param patches one for each patch that was read
 * @param paper light of the unprinted paper
 * @param paperClipped whether paper is at the end of the range in any scan
 * @param strayLightKnown whether stray light could be estimated in every scan
 * @param lightDeltaE00 mean dE00 by which patches are off together with the estimate of the scans'
 *     light, one standard error; what is stated without evidence is left out
 * @param different two scans that are not of one print
 * @param warnings what the user must know about the scans
 */
public record ScanLights(
        List<PatchLight> patches,
        LinearRgb paper,
        boolean paperClipped,
        boolean strayLightKnown,
        double lightDeltaE00,
        Optional<ScanReadings.Different> different,
        List<Warning> warnings) {
    public ScanLights {
        patches = List.copyOf(patches);
        warnings = List.copyOf(warnings);
    }

    /**
     * One patch.
     *
     * @param patch which
     * @param light linear device light, mean over the scans
     * @param flags what makes it less sure
     */
    public record PatchLight(Patch patch, LinearRgb light, Set<ReadingFlag> flags) {}

    private record Key(int sheet, String id) {}

    /** Light of one print; repeats are averaged where no flag speaks against one. */
    public static ScanLights of(List<ScanPart> parts) {
        List<PartResult> results = new ArrayList<>();
        for (ScanPart part : parts) {
            if (!part.samples().samples().isEmpty()) {
                results.add(PartResult.of(part));
            }
        }
        double[] paper = new double[3];
        boolean clipped = false;
        boolean known = true;
        for (PartResult result : results) {
            for (int c = 0; c < 3; c++) {
                paper[c] += result.light().paper()[c] / results.size();
            }
            clipped |= result.paperClipped();
            known &= result.light().stray() != null;
        }
        Map<Key, List<PatchLight>> seen = new LinkedHashMap<>();
        for (PartResult result : results) {
            double[][] light = result.light().corrected();
            for (int i = 0; i < result.colours().size(); i++) {
                PatchColour colour = result.colours().get(i);
                double[] own = result.light().paper();
                LinearRgb here =
                        new LinearRgb(
                                light[0][i] * paper[0] / own[0],
                                light[1][i] * paper[1] / own[1],
                                light[2][i] * paper[2] / own[2]);
                seen.computeIfAbsent(
                                new Key(colour.sheet(), colour.patch().id()),
                                k -> new ArrayList<>())
                        .add(new PatchLight(colour.patch(), here, colour.flags()));
            }
        }
        return new ScanLights(
                seen.values().stream().map(ScanLights::mean).toList(),
                new LinearRgb(paper[0], paper[1], paper[2]),
                clipped,
                known,
                lightDeltaE00(results),
                PrintIdentity.among(parts, results),
                ScanWarnings.of(parts, results, false));
    }

    /** What the light moves colours by, dE00: repeats of a sheet halve it, other sheets do not. */
    private static double lightDeltaE00(List<PartResult> results) {
        Map<Integer, List<PartResult>> sheets = new TreeMap<>();
        for (PartResult result : results) {
            if (!result.colours().isEmpty()) {
                sheets.computeIfAbsent(result.colours().get(0).sheet(), sheet -> new ArrayList<>())
                        .add(result);
            }
        }
        double sum = 0;
        int patches = 0;
        for (List<PartResult> repeats : sheets.values()) {
            double squares = 0;
            int most = 0;
            for (PartResult one : repeats) {
                squares += Math.pow(lightDeltaE00(one), 2);
                most = Math.max(most, one.colours().size());
            }
            sum += most * Math.sqrt(squares) / repeats.size();
            patches += most;
        }
        return patches == 0 ? 0 : sum / patches;
    }

    /**
     * Without the shape of stray light, which is the scanner's own and alike whenever it is used.
     */
    private static double lightDeltaE00(PartResult result) {
        int last = result.light().causes().size();
        int shapes = last - result.light().shapes();
        double sum = 0;
        for (PatchColour colour : result.colours()) {
            Lab lab = Lab.of(colour.xyz(), Xyz.PCS_WHITE);
            double squares = 0;
            List<Lab> causes = colour.causes();
            for (int k = LightFit.STATED; k < causes.size(); k++) {
                if (k >= shapes && k < last) {
                    continue;
                }
                Lab by = causes.get(k);
                Lab moved = new Lab(lab.l() + by.l(), lab.a() + by.a(), lab.b() + by.b());
                squares += Math.pow(DeltaE.ciede2000(lab, moved), 2);
            }
            sum += Math.sqrt(squares);
        }
        return result.colours().isEmpty() ? 0 : sum / result.colours().size();
    }

    private static PatchLight mean(List<PatchLight> same) {
        List<PatchLight> good = same.stream().filter(one -> one.flags().isEmpty()).toList();
        List<PatchLight> used = good.isEmpty() ? same : good;
        double[] sum = new double[3];
        Set<ReadingFlag> flags = EnumSet.noneOf(ReadingFlag.class);
        for (PatchLight one : used) {
            flags.addAll(one.flags());
            for (int c = 0; c < 3; c++) {
                sum[c] += one.light().channel(c) / used.size();
            }
        }
        return new PatchLight(
                used.get(0).patch(), new LinearRgb(sum[0], sum[1], sum[2]), Set.copyOf(flags));
    }
}

package org.printassay.calibrate.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.reading.ReadingFlag;
import org.printassay.robust.Median;
import org.printassay.sample.PatchSample;
import org.printassay.sample.PatchSampler;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;

/**
 * One scan made ready for {@link LightFitter}: its channels relative to a first estimate of paper
 * white.
 *
 * @param channels red, green, blue; one only for a grey scan
 * @param paper the first estimate of paper white in device light, for each channel
 * @param paperKnown false when no unprinted patch was read and the lightest stands for it
 * @param grid the neighbourhood
 * @param anyMap a map that shows which cells are known
 * @param turnDegrees rotation of the sheet in the scan, clockwise: how its lines lie on the page
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record ScanLight(
        List<ChannelLight> channels,
        double[] paper,
        boolean paperKnown,
        SurroundGrid grid,
        float[] anyMap,
        double turnDegrees) {
    private static final Rgb8 UNPRINTED = new Rgb8(255, 255, 255);

    /** Points across and down a patch where its neighbourhood is read. */
    private static final int POINTS = 3;

    /** The same with channels whose neighbourhood a model frees from uneven and stray light. */
    ScanLight freed(LightFitter.Outcome model) {
        List<ChannelLight> freed = new ArrayList<>();
        for (int c = 0; c < channels.size(); c++) {
            freed.add(channels.get(c).freed(model.fits()[c], model.kinds(), model.blurs()));
        }
        return new ScanLight(freed, paper, paperKnown, grid, anyMap, turnDegrees);
    }

    static ScanLight of(SheetSamples scan) {
        List<PatchSample> samples = scan.samples();
        Rgb8 paperCode = paperCode(samples);
        boolean[] evidence = evidence(samples, paperCode);
        Map<Rgb8, Integer> codes = new LinkedHashMap<>();
        int[] group = new int[samples.size()];
        for (int i = 0; i < group.length; i++) {
            int number = codes.computeIfAbsent(samples.get(i).patch().rgb(), k -> codes.size());
            group[i] = evidence[i] ? number : -1;
        }
        int paperGroup = Objects.requireNonNull(codes.get(paperCode), "no paper");
        leaveOutSingles(group, codes.size(), paperGroup);
        int[] windows = windows(samples, group, paperGroup);
        LightSurface surface = new LightSurface(scan.located().sheet().page());
        double[][] terms = new double[group.length][];
        SurroundGrid grid = new SurroundGrid(scan.page());
        GridPlace[][] places = new GridPlace[group.length][];
        for (int i = 0; i < group.length; i++) {
            RectMm area = samples.get(i).patch().area();
            terms[i] = surface.terms(area.centre().x(), area.centre().y());
            places[i] = places(grid, PatchSampler.middle(area));
        }
        List<ChannelLight> channels = new ArrayList<>();
        double[] paper = new double[scan.scan().channels() == 1 ? 1 : 3];
        float[] map = {};
        for (int c = 0; c < paper.length; c++) {
            paper[c] = median(samples, windows, c);
            map = grid.values(c, paper[c]);
            TwinData data =
                    new TwinData(
                            light(samples, c, paper[c]),
                            errors(samples, c, paper[c]),
                            group,
                            codes.size(),
                            paperGroup,
                            terms);
            channels.add(new ChannelLight(grid, data, places, windows, surface, map));
        }
        return new ScanLight(
                channels,
                paper,
                paperCode.equals(UNPRINTED),
                grid,
                map,
                scan.located().placement().rotationDegrees());
    }

    /** A code that was read once compares with nothing; the paper stays, it is the reference. */
    private static void leaveOutSingles(int[] group, int groups, int paperGroup) {
        int[] sizes = new int[groups];
        for (int g : group) {
            sizes[Math.max(g, 0)] += g < 0 ? 0 : 1;
        }
        for (int i = 0; i < group.length; i++) {
            if (group[i] >= 0 && sizes[group[i]] < 2 && group[i] != paperGroup) {
                group[i] = -1;
            }
        }
    }

    /** The code of bare paper; where there is none, that of the lightest patch. */
    private static Rgb8 paperCode(List<PatchSample> samples) {
        PatchSample lightest = samples.get(0);
        for (PatchSample sample : samples) {
            if (sample.patch().rgb().equals(UNPRINTED)) {
                return UNPRINTED;
            }
            if (sample.linear().g() > lightest.linear().g()) {
                lightest = sample;
            }
        }
        return lightest.patch().rgb();
    }

    /** Clipped patches and those at the scan's edge are no evidence, unless no paper were left. */
    private static boolean[] evidence(List<PatchSample> samples, Rgb8 paperCode) {
        boolean[] evidence = new boolean[samples.size()];
        boolean paperLeft = false;
        for (int i = 0; i < evidence.length; i++) {
            PatchSample sample = samples.get(i);
            evidence[i] =
                    !sample.flags().contains(ReadingFlag.CLIPPED)
                            && !sample.flags().contains(ReadingFlag.EDGE)
                            && Double.isFinite(sample.linear().g());
            paperLeft |= evidence[i] && sample.patch().rgb().equals(paperCode);
        }
        for (int i = 0; i < evidence.length; i++) {
            evidence[i] |= !paperLeft && samples.get(i).patch().rgb().equals(paperCode);
        }
        return evidence;
    }

    private static int[] windows(List<PatchSample> samples, int[] group, int paperGroup) {
        int[] all = new int[group.length];
        int[] windows = new int[group.length];
        int n = 0;
        int w = 0;
        for (int i = 0; i < group.length; i++) {
            if (group[i] == paperGroup) {
                all[n++] = i;
                if (samples.get(i).patch().section() == Section.PAPER) {
                    windows[w++] = i;
                }
            }
        }
        return w > 0 ? Arrays.copyOf(windows, w) : Arrays.copyOf(all, n);
    }

    static GridPlace[] places(SurroundGrid grid, RectMm middle) {
        GridPlace[] places = new GridPlace[POINTS * POINTS];
        for (int j = 0; j < POINTS; j++) {
            for (int i = 0; i < POINTS; i++) {
                places[j * POINTS + i] =
                        grid.place(
                                middle.x() + (i + 0.5) / POINTS * middle.width(),
                                middle.y() + (j + 0.5) / POINTS * middle.height());
            }
        }
        return places;
    }

    private static double median(List<PatchSample> samples, int[] which, int channel) {
        double[] values = new double[which.length];
        for (int k = 0; k < values.length; k++) {
            values[k] = samples.get(which[k]).linear().channel(channel);
        }
        double median = Median.of(values);
        return median > 0 ? median : 1;
    }

    private static double[] light(List<PatchSample> samples, int channel, double paper) {
        return samples.stream().mapToDouble(s -> s.linear().channel(channel) / paper).toArray();
    }

    private static double[] errors(List<PatchSample> samples, int channel, double paper) {
        double[] errors = new double[samples.size()];
        for (int i = 0; i < errors.length; i++) {
            LinearRgb light = samples.get(i).linear();
            double error = samples.get(i).standardError().channel(channel) / paper;
            double slope = Lab.slope(light.channel(channel) / paper);
            errors[i] = Double.isFinite(error) ? slope * error : 0;
        }
        return errors;
    }
}

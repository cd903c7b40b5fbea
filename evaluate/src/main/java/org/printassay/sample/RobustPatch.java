package org.printassay.sample;

import java.util.EnumSet;
import java.util.Set;
import java.util.stream.IntStream;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.reading.ReadingFlag;
import org.printassay.sheet.Patch;

/**
 * The robust mean of a patch's pixels in linear light: what lies on the patch (dust, hairs,
 * scratches, pencil) is left out cell by cell and block by block, the same places in all channels,
 * and the plain mean of the rest is true to any grain, however skewed. Its standard error comes
 * from the means of blocks of about a millimetre, because neighbouring pixels are correlated. The
 * same with nothing left out stands beside it: whether something lies on a patch, or the print is
 * so everywhere, shows only beside others ({@link OwnSurface}).
 */
final class RobustPatch {
    /** Share left out from which a patch counts as dusty; clean noise leaves out 0.2 %. */
    private static final double DUSTY = 0.1;

    private static final double CLIPPED = 0.02;

    /** Blocks of a flat patch span less than this, L*. */
    private static final double UNEVEN_L = 3.5;

    private RobustPatch() {}

    /**
     * One patch.
     *
     * @param codeSteps 16-bit codes from one value of the scan to the next, by channel
     * @param curves linear light of each 16-bit code, by channel
     * @param nearEdge whether the scan ends beside it
     * @param turn direction of the page's x in the scan, radians from its rows
     */
    static PatchReads of(
            Patch patch,
            PatchCells cells,
            int[] codeSteps,
            float[][] curves,
            boolean nearEdge,
            double turn) {
        Set<ReadingFlag> flags = EnumSet.noneOf(ReadingFlag.class);
        if (nearEdge) {
            flags.add(ReadingFlag.EDGE);
        }
        if (cells.clipped() > CLIPPED * cells.count()) {
            flags.add(ReadingFlag.CLIPPED);
        }
        CellJudge judge = CellJudge.of(cells, curves, codeSteps);
        BlockMeans blocks = new BlockMeans(cells, judge, curves, codeSteps);
        BlockMeans allBlocks = new BlockMeans(cells, judge.showingAll(), curves, codeSteps);
        BlockMeans fewest = new BlockMeans(cells, judge.withoutFar(), curves, codeSteps);
        Set<ReadingFlag> found = EnumSet.noneOf(ReadingFlag.class);
        found.addAll(flags);
        if (judge.shareOut() + blocks.shareOut() > DUSTY) {
            found.add(ReadingFlag.DUSTY);
        }
        int green = cells.channels() / 2;
        boolean crossed = CrossingLines.are(cells, judge, turn);
        return new PatchReads(
                sample(patch, cells, blocks, found, crossed),
                sample(patch, cells, allBlocks, flags, crossed),
                judge.shareFar(),
                Lab.lightness(allBlocks.mean(green)) - Lab.lightness(fewest.mean(green)),
                spanL(cells, allBlocks));
    }

    private static PatchSample sample(
            Patch patch,
            PatchCells cells,
            BlockMeans blocks,
            Set<ReadingFlag> found,
            boolean crossed) {
        Set<ReadingFlag> flags = EnumSet.noneOf(ReadingFlag.class);
        flags.addAll(found);
        if (spanL(cells, blocks) > UNEVEN_L) {
            flags.add(ReadingFlag.UNEVEN);
        }
        double[] mean = new double[3];
        double[] error = new double[3];
        for (int i = 0; i < 3; i++) {
            int c = cells.channels() == 1 ? 0 : i;
            mean[i] = blocks.mean(c);
            error[i] = blocks.standardError(c);
        }
        return new PatchSample(
                patch,
                new LinearRgb(mean[0], mean[1], mean[2]),
                new LinearRgb(error[0], error[1], error[2]),
                blocks.full(),
                flags,
                crossed);
    }

    /** How far blocks lie apart in the channel where they do most, L*. */
    private static double spanL(PatchCells cells, BlockMeans blocks) {
        return IntStream.range(0, cells.channels()).mapToDouble(blocks::spanL).max().orElse(0);
    }
}

package org.printassay.calibrate.part;

import java.util.List;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.printassay.calibrate.codes.CodeErrors;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.colour.Rgb8;
import org.printassay.sample.PatchSample;

/**
 * How far the channels of bare paper are apart, in codes of 0 to 1. Automatic white balance makes
 * them equal wherever exposure put the paper. Papers are tinted by more than their mean over many
 * patches is uncertain, so that a tie tells: where tints scatter by 1 code of 255 from red to green
 * and by 4 from blue to green (common practice, no source), less than one paper in a hundred ties
 * by itself.
 *
 * @param red mean of red less green over the patches
 * @param blue mean of blue less green
 * @param error standard error of the larger of the two
 * @param spread standard deviation of green between patches
 * @param light mean of green
 * @param fine whether codes are finer than 8 bits
 */
record PaperBalance(
        double red, double blue, double error, double spread, double light, boolean fine) {
    /** Channels nearer to each other than this are equal: 0.15 of 255. */
    private static final double EQUAL = 0.0006;

    /** Fewer patches do not tell. */
    private static final int FEWEST = 8;

    /**
     * In 8 bits the mean of paper is a whole code, and half a code off, unless its patches spread
     * over codes: 0.3 of 255.
     */
    private static final double SPREAD = 0.0012;

    /** Darker than this it is no bare paper, or the scan is a negative. */
    private static final double LIGHTEST = 0.5;

    static PaperBalance of(ScanPart part) {
        List<PatchSample> paper =
                part.samples().samples().stream()
                        .filter(s -> s.patch().rgb().equals(Rgb8.grey(255)))
                        .filter(s -> s.flags().isEmpty())
                        .toList();
        SummaryStatistics red = new SummaryStatistics();
        SummaryStatistics green = new SummaryStatistics();
        SummaryStatistics blue = new SummaryStatistics();
        for (PatchSample sample : paper) {
            double g = code(part, sample, 1);
            red.addValue(code(part, sample, 0) - g);
            green.addValue(g);
            blue.addValue(code(part, sample, 2) - g);
        }
        // Half a step of a colour difference is a code or more: lossy coding makes tints grey.
        if (paper.size() < FEWEST || part.samples().scan().coding().isPresent()) {
            return new PaperBalance(1, 1, 0, 0, 0, false);
        }
        double most = Math.max(red.getStandardDeviation(), blue.getStandardDeviation());
        return new PaperBalance(
                red.getMean(),
                blue.getMean(),
                most / Math.sqrt(paper.size()),
                green.getStandardDeviation(),
                green.getMean(),
                part.samples().census().finerThanEightBits());
    }

    private static double code(ScanPart part, PatchSample sample, int channel) {
        return CodeErrors.codeOf(
                part.colour().codeLight().curve(channel), sample.linear().channel(channel));
    }

    /** Whether the channels are equal, as far as can be told, and that can be told well. */
    boolean exact() {
        double most = Math.max(Math.abs(red), Math.abs(blue));
        return light > LIGHTEST && most + error < EQUAL && (fine || spread > SPREAD);
    }
}

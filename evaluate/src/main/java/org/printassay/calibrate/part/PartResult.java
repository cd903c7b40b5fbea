package org.printassay.calibrate.part;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.calibrate.light.LightFit;
import org.printassay.calibrate.light.StrayEstimate;
import org.printassay.calibrate.outlier.LocalCheck;
import org.printassay.calibrate.outlier.LoneCheck;
import org.printassay.calibrate.outlier.TwinCheck;
import org.printassay.calibrate.outlier.TwinScatter;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.StrayLight;
import org.printassay.robust.Median;

/**
 * One scan with its light and its colours.
 *
 * @param part the scan
 * @param light its light
 * @param colours one a sample, in their order
 */
public record PartResult(ScanPart part, LightFit light, List<PatchColour> colours) {
    /**
     * L* that no print is darker than: a density of 2.9 is L* 1.1 (common practice, no source), and
     * readings of black err by some tenths.
     */
    static final double DARKEST = 0.5;

    public static PartResult of(ScanPart part) {
        LightFit light = LightFit.of(part.samples());
        List<PatchColour> colours = PatchColour.of(part, light);
        colours = TwinCheck.flagged(colours, light.assumed());
        colours = LocalCheck.flagged(colours);
        colours = LoneCheck.flagged(colours, part.samples().located().chart().space());
        PartResult result = new PartResult(part, light, colours);
        result = result.blackCut() ? result.withClippedBlacks() : result;
        // Twins may be apart by stray light that could not be estimated.
        return light.assumed()
                ? result
                : new PartResult(part, light, TwinScatter.flagged(result.colours));
    }

    /** Whether patches of one code lie far apart over the sheet. */
    public boolean scattered() {
        return colours.stream().anyMatch(c -> c.flags().contains(ReadingFlag.SCATTERED));
    }

    /**
     * Whether black reads darker than any print is: the scan's black point was set above it, and
     * what lies below is lost as if it were clipped. Not told where too much of the stray light is
     * guessed.
     */
    public boolean blackCut() {
        Blacks blacks = part.colour().trust().absolute() ? blacks() : null;
        return blacks != null
                && !light.assumed()
                && blacks.corrected() + 2 * blacks.error() < DARKEST;
    }

    private PartResult withClippedBlacks() {
        double darkest = Lab.luminanceFactor(DARKEST) * 100;
        List<PatchColour> flagged = new ArrayList<>();
        for (PatchColour colour : colours) {
            boolean lost = colour.patch().rgb().equals(Rgb8.grey(0)) || colour.xyz().y() < darkest;
            flagged.add(lost ? colour.flagged(ReadingFlag.CLIPPED) : colour);
        }
        return new PartResult(part, light, flagged);
    }

    /** The unprinted paper. */
    public Xyz paper() {
        double[] paper = light.paper();
        return part.colour().toXyz(new LinearRgb(paper[0], paper[1], paper[2]));
    }

    /** Y of the paper. */
    public double whiteY() {
        return paper().y();
    }

    /** The paper is the same in all scans of a print; their exposure need not be. */
    public List<PatchColour> withPaperAt(double whiteY) {
        double factor = whiteY / whiteY();
        return colours.stream().map(one -> one.scaled(factor)).toList();
    }

    /** Whether most of the bare paper is clipped in any channel, so that it is not known. */
    public boolean paperClipped() {
        long all = 0;
        long clipped = 0;
        for (PatchColour colour : colours) {
            if (colour.patch().rgb().equals(Rgb8.grey(255))) {
                all++;
                clipped += colour.flags().contains(ReadingFlag.CLIPPED) ? 1 : 0;
            }
        }
        return 2 * clipped > all;
    }

    /** Stray light as it is reported; null when the twins cannot tell. */
    public @Nullable StrayLight strayLight() {
        StrayEstimate stray = light.stray();
        if (stray == null) {
            return null;
        }
        Blacks blacks = blacks();
        return new StrayLight(
                stray.glare(),
                stray.glareError(),
                stray.returned(),
                stray.widthMm(),
                stray.corrected(),
                blacks == null ? Double.NaN : blacks.without());
    }

    /** The pooled black patches; null without any. */
    public @Nullable Blacks blacks() {
        List<PatchColour> blacks =
                colours.stream().filter(p -> p.patch().rgb().equals(Rgb8.grey(0))).toList();
        if (blacks.isEmpty()) {
            return null;
        }
        double scale = part.colour().trust().absolute() ? 100 : whiteY();
        long clipped = blacks.stream().filter(p -> p.flags().contains(ReadingFlag.CLIPPED)).count();
        double y = Median.of(blacks.stream().mapToDouble(p -> p.xyz().y()).toArray()) / scale;
        double evened =
                Median.of(blacks.stream().mapToDouble(PatchColour::evenedY).toArray()) / scale;
        StrayEstimate stray = light.stray();
        // Half of what surrounds a patch is paper, more or less.
        double error = stray == null ? 0 : stray.glareError() / 2 * Lab.slope(Math.max(y, 0));
        return new Blacks(
                Lab.lightness(y), Lab.lightness(evened), error, 2 * clipped > blacks.size());
    }

    /**
     * Lightness of black: absolute where the scan's colour is, else relative to paper.
     *
     * @param corrected L* as read
     * @param without L* had stray light not been removed
     * @param error standard error of {@code corrected} by that of the glare
     * @param clipped whether most blacks are at the end of the scanner's range
     */
    public record Blacks(double corrected, double without, double error, boolean clipped) {}
}

package org.printassay.demo.paper;

import java.util.List;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;

/**
 * A paper in a printer, simulated: which colour each code becomes. Without faults it is the usual
 * route, relative colorimetric with black point compensation onto this paper's white and black;
 * faults come on top.
 *
 * @param name for people
 * @param white unprinted paper, absolute CIELAB
 * @param black darkest neutral, absolute CIELAB; code 0 prints exactly this
 * @param tone what happens to tone
 * @param cast lean of greys
 * @param chromaByHue factor on chroma at hue angles 0, 60 ... 300 degrees, straight lines between
 * @param surface spread, grain, texture
 */
public record PaperModel(
        String name,
        Lab white,
        Lab black,
        Tone tone,
        Cast cast,
        List<Double> chromaByHue,
        Surface surface) {
    /** Chroma as the aim in every hue. */
    public static final List<Double> FULL_CHROMA = List.of(1.0, 1.0, 1.0, 1.0, 1.0, 1.0);

    /** Chroma of the aim at which a cast of the greys is halved: strong colours hide it. */
    private static final double CAST_CHROMA = 40;

    public PaperModel {
        chromaByHue = List.copyOf(chromaByHue);
        if (chromaByHue.size() != 6) {
            throw new IllegalArgumentException("six chroma factors, got " + chromaByHue.size());
        }
        if (black.l() >= white.l() || black.l() < 0 || white.l() > 100) {
            throw new IllegalArgumentException("black lies between 0 and white, white below 100");
        }
    }

    /** A paper without faults. */
    public static PaperModel faultless(String name, Lab white, Lab black) {
        return new PaperModel(name, white, black, Tone.AIM, Cast.NONE, FULL_CHROMA, Surface.EVEN);
    }

    /** This paper with another tone. */
    public PaperModel withTone(Tone other) {
        return new PaperModel(name, white, black, other, cast, chromaByHue, surface);
    }

    /** This paper with another cast. */
    public PaperModel withCast(Cast other) {
        return new PaperModel(name, white, black, tone, other, chromaByHue, surface);
    }

    /** This paper with other chroma factors. */
    public PaperModel withChromaByHue(List<Double> other) {
        return new PaperModel(name, white, black, tone, cast, other, surface);
    }

    /** This paper with another surface. */
    public PaperModel withSurface(Surface other) {
        return new PaperModel(name, white, black, tone, cast, chromaByHue, other);
    }

    /** True colour of an sRGB code, spread left out. */
    public Lab colourOf(Rgb8 codes) {
        return colourOf(RgbSpace.SRGB, codes.r(), codes.g(), codes.b());
    }

    /**
     * True colour of a code, spread left out.
     *
     * @param space encoding of the codes
     * @param r red code, 0-255, fractions allowed
     * @param g green code
     * @param b blue code
     */
    public Lab colourOf(RgbSpace space, double r, double g, double b) {
        Xyz file =
                space.linearToXyz(
                        space.decode(r / 255), space.decode(g / 255), space.decode(b / 255));
        return leaning(onPaper(withChroma(withTone(space, file))));
    }

    /**
     * L*(level) - L*(0) of every level 0-255 in sRGB: what blocking is judged by.
     *
     * @return 256 values
     */
    public double[] aboveBlack() {
        double[] above = new double[256];
        for (int level = 0; level < 256; level++) {
            above[level] = colourOf(Rgb8.grey(level)).l() - black.l();
        }
        return above;
    }

    /** Tone faults act on luminance and keep the chromaticity. */
    private Xyz withTone(RgbSpace space, Xyz file) {
        double y = Math.min(1, Math.max(0, file.y() / 100));
        if (tone.equals(Tone.AIM) || y == 0) {
            return file;
        }
        double level = 255 * space.encode(y);
        double printed = tone.gained(space.decode(tone.printedLevel(level) / 255));
        if (!tone.bumps().isEmpty()) {
            printed = Lab.luminanceFactor(Lab.lightness(printed) + tone.bumped(level));
        }
        return file.times(Math.min(1, Math.max(0, printed)) / y);
    }

    private Xyz withChroma(Xyz relative) {
        if (chromaByHue.equals(FULL_CHROMA)) {
            return relative;
        }
        Lab lab = Lab.of(relative, Xyz.PCS_WHITE);
        double at = lab.hueDegrees() / 60;
        int left = (int) at % 6;
        double share = at - (int) at;
        double factor =
                (1 - share) * chromaByHue.get(left) + share * chromaByHue.get((left + 1) % 6);
        return new Lab(lab.l(), factor * lab.a(), factor * lab.b()).toXyz(Xyz.PCS_WHITE);
    }

    /**
     * Media-relative values onto this paper: straight scaling in XYZ so that black lands on the
     * paper's black luminance (ISO 18619:2015, neutral black points), then the paper's own white.
     */
    private Lab onPaper(Xyz relative) {
        Xyz paper = white.toXyz(Xyz.PCS_WHITE);
        Xyz pcs = Xyz.PCS_WHITE;
        double floor = 100 * Lab.luminanceFactor(black.l()) / paper.y();
        double scale = 1 - floor;
        return Lab.of(
                new Xyz(
                        (scale * relative.x() + floor * pcs.x()) * paper.x() / pcs.x(),
                        (scale * relative.y() + floor * pcs.y()) * paper.y() / pcs.y(),
                        (scale * relative.z() + floor * pcs.z()) * paper.z() / pcs.z()),
                pcs);
    }

    /** Adds the cast, and the colour of this black fading out towards paper. */
    private Lab leaning(Lab printed) {
        double t = (printed.l() - black.l()) / (white.l() - black.l());
        t = Math.min(1, Math.max(0, t));
        Lab plainBlack = onPaper(new Xyz(0, 0, 0));
        double near = (1 - t) * (1 - t);
        double strength = 1 / (1 + Math.pow(printed.chroma() / CAST_CHROMA, 2));
        return new Lab(
                printed.l(),
                printed.a() + near * (black.a() - plainBlack.a()) + strength * cast.a(t),
                printed.b() + near * (black.b() - plainBlack.b()) + strength * cast.b(t));
    }
}

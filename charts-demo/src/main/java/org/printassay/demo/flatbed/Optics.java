package org.printassay.demo.flatbed;

/**
 * What the light path does. Stray light has two parts, both from the reflectance of the
 * neighbourhood weighted with the same kernel: light that the sheet throws back onto itself by way
 * of the glass and the lamp's housing (multiplies), and glare in the lens (adds). The kernel is an
 * exponential core plus a broad tail, (1 + (r/b)^2)^(-3/2); it is no Gaussian on purpose. A wide
 * area of bare paper reads true.
 *
 * @param blurSigmaUm standard deviation of the blur, micrometres on the sheet; below about half a
 *     pixel the pixel itself is the limit
 * @param returnedLight share of light returned, 0 to about 0.15
 * @param glare share of light spread, 0 to about 0.03
 * @param coreMm length a of the core exp(-r/a)
 * @param tailMm length b of the tail
 * @param tailShare share of the tail in the whole, 0 to 1
 * @param sharpening strength of the halo of an unsharp mask, 0 for none
 * @param sharpeningSigmaUm its width
 */
public record Optics(
        double blurSigmaUm,
        double returnedLight,
        double glare,
        double coreMm,
        double tailMm,
        double tailShare,
        double sharpening,
        double sharpeningSigmaUm) {
    /** No stray light, no more blur than the pixels make. */
    public static final Optics CLEAR = new Optics(0, 0, 0, 2.5, 14, 0.45, 0, 100);

    public Optics {
        if (blurSigmaUm < 0 || returnedLight < 0 || glare < 0 || glare > 0.5 || sharpening < 0) {
            throw new IllegalArgumentException("optics: a share or width is out of range");
        }
        if (coreMm <= 0 || tailMm <= 0 || tailShare < 0 || tailShare > 1) {
            throw new IllegalArgumentException("optics: the stray light kernel is out of range");
        }
    }

    /** These optics with another blur. */
    public Optics withBlur(double sigmaUm) {
        return new Optics(
                sigmaUm,
                returnedLight,
                glare,
                coreMm,
                tailMm,
                tailShare,
                sharpening,
                sharpeningSigmaUm);
    }

    /** These optics with other amounts of stray light. */
    public Optics withStrayLight(double returned, double spread) {
        return new Optics(
                blurSigmaUm,
                returned,
                spread,
                coreMm,
                tailMm,
                tailShare,
                sharpening,
                sharpeningSigmaUm);
    }

    /** These optics with another kernel of stray light. */
    public Optics withKernel(double core, double tail, double share) {
        return new Optics(
                blurSigmaUm,
                returnedLight,
                glare,
                core,
                tail,
                share,
                sharpening,
                sharpeningSigmaUm);
    }

    /** These optics with an unsharp mask. */
    public Optics withSharpening(double strength, double sigmaUm) {
        return new Optics(
                blurSigmaUm, returnedLight, glare, coreMm, tailMm, tailShare, strength, sigmaUm);
    }
}

package org.printassay.demo.print;

import java.util.Arrays;
import org.printassay.colour.Lab;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;

/**
 * Inks with spectra, invented: a colour is made of three inks whose absorbances add up (Bouguer,
 * Lambert, Beer) and a black one that takes the place of part of their common grey. Different sets
 * make the same colour with different spectra.
 */
public enum InkSet {
    /** Cyan, magenta and yellow as dyes are, little black. */
    FIRST(640, 58, 545, 40, 432, 38, 0.3, 0),
    /** Other dyes, and greys mostly of a slightly brown black. */
    SECOND(665, 50, 528, 34, 445, 45, 0.8, 0.25);

    /** Bands of a spectrum. */
    public static final int BANDS = 36;

    private static final int START_NM = 380;
    private static final int STEP_NM = 10;
    private static final int ROUNDS = 40;
    private static final double CLOSE_ENOUGH = 1e-4;

    /** Absorbance of a paper without tint at its blue end: a little of what fibres take away. */
    private static final double PAPER_BLUE = 0.04;

    private static final double MOST_INK = 6;

    private final int cyanNm;
    private final int cyanWidthNm;
    private final int magentaNm;
    private final int magentaWidthNm;
    private final int yellowNm;
    private final int yellowWidthNm;
    private final double blackShare;
    private final double blackSlope;

    InkSet(
            int cyanNm,
            int cyanWidthNm,
            int magentaNm,
            int magentaWidthNm,
            int yellowNm,
            int yellowWidthNm,
            double blackShare,
            double blackSlope) {
        this.cyanNm = cyanNm;
        this.cyanWidthNm = cyanWidthNm;
        this.magentaNm = magentaNm;
        this.magentaWidthNm = magentaWidthNm;
        this.yellowNm = yellowNm;
        this.yellowWidthNm = yellowWidthNm;
        this.blackShare = blackShare;
        this.blackSlope = blackSlope;
    }

    /** Wavelength of a band, nanometres. */
    public static int nm(int band) {
        return START_NM + STEP_NM * band;
    }

    /**
     * A spectrum of exactly this colour, D50, 2 degrees. Colours that the inks cannot make are made
     * of the nearest that they can and three broad bands.
     *
     * @return reflectance factors, {@link #BANDS} of them
     */
    public double[] spectrum(Lab lab) {
        double[] amounts = {0.3, 0.3, 0.3};
        double[] made = mixed(amounts);
        double[] off = off(lab, made);
        double damping = 0.01;
        for (int round = 0; round < ROUNDS && length(off) > CLOSE_ENOUGH; round++) {
            double[][] slopes = new double[3][3];
            for (int k = 0; k < 3; k++) {
                double[] moved = amounts.clone();
                moved[k] += 1e-4;
                double[] there = off(lab, mixed(moved));
                for (int i = 0; i < 3; i++) {
                    slopes[i][k] = (off[i] - there[i]) / 1e-4;
                }
            }
            double[] step = leastSquares(slopes, off, damping);
            double[] next = new double[3];
            for (int k = 0; k < 3; k++) {
                next[k] = Math.min(MOST_INK, Math.max(-0.1, amounts[k] + step[k]));
            }
            double[] there = off(lab, mixed(next));
            if (length(there) < length(off)) {
                amounts = next;
                made = mixed(next);
                off = there;
                damping /= 4;
            } else {
                damping *= 8;
            }
        }
        return exact(lab, made);
    }

    private double[] mixed(double[] amounts) {
        double common = Math.min(amounts[0], Math.min(amounts[1], amounts[2]));
        double black = blackShare * Math.max(0, common);
        double[] factors = new double[BANDS];
        for (int i = 0; i < BANDS; i++) {
            double nm = nm(i);
            double paper = PAPER_BLUE * bell(nm, 380, 40);
            double ink =
                    (amounts[0] - black)
                                    * (bell(nm, cyanNm, cyanWidthNm) + 0.12 * bell(nm, 390, 30))
                            + (amounts[1] - black)
                                    * (bell(nm, magentaNm, magentaWidthNm)
                                            + 0.25 * bell(nm, 400, 45))
                            + (amounts[2] - black) * bell(nm, yellowNm, yellowWidthNm)
                            + 1.05 * black * (1 - blackSlope * (nm - 550) / 170);
            factors[i] = 0.94 * Math.exp(-paper - ink);
        }
        return factors;
    }

    private static double bell(double nm, double centre, double width) {
        double away = (nm - centre) / width;
        return Math.exp(-away * away / 2);
    }

    private static double[] off(Lab wanted, double[] factors) {
        Lab made = lab(factors);
        return new double[] {wanted.l() - made.l(), wanted.a() - made.a(), wanted.b() - made.b()};
    }

    private static Lab lab(double[] factors) {
        return spectrumOf(factors).toLab();
    }

    private static Spectrum spectrumOf(double[] factors) {
        return new Spectrum(START_NM, STEP_NM, Arrays.stream(factors).boxed().toList());
    }

    /** Adds three broad bands until X, Y and Z are right. */
    private static double[] exact(Lab lab, double[] made) {
        Xyz wanted = lab.toXyz(Xyz.E308_D50_WHITE);
        Xyz have = spectrumOf(made).toXyz();
        double[][] bands = new double[3][BANDS];
        double[][] columns = new double[3][3];
        int[] centres = {610, 545, 450};
        for (int k = 0; k < 3; k++) {
            for (int i = 0; i < BANDS; i++) {
                bands[k][i] = bell(nm(i), centres[k], 40);
            }
            Xyz xyz = spectrumOf(bands[k]).toXyz();
            columns[0][k] = xyz.x();
            columns[1][k] = xyz.y();
            columns[2][k] = xyz.z();
        }
        double[] more =
                leastSquares(
                        columns,
                        new double[] {
                            wanted.x() - have.x(), wanted.y() - have.y(), wanted.z() - have.z()
                        },
                        0);
        double[] exact = made.clone();
        for (int k = 0; k < 3; k++) {
            for (int i = 0; i < BANDS; i++) {
                exact[i] += more[k] * bands[k][i];
            }
        }
        return exact;
    }

    private static double length(double[] v) {
        return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
    }

    /** Solves (A'A + d) x = A'b by Cramer's rule. */
    private static double[] leastSquares(double[][] a, double[] b, double damping) {
        double[][] m = new double[3][3];
        double[] right = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                for (int k = 0; k < 3; k++) {
                    m[i][j] += a[k][i] * a[k][j];
                }
                right[i] += a[j][i] * b[j];
            }
        }
        for (int i = 0; i < 3; i++) {
            m[i][i] *= 1 + damping;
        }
        double whole = determinant(m);
        double[] x = new double[3];
        for (int i = 0; i < 3; i++) {
            double[][] replaced = {m[0].clone(), m[1].clone(), m[2].clone()};
            for (int j = 0; j < 3; j++) {
                replaced[j][i] = right[j];
            }
            x[i] = determinant(replaced) / whole;
        }
        return x;
    }

    private static double determinant(double[][] m) {
        return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
                - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
                + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
    }
}

package org.printassay.scannermodel;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;
import org.printassay.measurement.MeasuredPatch;
import org.printassay.measurement.MeasurementFile;
import org.printassay.measurement.MeasurementReader;
import org.printassay.problem.Problem;

/**
 * Simulated prints with spectra: the eight solid colours of a real print (published spectra, see
 * the header of cgats-rgb-spectral-sample.txt) mixed by the Neugebauer equations with the
 * Yule-Nielsen factor 2 (J. A. C. Yule, W. J. Nielsen, TAGA Proc. 3, 1951; J. A. S. Viggiano, TAGA
 * Proc. 37, 1985), greys partly replaced by an invented black ink, so that the same colour can have
 * different spectra.
 */
final class SpectralPrint {
    static final int START_NM = 380;
    static final int STEP_NM = 10;
    private static final double YULE_NIELSEN = 2;

    /** How the paper and its inks are; all invented but for the published solid colours. */
    enum Paper {
        /** The published print. */
        ONE(0, 0, 0.012),
        /** Of the same family: warmer, a deeper black, the same inks. */
        SISTER(0, -0.05, 0.009),
        /** Another paper whose inks absorb at other wavelengths. */
        STRANGER(14, 0.03, 0.02);

        final int shiftNm;
        final double blueTint;
        final double black;

        Paper(int shiftNm, double blueTint, double black) {
            this.shiftNm = shiftNm;
            this.blueTint = blueTint;
            this.black = black;
        }
    }

    private final double[][] solids = new double[8][];
    private final Paper paper;

    SpectralPrint(Paper paper) {
        this.paper = paper;
        for (MeasuredPatch patch : published().patches()) {
            Rgb8 code = patch.rgb();
            if (solid(code.r()) && solid(code.g()) && solid(code.b())) {
                int inks = (code.r() == 0 ? 1 : 0) + (code.g() == 0 ? 2 : 0);
                inks += code.b() == 0 ? 4 : 0;
                Spectrum spectrum = Objects.requireNonNull(patch.spectrum());
                solids[inks] = onPaper(spectrum.factors());
            }
        }
    }

    private static boolean solid(int code) {
        return code == 0 || code == 255;
    }

    private static MeasurementFile published() {
        String name = "/published/cgats-rgb-spectral-sample.txt";
        try (InputStream in = SpectralPrint.class.getResourceAsStream(name)) {
            return MeasurementReader.read(name, Objects.requireNonNull(in).readAllBytes());
        } catch (IOException | Problem e) {
            throw new IllegalStateException(e);
        }
    }

    private double[] onPaper(List<Double> factors) {
        double[] bands = new double[factors.size()];
        for (int i = 0; i < bands.length; i++) {
            double from = i - (double) paper.shiftNm / STEP_NM;
            int low = (int) Math.max(0, Math.min(bands.length - 2, Math.floor(from)));
            double share = Math.max(0, Math.min(1, from - low));
            double value = (1 - share) * factors.get(low) + share * factors.get(low + 1);
            double nm = START_NM + STEP_NM * (double) i;
            bands[i] = value * (1 + paper.blueTint / (1 + Math.exp((nm - 480) / 20)));
        }
        return bands;
    }

    /** Reflectance factors of a code, 380 to 680 nm. */
    double[] spectrum(Rgb8 code) {
        double[] area = {area(code.r()), area(code.g()), area(code.b())};
        double grey = Math.min(area[0], Math.min(area[1], area[2]));
        double black = 0.7 * Math.pow(grey, 1.5);
        for (int i = 0; i < 3; i++) {
            area[i] = (area[i] - black) / (1 - black);
        }
        double[] sum = new double[solids[0].length];
        for (int inks = 0; inks < 8; inks++) {
            double share = 1;
            for (int i = 0; i < 3; i++) {
                share *= (inks >> i & 1) == 1 ? area[i] : 1 - area[i];
            }
            for (int k = 0; k < sum.length; k++) {
                sum[k] += share * Math.pow(solids[inks][k], 1 / YULE_NIELSEN);
            }
        }
        for (int k = 0; k < sum.length; k++) {
            double dark = Math.pow(paper.black, 1 / YULE_NIELSEN);
            sum[k] = Math.pow((1 - black) * sum[k] + black * dark, YULE_NIELSEN);
        }
        return sum;
    }

    private static double area(int code) {
        return 1 - Math.pow(RgbSpace.SRGB.decode(code / 255.0), 1 / YULE_NIELSEN);
    }

    /** Colour of a spectrum, by the weights of ASTM E308. */
    static Lab lab(double[] spectrum) {
        List<Double> factors = new ArrayList<>();
        for (double factor : spectrum) {
            factors.add(factor);
        }
        Lab lab = new Spectrum(START_NM, STEP_NM, factors).toLab();
        // Carried over to the connection space's white, which all other numbers here have.
        return Lab.of(lab.toXyz(Xyz.PCS_WHITE), Xyz.PCS_WHITE);
    }

    /** A scanner's channels: Gaussian bands, red, green, blue; invented. */
    enum Scanner {
        /** Three broad filters before a white lamp. */
        FILTERS(602, 30, 538, 32, 456, 26),
        /** Three coloured lamps: far from any eye. */
        LAMPS(630, 9, 525, 15, 465, 10);

        private final int redNm;
        private final int redWidthNm;
        private final int greenNm;
        private final int greenWidthNm;
        private final int blueNm;
        private final int blueWidthNm;

        Scanner(
                int redNm,
                int redWidthNm,
                int greenNm,
                int greenWidthNm,
                int blueNm,
                int blueWidthNm) {
            this.redNm = redNm;
            this.redWidthNm = redWidthNm;
            this.greenNm = greenNm;
            this.greenWidthNm = greenWidthNm;
            this.blueNm = blueNm;
            this.blueWidthNm = blueWidthNm;
        }

        LinearRgb light(double[] spectrum) {
            return new LinearRgb(
                    band(spectrum, redNm, redWidthNm),
                    band(spectrum, greenNm, greenWidthNm),
                    band(spectrum, blueNm, blueWidthNm));
        }

        private static double band(double[] spectrum, double centreNm, double widthNm) {
            double sum = 0;
            double total = 0;
            for (int k = 0; k < spectrum.length; k++) {
                double away = (START_NM + STEP_NM * (double) k - centreNm) / widthNm;
                double weight = Math.exp(-away * away / 2);
                sum += weight * spectrum[k];
                total += weight;
            }
            return sum / total;
        }
    }

    /**
     * Codes of a chart: greys, the surface of the cube, ramps, and codes at random up to a number.
     */
    static List<Rgb8> codes(int count, long seed) {
        Map<Rgb8, Boolean> codes = new LinkedHashMap<>();
        for (int level = 0; level <= 255; level += level < 40 || level >= 215 ? 4 : 12) {
            codes.put(Rgb8.grey(level), true);
        }
        codes.put(Rgb8.grey(255), true);
        int[] edge = {0, 64, 128, 191, 255};
        for (int r : edge) {
            for (int g : edge) {
                for (int b : edge) {
                    if (solid(r) || solid(g) || solid(b)) {
                        codes.put(new Rgb8(r, g, b), true);
                    }
                }
            }
        }
        Random random = new Random(seed);
        while (codes.size() < count) {
            codes.put(
                    new Rgb8(random.nextInt(256), random.nextInt(256), random.nextInt(256)), true);
        }
        return codes.keySet().stream().limit(count).toList();
    }

    /** Codes at random, every sixth of them a grey. */
    static List<Rgb8> randomCodes(int count, long seed) {
        Random random = new Random(seed);
        Map<Rgb8, Boolean> codes = new LinkedHashMap<>();
        while (codes.size() < count) {
            int r = random.nextInt(256);
            int g = random.nextInt(256);
            int b = random.nextInt(256);
            codes.put(codes.size() % 6 == 0 ? Rgb8.grey(r) : new Rgb8(r, g, b), true);
        }
        return List.copyOf(codes.keySet());
    }

    /**
     * Patches of a print, scanned and measured with noise: patches of the same code differ by 0.1
     * L* or so, light by 0.1 % and 0.0001.
     *
     * @param noise of the instrument, in L*, a* and b* each
     */
    List<TrainingPatch> patches(
            List<Rgb8> codes, int twins, Scanner scanner, double noise, long seed) {
        Random random = new Random(seed);
        List<TrainingPatch> patches = new ArrayList<>();
        for (Rgb8 code : codes) {
            for (int t = 0; t < twins; t++) {
                double[] spectrum = spectrum(code);
                double spread = 1 + 0.003 * random.nextGaussian();
                for (int k = 0; k < spectrum.length; k++) {
                    spectrum[k] *= spread;
                }
                Lab lab = lab(spectrum);
                LinearRgb light = scanner.light(spectrum);
                patches.add(
                        new TrainingPatch(
                                code + "/" + t,
                                code.toString(),
                                code.isNeutral(),
                                new LinearRgb(
                                        noisy(light.r(), random),
                                        noisy(light.g(), random),
                                        noisy(light.b(), random)),
                                new Lab(
                                        lab.l() + noise * random.nextGaussian(),
                                        lab.a() + noise * random.nextGaussian(),
                                        lab.b() + noise * random.nextGaussian())));
            }
        }
        return patches;
    }

    private static double noisy(double light, Random random) {
        return light * (1 + 0.001 * random.nextGaussian()) + 1e-4 * random.nextGaussian();
    }
}

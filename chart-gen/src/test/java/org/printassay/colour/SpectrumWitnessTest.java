package org.printassay.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;
import static org.printassay.colour.Published.number;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/**
 * Spectra against python3-colormath, a general library of colour (Debian; BSD-3-Clause): an example
 * that comes with it, and the library itself as a witness, skipped without it; {@code
 * -Dwitnesses=required} demands it.
 *
 * <p>It sums light, observer and reflectance over its own tables every 10 nm (CIE 15), where we
 * weigh by ASTM E308, whose weights stand for sums over every nanometre: what the two rules differ
 * by is in the limits. Its tables of density are those that ours were taken from, so for density it
 * tells that they are read and used rightly, not that they are right: for visual density a test
 * from the definition is beside it.
 */
class SpectrumWitnessTest {
    private static final int FROM_NM = 380;
    private static final int BANDS = 36;

    /** Two rules of summing; largest seen 0.034 of X, Y or Z, each in percent of its white. */
    private static final double TWO_RULES = 0.05;

    /** The same in dE76, on measured prints; largest seen 0.046. */
    private static final double TWO_RULES_ON_PRINTS = 0.07;

    /** One table, reflectance written with six decimals; largest seen 0.000005. */
    private static final double ONE_TABLE = 2e-5;

    /** ISO 5-3 rounds its products; largest seen 0.00022 on measured prints. */
    private static final double ROUNDED_PRODUCTS = 0.0005;

    /** Spectra on standard input, 340 to 830 nm; X Y Z, visual, status A and T red green blue. */
    private static final String WITNESS =
            """
            import sys
            from colormath.color_objects import SpectralColor, XYZColor
            from colormath.color_conversions import convert_color
            import colormath.density_standards as d
            filters = [d.ISO_VISUAL] + [getattr(d, 'ANSI_STATUS_%s_%s' % (s, c))
                       for s in 'AT' for c in ('RED', 'GREEN', 'BLUE')]
            for line in open(sys.argv[1]):
                bands = {'spec_%dnm' % (340 + 10 * i): float(w)
                         for i, w in enumerate(line.split())}
                colour = SpectralColor(observer='2', illuminant='d50', **bands)
                xyz = convert_color(colour, XYZColor).get_value_tuple()
                print(*xyz, *(colour.calc_density(density_standard=f) for f in filters))
            """;

    /** At the three decimals that the example is printed with. */
    @Test
    void exampleHasItsPrintedColour() {
        Xyz xyz = example().toXyz();
        assertEquals(0.115, xyz.x() / 100, 0.0005);
        assertEquals(0.099, xyz.y() / 100, 0.0005);
        assertEquals(0.047, xyz.z() / 100, 0.0005);
    }

    @Test
    void witnessSeesTheSameColoursAndDensities() throws Exception {
        Path python = Path.of("/usr/bin/python3");
        boolean there =
                Files.isExecutable(python) && run(python, "-c", "import colormath").isEmpty();
        if (!"required".equals(System.getProperty("witnesses"))) {
            assumeTrue(there, "colormath for Python is not installed");
        }
        assertTrue(there, "colormath for Python is required");
        List<Spectrum> spectra = new ArrayList<>(PublishedSpectra.prints());
        int prints = spectra.size();
        assertEquals(24, prints);
        spectra.add(example());
        Random random = new Random(5);
        for (int i = 0; i < 500; i++) {
            spectra.add(simulated(random));
        }
        List<double[]> theirs = witness(python, spectra);
        assertEquals(spectra.size(), theirs.size());
        double[] white =
                witness(python, List.of(new Spectrum(FROM_NM, 10, Arrays.asList(ones())))).get(0);
        double worstPrint = 0;
        double worst = 0;
        double worstDensity = 0;
        for (int i = 0; i < spectra.size(); i++) {
            Spectrum spectrum = spectra.get(i);
            double[] their = theirs.get(i);
            Xyz our = spectrum.toXyz();
            Xyz w = Xyz.E308_D50_WHITE;
            double[] ours = {our.x() / w.x(), our.y() / w.y(), our.z() / w.z()};
            for (int c = 0; c < 3; c++) {
                worst = Math.max(worst, 100 * Math.abs(ours[c] - their[c] / white[c]));
            }
            if (i < prints) {
                Lab seen =
                        Lab.of(
                                new Xyz(100 * their[0], 100 * their[1], 100 * their[2]),
                                new Xyz(100 * white[0], 100 * white[1], 100 * white[2]));
                worstPrint = Math.max(worstPrint, DeltaE.cie1976(spectrum.toLab(), seen));
            }
            Density.Filters a = Density.statusA(spectrum);
            Density.Filters t = Density.statusT(spectrum);
            double[] densities = {
                Density.visual(spectrum), a.red(), a.green(), a.blue(), t.red(), t.green(), t.blue()
            };
            for (int k = 0; k < densities.length; k++) {
                worstDensity = Math.max(worstDensity, Math.abs(densities[k] - their[3 + k]));
            }
        }
        String seen = worst + " of white, prints " + worstPrint + " dE, density " + worstDensity;
        assertTrue(worst < TWO_RULES, seen);
        assertTrue(worstPrint < TWO_RULES_ON_PRINTS, seen);
        assertTrue(worstDensity < ONE_TABLE, seen);
    }

    /**
     * Visual density by its definition: illuminant A (ISO/CIE 11664-2, equation 1) and V(lambda),
     * every nanometre.
     */
    @Test
    void visualDensityIsThatOfTheEyeUnderIlluminantA() {
        double[][] observer = NumberTable.rows("cie1931-2deg-1nm.csv");
        double worst = 0;
        for (Spectrum print : PublishedSpectra.prints()) {
            double sum = 0;
            double total = 0;
            for (double[] row : observer) {
                double power =
                        100
                                * Math.pow(560 / row[0], 5)
                                * Math.expm1(1.435e7 / (2848 * 560))
                                / Math.expm1(1.435e7 / (2848 * row[0]));
                total += power * row[2];
                sum += power * row[2] * print.at((int) row[0]);
            }
            worst = Math.max(worst, Math.abs(-Math.log10(sum / total) - Density.visual(print)));
        }
        assertTrue(worst < ROUNDED_PRODUCTS, "largest " + worst);
    }

    private static Spectrum example() {
        return new Spectrum(
                FROM_NM,
                10,
                Published.rows("spectrum-colormath-example.csv").stream()
                        .map(row -> number(row, "R"))
                        .toList());
    }

    /** Two soft edges between 2 and 95 %, as inks have them; made up. */
    private static Spectrum simulated(Random random) {
        double low = 0.02 + 0.3 * random.nextDouble();
        double high = 0.4 + 0.55 * random.nextDouble();
        double[] edge = {400 + 280 * random.nextDouble(), 400 + 280 * random.nextDouble()};
        double[] soft = {12 + 30 * random.nextDouble(), 12 + 30 * random.nextDouble()};
        List<Double> factors = new ArrayList<>();
        for (int i = 0; i < BANDS; i++) {
            double up = 1 / (1 + Math.exp((edge[0] - FROM_NM - 10 * i) / soft[0]));
            double down = 1 / (1 + Math.exp((edge[1] - FROM_NM - 10 * i) / soft[1]));
            factors.add(low + (high - low) * Math.abs(up - down));
        }
        return new Spectrum(FROM_NM, 10, factors);
    }

    private static Double[] ones() {
        Double[] ones = new Double[BANDS];
        Arrays.fill(ones, 1.0);
        return ones;
    }

    /** What the library makes of spectra whose end bands stand for what lies beyond, as ours do. */
    private static List<double[]> witness(Path python, List<Spectrum> spectra) throws Exception {
        StringBuilder text = new StringBuilder();
        for (Spectrum spectrum : spectra) {
            for (int nm = 340; nm <= 830; nm += 10) {
                text.append(String.format(Locale.ROOT, "%.6f ", spectrum.at(nm)));
            }
            text.append('\n');
        }
        Path file = Files.createTempFile("spectra", ".txt");
        try {
            Files.writeString(file, text);
            return run(python, "-c", WITNESS, file.toString())
                    .lines()
                    .map(
                            line ->
                                    Arrays.stream(line.split(" ", -1))
                                            .mapToDouble(Double::parseDouble)
                                            .toArray())
                    .toList();
        } finally {
            Files.delete(file);
        }
    }

    private static String run(Path program, String... words) throws Exception {
        List<String> command = new ArrayList<>(List.of(program.toString()));
        command.addAll(List.of(words));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(2, TimeUnit.MINUTES), program.toString());
        return out;
    }
}

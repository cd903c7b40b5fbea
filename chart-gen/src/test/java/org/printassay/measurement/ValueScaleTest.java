package org.printassay.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;

/** Percent or fraction, told for files that hold no light patch (simulated flat spectra). */
class ValueScaleTest {
    /** Reflectance of greys 0, 8, 16, 24: a glossy print, darker than 1 % throughout. */
    private static final double[] GLOSSY = {0.003, 0.004, 0.006, 0.009};

    /** A matte print. */
    private static final double[] MATTE = {0.021, 0.022, 0.026, 0.032};

    @ParameterizedTest
    @ValueSource(doubles = {1, 100})
    void darkPatchesAloneAreToldByTheirCodes(double scale) throws Problem {
        for (double[] print : new double[][] {GLOSSY, MATTE}) {
            assertReads(print, read(spectra(true, print, scale)));
            assertReads(print, read(xyzs(print, scale)));
        }
    }

    /** Without codes in the file the chart has them. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 100})
    void theChartsCodesTellToo(double scale) throws Problem {
        List<Patch> patches = List.of(patch(0), patch(8), patch(16), patch(24));
        ChartPatches chart = new ChartPatches("chart", RgbSpace.SRGB, List.of(patches));
        byte[] bytes = bytes(spectra(false, GLOSSY, scale));
        assertReads(GLOSSY, MeasurementReader.read("print.txt", bytes, chart));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 100})
    void darkObjectsAloneInCxf(double scale) throws Problem {
        StringBuilder objects = new StringBuilder();
        for (int i = 0; i < GLOSSY.length; i++) {
            objects.append(
                    "<Object ObjectType=\"Target\" Name=\"p"
                            + 8 * i
                            + "\" Id=\"o"
                            + i
                            + "\"><ColorValues><ReflectanceSpectrum ColorSpecification=\"a\""
                            + " StartWL=\"380\">"
                            + flat(scale * GLOSSY[i], " ")
                            + "</ReflectanceSpectrum></ColorValues><DeviceColorValues><ColorRGB>"
                            + ("<R>" + 8 * i + "</R><G>" + 8 * i + "</G><B>" + 8 * i + "</B>")
                            + "</ColorRGB></DeviceColorValues></Object>");
        }
        String text =
                "<CxF xmlns=\"http://colorexchangeformat.com/CxF3-core\"><Resources>"
                        + "<ObjectCollection>"
                        + objects
                        + "</ObjectCollection></Resources></CxF>";
        assertReads(GLOSSY, read(text));
    }

    /** A table that tells nothing by itself goes by the others of the file. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 100})
    void theOtherTableDecides(double scale) throws Problem {
        // Code 60 is a luminance of 0.045: this is as far from it in percent as as a fraction.
        String unclear = table("MEASUREMENT_CONDITION M2", "u 60 60 60", 0.4);
        String clear = table("MEASUREMENT_CONDITION M1", "c 255 255 255", scale * 0.9);
        MeasurementFile file = read(clear + unclear);
        assertEquals(40 / scale, y(file.sets().get(1).patches().get(0)), 1e-3);
    }

    @Test
    void tablesThatDisagreeDoNotDecideForAThird() {
        String text =
                table("MEASUREMENT_CONDITION M0", "c 255 255 255", 90)
                        + table("MEASUREMENT_CONDITION M1", "c 255 255 255", 0.9)
                        + table("MEASUREMENT_CONDITION M2", "u 60 60 60", 0.4);
        assertProblem("some of its tables are in percent", text);
    }

    /** Each that tells by itself is read as it says. */
    @Test
    void tablesInPercentAndInFractionsSideBySide() throws Problem {
        MeasurementFile file =
                read(
                        table("MEASUREMENT_CONDITION M0", "c 255 255 255", 90)
                                + table("MEASUREMENT_CONDITION M1", "c 255 255 255", 0.9));
        assertEquals(90, y(file.sets().get(0).patches().get(0)), 1e-3);
        assertEquals(90, y(file.sets().get(1).patches().get(0)), 1e-3);
    }

    @Test
    void aHeaderThatCannotBeTrueIsRefused() {
        String paper = table("SPECTRAL_NORM 100", "c 255 255 255", 0.9);
        assertProblem("SPECTRAL_NORM says that spectral values run to 100", paper);
        String percent = table("SPECTRAL_NORM 1", "c 255 255 255", 90);
        assertProblem("SPECTRAL_NORM says that spectral values run to 1,", percent);
    }

    /** A code far from its print. */
    @Test
    void oneOddPatchDoesNotDecide() throws Problem {
        String text = spectra(true, GLOSSY, 100).replace("p24 24 24 24", "p24 255 255 255");
        assertReads(GLOSSY, read(text));
    }

    private static void assertReads(double[] print, MeasurementFile file) {
        assertEquals(print.length, file.patches().size());
        for (int i = 0; i < print.length; i++) {
            assertEquals(100 * print[i], y(file.patches().get(i)), 1e-3, file.notes()::toString);
        }
    }

    private static double y(MeasuredPatch patch) {
        return 100 * Lab.luminanceFactor(patch.lab().l());
    }

    private static Patch patch(int level) {
        return new Patch(
                "p" + level, Section.SHADOWS, Rgb8.grey(level), new RectMm(level, 0, 8, 8));
    }

    private static String spectra(boolean codes, double[] print, double scale) {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < print.length; i++) {
            String rgb = codes ? " " + 8 * i + " " + 8 * i + " " + 8 * i : "";
            rows.append("p" + 8 * i + rgb + " " + flat(scale * print[i], " ") + "\n");
        }
        String fields = codes ? " RGB_R RGB_G RGB_B " : " ";
        return framed("SAMPLE_ID" + fields + bands(), rows.toString());
    }

    private static String xyzs(double[] print, double scale) {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < print.length; i++) {
            String rgb = " " + 8 * i + " " + 8 * i + " " + 8 * i;
            double v = scale * print[i];
            rows.append(
                    String.format(
                            Locale.ROOT,
                            "p%d%s %.6f %.6f %.6f%n",
                            8 * i,
                            rgb,
                            0.9642 * v,
                            v,
                            0.8249 * v));
        }
        return framed("SAMPLE_ID RGB_R RGB_G RGB_B XYZ_X XYZ_Y XYZ_Z", rows.toString());
    }

    private static String table(String header, String row, double value) {
        return header
                + "\n"
                + framed("SAMPLE_ID RGB_R RGB_G RGB_B " + bands(), row + " " + flat(value, " "));
    }

    private static String framed(String fields, String rows) {
        return "BEGIN_DATA_FORMAT\n"
                + fields
                + "\nEND_DATA_FORMAT\nBEGIN_DATA\n"
                + rows.strip()
                + "\nEND_DATA\n";
    }

    private static String bands() {
        StringBuilder bands = new StringBuilder();
        for (int nm = 380; nm <= 730; nm += 10) {
            bands.append(nm == 380 ? "" : " ").append("NM").append(nm);
        }
        return bands.toString();
    }

    private static String flat(double value, String between) {
        String one = String.format(Locale.ROOT, "%.6f", value);
        return String.join(between, Collections.nCopies(36, one));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static MeasurementFile read(String text) throws Problem {
        return MeasurementReader.read("print.txt", bytes(text));
    }

    private static void assertProblem(String part, String text) {
        Problem problem = assertThrows(Problem.class, () -> read(text));
        assertTrue(problem.toString().contains(part), problem::toString);
        assertEquals(Problem.Kind.INPUT, problem.kind());
    }
}

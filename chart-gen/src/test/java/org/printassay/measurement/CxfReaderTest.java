package org.printassay.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Published;
import org.printassay.colour.Rgb8;
import org.printassay.measurement.MeasurementFile.Condition;
import org.printassay.problem.Problem;

class CxfReaderTest {
    private static final String SAMPLE =
            new String(Published.bytes("cxf3-sample.cxf"), StandardCharsets.UTF_8);

    /** Each spectrum gives the CIELAB that the file has beside it (E308 Table 5) within 0.12. */
    @Test
    void readsTheSample() throws Problem {
        MeasurementFile file = read(SAMPLE);
        assertEquals(8, file.patches().size());
        MeasurementFile stated =
                read(SAMPLE.replaceAll("<cc:Reflectance.*</cc:Reflectance.*>", ""));
        for (int i = 0; i < 8; i++) {
            Lab own = file.patches().get(i).lab();
            assertNotNull(file.patches().get(i).spectrum());
            assertTrue(DeltaE.cie1976(own, stated.patches().get(i).lab()) < 0.125);
        }
        assertEquals(new Lab(17.64167, 1.07667, 0.33386), stated.patches().get(0).lab());
        assertEquals(new Rgb8(255, 0, 0), file.patches().get(1).rgb());
        assertEquals("8", file.patches().get(7).id());
        assertEquals(Optional.empty(), file.condition());
    }

    /** The same 24 patches stand in a text file of another source line. */
    @Test
    void agreesWithTheTextFileOfTheSamePatches() throws Problem {
        MeasurementFile text =
                MeasurementReader.read("a.txt", Published.bytes("cgats-rgb-spectral-sample.txt"));
        List<MeasuredPatch> patches = read(SAMPLE).patches();
        for (int i = 0; i < 8; i++) {
            Lab other = text.patches().get(i).lab();
            assertEquals(0, DeltaE.cie1976(patches.get(i).lab(), other), 1e-9);
        }
    }

    @Test
    void conditionFromTheSpecification() throws Problem {
        String m1 =
                SAMPLE.replace(
                        "<cc:WavelengthRange StartWL=\"380\" Increment=\"10\"/>",
                        "<cc:WavelengthRange StartWL=\"380\" Increment=\"10\"/><cc:Device>"
                                + "<cc:DeviceFilter>Filter_None</cc:DeviceFilter>"
                                + "<cc:DeviceIllumination>M1_Daylight</cc:DeviceIllumination>"
                                + "</cc:Device><cc:Backing>White</cc:Backing>");
        MeasurementFile file = read(m1);
        assertEquals(Optional.of(Condition.M1), file.condition());
        assertEquals("M1, backing white, filter none", file.conditions().words());
        String unknown = m1.replace("Filter_None", "Filter_Unknown").replace(">White<", ">n/a<");
        assertEquals("M1", read(unknown).conditions().words());
    }

    /** Codes in target objects, readings in objects of the same name, one kind a condition. */
    @Test
    void codesAndReadingsInObjectsOfOneName() throws Problem {
        MeasurementFile file =
                read(
                        cxf(
                                object("Target", "A1", "t1", "", rgb(255, 255, 255))
                                        + object("Target", "A2", "t2", "", rgb(0, 0, 0))
                                        + object("M0_Measurement", "A1", "a", lab(95, 0, -3), "")
                                        + object("M0_Measurement", "A2", "b", lab(9, 0, 0), "")
                                        + object("M2_Measurement", "A1", "c", lab(95, 0, 1), "")
                                        + object("M2_Measurement", "A2", "d", lab(9, 0, 0), "")));
        assertEquals(2, file.sets().size());
        assertEquals(Optional.of(Condition.M0), file.condition());
        assertEquals(new Rgb8(255, 255, 255), file.patches().get(0).rgb());
        MeasurementSet m2 = file.under(Condition.M2).orElseThrow();
        assertEquals(1, m2.patches().get(0).lab().b());
    }

    @Test
    void repeatedReadingsAreAveraged() throws Problem {
        List<String> objects = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            objects.add(object("Target", "A1", "t" + i, lab(50 + i, i, 0), rgb(128, 128, 128)));
        }
        MeasuredPatch patch = read(cxf(String.join("", objects))).patches().get(0);
        assertEquals(51, patch.lab().l(), 1e-9);
        assertEquals(3, patch.repeats());
        Lab spread = patch.spread();
        assertNotNull(spread);
        assertEquals(1, spread.l(), 1e-9);
        assertEquals(0, spread.b(), 1e-9);
    }

    /** The scale is one of the whole file, though the second reading is of a dark patch alone. */
    @Test
    void aSecondDarkReadingInPercentIsPercent() throws Problem {
        MeasurementFile file =
                read(
                        cxf(
                                object("Target", "A1", "a", spectrum("80"), rgb(255, 255, 255))
                                        + object("Target", "A2", "b", spectrum("1.2"), rgb(0, 0, 0))
                                        + object(
                                                "Target",
                                                "A2",
                                                "c",
                                                spectrum("1.2"),
                                                rgb(0, 0, 0))));
        MeasuredPatch black = file.patches().get(1);
        assertEquals(2, black.repeats());
        // L* of Y = 1.2 by the definition of CIELAB.
        assertEquals(116 * Math.cbrt(0.012) - 16, black.lab().l(), 0.01);
    }

    private static String spectrum(String value) {
        return "<ReflectanceSpectrum StartWL=\"380\">"
                + (value + " ").repeat(36)
                + "</ReflectanceSpectrum>";
    }

    @Test
    void entitiesAndDocumentTypesAreRefused() {
        String bomb =
                """
                <?xml version="1.0"?>
                <!DOCTYPE lolz [
                 <!ENTITY a "aaaaaaaaaa">
                 <!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">
                 <!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;">
                ]>
                <CxF>&c;</CxF>
                """;
        assertProblem("document type", bomb);
        assertProblem(
                "document type",
                "<?xml version=\"1.0\"?><!DOCTYPE CxF [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>"
                        + "<CxF>&x;</CxF>");
        assertProblem(
                "document type",
                "<!DOCTYPE CxF SYSTEM \"http://localhost:9/none.dtd\"><CxF></CxF>");
        assertProblem("not well-formed", "<CxF>&undeclared;</CxF>");
    }

    @Test
    void saysWhereAndWhatIsWrong() {
        assertProblem("root is not CxF", "<html/>");
        assertProblem("well-formed", SAMPLE.substring(0, SAMPLE.length() / 2));
        assertProblem("line 14: 'NaN' is not a number", SAMPLE.replaceFirst("0.0179408", "NaN"));
        assertProblem(
                "line 14: the reflectance at 380 nm is -0.3",
                SAMPLE.replaceFirst("0.0179408", "-0.3"));
        assertProblem("30 values) than those before (31)", SAMPLE.replaceFirst("0.0394959 ", ""));
        assertProblem("stands twice", SAMPLE.replace("Id=\"o2\"", "Id=\"o1\""));
        assertProblem(
                "no object has", SAMPLE.replaceAll("(?s)<cc:ColorValues>.*?</cc:ColorV.*?>", ""));
        assertProblem("outside 0 to 255", SAMPLE.replace("<cc:R>255<", "<cc:R>256<"));
        assertProblem("lacks its R", SAMPLE.replace("<cc:R>255</cc:R>", ""));
        assertProblem(
                "codes of patch '2' are not known",
                SAMPLE.replaceAll(
                        "(?s)<cc:DeviceColorValues>\\s*<cc:ColorRGB[^>]*><cc:R>255<.*?"
                                + "</cc:DeviceColorValues>",
                        ""));
        assertProblem("nested too deep", "<CxF>" + "<a>".repeat(100));
        assertProblem(
                "D65, 2 degree",
                SAMPLE.replaceAll("<cc:Reflectance.*</cc:Reflectance.*>", "")
                        .replace(">D50<", ">D65<"));
    }

    private static MeasurementFile read(String text) throws Problem {
        return MeasurementReader.read("print.cxf", text.getBytes(StandardCharsets.UTF_8));
    }

    private static void assertProblem(String part, String text) {
        Problem problem = assertThrows(Problem.class, () -> read(text), part);
        assertTrue(problem.toString().contains(part), problem::toString);
        assertTrue(problem.toString().contains("print.cxf"), problem::toString);
        assertEquals(Problem.Kind.INPUT, problem.kind());
    }

    static String cxf(String objects) {
        return "<CxF xmlns=\"http://colorexchangeformat.com/CxF3-core\"><Resources>"
                + "<ObjectCollection>"
                + objects
                + "</ObjectCollection></Resources></CxF>";
    }

    private static String object(String type, String name, String id, String values, String codes) {
        return "<Object ObjectType=\""
                + type
                + "\" Name=\""
                + name
                + "\" Id=\""
                + id
                + "\"><ColorValues>"
                + values
                + "</ColorValues><DeviceColorValues>"
                + codes
                + "</DeviceColorValues></Object>";
    }

    private static String lab(double l, double a, double b) {
        return "<ColorCIELab><L>" + l + "</L><A>" + a + "</A><B>" + b + "</B></ColorCIELab>";
    }

    private static String rgb(int r, int g, int b) {
        return "<ColorRGB><R>" + r + "</R><G>" + g + "</G><B>" + b + "</B></ColorRGB>";
    }
}

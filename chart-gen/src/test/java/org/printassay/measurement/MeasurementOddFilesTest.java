package org.printassay.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.measurement.MeasurementFile.Condition;
import org.printassay.problem.Problem;

/** Files that once were misread; all values made up. */
class MeasurementOddFilesTest {
    /** Column names as programs for people write them; values made up. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Sample Name,R,G,B,L*,a*,b*\nwarm grey 1,128,128,128,50.5,1.5,-2.5",
                "Sample ID\tRGB_R\tRGB_G\tRGB_B\tLAB_L\tLAB_A\tLAB_B\nwarm grey"
                        + " 1\t128\t128\t128\t50.5\t1.5\t-2.5",
                "Patch Name;RGB R;RGB G;RGB B;Lab L;Lab a;Lab b\n"
                        + "warm grey 1;128;128;128;50,5;1,5;-2,5",
                ",R,G,B,L*,a*,b*\nwarm grey 1,128,128,128,50.5,1.5,-2.5",
                "Patch ID,R,G,B,L*,a*,b*,\nwarm grey 1,128,128,128,50.5,1.5,-2.5 # again",
                "id,r,g,b,L,a,b\n\"warm grey 1\",128,128,128,50.5,1.5,-2.5",
                "L,a,b,r,g,b,nr\n50.5,1.5,-2.5,128,128,128,warm grey 1",
                "Sample R G B L* a* b*\n\"warm grey 1\" 128 128 128 50.5 1.5 -2.5"
            })
    void headingsOfSpreadsheets(String text) throws Problem {
        MeasuredPatch patch = read(text).patches().get(0);
        assertEquals("warm grey 1", patch.id());
        assertEquals(Rgb8.grey(128), patch.rgb());
        assertEquals(new Lab(50.5, 1.5, -2.5), patch.lab());
    }

    @Test
    void theOnlyBBesideRedAndGreenIsBlue() {
        assertProblem("no measurement table", "id,r,g,b,L,a\np,1,2,3,50,0");
    }

    /** A file of dark patches alone, in percent (made up). */
    @Test
    void darkPatchesInPercentAreNotLighterThanPaper() throws Problem {
        StringBuilder names = new StringBuilder("RGB_R RGB_G RGB_B");
        StringBuilder values = new StringBuilder("0 0 0");
        for (int nm = 380; nm <= 730; nm += 10) {
            names.append(" NM").append(nm);
            values.append(" 2.1");
        }
        MeasurementFile file = read(table(names.toString(), values.toString()));
        // L* of Y = 2.1 by the definition of CIELAB: 116 (0.021)^(1/3) - 16.
        assertEquals(116 * Math.cbrt(0.021) - 16, file.patches().get(0).lab().l(), 0.01);
    }

    @Test
    void aSpectrumThatNoPrintHas() {
        StringBuilder names = new StringBuilder("RGB_R RGB_G RGB_B");
        StringBuilder values = new StringBuilder("0 0 0");
        for (int nm = 380; nm <= 730; nm += 10) {
            names.append(" NM").append(nm);
            values.append(nm < 480 ? " 1.5" : " 0");
        }
        assertProblem("no print has L*", table(names.toString(), values.toString()));
    }

    @Test
    void aPaperNamedM2IsNoMeasurementCondition() throws Problem {
        String rows = table("RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "255 255 255 95 0 -2");
        assertEquals(Optional.empty(), read("MATERIAL \"Baryta M2\"\n" + rows).condition());
        assertEquals(
                Optional.of(Condition.M1),
                read("MEASUREMENT_MODE \"M1\"\nMATERIAL \"Baryta M2\"\n" + rows).condition());
    }

    @Test
    void oneLetterOfAnyScriptAtByte200DoesNotHideXml() throws Problem {
        for (int pad = 150; pad < 160; pad++) {
            String xml =
                    "\uFEFF<?xml version=\"1.0\"?><!--"
                            + "x".repeat(pad)
                            + "\u044F".repeat(30)
                            + "-->"
                            + CxfReaderTest.cxf("");
            assertProblem("no object has", xml);
        }
    }

    private static String table(String fields, String... rows) {
        return "BEGIN_DATA_FORMAT\n"
                + fields
                + "\nEND_DATA_FORMAT\nBEGIN_DATA\n"
                + String.join("\n", rows)
                + "\nEND_DATA\n";
    }

    private static MeasurementFile read(String text) throws Problem {
        return MeasurementReader.read("print.txt", text.getBytes(StandardCharsets.UTF_8));
    }

    private static void assertProblem(String part, String text) {
        Problem problem = assertThrows(Problem.class, () -> read(text));
        assertTrue(problem.toString().contains(part), problem::toString);
        assertEquals(Problem.Kind.INPUT, problem.kind());
    }
}

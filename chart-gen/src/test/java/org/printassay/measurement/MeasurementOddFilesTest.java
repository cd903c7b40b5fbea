package org.printassay.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;
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
                "Sample,R,G,B,CIE L*,CIE a*,CIE b*\nwarm grey 1,128,128,128,50.5,1.5,-2.5",
                "Sample,R,G,B,CIE_L,CIE_A,CIE_B\nwarm grey 1,128,128,128,50.5,1.5,-2.5",
                "Sample,R,G,B,CIELAB_L,CIELAB_A,CIELAB_B\nwarm grey 1,128,128,128,50.5,1.5,-2.5",
                "Sample,R,G,B,Lstar,astar,bstar\nwarm grey 1,128,128,128,50.5,1.5,-2.5",
                "Sample,R,G,B,L*(D50),a*(D50),b*(D50)\nwarm grey 1,128,128,128,50.5,1.5,-2.5",
                "Sample,R,G,B,L* [D50/2\u00b0],a* [D50/2\u00b0],b* [D50/2\u00b0]\n"
                        + "warm grey 1,128,128,128,50.5,1.5,-2.5",
                "Sample R G B L* a* b*\n\"warm grey 1\" 128 128 128 50.5 1.5 -2.5"
            })
    void headingsOfSpreadsheets(String text) throws Problem {
        MeasuredPatch patch = read(text).patches().get(0);
        assertEquals("warm grey 1", patch.id());
        assertEquals(Rgb8.grey(128), patch.rgb());
        assertEquals(new Lab(50.5, 1.5, -2.5), patch.lab());
    }

    @Test
    void headingsOfXyz() throws Problem {
        for (String names : new String[] {"CIE X,CIE Y,CIE Z", "X(D50),Y(D50),Z(D50)"}) {
            MeasuredPatch patch = read("ID,R,G,B," + names + "\np,9,9,9,10,11,12").patches().get(0);
            assertEquals(new Xyz(10, 11, 12), patch.xyz());
        }
    }

    /** Other light than D50, or other quantities: named, not guessed. */
    @Test
    void columnsThatAreNotKnownAreNamed() {
        assertProblem(
                "line 1 names columns, but none for colour. Name them LAB_L, LAB_A, LAB_B or XYZ_X,"
                        + " XYZ_Y, XYZ_Z, or SPECTRAL_NM380 and on. Not known: 'L*(D65)',"
                        + " 'a*(D65)', 'b*(D65)'.",
                "ID,R,G,B,L*(D65),a*(D65),b*(D65)\np,9,9,9,10,0,0");
        assertProblem(
                "Not known: 'LCH_L', 'LCH_C', 'LCH_H'.",
                table("ID RGB_R RGB_G RGB_B LCH_L LCH_C LCH_H", "p 9 9 9 10 1 2"));
    }

    @Test
    void columnsNamedTwice() throws Problem {
        String fields = "ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B";
        MeasurementFile file = read(table(fields + " LAB_L CIE_A LAB_B", "p 9 9 9 10 1 2 50 3 4"));
        assertEquals(new Lab(10, 1, 2), file.patches().get(0).lab());
        assertTrue(
                file.notes()
                        .contains(
                                "Columns named twice, of which the first were used: LAB_L, LAB_A,"
                                        + " LAB_B."),
                file.notes()::toString);
        assertFalse(read(table(fields, "p 9 9 9 10 1 2")).notes().toString().contains("twice"));
        assertFalse(read("ID,R,G,B,L,a,b\np,9,9,9,10,1,2").notes().toString().contains("twice"));
    }

    /** The first bytes of such files by their formats' specifications (from memory). */
    @Test
    void picturesAndOtherBinaryFilesAreSaidToBeThat() {
        byte[] rest = "\n1 2 3\n4 5 6 7\n".repeat(50).getBytes(StandardCharsets.UTF_8);
        assertBinary("is a picture (TIFF)", rest, 'I', 'I', 42, 0);
        assertBinary("is a picture (TIFF)", rest, 'M', 'M', 0, 42);
        assertBinary("is a picture (PNG)", rest, 0x89, 'P', 'N', 'G');
        assertBinary("is a picture (JPEG)", rest, 0xFF, 0xD8, 0xFF, 0xE0);
        assertBinary("is a PDF", rest, '%', 'P', 'D', 'F', '-');
        assertBinary("is a packed file or spreadsheet", rest, 'P', 'K', 3, 4);
        assertBinary("is not text", new byte[500], 1, 2, 3, 4);
        assertBinary("is not text", new byte[0], 1, 0, 0, 2, 0, 0, 3, 0, 0, 9);
    }

    private static void assertBinary(String part, byte[] rest, int... first) {
        byte[] bytes = new byte[first.length + rest.length];
        for (int i = 0; i < first.length; i++) {
            bytes[i] = (byte) first[i];
        }
        System.arraycopy(rest, 0, bytes, first.length, rest.length);
        Problem problem =
                assertThrows(Problem.class, () -> MeasurementReader.read("print.txt", bytes));
        assertTrue(problem.toString().contains(part + ", so it"), problem::toString);
    }

    @Test
    void utf16WithoutMark() throws Problem {
        String text = table("RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "255 255 255 95 0 -2");
        for (Charset charset : List.of(StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
            MeasurementFile file = MeasurementReader.read("print.txt", text.getBytes(charset));
            assertEquals(new Lab(95, 0, -2), file.patches().get(0).lab());
        }
        // One stray zero does not make a text binary.
        assertEquals(95, read(text + "\0").patches().get(0).lab().l());
    }

    @Test
    void columnNamesOnTheLineOfTheirFrame() throws Problem {
        String text = table("RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "255 255 255 95 0 -2");
        String oneLine =
                text.replaceFirst("FORMAT\nRGB", "FORMAT RGB").replaceFirst("B\nEND", "B END");
        assertTrue(oneLine.startsWith("BEGIN_DATA_FORMAT RGB_R"), oneLine);
        assertTrue(oneLine.contains("LAB_B END_DATA_FORMAT\nBEGIN_DATA\n"), oneLine);
        assertEquals(95, read(oneLine).patches().get(0).lab().l());
        assertProblem(
                "line 4: values stand behind BEGIN_DATA",
                text.replace("BEGIN_DATA\n255", "BEGIN_DATA 255"));
    }

    /** Both forms of ISO 28178 (from memory); a flat spectrum is grey. */
    @Test
    void wavelengthsInColumnsOfTheirOwn() throws Problem {
        for (boolean percent : new boolean[] {false, true}) {
            String kind = percent ? " SPECTRAL_PCT" : " SPECTRAL_DEC";
            StringBuilder fields = new StringBuilder("SAMPLE_ID RGB_R RGB_G RGB_B");
            StringBuilder row = new StringBuilder("A1 188 188 188");
            for (int nm = 380; nm <= 730; nm += 10) {
                fields.append(" SPECTRAL_NM").append(kind);
                row.append(' ').append(nm).append(percent ? " 50.0" : " 0.5");
            }
            String text =
                    table(fields.toString(), row.toString(), row.toString().replace("A1", "A2"));
            MeasurementFile file = read(text);
            assertEquals(2, file.patches().size());
            Spectrum spectrum = file.patches().get(1).spectrum();
            assertNotNull(spectrum);
            assertEquals(380, spectrum.startNm());
            assertEquals(0.5, spectrum.factors().get(35), 1e-9);
            assertProblem(
                    "line 6: wavelength 395 nm where the first row has 390",
                    text.replaceFirst("(A2.*) 390 ", "$1 395 "));
            assertProblem(
                    kind.strip() + " says that spectral values run to",
                    percent ? text.replace(" 50.0", " 0.5") : text.replace(" 0.5", " 50.0"));
        }
    }

    /** Rows over several lines (ISO 28178, from memory), only where every count comes out. */
    @Test
    void rowsOverSeveralLines() throws Problem {
        String fields = "SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B";
        String counts = "NUMBER_OF_FIELDS 7\nNUMBER_OF_SETS 2\n";
        String rows = table(fields, "A1 255 255 255", "95 0 -2", "A2 0 0", "0 10 0", "0");
        MeasurementFile file = read(counts + rows);
        assertEquals(2, file.patches().size());
        assertEquals(new Lab(95, 0, -2), file.patches().get(0).lab());
        assertEquals(new Lab(10, 0, 0), file.patches().get(1).lab());
        String refused = "4 values, but the file names 7 columns";
        assertProblem(refused, rows);
        assertProblem(refused, counts.replace("FIELDS 7", "FIELDS 8") + rows);
        assertProblem(refused, counts.replace("SETS 2", "SETS 3") + rows);
        assertProblem(refused, counts + rows.replace("95 0 -2", "95 0"));
        assertProblem(refused, counts + rows.replace("95 0 -2", "95 0 -2 1"));
        assertProblem(refused, counts + rows.replace("\n0\nEND", "\nEND"));
        // A value lost in one row and one too many in the next are no wrapped rows.
        assertProblem(
                "6 values, but the file names 7 columns",
                counts + table(fields, "A1 255 255 255 95 0", "A2 0 0 0 10 0 0 5"));
    }

    @Test
    void moreColumnsThanAnyTableHas() {
        String names = "ID,R,G,B,L*,a*,b*" + ",x".repeat(2000);
        assertProblem(
                "line 1: more than 2000 columns", names + "\np,9,9,9,5,0,0" + ",1".repeat(2000));
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

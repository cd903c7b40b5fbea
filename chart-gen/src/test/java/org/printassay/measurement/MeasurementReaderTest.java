package org.printassay.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Published;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.measurement.MeasurementFile.Condition;
import org.printassay.problem.Problem;

class MeasurementReaderTest {
    private static final String SPECTRAL_SAMPLE =
            new String(Published.bytes("cgats-rgb-spectral-sample.txt"), StandardCharsets.UTF_8);

    /** 24 real patches: CIELAB recomputed by E308 Table 5 is within 0.12 of the instrument's. */
    @Test
    void readsARealSpectralFile() throws Problem {
        MeasurementFile file = read(SPECTRAL_SAMPLE);
        assertEquals(24, file.patches().size());
        MeasuredPatch black = file.patches().get(0);
        assertEquals("1", black.id());
        assertEquals(new Rgb8(0, 0, 0), black.rgb());
        assertNotNull(black.spectrum());
        assertEquals(new Rgb8(255, 255, 255), file.patches().get(7).rgb());
        MeasurementFile stated = read(SPECTRAL_SAMPLE.replace("SPECTRAL_NM", "OTHER"));
        double sum = 0;
        for (int i = 0; i < 24; i++) {
            Lab instrument = stated.patches().get(i).lab();
            double difference = DeltaE.cie1976(instrument, file.patches().get(i).lab());
            assertTrue(difference < 0.125, "row " + i + " differs by " + difference);
            sum += difference;
        }
        assertTrue(sum / 24 < 0.08, "mean difference " + sum / 24);
        assertTrue(
                String.join(" ", file.notes()).contains("380 to 680 nm every 10 nm"),
                file.notes()::toString);
        assertEquals(Optional.empty(), file.condition());
    }

    /** The same file in the spellings and layouts of real life gives the same colours. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "NM",
                "nm",
                "SPECTRAL_",
                "SPEC_",
                "R_",
                "SPECTRAL_NM_",
                "SPEC",
                "spectral_nm"
            })
    void spectralColumnsInManySpellings(String prefix) throws Problem {
        assertSameColours(SPECTRAL_SAMPLE.replace("SPECTRAL_NM", prefix));
    }

    @Test
    void layoutsOfRealLife() throws Problem {
        assertSameColours(SPECTRAL_SAMPLE.replace("\n", "\r\n"));
        assertSameColours("\uFEFF" + SPECTRAL_SAMPLE);
        assertSameColours(SPECTRAL_SAMPLE.replace('\t', ' '));
        assertSameColours(SPECTRAL_SAMPLE.replace("\t", " \t "));
        assertSameColours(SPECTRAL_SAMPLE.replaceAll("(\\d)\\.(\\d)", "$1,$2"));
        assertSameColours(SPECTRAL_SAMPLE.substring(SPECTRAL_SAMPLE.indexOf("BEGIN_DATA_FORMAT")));
        assertSameColours(SPECTRAL_SAMPLE.replace("BEGIN_DATA\n", "BEGIN_DATA\n# a remark\n\n"));
        // a bare table with commas, as spreadsheets write it
        int names = SPECTRAL_SAMPLE.indexOf("SAMPLE_ID");
        String bare =
                SPECTRAL_SAMPLE
                        .substring(names)
                        .replaceAll(
                                "(?m)^(END_DATA_FORMAT|NUMBER_OF_SETS.*|BEGIN_DATA|END_DATA)\n?",
                                "");
        assertSameColours(bare.replace('\t', ','));
        assertSameColours(bare.replace('\t', ';'));
    }

    @Test
    void percentIsRecognised() throws Problem {
        String percent =
                SPECTRAL_SAMPLE
                        .lines()
                        .map(
                                line -> {
                                    String[] cells = line.split("\t", -1);
                                    if (cells.length != 38 || cells[0].startsWith("S")) {
                                        return line;
                                    }
                                    for (int i = 7; i < 38; i++) {
                                        double value = 100 * Double.parseDouble(cells[i]);
                                        cells[i] = String.format(Locale.ROOT, "%.5f", value);
                                    }
                                    return String.join("\t", cells);
                                })
                        .collect(Collectors.joining("\n"));
        MeasurementFile file = read(percent);
        assertSame(read(SPECTRAL_SAMPLE), file, 1e-3);
        assertTrue(file.notes().contains("Spectral values are percent in the file."));
    }

    @Test
    void rgbInPercentAndXyzAsFraction() throws Problem {
        MeasurementFile file =
                read(
                        table(
                                "RGB_R RGB_G RGB_B XYZ_X XYZ_Y XYZ_Z",
                                "0 0 0 0.01 0.01 0.01",
                                "100 100 100 0.85 0.88 0.73",
                                "50.2 20 0 0.2 0.18 0.05"));
        assertEquals(new Rgb8(128, 51, 0), file.patches().get(2).rgb());
        assertEquals(new Rgb8(255, 255, 255), file.patches().get(1).rgb());
        Xyz paper = file.patches().get(1).xyz();
        assertNotNull(paper);
        assertEquals(88, paper.y(), 1e-9);
        assertEquals("2", file.patches().get(1).id());
        assertEquals(4, file.notes().size(), file.notes()::toString);
    }

    /** FOGRA39L (Fogra, December 2006): XYZ to CIELAB; both printed with two decimals. */
    @Test
    void labFromXyzAgreesWithFogra39() throws Problem {
        String text =
                new String(Published.bytes("cgats-fogra39l-subset.txt"), StandardCharsets.UTF_8)
                        .replace("CMYK_C\tCMYK_M\tCMYK_Y", "RGB_R\tRGB_G\tRGB_B");
        MeasurementFile fromXyz = read(text);
        MeasurementFile stated = read(text.replace("XYZ_", "OTHER_"));
        assertEquals(195, stated.patches().size());
        double sum = 0;
        for (int i = 0; i < 195; i++) {
            Lab own = fromXyz.patches().get(i).lab();
            Lab file = stated.patches().get(i).lab();
            double difference = DeltaE.cie1976(own, file);
            assertTrue(difference < 0.4, "row " + i + " differs by " + difference);
            sum += difference;
        }
        assertTrue(sum / 195 < 0.03, "mean difference " + sum / 195);
        assertEquals("FOGRA39L", stated.keywords().get("DESCRIPTOR"));
    }

    @Test
    void cmykAloneIsExplained() {
        for (String name :
                new String[] {"cgats-fogra39l-subset.txt", "cgats-headerless-targ-fragment.txt"}) {
            assertProblem(
                    "needs the RGB codes that were printed",
                    new String(Published.bytes(name), StandardCharsets.UTF_8));
        }
    }

    @Test
    void conditionFromTheHeader() throws Problem {
        String rows = table("RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "255 255 255 95 0 -2");
        assertEquals(
                Optional.of(Condition.M1),
                read("MEASUREMENT_SOURCE\t\"Illumination=D50 MeasurementCondition=M1\"\n" + rows)
                        .condition());
        assertEquals(Optional.empty(), read("REMARK \"M0 or M2\"\n" + rows).condition());
    }

    /** Some programs put tabs between what they say in one text. */
    @Test
    void tabsInQuotesPartWords() throws Problem {
        String rows =
                table("SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "A1 255 255 255 95 0 -2");
        String source =
                "MEASUREMENT_SOURCE \"Illumination=D50\tObserverAngle=2degree"
                        + "\tMeasurementCondition=M1\tFilter=No\tWhiteBase=Abs\"\n";
        MeasurementFile m1 = read(source + rows);
        assertEquals(Optional.of(Condition.M1), m1.condition());
        assertEquals(Optional.of("no"), m1.conditions().filter());
        MeasurementFile m2 = read((source + rows).replace("=M1", "=M2"));
        MeasurementFile both = MeasurementReader.together(List.of(m1, m2));
        assertEquals(2, both.sets().size());
        assertEquals(1, both.patches().get(0).repeats());
        assertEquals("a b", read("ID,R,G,B,L,a,b\na\tb,1,2,3,5,0,0").patches().get(0).id());
    }

    /** As some programs write it, all in one header line. */
    @Test
    void lightObserverAndWhiteBaseInOneLine() throws Problem {
        String rows = table("RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "255 255 255 95 0 -2");
        String source =
                "MEASUREMENT_SOURCE \"Illumination=D50 ObserverAngle=2degree WhiteBase=Abs\"\n";
        read(source + rows);
        read(source.replace("D50", "Unknown").replace("2degree", "Unknown") + rows);
        read(source.replace("D50", "M1") + rows);
        assertProblem("are for D65, 2 degree", source.replace("D50", "D65") + rows);
        assertProblem("are for A, 2 degree", source.replace("D50", "A") + rows);
        for (String ten : new String[] {"10degree", "10\u00b0", "10"}) {
            assertProblem("are for D50, 10 degree", source.replace("2degree", ten) + rows);
        }
        for (String paper : new String[] {"Pap", "Paper", "Relative"}) {
            assertProblem("relative to the paper", source.replace("Abs", paper) + rows);
        }
        assertProblem("relative to the paper", "WHITE_BASE \"Paper\"\n" + rows);
        String other = source.replace("D50", "D65").replace("2d", "10d").replace("Abs", "Pap");
        MeasurementFile spectra =
                read(SPECTRAL_SAMPLE.replace("NUMBER_OF_SETS", other + "NUMBER_OF_SETS"));
        assertTrue(
                spectra.notes().toString().contains("white base 'pap'"), spectra.notes()::toString);
    }

    @Test
    void secondConditionIsNotMixedIn() throws Problem {
        String first =
                table("SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "A1 255 255 255 95 0 -2");
        String other = first.replace("95 0 -2", "96 0 -5");
        MeasurementFile file = read(first + other);
        assertEquals(1, file.patches().size());
        assertEquals(95, file.patches().get(0).lab().l());
        assertTrue(file.notes().contains("Further tables in the file were not used: 1."));
        MeasurementFile carriedOn = read(first + other.replace("A1", "A2"));
        assertEquals(2, carriedOn.patches().size());
    }

    /** Two tables that state one condition are repeats; of two conditions, sets of their own. */
    @Test
    void tablesOfSeveralConditions() throws Problem {
        String table =
                table("SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "A1 255 255 255 95 0 -2");
        String m0 = "MEASUREMENT_SOURCE \"MeasurementCondition=M0 Filter=no\"\n" + table;
        String m1 = m0.replace("M0", "M1").replace("95 0 -2", "95 0 -5");
        MeasurementFile both = read(m0 + m1);
        assertEquals(Optional.of(Condition.M1), both.condition());
        assertEquals(-5, both.patches().get(0).lab().b());
        assertEquals(-2, both.under(Condition.M0).orElseThrow().patches().get(0).lab().b());
        assertEquals(Optional.of("no"), both.conditions().filter());
        MeasurementFile repeats = read(m0 + m0.replace("95 0 -2", "96 0 -2"));
        assertEquals(1, repeats.sets().size());
        assertEquals(95.5, repeats.patches().get(0).lab().l(), 1e-9);
        assertEquals(2, repeats.patches().get(0).repeats());
        Lab spread = repeats.patches().get(0).spread();
        assertNotNull(spread);
        assertEquals(Math.sqrt(0.5), spread.l(), 1e-9);
    }

    /** A filter or backing that is stated as not known is not one of its own. */
    @Test
    void conditionsThatAreStatedAsUnknownAreNotStated() throws Problem {
        String table =
                table("SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "A1 255 255 255 95 0 -2");
        for (String unknown : new String[] {"Unknown", "unknown", "N/A", "-", "NotSpecified"}) {
            String inner =
                    "MEASUREMENT_SOURCE \"MeasurementCondition=M1 Filter=" + unknown + "\"\n";
            assertEquals("M1", read(inner + table).conditions().words(), unknown);
            String keys = "FILTER \"" + unknown + "\"\nSAMPLE_BACKING \"" + unknown + "\"\n";
            MeasurementFile both = read(inner + keys + table + keys + table);
            assertEquals(1, both.sets().size(), unknown);
            assertEquals(2, both.patches().get(0).repeats(), unknown);
            assertEquals(
                    Optional.of("polarised"),
                    read(inner.replace("M1 ", "M1 Filter=polarised ") + table)
                            .conditions()
                            .filter(),
                    unknown);
        }
    }

    /** Two files one after the other: what the first says does not hold for the second. */
    @Test
    void aSecondFileInOneInheritsNothing() throws Problem {
        String table =
                table("SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "A1 255 255 255 95 0 -2");
        String first = "CGATS.17\nMEASUREMENT_CONDITION \"M1\"\n" + table;
        String second = table.replace("95 0 -2", "93 0 0");
        for (String identifier : new String[] {"CGATS.17", "IT8.7/3", "ISO28178"}) {
            MeasurementFile file = read(first + identifier + "\n" + second);
            assertEquals(Optional.of(Condition.M1), file.condition(), identifier);
            assertEquals(95, file.patches().get(0).lab().l(), identifier);
            assertEquals(1, file.patches().get(0).repeats());
            assertEquals(2, file.sets().size());
            assertEquals(Optional.empty(), file.sets().get(1).conditions().mode());
        }
        assertEquals(2, read(first + second).patches().get(0).repeats());
        assertEquals(2, read(first + first).patches().get(0).repeats());
        // Lines that stand before an identifier, but after the table before, are of its file.
        MeasurementFile above =
                read(
                        "MEASUREMENT_CONDITION \"M0\"\n"
                                + first.replace("M1", "M2")
                                + "FILTER no\nCGATS.17\n"
                                + second);
        assertEquals("M2", above.conditions().words());
        assertEquals("not stated, filter no", above.sets().get(1).conditions().words());
        assertEquals(
                Optional.of(Condition.M0),
                read("MEASUREMENT_CONDITION \"M0\"\nCGATS.17\n" + table).condition());
        String many = manyKeywords();
        assertEquals(1, read(many + first + "CGATS.17\n" + second).patches().get(0).repeats());
    }

    private static String manyKeywords() {
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i < 998; i++) {
            lines.append("KEY").append(i).append(" 1\n");
        }
        return lines.toString();
    }

    @Test
    void conditionsSideBySide() throws Problem {
        for (String fields :
                new String[] {
                    "ID R G B M0_L* M0_a* M0_b* M2_L* M2_a* M2_b*",
                    "SAMPLE_ID RGB_R RGB_G RGB_B LAB_L_M0 LAB_A_M0 LAB_B_M0 LAB_L_M2 LAB_A_M2"
                            + " LAB_B_M2"
                }) {
            MeasurementFile file = read(table(fields, "p 255 255 255 95 0 -4 95 0 1"));
            assertEquals(Optional.of(Condition.M0), file.condition(), fields);
            assertEquals(-4, file.patches().get(0).lab().b());
            assertEquals(1, file.under(Condition.M2).orElseThrow().patches().get(0).lab().b());
        }
    }

    @Test
    void repeatsInSeveralFiles() throws Problem {
        String rows = table("SAMPLE_ID RGB_R RGB_G RGB_B XYZ_X XYZ_Y XYZ_Z", "p 9 9 9 20 20 20");
        MeasurementFile other = read(rows.replace("20 20 20", "22 22 22"));
        MeasurementFile mean = MeasurementReader.together(List.of(read(rows), other));
        Xyz xyz = mean.patches().get(0).xyz();
        assertNotNull(xyz);
        assertEquals(21, xyz.y(), 1e-9);
        assertEquals(Lab.of(xyz, Xyz.PCS_WHITE), mean.patches().get(0).lab());
        List<MeasurementFile> wrong = List.of(read(rows), read(rows.replace("9 9 9", "8 9 9")));
        assertThrows(Problem.class, () -> MeasurementReader.together(wrong));
        MeasurementFile first = named("first.txt", rows);
        MeasurementFile odd = named("odd.txt", rows.replace("9 9 9", "8 9 9"));
        MeasurementFile last = named("last.txt", rows);
        Problem problem =
                assertThrows(
                        Problem.class, () -> MeasurementReader.together(List.of(first, odd, last)));
        assertTrue(problem.toString().contains("odd.txt, line 5"), problem::toString);
    }

    /** Spreadsheets leave unused cells empty. */
    @Test
    void emptyCells() throws Problem {
        MeasurementFile file =
                read(
                        "ID,Remark,R,G,B,L*,a*,b*\r\np1,,0,0,0,10,0,0\r\n,,,,,,,\r\n\"p,2\",x,1,1,1,11,0,0");
        assertEquals(2, file.patches().size());
        assertEquals("p,2", file.patches().get(1).id());
        assertProblem("'' in column L*", "ID,R,G,B,L*,a*,b*\np1,0,0,0,,0,0");
    }

    @Test
    void oneOddValueDoesNotDecideTheScale() {
        assertProblem(
                "line 21: the reflectance at 400 nm is 67.37764, more than any paper",
                SPECTRAL_SAMPLE.replaceFirst("(?m)^(8\t.*)\t0.6737764", "$1\t67.37764"));
    }

    @Test
    void valuesThatNoPrintHas() {
        String fields = "RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B";
        assertProblem("no print has L* -3.0", table(fields, "1 2 3 -3 5 6"));
        assertProblem("no print has L* 50.0 a* 300.0", table(fields, "1 2 3 50 300 6"));
        assertProblem(
                "XYZ is below 0", table("RGB_R RGB_G RGB_B XYZ_X XYZ_Y XYZ_Z", "1 2 3 9 9 -9"));
        assertProblem(
                "the reflectance at 380 nm is -0.01794",
                SPECTRAL_SAMPLE.replaceFirst("0.0179408", "-0.01794"));
    }

    @Test
    void duplicatePatchNames() {
        assertProblem(
                "line 6: patch 'A1' stands on line 5 already",
                table(
                        "SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B",
                        "A1 0 0 0 5 0 0",
                        "A1 255 255 255 95 0 0"));
    }

    @Test
    void otherLightOrObserver() throws Problem {
        String rows = table("RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B", "255 255 255 95 0 -2");
        assertProblem("are for D65, 2 degree", "ILLUMINANT \"D65\"\n" + rows);
        assertProblem("are for D50, 10 degree", "OBSERVER \"10 degree\"\n" + rows);
        assertProblem(
                "are for D65, 10 degree",
                "WEIGHTING_FUNCTION \"ILLUMINANT, D65\"\nWEIGHTING_FUNCTION \"OBSERVER, 10"
                        + " degree\"\n"
                        + rows);
        assertProblem("are for F8, 2 degree", "ILLUMINANT \"F8\"\n" + rows);
        assertProblem("are for 'LED-B1', 2 degree", "ILLUMINANT \"LED-B1\"\n" + rows);
        assertProblem("are for D50, 10 degree", "OBSERVER \"CIE 1964\"\n" + rows);
        read("ILLUMINANT \"unknown\"\nOBSERVER \"CIE 1931 2 degree\"\n" + rows);
        read("WEIGHTING_FUNCTION \"ILLUMINANT, D50\"\nOBSERVER \"2\"\n" + rows);
        read(SPECTRAL_SAMPLE.replace("ILLUMINANT\t\"D50\"", "ILLUMINANT\t\"D65\""));
    }

    @Test
    void aFileThatIsCutOff() {
        assertProblem(
                "24 rows are announced but only 11 are there",
                SPECTRAL_SAMPLE.substring(0, SPECTRAL_SAMPLE.indexOf("\n12\t")));
    }

    @Test
    void codesAndReadingsInTwoTables() throws Problem {
        String codes = table("SAMPLE_ID RGB_R RGB_G RGB_B", "A1 255 255 255", "A2 0 0 0");
        String readings = table("SAMPLE_ID LAB_L LAB_A LAB_B", "A2 10 0 1", "A1 95 0 -2");
        MeasurementFile file = read(codes + readings);
        assertEquals(new Lab(95, 0, -2), file.patches().get(0).lab());
        assertEquals(new Lab(10, 0, 1), file.patches().get(1).lab());
        assertProblem("no colour columns", codes + readings.replace("A2", "B2"));
    }

    /** Damage never leads to anything but a Problem that names the file. */
    @Test
    void survivesDamage() {
        Random random = new Random(3);
        byte[] good = SPECTRAL_SAMPLE.getBytes(StandardCharsets.UTF_8);
        int refused = 0;
        for (int round = 0; round < 300; round++) {
            byte[] bytes = Arrays.copyOf(good, 1 + random.nextInt(good.length));
            for (int k = 0; k < 5; k++) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            try {
                assertFalse(MeasurementReader.read("print.txt", bytes).patches().isEmpty());
            } catch (Problem e) {
                assertTrue(e.toString().contains("print.txt"), e::toString);
                refused++;
            }
        }
        assertTrue(refused > 100, "refused " + refused);
    }

    @Test
    void doubtsAreNoted() throws Problem {
        String text =
                table(
                                "RGB_R RGB_G RGB_B XYZ_X XYZ_Y XYZ_Z LAB_L LAB_A LAB_B",
                                "255 255 255 85 88 95 95 0 -2",
                                "127.5 0 0 20 15 10 45 30 20")
                        .replace("BEGIN_DATA\n", "NUMBER_OF_SETS 5\nBEGIN_DATA\n");
        String notes = String.join(" ", read(text).notes());
        assertTrue(notes.contains("announces 5 rows"), notes);
        assertTrue(notes.contains("rounded to 8 bits in patches: 1"), notes);
        assertTrue(notes.contains("computed for another light"), notes);
    }

    @Test
    void saysWhereAndWhatIsWrong() {
        String fields = "RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B";
        assertProblem(
                "print.txt, line 6: 'abc' in column LAB_L",
                table(fields, "1 2 300 4 5 6", "1 2 3 abc 5 6"));
        assertProblem("line 5: '300' in column RGB_B is outside", table(fields, "1 2 300 4 5 6"));
        assertProblem("line 5: 'NaN' in column LAB_B", table(fields, "1 2 3 4 5 NaN"));
        assertProblem("line 5: 5 values, but the file names 6 columns", table(fields, "1 2 3 4 5"));
        assertProblem(
                "RGB_R, RGB_G and RGB_B are missing", table("ID LAB_L LAB_A LAB_B", "1 2 3 4"));
        assertProblem("no colour columns", table("RGB_R RGB_G RGB_B", "1 2 3"));
        assertProblem("has no rows", table(fields));
        assertProblem("no measurement table", "hello");
        assertProblem("END_DATA_FORMAT is missing", "BEGIN_DATA_FORMAT\nRGB_R");
        assertProblem(
                "not evenly spaced: 400 nm is missing",
                table("RGB_R RGB_G RGB_B NM380 NM390 NM410 NM420", "1 2 3 1 1 1 1"));
        assertProblem(
                "colour needs at least",
                table("RGB_R RGB_G RGB_B NM380 NM390 NM400", "1 2 3 1 1 1"));
    }

    @Test
    void controlCharactersAreDropped() throws Problem {
        MeasurementFile file =
                read(
                        table(
                                "SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B",
                                "\"A\u001b[31m 1\" 255 255 255 95 0 -2"));
        assertEquals("A[31m 1", file.patches().get(0).id());
        assertEquals(Map.of(), file.keywords());
    }

    private static String table(String fields, String... rows) {
        return "BEGIN_DATA_FORMAT\n"
                + fields
                + "\nEND_DATA_FORMAT\nBEGIN_DATA\n"
                + String.join("\n", rows)
                + "\nEND_DATA\n";
    }

    private static MeasurementFile named(String name, String text) throws Problem {
        return MeasurementReader.read(name, text.getBytes(StandardCharsets.UTF_8));
    }

    private static MeasurementFile read(String text) throws Problem {
        return MeasurementReader.read("print.txt", text.getBytes(StandardCharsets.UTF_8));
    }

    private static void assertProblem(String part, String text) {
        Problem problem = assertThrows(Problem.class, () -> read(text));
        assertTrue(problem.toString().contains(part), problem::toString);
        assertEquals(Problem.Kind.INPUT, problem.kind());
    }

    private static void assertSameColours(String text) throws Problem {
        assertSame(read(SPECTRAL_SAMPLE), read(text), 1e-12);
    }

    private static void assertSame(MeasurementFile one, MeasurementFile two, double slack) {
        assertEquals(one.patches().size(), two.patches().size());
        for (int i = 0; i < one.patches().size(); i++) {
            assertEquals(one.patches().get(i).rgb(), two.patches().get(i).rgb());
            assertEquals(one.patches().get(i).id(), two.patches().get(i).id());
            assertEquals(
                    0,
                    DeltaE.cie1976(one.patches().get(i).lab(), two.patches().get(i).lab()),
                    slack);
        }
    }
}

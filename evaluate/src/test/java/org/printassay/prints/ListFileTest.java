package org.printassay.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.problem.Problem;

class ListFileTest {
    @TempDir Path dir;

    private List<OnePrint> read(String name, String text) throws Exception {
        return ListFile.read(Files.writeString(dir.resolve(name), text));
    }

    private static void assertTwoPrints(List<OnePrint> prints, Path dir) {
        assertEquals(2, prints.size());
        OnePrint first = prints.get(0);
        assertEquals("first", first.name());
        assertEquals(
                List.of(dir.resolve("scans/a.tif"), dir.resolve("scans/b.tif")), first.files());
        assertEquals("Paper A, warm", first.said().paper());
        assertEquals(24.5, first.said().driedHours());
        OnePrint second = prints.get(1);
        assertEquals("c", second.name());
        assertNull(second.said().paper());
        assertEquals(List.of(), second.apart());
    }

    @Test
    void csvWithCommas() throws Exception {
        String text =
                """
                file,print,paper,dried hours
                scans/a.tif,first,"Paper A, warm",24.5
                scans/b.tif,first,,

                c.tif,,,
                """;
        assertTwoPrints(read("prints.csv", text.replace("\n", "\r\n")), dir);
    }

    /** As spreadsheets of half of Europe write it. */
    @Test
    void csvWithSemicolonsDecimalCommaAndByteOrderMark() throws Exception {
        String text =
                """
                Print;File;Paper;DriedHours
                first;scans/a.tif;Paper A, warm;24,5
                first;scans/b.tif;;
                ;c.tif;;
                """;
        assertTwoPrints(read("prints.csv", "\uFEFF" + text), dir);
    }

    @Test
    void json() throws Exception {
        String text =
                """
                {"schema": "printassay/prints/1", "files": [
                  {"file": "scans/a.tif", "print": "first", "paper": "Paper A, warm", "driedHours": 24.5},
                  {"file": "scans/b.tif", "print": "first"},
                  {"file": "c.tif"}
                ]}
                """;
        assertTwoPrints(read("prints.json", text), dir);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | names no file",
                "'file' | names no file",
                "'name\na.tif' | not known",
                "'file,file\na.tif,b.tif' | twice",
                "'paper\nPaper A' | must name the columns",
                "'file,paper\n,Paper A' | line 2: names no file",
                "'file,dried hours\na.tif,long' | line 2: driedHours is no number",
                "'file,dried hours\na.tif,-1' | line 2: driedHours must be 0 or more",
                "'file,paper\na.tif,Paper A,warm' | line 2: has more cells",
                "'file\na.tif\n./a.tif' | line 3: names a.tif a second time",
                "'file,print,paper\na.tif,x,A\nb.tif,x,B' | line 3: says paper \"B\"",
                "'file,paper\n\"a.tif,A' | not CSV",
            })
    void whatIsWrongIsSaidInOneLine(String text, String said) {
        Problem problem = assertThrows(Problem.class, () -> read("prints.csv", text));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.getMessage().startsWith("prints.csv"), problem.getMessage());
        assertTrue(problem.getMessage().contains(said), problem.getMessage());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"schema\": \"printassay/prints/2\", \"files\": []} | another version",
                "{\"schema\": \"printassay/prints/1\", \"files\": []} | at least 1",
                "{\"schema\": \"printassay/prints/1\", \"files\": [{\"paper\": \"A\"}]} | file",
                "{\"schema\": \"printassay/prints/1\", \"files\": [{\"file\": \"a\", \"papr\": \"\"}]} | \"paper\" is",
            })
    void jsonIsHeldAgainstItsSchema(String text, String said) {
        Problem problem = assertThrows(Problem.class, () -> read("prints.json", text));
        assertTrue(problem.getMessage().contains(said), problem.getMessage());
    }

    @Test
    void namesOfOnePrintMayBeTypedInAnyWay() throws Exception {
        List<OnePrint> prints =
                read(
                        "l.csv",
                        "file,print,paper,printer\na.tif,x,Satin Rag,P\nb.tif,x,satin  rag,p");
        assertEquals(1, prints.size());
        assertEquals("Satin Rag", prints.get(0).said().paper());
    }

    @Test
    void aListThatIsGoneIsOneLine() {
        Problem problem = assertThrows(Problem.class, () -> ListFile.read(dir.resolve("gone.csv")));
        assertTrue(problem.getMessage().contains("no such file"), problem.getMessage());
    }
}

package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How pages of the documents to hand on are filled; poppler says what stands on them, and where.
 */
class ReportPagesTest {
    private static final int DPI = 36;

    /** Margins above and below the text, inches. */
    private static final double TOP = 45 / 72.0;

    private static final double BOTTOM = 54 / 72.0;

    /** So much of a page may stay empty, but for the last one. */
    private static final double MOST_EMPTY = 0.25;

    private static final Pattern TABLE =
            Pattern.compile("<table><thead>(.*?)</table>", Pattern.DOTALL);
    private static final Pattern HEADS = Pattern.compile("<th scope=\"col\"[^>]*>([^<]+)</th>");
    private static final Pattern ROWS = Pattern.compile("<th scope=\"row\">([^<]+)</th>");

    @TempDir static Path dir;
    private static Path report;
    private static Path check;
    private static Path comparison;

    @BeforeAll
    static void made() throws Exception {
        report = EvaluatedSheet.plain().resolve("report.pdf");
        Path before = MeasuredPrint.evaluation(dir.resolve("before"), "Paper A", 1, 0);
        Path after = MeasuredPrint.evaluation(dir.resolve("after"), "Paper A", 2, 5);
        Path other = MeasuredPrint.evaluation(dir.resolve("other"), "Paper B", 3, 2);
        CommandLineRun checked =
                CommandLineRun.of(
                        "check", after, "--baseline", before, "--out", dir.resolve("check"));
        assertEquals(1, checked.exitCode(), checked.err());
        check = dir.resolve("check/check.pdf");
        CommandLineRun compared =
                CommandLineRun.of("compare", before, other, "--out", dir.resolve("comparison"));
        assertEquals(0, compared.exitCode(), compared.err());
        comparison = dir.resolve("comparison/comparison.pdf");
    }

    private static int pages(Path pdf) throws Exception {
        Matcher pages = Pattern.compile("Pages:\\s+(\\d+)").matcher(Tool.run("pdfinfo", pdf));
        assertTrue(pages.find());
        return Integer.parseInt(pages.group(1));
    }

    private static String text(Path pdf, int page) throws Exception {
        return spaced(Tool.run("pdftotext", "-f", page, "-l", page, "-layout", pdf, "-"));
    }

    private static String spaced(String text) {
        return text.replaceAll("[\\s\u00a0]+", " ").strip();
    }

    /** What stays empty below all that is painted on a page, as a share of the text's height. */
    private static double empty(Path pdf, int page) throws Exception {
        Path root = Files.createTempDirectory(dir, "page").resolve("one");
        Tool.run("pdftoppm", "-gray", "-r", DPI, "-f", page, "-l", page, "-singlefile", pdf, root);
        byte[] bytes = Files.readAllBytes(root.resolveSibling("one.pgm"));
        String head = new String(bytes, 0, 40, StandardCharsets.ISO_8859_1);
        String[] numbers = head.split("\\s+", -1);
        int width = Integer.parseInt(numbers[1]);
        int height = Integer.parseInt(numbers[2]);
        int start = bytes.length - width * height;
        int top = (int) Math.round(TOP * DPI);
        int end = (int) Math.round(height - BOTTOM * DPI);
        for (int y = end - 1; y >= top; y--) {
            for (int x = 0; x < width; x++) {
                if ((bytes[start + y * width + x] & 0xff) < 235) {
                    return (end - 1.0 - y) / (end - top);
                }
            }
        }
        return 1;
    }

    private static void assertFull(Path pdf) throws Exception {
        int pages = pages(pdf);
        List<String> empty = new ArrayList<>();
        double worst = 0;
        for (int page = 1; page < pages; page++) {
            double share = empty(pdf, page);
            worst = Math.max(worst, share);
            empty.add(Math.round(100 * share) + " %");
        }
        assertTrue(worst <= MOST_EMPTY, pdf.getFileName() + ": " + empty + " stay empty");
        assertTrue(empty(pdf, pages) < 0.9, "the last page has little more than a line");
    }

    @Test
    void pagesOfAReportAreFull() throws Exception {
        assertTrue(pages(report) > 3);
        assertFull(report);
    }

    @Test
    void pagesOfAReportAreFullOnLetterPagesToo() throws Exception {
        Path out = dir.resolve("letter");
        CommandLineRun run =
                CommandLineRun.of(
                        "evaluate",
                        EvaluatedSheet.plain().resolveSibling("scan.png"),
                        "--report-page",
                        "letter",
                        "--out",
                        out);
        assertEquals(0, run.exitCode(), run.err());
        assertFull(out.resolve("report.pdf"));
    }

    @Test
    void pagesOfACheckAndOfAComparisonAreFull() throws Exception {
        assertFull(check);
        assertFull(comparison);
    }

    /** The same tables as on screen: each row stands on a page that shows what its columns are. */
    private static int assertUnderHeads(Path pdf, String html) throws Exception {
        List<String> pages = new ArrayList<>();
        for (int page = 1; page <= pages(pdf); page++) {
            pages.add(text(pdf, page));
        }
        String shown = html.replaceAll("(?s)<details>.*?</details>", "");
        Matcher tables = TABLE.matcher(shown);
        int looked = 0;
        while (tables.find()) {
            List<String> heads = found(HEADS, tables.group(1));
            List<String> rows =
                    found(ROWS, tables.group(1)).stream().map(ReportPagesTest::begun).toList();
            Pattern rule = inOrder(heads);
            List<String> with = pages.stream().filter(page -> rule.matcher(page).find()).toList();
            assertFalse(with.isEmpty(), heads + " on no page");
            boolean one = with.stream().anyMatch(page -> rows.stream().allMatch(page::contains));
            assertTrue(one || rows.size() > 40, heads + ": parted");
            for (String row : rows) {
                assertTrue(with.stream().anyMatch(page -> page.contains(row)), row);
                looked++;
            }
        }
        return looked;
    }

    /** How a name begins: a long one goes on on a second line. */
    private static String begun(String name) {
        Matcher words = Pattern.compile("\\S+( \\S+){0,2}").matcher(name);
        return words.find() ? words.group() : name;
    }

    /** First words of heads one after the other; what else they say may stand on a second line. */
    private static Pattern inOrder(List<String> heads) {
        List<String> words = new ArrayList<>();
        for (String head : heads) {
            words.add(Pattern.quote(head.replaceFirst("(?<=\\p{L})\\P{L}.*|(?<=^\\P{L}).*", "")));
        }
        return Pattern.compile(String.join("[^.]{0,60}?", words));
    }

    private static List<String> found(Pattern pattern, String html) {
        List<String> all = new ArrayList<>();
        Matcher matcher = pattern.matcher(html);
        while (matcher.find()) {
            all.add(spaced(matcher.group(1)));
        }
        return all;
    }

    @Test
    void tablesOfAReportStandInOnePiece() throws Exception {
        String html = Files.readString(report.resolveSibling("report.html"));
        int rows = assertUnderHeads(report, html);
        assertTrue(rows > 15, rows + " rows");
    }

    @Test
    void tablesOfACheckStandInOnePiece() throws Exception {
        String html = Files.readString(check.resolveSibling("check.html"));
        int rows = assertUnderHeads(check, html);
        assertTrue(rows > 8, rows + " rows");
    }
}

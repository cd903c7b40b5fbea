package org.printassay.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Wedge;

class ReportPageTest {
    static Stream<String> pages() throws IOException {
        List<String> out = new ArrayList<>();
        for (Evaluation e : EvaluationJsonTest.all().toList()) {
            out.add(ReportPage.write(e, List.of(SampleEvaluations.preview("s.tif")), true));
        }
        out.add(compare());
        out.add(ComparisonPageTest.page(6));
        return out.stream();
    }

    static String compare() {
        return ComparisonPageTest.page(3);
    }

    /** A best estimate amid many levels is told nowhere, not in figures nor over the strip. */
    @Test
    void anEndThatIsKnownRoughlyIsToldByItsInterval() throws IOException {
        Evaluation e = SampleEvaluations.matt();
        Wedge known = Objects.requireNonNull(e.shadows());
        Wedge rough =
                new Wedge(
                        known.threshold(),
                        0,
                        9,
                        6,
                        new Wedge.Interval(1, 9),
                        known.visibleSteps(),
                        known.aimVisibleSteps(),
                        known.slopeAgainstAim(),
                        known.reversalLevels(),
                        known.steps());
        assertFalse(known.isRough());
        assertTrue(rough.isRough());
        String page =
                ReportPage.write(e.toBuilder().shadows(rough).build(), List.of(), true)
                        .replace('\u00a0', ' ');
        assertTrue(page.contains("open somewhere from level 1 to 9"));
        assertTrue(page.contains("0 to 8 at most: black"));
        assertTrue(page.contains("levels 9 to"));
        assertFalse(page.contains("open from level 6"));
        assertFalse(page.contains("0 to 5: black"));
    }

    @ParameterizedTest
    @MethodSource("pages")
    void nothingIsLoadedFromOutside(String page) {
        assertFalse(page.contains("<script"), "script");
        assertFalse(page.contains("<link"), "link");
        assertFalse(page.contains("@import"), "import");
        assertFalse(page.contains("url("), "url");
        assertFalse(page.contains(" style="), "an inline style, which the policy forbids");
        Matcher address = Pattern.compile("(?:src|href|action|data)=\"([^\"]*)\"").matcher(page);
        while (address.find()) {
            String to = address.group(1);
            boolean picture = to.startsWith("data:image/jpeg;base64,");
            boolean neighbour = to.endsWith(".html") && !to.contains("//");
            assertTrue(picture || neighbour, to);
        }
    }

    /** CSP level 3, section 6.7.2: the hash is over the text of the element. */
    @ParameterizedTest
    @MethodSource("pages")
    void thePolicyAllowsThePagesOwnStyleAndNoOther(String page) throws Exception {
        int from = page.indexOf("<style>") + "<style>".length();
        String css = page.substring(from, page.indexOf("</style>"));
        byte[] hash =
                MessageDigest.getInstance("SHA-256").digest(css.getBytes(StandardCharsets.UTF_8));
        String policy = "style-src 'sha256-" + Base64.getEncoder().encodeToString(hash) + "'";
        String unescaped = page.replace("&#39;", "'");
        assertTrue(unescaped.contains(policy), "hash");
        assertTrue(unescaped.contains("default-src 'none'"), "default");
    }

    @ParameterizedTest
    @MethodSource("pages")
    void idsAreUniqueAndReferencesResolve(String page) {
        Set<String> ids = new HashSet<>();
        Matcher id = Pattern.compile(" id=\"([^\"]*)\"").matcher(page);
        while (id.find()) {
            assertTrue(ids.add(id.group(1)), "twice: " + id.group(1));
        }
        Matcher use = Pattern.compile("aria-labelledby=\"([^\"]*)\"").matcher(page);
        while (use.find()) {
            for (String one : use.group(1).split(" ", -1)) {
                assertTrue(ids.contains(one), "missing: " + one);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void headingsAreInOrder(String page) {
        Matcher heading = Pattern.compile("<h([1-6])").matcher(page);
        int last = 0;
        int first = 0;
        while (heading.find()) {
            int level = Integer.parseInt(heading.group(1));
            assertTrue(level <= last + 1, "h" + level + " after h" + last);
            first += level == 1 ? 1 : 0;
            last = level;
        }
        assertEquals(1, first, "one main heading");
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyPlotHasWords(String page) {
        Matcher svg = Pattern.compile("<svg[^>]*role=\"img\"[^>]*>(.{0,20})").matcher(page);
        while (svg.find()) {
            assertTrue(svg.group(1).startsWith("<title"), svg.group());
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void saysThatItIsSimulated(String page) {
        assertTrue(page.contains("Simulated: no real printer"));
    }

    @Test
    void textFromOutsideStaysText() throws IOException {
        String page =
                ReportPage.write(
                        SampleEvaluations.hostile(),
                        List.of(SampleEvaluations.preview("<b>\".tif")),
                        false);
        assertFalse(page.contains("<script"));
        assertFalse(page.contains("<img"));
        assertFalse(page.contains("<b>"));
        assertTrue(page.contains("&lt;script&gt;alert(1)"));
        assertFalse(page.contains("Simulated: no real printer"));
    }

    @Test
    void aPlainScanClaimsNothingAbsolute() throws IOException {
        String page = ReportPage.write(SampleEvaluations.plain(), List.of(), true);
        assertTrue(page.contains("taken as L* 100"));
        assertFalse(page.contains("density\u00a0"), "a density");
        assertFalse(page.contains(" stops"), "a range in stops");
    }

    @Test
    void nothingJudgedIsSaid() throws IOException {
        String page = ReportPage.write(SampleEvaluations.empty(), List.of(), false);
        assertTrue(page.contains("Nothing could be judged"));
        assertTrue(page.contains("not judged"));
        assertFalse(page.contains("null"));
        assertFalse(page.contains("NaN"));
    }

    @Test
    void whatIsDoubtfulIsCrossedInThePictureOfTheScan() throws Exception {
        ScanPreview preview = SampleEvaluations.preview("s.tif");
        String page = ReportPage.write(SampleEvaluations.plain(), List.of(preview), true);
        assertEquals(6, preview.doubtful().size());
        assertTrue(page.contains("6 doubtful ones crossed"), "in the picture's title");
        assertTrue(page.contains("patches read, 6 doubtful"), "in its caption");
        Matcher paths = Pattern.compile("<path class=\"found\" d=\"([^\"]*)\"/>").matcher(page);
        assertTrue(paths.find(), "outlines");
        assertTrue(paths.find(), "crosses");
        assertEquals(12, paths.group(1).chars().filter(c -> c == 'M').count());
        assertFalse(paths.group(1).contains("Z"), "lines, not outlines");
    }
}

package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.printassay.check.Check;
import org.printassay.check.Checker;
import org.printassay.check.ToleranceFile;
import org.printassay.compare.Comparison;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.NamedPrint;
import org.printassay.evaluation.Evaluation;
import org.printassay.guide.HowToPage;
import org.printassay.report.CheckPage;
import org.printassay.report.ComparisonPage;
import org.printassay.report.EvaluationJson;

/**
 * Every page in a real browser: nothing loaded, no error, no width at which it must be pushed
 * sideways, reachable by keyboard, and by the rules of axe-core (WCAG 2.2 A and AA).
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BrowserPagesTest {
    private static final List<Integer> WIDTHS = List.of(390, 640, 690, 820, 1024, 1280, 1600);

    /** What A4 leaves between the margins of a printed page, in pixels of 1/96 inch. */
    private static final int PAPER = 688;

    /** Elements that reach beyond the window, outside of what may be pushed sideways. */
    private static final String BEYOND =
            """
            const out = [];
            const wide = document.documentElement.clientWidth;
            if (document.documentElement.scrollWidth > wide) out.push('page');
            for (const e of document.querySelectorAll('body *')) {
              if (e.closest('.scroll') || e.closest('svg') && e.tagName !== 'svg') continue;
              const r = e.getBoundingClientRect();
              if (r.width > 1 && (r.right > wide + 0.5 || r.left < -0.5))
                out.push(e.tagName + '.' + (e.getAttribute('class') ?? '') + ' ' + r.right);
            }
            return out;
            """;

    /** Pictures that have neither a name nor are hidden from those who cannot see them. */
    private static final String NAMELESS =
            """
            return [...document.querySelectorAll('svg, img')].filter(e => !e.parentElement
              .closest('svg') && e.getAttribute('aria-hidden') !== 'true' && !(e.getAttribute('role')
              === 'img' && (e.getAttribute('aria-labelledby') ?? '').split(' ').every(id =>
              document.getElementById(id)?.textContent.trim()))).map(e => e.outerHTML.slice(0, 80));
            """;

    /** Opens what is folded; long tables are cut, for their rows are alike. */
    private static final String OPEN_AND_SHORT =
            """
            document.querySelectorAll('details').forEach(d => d.open = true);
            document.querySelectorAll('tbody').forEach(t => {
              while (t.rows.length > 8) t.deleteRow(8);
            });
            """;

    /** Texts of the plot of changes that touch a band; says at last that there were some. */
    private static final String OVER_THE_BAND =
            """
            const out = [];
            const meet = (a, b) => a.left < b.right - 1 && b.left < a.right - 1
              && a.top < b.bottom - 1 && b.top < a.bottom - 1;
            const shown = e => e.getClientRects().length > 0 && e.getBoundingClientRect().width > 0;
            const plot = [...document.querySelectorAll('section[aria-labelledby=against] svg.plot')]
              .filter(shown)[0];
            const bands = [...plot.querySelectorAll('.ink-band')].map(e => e.getBoundingClientRect());
            const texts = [...plot.querySelectorAll('text')];
            for (const t of texts)
              if (bands.some(b => meet(b, t.getBoundingClientRect()))) out.push(t.textContent);
            if (bands.length && texts.length > 10) out.push('looked at');
            return out;
            """;

    private static final String REACHABLE =
            """
            return [...document.querySelectorAll('a[href], summary, [tabindex="0"]')].filter(e =>
              e.checkVisibility({visibilityProperty: true}) && e.getClientRects().length)
              .map(e => e.tagName + ' ' + e.textContent.slice(0, 40));
            """;

    private static final String FOCUSED =
            """
            const e = document.activeElement;
            if (e === document.body) return [];
            const s = getComputedStyle(e);
            return [e.tagName + ' ' + e.textContent.slice(0, 40),
              s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) >= 1.5 ? 'seen' : 'unseen'];
            """;

    @TempDir static Path dir;
    private final Map<String, Path> pages = new LinkedHashMap<>();
    private Browser browser;

    @BeforeAll
    void start() throws Exception {
        browser = new Browser();
        Path plain = EvaluatedSheet.plain();
        Path hostile = EvaluatedSheet.hostile();
        pages.put("report", plain.resolve("report.html"));
        pages.put("hostile report", hostile.resolve("report.html"));
        pages.put("papers side by side", sideBySide(plain, hostile));
        pages.put("check", checked(hostile));
        pages.put("checks", CheckPages.many(Files.createDirectory(dir.resolve("checks"))));
        pages.put("prints", CheckPages.evaluated(Files.createDirectory(dir.resolve("prints"))));
        pages.put("over time", CheckPages.trend(Files.createDirectory(dir.resolve("time"))));
        pages.put("how to print", write("how-to.html", HowToPage.of(SimulatedPrint.chart())));
    }

    private Path sideBySide(Path plain, Path hostile) throws Exception {
        List<NamedPrint> prints = new ArrayList<>();
        Map<String, String> reports = new LinkedHashMap<>();
        for (Path results : List.of(plain, hostile)) {
            // Both were read from one scan, which a comparison refuses.
            String text =
                    EvaluatedSheet.text(results, "evaluation.json")
                            .replaceAll(
                                    "(\"sha256\": \")[0-9a-f]{64}",
                                    "$1" + String.valueOf(prints.size()).repeat(64));
            Evaluation e = EvaluationJson.parse("evaluation.json", text);
            reports.put(Objects.requireNonNull(e.details().paper()), "report.html");
            prints.add(new NamedPrint("print", e));
        }
        Comparison comparison = Comparison.of(prints, KnownSpread.NONE, "");
        return write(
                "index.html",
                ComparisonPage.write(
                        comparison, new ComparisonPage.Showing(Optional.empty(), reports, true)));
    }

    /** Of the print with hostile names; the other file has another name alone. */
    private Path checked(Path hostile) throws Exception {
        String text = EvaluatedSheet.text(hostile, "evaluation.json");
        Evaluation before = EvaluationJson.parse("evaluation.json", text);
        Evaluation after =
                EvaluationJson.parse(
                        "evaluation.json",
                        text.replaceAll("(\"sha256\": \")[0-9a-f]{64}", "$1" + "7".repeat(64)));
        Check check = Checker.check(before, after, ToleranceFile.named("fine"));
        return write("check.html", CheckPage.write(check, false));
    }

    private Path write(String name, String text) throws IOException {
        return Files.writeString(dir.resolve(name), text);
    }

    private Path page(String name) {
        return Objects.requireNonNull(pages.get(name));
    }

    @AfterAll
    void stop() {
        if (browser != null) {
            browser.close();
        }
    }

    @Test
    void nothingIsAskedForAndNothingIsComplainedOf() {
        for (Map.Entry<String, Path> page : pages.entrySet()) {
            browser.requests();
            browser.complaints();
            browser.open(page.getValue(), 1280, false);
            List<String> requests = browser.requests();
            assertEquals(
                    List.of(page.getValue().toUri().toString()),
                    requests.stream().filter(to -> !to.startsWith("data:")).toList(),
                    page.getKey());
            assertEquals(List.of(), browser.complaints(), page.getKey());
            assertFalse(browser.driver().getTitle().equals("hit"), page.getKey());
        }
    }

    /** The policy holds even where a script came in. */
    @Test
    void noScriptWouldRun() {
        for (Map.Entry<String, Path> page : pages.entrySet()) {
            browser.open(page.getValue(), 1280, false);
            browser.complaints();
            browser.ask(
                    "const s = document.createElement('script'); s.textContent = 'window.hit = 1';"
                            + " document.body.append(s); const i = document.createElement('img');"
                            + " i.setAttribute('onerror', 'window.hit = 2'); i.src = 'x';"
                            + " document.body.append(i);");
            Object hit =
                    browser.driver()
                            .executeAsyncScript(
                                    "const done = arguments[0];"
                                            + " setTimeout(() => done('' + window.hit), 200);");
            assertEquals("undefined", hit, page.getKey());
            assertTrue(browser.complaints().size() >= 2, page.getKey() + ": refused in words");
        }
    }

    @Test
    void markupFromOutsideIsText() {
        browser.open(page("hostile report"), 1280, false);
        assertEquals(
                List.of(), browser.texts("return [...document.querySelectorAll('script, img')]"));
        String title = String.valueOf(browser.ask("return document.querySelector('h1').innerText"));
        assertTrue(title.contains("=cmd()<script>document.title='hit'</script>"), title);
        assertTrue(title.contains("\u7d19"), title);
        assertFalse(title.contains("\u202e"), title);
        for (String name :
                List.of("papers side by side", "check", "checks", "prints", "over time")) {
            browser.open(page(name), 1280, false);
            assertEquals(
                    List.of(),
                    browser.texts("return [...document.querySelectorAll('script, img')]"),
                    name);
        }
    }

    @Test
    void noWidthMustBePushedSideways() {
        for (Map.Entry<String, Path> page : pages.entrySet()) {
            browser.open(page.getValue(), 390, false);
            browser.ask("document.querySelectorAll('details').forEach(d => d.open = true)");
            for (int width : WIDTHS) {
                browser.width(width);
                String where = page.getKey() + " at " + width;
                assertEquals(List.of(), browser.texts(BEYOND), where);
                if (width == 390 || width == 1280) {
                    keep(page.getKey() + "-" + width);
                }
            }
        }
    }

    /** Pictures of the pages for people, where a folder for them is named. */
    private void keep(String name) {
        String folder = System.getProperty("screenshots");
        if (folder != null) {
            browser.ask("document.querySelectorAll('details').forEach(d => d.open = false)");
            byte[] png =
                    Base64.getDecoder()
                            .decode(
                                    String.valueOf(
                                            browser.driver()
                                                    .executeCdpCommand(
                                                            "Page.captureScreenshot",
                                                            Map.of("captureBeyondViewport", true))
                                                    .get("data")));
            try {
                Files.write(Path.of(folder, name.replace(' ', '-') + ".png"), png);
            } catch (IOException e) {
                throw new AssertionError(e);
            }
            browser.ask("document.querySelectorAll('details').forEach(d => d.open = true)");
        }
    }

    /** A page that is too wide must not pass. */
    @Test
    void whatReachesBeyondIsSeen() {
        browser.open(page("report"), 390, false);
        browser.ask("document.querySelector('h1').append(document.querySelector('table'));");
        assertFalse(browser.texts(BEYOND).isEmpty());
    }

    @Test
    void rulesOfAccessibilityHoldInLightAndDark() throws Exception {
        for (Map.Entry<String, Path> page : pages.entrySet()) {
            List<Object> grounds = new ArrayList<>();
            for (boolean dark : new boolean[] {false, true}) {
                for (int width : new int[] {390, 1280}) {
                    browser.open(page.getValue(), width, dark);
                    browser.ask(OPEN_AND_SHORT);
                    String where = page.getKey() + (dark ? " dark " : " light ") + width;
                    assertEquals(List.of(), browser.brokenRules(), where);
                    assertEquals(List.of(), browser.texts(NAMELESS), where);
                }
                grounds.add(browser.ask("return getComputedStyle(document.body).backgroundColor"));
            }
            assertNotEquals(grounds.get(0), grounds.get(1), page.getKey());
        }
    }

    /** A broken rule must be found, or none would be. */
    @Test
    void aBrokenRuleIsFound() throws Exception {
        browser.open(page("report"), 1280, false);
        browser.ask(
                "document.querySelector('svg[role=img]').removeAttribute('aria-labelledby');"
                        + " document.querySelectorAll('svg[role=img] title, svg[role=img] desc')"
                        + ".forEach(e => e.remove()); document.documentElement.removeAttribute('lang');");
        List<String> broken = browser.brokenRules();
        assertTrue(broken.stream().anyMatch(one -> one.startsWith("html-has-lang")), "" + broken);
        assertTrue(broken.stream().anyMatch(one -> one.startsWith("svg-img-alt")), "" + broken);
    }

    @Test
    void everythingIsReachedByKeyboardInOrderAndSeen() {
        for (Map.Entry<String, Path> page : pages.entrySet()) {
            browser.open(page.getValue(), 1280, false);
            List<String> wanted = browser.texts(REACHABLE);
            List<String> reached = new ArrayList<>();
            for (int i = 0; i < wanted.size(); i++) {
                press(Keys.TAB);
                List<String> focused = browser.texts(FOCUSED);
                assertEquals(2, focused.size(), page.getKey() + ": focus lost after " + reached);
                reached.add(focused.get(0));
                assertEquals("seen", focused.get(1), page.getKey() + ": " + focused.get(0));
            }
            assertEquals(wanted, reached, page.getKey());
        }
    }

    @Test
    void detailsOpenByKeyboard() {
        browser.open(page("report"), 1280, false);
        List<String> wanted = browser.texts(REACHABLE);
        int at =
                wanted.indexOf(
                        wanted.stream()
                                .filter(e -> e.startsWith("SUMMARY"))
                                .findFirst()
                                .orElseThrow());
        for (int i = 0; i <= at; i++) {
            press(Keys.TAB);
        }
        press(Keys.ENTER);
        assertEquals(1L, browser.ask("return document.querySelectorAll('details[open]').length"));
    }

    /** On a phone the names of quantities stand above what is drawn, not on it. */
    @Test
    void noNameLiesOverWhatIsAllowed() {
        for (int width : new int[] {390, 1280}) {
            browser.open(page("check"), width, false);
            List<String> over = browser.texts(OVER_THE_BAND);
            assertEquals(List.of("looked at"), over, "at " + width);
        }
    }

    private void press(Keys key) {
        browser.driver().switchTo().activeElement().sendKeys(key);
    }

    @Test
    void plotsHaveNamesThatAreReadOut() {
        browser.open(page("report"), 1280, false);
        int plots = 0;
        for (WebElement plot : browser.driver().findElements(By.cssSelector("svg.plot.wide"))) {
            String role = Objects.requireNonNull(plot.getAriaRole());
            assertEquals("image", role.replace("img", "image"));
            String name = Objects.requireNonNull(plot.getAccessibleName());
            assertTrue(name.length() > 20, name);
            plots++;
        }
        assertTrue(plots >= 6, plots + " plots");
    }

    @Test
    void printsOnPaperWithoutLosingAnything() throws Exception {
        for (Map.Entry<String, Path> page : pages.entrySet()) {
            browser.open(page.getValue(), PAPER, true);
            browser.media("print", true);
            assertEquals(List.of(), browser.texts(BEYOND), page.getKey());
            assertEquals(
                    "rgb(255, 255, 255)",
                    browser.ask("return getComputedStyle(document.body).backgroundColor"),
                    page.getKey());
            browser.media("", false);
            Object data =
                    browser.driver()
                            .executeCdpCommand(
                                    "Page.printToPDF",
                                    Map.of("paperWidth", 8.27, "paperHeight", 11.69))
                            .get("data");
            byte[] pdf = Base64.getDecoder().decode(String.valueOf(data));
            try (PDDocument document = Loader.loadPDF(pdf)) {
                String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
                for (String heading :
                        browser.texts(
                                "return [...document.querySelectorAll('h2')].filter(e =>"
                                        + " e.textContent.length < 60).map(e => e.textContent)")) {
                    assertTrue(text.contains(heading.strip()), page.getKey() + ": " + heading);
                }
                assertTrue(document.getNumberOfPages() < 20, page.getKey());
            }
        }
    }
}

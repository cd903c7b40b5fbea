package org.printassay.acceptance;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.logging.Level;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A real browser without a window: Debian's Chromium, driven by WebDriver. */
final class Browser implements AutoCloseable {
    private final ChromeDriver driver;

    /** Starts it; without it the test is skipped, or fails where witnesses are required. */
    Browser() {
        Path chromium = Tool.require("chromium");
        Path chromedriver = Tool.require("chromedriver");
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(chromium.toFile());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-background-networking",
                "--disable-component-update");
        options.setCapability(ChromeOptions.LOGGING_PREFS, logs);
        ChromeDriverService service =
                new ChromeDriverService.Builder()
                        .usingDriverExecutable(chromedriver.toFile())
                        .withSilent(true)
                        .build();
        driver = new ChromeDriver(service, options);
        driver.manage().timeouts().scriptTimeout(Duration.ofSeconds(120));
        driver.manage().timeouts().pageLoadTimeout(Duration.ofSeconds(120));
    }

    ChromeDriver driver() {
        return driver;
    }

    /** A page in a window so many pixels wide, light or dark. */
    void open(Path page, int width, boolean dark) {
        width(width);
        media("", dark);
        driver.get(page.toUri().toString());
    }

    void width(int pixels) {
        cdp(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", pixels, "height", 900, "deviceScaleFactor", 1, "mobile", false));
    }

    /** Screen or print, light or dark. */
    void media(String media, boolean dark) {
        cdp(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "media",
                        media,
                        "features",
                        List.of(
                                Map.of(
                                        "name",
                                        "prefers-color-scheme",
                                        "value",
                                        dark ? "dark" : "light"))));
    }

    private void cdp(String command, Map<String, Object> parameters) {
        driver.executeCdpCommand(command, parameters);
    }

    /** What a script answers. */
    Object ask(String script, Object... arguments) {
        return Objects.requireNonNullElse(driver.executeScript(script, arguments), "");
    }

    /** A list of texts that a script answers. */
    List<String> texts(String script, Object... arguments) {
        List<String> out = new ArrayList<>();
        if (ask(script, arguments) instanceof List<?> list) {
            list.forEach(one -> out.add(String.valueOf(one)));
        }
        return out;
    }

    /** Complaints since the last call: errors of scripts, refusals by the policy. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .map(LogEntry::getMessage)
                .toList();
    }

    /** Addresses that were asked for since the last call. */
    List<String> requests() {
        List<String> out = new ArrayList<>();
        for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
            String message = entry.getMessage();
            if (message.contains("\"Network.requestWillBeSent\"")) {
                int at = message.indexOf("\"url\":\"", message.indexOf("\"request\":")) + 7;
                out.add(message.substring(at, message.indexOf('"', at)));
            }
        }
        return out;
    }

    /** Broken rules of WCAG 2.2 A and AA and good practice, as axe-core finds them. */
    List<String> brokenRules() throws Exception {
        try (InputStream rules =
                Objects.requireNonNull(Browser.class.getResourceAsStream("/axe.min.js"))) {
            driver.executeScript(new String(rules.readAllBytes(), StandardCharsets.UTF_8));
        }
        Object found =
                driver.executeAsyncScript(
                        "const done = arguments[arguments.length - 1];"
                                + "axe.run(document, {runOnly: ['wcag2a','wcag2aa','wcag21a',"
                                + "'wcag21aa','wcag22aa','best-practice'], resultTypes:"
                                + " ['violations']}).then(r => done(r.passes.length < 10 ?"
                                + " ['looked at ' + r.passes.length] : r.violations.map(v => v.id"
                                + " + ': ' + v.nodes.slice(0, 3).map(n => n.target + ' ' +"
                                + " n.failureSummary).join(' | '))), e => done(['' + e]));");
        List<String> out = new ArrayList<>();
        for (Object one : (List<?>) Objects.requireNonNull(found)) {
            out.add(String.valueOf(one));
        }
        return out;
    }

    @Override
    public void close() {
        driver.quit();
    }
}

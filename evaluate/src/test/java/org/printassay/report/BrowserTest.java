package org.printassay.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opentest4j.AssertionFailedError;

/**
 * The pages in a real browser, in a frame of exact width (a window cannot be as narrow as a phone).
 * A page wider than its frame puts something into its right margin.
 */
class BrowserTest {
    /** Margins are at least 20 pixels; half of that must stay bare. */
    private static final int BARE = 8;

    @TempDir Path folder;

    @BeforeAll
    static void require() {
        boolean found = false;
        for (String dir : System.getenv().getOrDefault("PATH", "").split(":", -1)) {
            found |= Files.isExecutable(Path.of(dir, "chromium"));
        }
        if (!found && "required".equals(System.getProperty("witnesses"))) {
            throw new AssertionError("chromium is required and missing");
        }
        assumeTrue(found, "witness missing: chromium");
    }

    @Test
    void nothingReachesBeyondTheMargin() throws Exception {
        String report =
                ReportPage.write(
                        SampleEvaluations.matt(),
                        List.of(SampleEvaluations.preview("scan-a.tif")),
                        true);
        bare(report, 1280, 5200);
        bare(report, 390, 8600);
        bare(ReportPageTest.compare(), 1280, 2800);
        bare(ReportPageTest.compare(), 390, 3600);
    }

    @Test
    void somethingBeyondTheMarginIsSeen() {
        String wide =
                ReportPageTest.compare().replace("</h1>", "<br>" + "wide".repeat(100) + "</h1>");
        String css = PageStyle.load().css();
        assertThrows(
                AssertionFailedError.class,
                () ->
                        bare(
                                wide.replace(css, css.replace("overflow-wrap: break-word;", "")),
                                390,
                                900));
    }

    private void bare(String html, int width, int height) throws Exception {
        int slack = 160;
        Path page = Files.writeString(folder.resolve("page.html"), html);
        Path frame =
                Files.writeString(
                        folder.resolve("frame.html"),
                        "<!doctype html><body style=\"margin:0;background:#fff\"><iframe"
                                + " src=\""
                                + page.getFileName()
                                + "\" style=\"border:0;width:"
                                + width
                                + "px;height:"
                                + height
                                + "px\"></iframe>");
        BufferedImage image = shot(frame, width + slack, height);
        int background = image.getRGB(width + slack - 1, 0);
        for (int y = 0; y < height; y++) {
            for (int x = width - BARE; x < width; x++) {
                int at = y;
                assertEquals(
                        background,
                        image.getRGB(x, y),
                        () -> width + " pixels wide: something at the right edge, line " + at);
            }
        }
    }

    private BufferedImage shot(Path page, int width, int height)
            throws IOException, InterruptedException {
        Path out = folder.resolve("shot.png");
        Files.deleteIfExists(out);
        Process process =
                new ProcessBuilder(
                                "chromium",
                                "--headless",
                                "--no-sandbox",
                                "--disable-gpu",
                                "--hide-scrollbars",
                                "--disable-background-networking",
                                "--user-data-dir=" + folder.resolve("profile"),
                                "--screenshot=" + out,
                                "--window-size=" + width + "," + height,
                                page.toUri().toString())
                        .redirectErrorStream(true)
                        .redirectOutput(folder.resolve("log.txt").toFile())
                        .start();
        process.waitFor(60, TimeUnit.SECONDS);
        process.destroyForcibly();
        BufferedImage image = ImageIO.read(out.toFile());
        assertNotNull(image, () -> "no picture from the browser");
        return image;
    }
}

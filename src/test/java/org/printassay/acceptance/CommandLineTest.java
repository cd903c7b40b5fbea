package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.cli.Main;

/** What commands refuse before they work, and what they say when their words are lost. */
class CommandLineTest {
    private static final int WRONG_USE = 2;
    private static final int CHART = 4;
    private static final int OUTPUT = 5;

    @TempDir Path dir;

    @Test
    void aTiffTooLargeToDrawIsRefusedBeforeAnythingIsWritten() {
        Path out = dir.resolve("chart");
        CommandLineRun run =
                CommandLineRun.of("chart", "--page", "A2", "--dpi", 2400, "--out", out);
        assertEquals(WRONG_USE, run.exitCode(), run.err());
        assertTrue(run.err().contains("lower --dpi"), run.err());
        assertFalse(Files.exists(out));
    }

    @Test
    void theDemoLeavesSomebodysPagesAlone() throws Exception {
        Path page = Files.writeString(dir.resolve("index.html"), "mine");
        CommandLineRun run = CommandLineRun.of("demo", "--out", dir);
        assertEquals(OUTPUT, run.exitCode(), run.err());
        assertTrue(run.err().contains("holds no demo"), run.err());
        assertEquals("mine", Files.readString(page));
    }

    /** Escape sequences in names of files are not sent to a terminal. */
    @Test
    void whereItWroteIsSaidOnOneHarmlessLine() throws Exception {
        Path out = dir.resolve("a\u001b[31mb\nc" + "d".repeat(130));
        CommandLineRun run = CommandLineRun.of("chart", "--dpi", 72, "--out", out);
        assertEquals(0, run.exitCode(), run.err());
        assertEquals(2, run.out().lines().count(), run.out());
        assertTrue(run.out().contains("a?[31mb c" + "d".repeat(130)), run.out());
    }

    /** A likely slip: the file that is sent to the printer is named instead of the scan. */
    @Test
    void theChartsOwnFileIsNoScan() {
        Path out = dir.resolve("chart");
        assertEquals(0, CommandLineRun.of("chart", "--dpi", 150, "--out", out).exitCode());
        CommandLineRun run = CommandLineRun.of("evaluate", out.resolve("chart-1.tif"));
        assertEquals(CHART, run.exitCode(), run.err());
        assertTrue(run.err().contains("the chart's own file"), run.err());
    }

    /** The same of a short sheet, as a picture with white around it: free of any noise. */
    @Test
    void aPictureOfTheSheetIsNoScan() throws Exception {
        Path out = dir.resolve("short");
        assertEquals(
                0,
                CommandLineRun.of("chart", "--recipe", "short", "--page", "4x6in", "--out", out)
                        .exitCode());
        BufferedImage sheet = ImageIO.read(out.resolve("chart-1.tif").toFile());
        BufferedImage framed =
                new BufferedImage(
                        sheet.getWidth() + 200,
                        sheet.getHeight() + 200,
                        BufferedImage.TYPE_INT_RGB);
        Graphics2D drawing = framed.createGraphics();
        drawing.setColor(Color.WHITE);
        drawing.fillRect(0, 0, framed.getWidth(), framed.getHeight());
        drawing.drawImage(sheet, 100, 100, null);
        drawing.dispose();
        Path picture = dir.resolve("picture.png");
        assertTrue(ImageIO.write(framed, "png", picture.toFile()));
        CommandLineRun run = CommandLineRun.of("evaluate", picture);
        assertEquals(CHART, run.exitCode(), run.err());
        assertTrue(run.err().contains("the chart's own file"), run.err());
    }

    /** A full disk behind standard output, as {@code > /dev/full} has it. */
    @Test
    void lostOutputIsAFailure() {
        OutputStream full =
                new OutputStream() {
                    @Override
                    public void write(int b) throws IOException {
                        throw new IOException("No space left on device");
                    }
                };
        PrintStream before = System.out;
        System.setOut(new PrintStream(full, true, StandardCharsets.UTF_8));
        try {
            assertEquals(OUTPUT, Main.run("chart", "--json", "--out", dir.resolve("c").toString()));
        } finally {
            System.setOut(before);
        }
    }
}

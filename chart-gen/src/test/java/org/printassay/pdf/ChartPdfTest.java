package org.printassay.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.color.PDICCBased;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

class ChartPdfTest {
    @TempDir Path dir;

    private static Chart chart(String page, RgbSpace space) throws Exception {
        return Charts.create(Recipe.paper(PageSize.parse(page), Margins.all(10), space));
    }

    private static byte[] pdf(Chart chart) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ChartPdf.write(chart, out);
        return out.toByteArray();
    }

    /** Every pixel of a patch that lies a pixel within it, against its code. */
    private static void assertCodes(Sheet sheet, BufferedImage image, double dpi, int within) {
        for (Patch patch : sheet.patches()) {
            RectMm area = patch.area();
            int left = (int) Math.ceil(area.x() * dpi / 25.4) + 1;
            int top = (int) Math.ceil(area.y() * dpi / 25.4) + 1;
            int right = (int) Math.floor(area.right() * dpi / 25.4) - 1;
            int bottom = (int) Math.floor(area.bottom() * dpi / 25.4) - 1;
            boolean large = area.width() > 20;
            for (int y = large ? (top + bottom) / 2 : top; y < bottom; y++) {
                for (int x = left; x < right; x++) {
                    int rgb = image.getRGB(x, y);
                    Rgb8 code = patch.rgb();
                    int off =
                            Math.max(
                                    Math.abs(((rgb >> 16) & 255) - code.r()),
                                    Math.max(
                                            Math.abs(((rgb >> 8) & 255) - code.g()),
                                            Math.abs((rgb & 255) - code.b())));
                    assertTrue(
                            off <= within,
                            () -> patch.id() + " is " + Integer.toHexString(rgb) + " not " + code);
                }
                if (large) {
                    break;
                }
            }
        }
    }

    /** The other designs too; in every encoding the profile is ours, byte by byte. */
    @ParameterizedTest
    @CsvSource({"PRINTER,A5", "SHORT,4x6in"})
    void otherDesignsHaveTheirExactCodesAndProfiles(Recipe.Kind kind, String page)
            throws Exception {
        for (RgbSpace space : RgbSpace.values()) {
            Chart chart =
                    Charts.create(Recipe.of(kind, PageSize.parse(page), Margins.all(5), space));
            try (PDDocument document = Loader.loadPDF(pdf(chart))) {
                PDICCBased found =
                        (PDICCBased)
                                document.getPage(0).getResources().getColorSpace(ChartPdf.SPACE);
                assertArrayEquals(RgbProfiles.of(space), found.getPDStream().toByteArray());
                if (space == RgbSpace.SRGB) {
                    BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, 150);
                    assertCodes(chart.sheets().get(0), image, 150, 0);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"A4", "Letter"})
    void everyPatchHasItsExactCodeInPdfBox(String page) throws Exception {
        Chart chart = chart(page, RgbSpace.SRGB);
        try (PDDocument document = Loader.loadPDF(pdf(chart))) {
            assertCodes(
                    chart.sheets().get(0),
                    new PDFRenderer(document).renderImageWithDPI(0, 150),
                    150,
                    0);
        }
    }

    @Test
    void everyPatchHasItsExactCodeInPoppler() throws Exception {
        Chart chart = chart("A4", RgbSpace.SRGB);
        Files.write(dir.resolve("chart.pdf"), pdf(chart));
        tool("pdftoppm", "-r", "150", "-png", "chart.pdf", "page");
        assertCodes(
                chart.sheets().get(0), ImageIO.read(dir.resolve("page-1.png").toFile()), 150, 0);
    }

    @Test
    void everyPatchIsWithinOneCodeInGhostscript() throws Exception {
        Chart chart = chart("A4", RgbSpace.SRGB);
        Files.write(dir.resolve("chart.pdf"), pdf(chart));
        tool(
                "gs",
                "-q",
                "-dNOPAUSE",
                "-dBATCH",
                "-sDEVICE=png16m",
                "-r150",
                "-o",
                "gs.png",
                "chart.pdf");
        assertCodes(chart.sheets().get(0), ImageIO.read(dir.resolve("gs.png").toFile()), 150, 1);
    }

    /** ISO 32000-1, 8.6.5.5: operands of an ICC-based space are the codes as fractions. */
    @ParameterizedTest
    @EnumSource(RgbSpace.class)
    void operandsRoundToTheCodesAndTheProfileIsOurs(RgbSpace space) throws Exception {
        Chart chart = chart("A4", space);
        try (PDDocument document = Loader.loadPDF(pdf(chart))) {
            PDICCBased based =
                    (PDICCBased) document.getPage(0).getResources().getColorSpace(ChartPdf.SPACE);
            assertArrayEquals(RgbProfiles.of(space), based.getPDStream().toByteArray());
            String content;
            try (InputStream in = document.getPage(0).getContents()) {
                content = new String(in.readAllBytes(), StandardCharsets.US_ASCII);
            }
            Matcher colours =
                    Pattern.compile("(?m)^([\\d.]+) ([\\d.]+) ([\\d.]+) sc$").matcher(content);
            Set<Rgb8> drawn = new HashSet<>();
            while (colours.find()) {
                int[] code = new int[3];
                for (int i = 0; i < 3; i++) {
                    double exact = Double.parseDouble(colours.group(i + 1)) * 255;
                    code[i] = (int) Math.round(exact);
                    assertEquals(code[i], exact, 0.001);
                }
                drawn.add(new Rgb8(code[0], code[1], code[2]));
            }
            for (Patch patch : chart.sheets().get(0).patches()) {
                assertTrue(
                        drawn.contains(patch.rgb()) || patch.rgb().equals(Rgb8.grey(255)),
                        patch.id());
            }
            assertEquals(
                    PDViewerPreferences.PRINT_SCALING.None.toString(),
                    document.getDocumentCatalog().getViewerPreferences().getPrintScaling());
            assertEquals(1, document.getDocumentCatalog().getOutputIntents().size());
        }
    }

    @Test
    void sameChartSameBytesAndSmall() throws Exception {
        Chart chart = chart("A4", RgbSpace.SRGB);
        byte[] once = pdf(chart);
        assertArrayEquals(once, pdf(chart));
        assertTrue(once.length < 100_000, "PDF of " + once.length + " bytes");
    }

    /** A seam would show as a pixel lighter than both patches that meet there. */
    @ParameterizedTest
    @ValueSource(ints = {300, 600})
    void noSeamsInTheOrderedShadowWedge(int dpi) throws Exception {
        Chart chart = chart("A4", RgbSpace.SRGB);
        Files.write(dir.resolve("chart.pdf"), pdf(chart));
        tool("pdftoppm", "-r", Integer.toString(dpi), "-png", "chart.pdf", "page");
        BufferedImage image = ImageIO.read(dir.resolve("page-1.png").toFile());
        for (Patch patch : chart.sheets().get(0).patches()) {
            if (patch.rgb().isNeutral() && patch.rgb().r() == 12) {
                RectMm area = patch.area();
                boolean ordered =
                        chart.sheets().get(0).patches().stream()
                                .anyMatch(
                                        p ->
                                                p.rgb().equals(Rgb8.grey(13))
                                                        && Math.abs(p.area().x() - area.right())
                                                                < 0.01
                                                        && p.area().y() == area.y());
                if (ordered) {
                    int y = (int) (area.centre().y() * dpi / 25.4);
                    int edge = (int) Math.round(area.right() * dpi / 25.4);
                    for (int x = edge - 3; x <= edge + 3; x++) {
                        int code = image.getRGB(x, y) & 255;
                        assertTrue(code >= 12 && code <= 13, "code " + code + " at the seam");
                    }
                    return;
                }
            }
        }
        throw new AssertionError("no ordered neighbour of level 12 found");
    }

    @Test
    void theSheetCodeIsReadBackFromARenderedPage() throws Exception {
        Chart chart = chart("Letter", RgbSpace.SRGB);
        Sheet sheet = chart.sheets().get(0);
        try (PDDocument document = Loader.loadPDF(pdf(chart))) {
            BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, 200);
            RectMm quiet = sheet.code().inset(-2.5);
            double scale = 200 / 25.4;
            BufferedImage code =
                    image.getSubimage(
                            (int) (quiet.x() * scale),
                            (int) (quiet.y() * scale),
                            (int) (quiet.width() * scale),
                            (int) (quiet.height() * scale));
            int[] pixels =
                    code.getRGB(0, 0, code.getWidth(), code.getHeight(), null, 0, code.getWidth());
            BinaryBitmap bitmap =
                    new BinaryBitmap(
                            new HybridBinarizer(
                                    new RGBLuminanceSource(
                                            code.getWidth(), code.getHeight(), pixels)));
            String text =
                    new QRCodeReader()
                            .decode(bitmap, Map.of(DecodeHintType.TRY_HARDER, true))
                            .getText();
            assertEquals(sheet.codeText(), text);
        }
    }

    private void tool(String... command) throws Exception {
        boolean there =
                Arrays.stream(System.getenv("PATH").split(":", -1))
                        .anyMatch(p -> Files.isExecutable(Path.of(p, command[0])));
        if (!there && "required".equals(System.getProperty("witnesses"))) {
            throw new AssertionError(command[0] + " is missing but witnesses are required");
        }
        Assumptions.assumeTrue(there, command[0] + " is not installed");
        Process process =
                new ProcessBuilder(command)
                        .directory(dir.toFile())
                        .redirectErrorStream(true)
                        .redirectOutput(dir.resolve("tool.log").toFile())
                        .start();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS), command[0]);
        assertEquals(0, process.exitValue(), Files.readString(dir.resolve("tool.log")));
    }
}

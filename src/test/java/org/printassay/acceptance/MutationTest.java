package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.ChartFile;
import org.printassay.chart.ReadingOrder;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Spectrum;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.print.Printing;
import org.printassay.measurement.Conditions;
import org.printassay.measurement.CxfWriter;
import org.printassay.measurement.MeasuredPatch;
import org.printassay.measurement.MeasurementFile;
import org.printassay.measurement.MeasurementReader;
import org.printassay.measurement.MeasurementWriter;
import org.printassay.sheet.Patch;

/**
 * Damaged scans, chart files, profiles and measurement files: each ends with a documented exit code
 * and one line, writes nothing when refused, and does not hang. {@code -Dmutations=20000} makes the
 * long run, {@code -DmutationsFrom} starts elsewhere; a file that fails is kept in {@code
 * target/odd}.
 */
class MutationTest {
    private static final int USUAL = 500;
    private static final int HANGS_AFTER_SECONDS = 30;
    private static final Set<Integer> REFUSALS = Set.of(2, 3, 4, 5);

    @TempDir Path dir;

    /** A good file and the arguments before and after it that have it read. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Seed(String name, byte[] bytes, List<Object> before, List<Object> after) {
        List<Object> arguments(Path damaged, Path out) {
            List<Object> all = new ArrayList<>(List.of("evaluate"));
            all.addAll(before);
            all.add(damaged);
            all.addAll(after);
            all.addAll(List.of("--out", out, "--force"));
            return all;
        }
    }

    @Test
    void damagedFilesEndInOneLineAndADocumentedCode() throws Exception {
        List<Seed> seeds = seeds();
        int count = Integer.getInteger("mutations", USUAL);
        int from = Integer.getInteger("mutationsFrom", 0);
        List<String> failures = new ArrayList<>();
        ExecutorService runner = Executors.newSingleThreadExecutor();
        try {
            for (int i = from; i < from + count && failures.size() < 20; i++) {
                Seed seed = seeds.get(i % seeds.size());
                byte[] damaged = Mutations.of(seed.bytes, i);
                String wrong = run(runner, seed, damaged);
                if (!wrong.isEmpty()) {
                    Path kept = Path.of("target", "odd", i + "-" + seed.name);
                    Files.createDirectories(kept.getParent());
                    Files.write(kept, damaged);
                    failures.add(kept.getFileName() + ": " + wrong);
                }
            }
        } finally {
            runner.shutdownNow();
        }
        assertTrue(failures.isEmpty(), String.join("\n", failures));
    }

    /** What is wrong with how a damaged file was taken; empty when nothing is. */
    private String run(ExecutorService runner, Seed seed, byte[] damaged) throws Exception {
        Path file = Files.write(dir.resolve(seed.name), damaged);
        Path out = dir.resolve("out");
        CommandLineRun run;
        try {
            run =
                    runner.submit(() -> CommandLineRun.of(seed.arguments(file, out).toArray()))
                            .get(HANGS_AFTER_SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException e) {
            throw new AssertionError(seed.name + " hangs", e);
        } catch (ExecutionException e) {
            return "throws " + e.getCause();
        }
        boolean written = Files.exists(out);
        remove(out);
        if (run.exitCode() == 0) {
            return written ? "" : "done, but nothing written";
        }
        if (!REFUSALS.contains(run.exitCode())) {
            return "exit code " + run.exitCode() + " " + run.err();
        }
        if (run.err().strip().lines().count() != 1 || run.err().contains("Exception")) {
            return "not one plain line: " + run.err();
        }
        if (run.err().chars().anyMatch(c -> c < ' ' && c != '\n' && c != '\r')) {
            return "control characters: " + run.err();
        }
        return written ? "refused, but something was written" : "";
    }

    private static void remove(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }

    private List<Seed> seeds() throws Exception {
        List<Seed> seeds = new ArrayList<>();
        BufferedImage colour = picture(BufferedImage.TYPE_INT_RGB);
        BufferedImage grey = picture(BufferedImage.TYPE_USHORT_GRAY);
        for (String compression : new String[] {"", "LZW", "ZLib", "PackBits", "JPEG"}) {
            String name = compression.isEmpty() ? "plain" : compression.toLowerCase(Locale.ROOT);
            seeds.add(scan(name + ".tif", written("tiff", compression, colour)));
        }
        seeds.add(scan("grey16.tif", written("tiff", "ZLib", grey)));
        seeds.add(scan("colour.png", written("png", "", colour)));
        seeds.add(scan("grey16.png", written("png", "", grey)));
        seeds.add(scan("colour.jpg", written("jpeg", "", colour)));
        seeds.add(scan("tiled.tif", written("tiff", "LZW", colour, Layout.TILES)));
        seeds.add(scan("tiled-jpeg.tif", written("tiff", "JPEG", colour, Layout.TILES)));
        seeds.add(scan("interlaced.png", written("png", "", colour, Layout.PROGRESSIVE)));
        seeds.add(scan("progressive.jpg", written("jpeg", "", colour, Layout.PROGRESSIVE)));
        seeds.add(scan("deflate.pdf", pdf(colour, false)));
        seeds.add(scan("jpeg.pdf", pdf(colour, true)));
        Path image = Files.write(dir.resolve("image.png"), written("png", "", colour));
        seeds.add(
                new Seed(
                        "scanner.icc",
                        RgbProfiles.of(RgbSpace.ADOBE_RGB),
                        List.of(image, "--profile"),
                        List.of()));
        Path chart = dir.resolve("chart");
        CommandLineRun made = CommandLineRun.of("chart", "--page", "A4", "--out", chart);
        assertTrue(made.exitCode() == 0, made.err());
        seeds.add(
                new Seed(
                        "chart.json",
                        Files.readAllBytes(chart.resolve("chart.json")),
                        List.of(image, "--chart"),
                        List.of()));
        Path measured = dir.resolve("measured.txt");
        PrintRoom.measure(
                SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 3), 3, measured);
        seeds.add(new Seed("measurement.txt", Files.readAllBytes(measured), List.of(), List.of()));
        seeds.addAll(measurements(measured, chart.resolve("chart.json")));
        return seeds;
    }

    /** The same readings in the other kinds of measurement files. */
    private static List<Seed> measurements(Path measured, Path chart) throws Exception {
        MeasurementFile file = MeasurementReader.read(measured);
        List<MeasurementWriter.Row> rows = new ArrayList<>();
        StringBuilder csv = new StringBuilder("Name,R,G,B,L*,a*,b*\n");
        List<Double> grey = Collections.nCopies(36, 0.25);
        for (MeasuredPatch p : file.patches()) {
            if (rows.size() < 120) {
                Spectrum spectrum = new Spectrum(380, 10, grey);
                rows.add(new MeasurementWriter.Row(p.id(), p.rgb(), p.lab(), null, null, spectrum));
                csv.append(p.id()).append(',').append(p.rgb().r()).append(',');
                csv.append(p.rgb().g()).append(',').append(p.rgb().b()).append(',');
                csv.append(p.lab().l()).append(',').append(p.lab().a()).append(',');
                csv.append(p.lab().b()).append('\n');
            }
        }
        String cxf = CxfWriter.write("120 patches", Instant.EPOCH, Conditions.UNKNOWN, rows);
        StringBuilder typed = new StringBuilder();
        for (Patch patch : ReadingOrder.of(ChartFile.read(chart)).order()) {
            Lab lab = RgbSpace.SRGB.toLab(patch.rgb());
            typed.append(lab.l()).append(' ').append(lab.a()).append(' ').append(lab.b());
            typed.append('\n');
        }
        return List.of(
                new Seed("measurement.cxf", bytes(cxf), List.of(), List.of()),
                new Seed("spectra.txt", bytes(spectra(rows)), List.of(), List.of()),
                new Seed("measurement.csv", bytes(csv.toString()), List.of(), List.of()),
                new Seed(
                        "typed.txt",
                        bytes(typed.toString()),
                        List.of(),
                        List.of("--chart", chart)));
    }

    private static String spectra(List<MeasurementWriter.Row> rows) {
        return MeasurementWriter.write(Map.of("MEASUREMENT_CONDITION", "M1"), rows);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static Seed scan(String name, byte[] bytes) {
        return new Seed(name, bytes, List.of(), List.of());
    }

    private static BufferedImage picture(int type) {
        BufferedImage image = new BufferedImage(61, 47, type);
        Random random = new Random(2);
        for (int i = 0; i < 61 * 47; i++) {
            int bits = type == BufferedImage.TYPE_USHORT_GRAY ? 65536 : 256;
            for (int band = 0; band < image.getRaster().getNumBands(); band++) {
                image.getRaster().setSample(i % 61, i / 61, band, random.nextInt(bits));
            }
        }
        return image;
    }

    private enum Layout {
        ROWS,
        TILES,
        PROGRESSIVE
    }

    private static byte[] written(String format, String compression, BufferedImage image)
            throws IOException {
        return written(format, compression, image, Layout.ROWS);
    }

    private static byte[] written(
            String format, String compression, BufferedImage image, Layout layout)
            throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName(format).next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            if (!compression.isEmpty()) {
                param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
                param.setCompressionType(compression);
            }
            if (layout == Layout.TILES) {
                param.setTilingMode(ImageWriteParam.MODE_EXPLICIT);
                param.setTiling(32, 16, 0, 0);
            } else if (layout == Layout.PROGRESSIVE) {
                param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
            }
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    private static byte[] pdf(BufferedImage image, boolean jpeg) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(new PDRectangle(61, 47));
            document.addPage(page);
            PDImageXObject drawn =
                    jpeg
                            ? JPEGFactory.createFromImage(document, image)
                            : LosslessFactory.createFromImage(document, image);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.drawImage(drawn, 0, 0, 61, 47);
            }
            document.save(bytes);
        }
        return bytes.toByteArray();
    }
}

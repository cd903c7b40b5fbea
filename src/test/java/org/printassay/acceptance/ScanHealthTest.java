package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntUnaryOperator;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Dirt;
import org.printassay.demo.flatbed.Encoding;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Tone;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.metric.Extreme;
import org.printassay.metric.Wedge;
import org.printassay.problem.Problem;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.report.Reports;

/**
 * Settings that spoil scans, each put into a simulated scan and told by its warning; and good scans
 * of many kinds that get none.
 */
class ScanHealthTest {
    private static final Set<WarningCode> SPOILING =
            EnumSet.of(
                    WarningCode.AUTOMATIC_EXPOSURE,
                    WarningCode.AUTOMATIC_COLOUR,
                    WarningCode.BLURRED,
                    WarningCode.PROFILE_DOUBTFUL,
                    WarningCode.CLIPPED,
                    WarningCode.HISTOGRAM_GAPS,
                    WarningCode.SHARPENED,
                    WarningCode.UPSAMPLED,
                    WarningCode.DUSTY,
                    WarningCode.SCATTERED,
                    WarningCode.WINDOWS_INKED,
                    WarningCode.LOSSY);

    @TempDir Path dir;

    private static Flatbed flatbed() {
        return SimulatedPrint.flatbed()
                .withSamplesPerInch(200)
                .withPlacing(Placing.STRAIGHT)
                .withFile(ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 8));
    }

    private Path scanned(Flatbed flatbed) throws Exception {
        Print print = SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 5);
        Path file = dir.resolve("scan.png");
        PrintRoom.scan(print, flatbed, 5, file);
        return file;
    }

    /** The scan with every 8 bit code of each channel replaced. */
    private Path edited(Flatbed flatbed, IntUnaryOperator... channels) throws Exception {
        return edited(scanned(flatbed), channels);
    }

    private Path edited(Path scan, IntUnaryOperator... channels) throws IOException {
        BufferedImage image = ImageIO.read(scan.toFile());
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y);
                int r = channels[0].applyAsInt((rgb >> 16) & 255);
                int g = channels[1 % channels.length].applyAsInt((rgb >> 8) & 255);
                int b = channels[2 % channels.length].applyAsInt(rgb & 255);
                image.setRGB(x, y, 0xff000000 | r << 16 | g << 8 | b);
            }
        }
        return written(image);
    }

    private Path written(BufferedImage image) throws IOException {
        Path file = dir.resolve("edited.png");
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    private static Evaluation evaluated(Path scan) throws Exception {
        return Evaluator.evaluate(EvaluationRequest.of(scan)).evaluation();
    }

    private static Set<WarningCode> spoiling(Evaluation evaluation) {
        return evaluation.warnings().stream()
                .map(Warning::code)
                .filter(SPOILING::contains)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(WarningCode.class)));
    }

    private static int held(double code) {
        return (int) Math.round(Math.max(0, Math.min(255, code)));
    }

    /**
     * Told with the setting to change below a nominal 250, whatever the print's size makes of it.
     */
    @ParameterizedTest
    @ValueSource(ints = {230, 250})
    void fewSamplesAnInchAreTold(int samplesPerInch) throws Exception {
        List<String> told =
                evaluated(scanned(flatbed().withSamplesPerInch(samplesPerInch))).warnings().stream()
                        .filter(warning -> warning.code() == WarningCode.RESOLUTION_LOW)
                        .map(Warning::text)
                        .toList();
        if (samplesPerInch < 240) {
            assertEquals(1, told.size());
            assertTrue(told.get(0).contains("300"), told.get(0));
        } else {
            assertEquals(List.of(), told);
        }
    }

    /** Every kind of good scan that the random conditions make, clean and hard. */
    @ParameterizedTest
    @ValueSource(longs = {7, 8, 34})
    void aGoodScanHasNoneOfThem(long seed) throws Exception {
        RandomConditions good = RandomConditions.of(seed);
        Print print = SimulatedPrint.print(good.paper(), good.printing(), seed);
        Path file = dir.resolve("good");
        PrintRoom.scan(print, good.flatbed(), seed, file);
        assertEquals(Set.of(), spoiling(evaluated(file)), good.toString());
    }

    @Test
    void aGoodPlainScanHasNoneOfThem() throws Exception {
        assertEquals(Set.of(), spoiling(evaluated(scanned(flatbed()))));
        assertEquals(Set.of(), spoiling(evaluated(edited(flatbed(), v -> v))));
    }

    @Test
    void automaticContrastIsToldAndItsEndsAreNotJudged() throws Exception {
        Flatbed bed = flatbed();
        Evaluation e = evaluated(scanned(bed.withSensor(bed.sensor().withAutoLevels(true))));
        assertTrue(spoiling(e).contains(WarningCode.AUTOMATIC_EXPOSURE), e.warnings().toString());
        assertTrue(spoiling(e).contains(WarningCode.CLIPPED));
        assertNull(e.highlights());
        assertNull(Objects.requireNonNull(e.white()).lab());
        // The scan has a profile: that it lacked one would be a false reason.
        assertFalse(e.findings().toString().contains("a scanner's profile"));
        assertTrue(e.findings().toString().contains("clipped"));
        Reports.writeAll(e, List.of(), true, dir);
        String page = Files.readString(dir.resolve("report.html"));
        assertFalse(page.contains("taken as L* 100"));
        assertTrue(page.contains("clipped in the scan"));
    }

    /**
     * Each channel of a scan in 16 bits stretched by itself, by the outermost codes and by shares
     * cut off: no code is missing, neither paper nor black lies at an end, and what the profile
     * tells is far off, so the uncertainty must hold what is true.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.001})
    void stretchedChannelsAreTold(double share) throws Exception {
        PaperModel paper =
                PaperModel.faultless(
                                "Paper M (simulated)", new Lab(93, 0.5, 4), new Lab(20, 0, 0.5))
                        .withSurface(SimulatedPrint.GOOD_SURFACE);
        Path plain = dir.resolve("plain.png");
        Flatbed bed = flatbed().withFile(ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 16));
        PrintRoom.scan(
                SimulatedPrint.print(paper, Printing.EXACT, 5),
                bed.withSensor(bed.sensor().withEncoding(Encoding.SRGB)),
                5,
                plain);
        assertEquals(Set.of(), spoiling(profiled(plain)));
        BufferedImage image = ImageIO.read(plain.toFile());
        WritableRaster raster = image.getRaster();
        int[] codes = new int[image.getWidth() * image.getHeight()];
        for (int c = 0; c < 3; c++) {
            raster.getSamples(0, 0, image.getWidth(), image.getHeight(), c, codes);
            int[] sorted = codes.clone();
            Arrays.sort(sorted);
            int low = sorted[(int) (share * (sorted.length - 1))];
            double by = 65535.0 / (sorted[(int) ((1 - share) * (sorted.length - 1))] - low);
            for (int i = 0; i < codes.length; i++) {
                codes[i] = (int) Math.round(Math.max(0, Math.min(65535, by * (codes[i] - low))));
            }
            raster.setSamples(0, 0, image.getWidth(), image.getHeight(), c, codes);
        }
        Evaluation e = profiled(written(image));
        Set<WarningCode> told = spoiling(e);
        assertTrue(told.contains(WarningCode.AUTOMATIC_EXPOSURE), e.warnings().toString());
        assertTrue(told.contains(WarningCode.AUTOMATIC_COLOUR), e.warnings().toString());
        Extreme white = Objects.requireNonNull(e.white());
        assertHolds(paper.white(), white);
        Extreme black = Objects.requireNonNull(e.black());
        if (black.lab() != null) {
            assertHolds(paper.black(), black);
        }
    }

    private static void assertHolds(Lab real, Extreme read) {
        Lab lab = Objects.requireNonNull(read.lab());
        assertEquals(real.l(), lab.l(), read.uncertainty().l());
        assertEquals(real.a(), lab.a(), read.uncertainty().a());
        assertEquals(real.b(), lab.b(), read.uncertainty().b());
    }

    @Test
    void overexposureIsTold() throws Exception {
        Flatbed bed = flatbed();
        Evaluation e = evaluated(scanned(bed.withSensor(bed.sensor().withExposure(1.25))));
        assertTrue(spoiling(e).contains(WarningCode.AUTOMATIC_EXPOSURE));
        assertTrue(spoiling(e).contains(WarningCode.CLIPPED));
        assertNull(e.highlights());
        assertNull(e.tone(), "its aim hangs on paper");
    }

    @Test
    void aBlackPointThatClipsIsTold() throws Exception {
        Evaluation e = evaluated(edited(flatbed(), v -> held((v - 40) * 255 / 215.0)));
        assertTrue(spoiling(e).contains(WarningCode.CLIPPED), e.warnings().toString());
        assertTrue(spoiling(e).contains(WarningCode.AUTOMATIC_EXPOSURE));
        assertNull(e.shadows());
    }

    /**
     * A black point set a little below black leaves codes there, but once stray light is taken off
     * they are darker than any print: no black, and no level, may be told from them.
     */
    @Test
    void aBlackPointThatCutsIsTold() throws Exception {
        Flatbed bed = flatbed();
        Flatbed straying =
                bed.withOptics(bed.optics().withStrayLight(0.02, 0.015))
                        .withSensor(bed.sensor().withEncoding(Encoding.SRGB));
        int cut = darkest(ImageIO.read(scanned(straying).toFile())) - 5;
        Evaluation e = profiled(edited(straying, v -> held((v - cut) * 255.0 / (255 - cut))));
        assertTrue(spoiling(e).contains(WarningCode.AUTOMATIC_EXPOSURE), e.warnings().toString());
        assertNull(Objects.requireNonNull(e.black()).lab());
        assertNull(e.shadows());
        assertNull(e.tone(), "its aim hangs on black");
        assertNull(e.colours(), "their aim hangs on black");
        String told = e.warnings().toString();
        assertTrue(told.contains("Shadows were not judged: black is clipped"), told);
        assertTrue(told.contains("Colours were not judged: black, which their aim hangs on"), told);
        assertFalse(
                told.contains("most black patches are at the end of the scanner's range"), told);
    }

    /** Green code that one pixel in a hundred is darker than. */
    private static int darkest(BufferedImage image) {
        int[] counts = new int[256];
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                counts[(image.getRGB(x, y) >> 8) & 255]++;
            }
        }
        long sum = 0;
        int code = 0;
        while (100 * (sum += counts[code]) < (long) image.getWidth() * image.getHeight()) {
            code++;
        }
        return code;
    }

    /**
     * Without a profile the scanner's own curve is not known: it must not be told as the print's.
     */
    @Test
    void theCurveOfAScannerIsNotToldAsThatOfThePrint() throws Exception {
        for (double gamma : new double[] {1.8, 2.6}) {
            Evaluation e =
                    evaluated(edited(flatbed(), v -> held(255 * Math.pow(v / 255.0, 2.2 / gamma))));
            assertEquals(Trust.PLAIN_SCAN, e.trust());
            String told = e.findings().toString();
            assertFalse(told.contains(" too dark") || told.contains(" too light"), told);
        }
    }

    @Test
    void anEditInEightBitsIsTold() throws Exception {
        Evaluation e = evaluated(edited(flatbed(), v -> held((v - 8) * 1.12)));
        assertTrue(spoiling(e).contains(WarningCode.HISTOGRAM_GAPS), e.warnings().toString());
    }

    /** An editor with 16 bits rounds no code away, and yet has but the tones of 8 bits. */
    @Test
    void aMildEditOfEightBitsInSixteenIsTold() throws Exception {
        Raster eight = ImageIO.read(scanned(flatbed()).toFile()).getRaster();
        int[] offsets = {0, 1, 2};
        WritableRaster sixteen =
                Raster.createInterleavedRaster(
                        DataBuffer.TYPE_USHORT,
                        eight.getWidth(),
                        eight.getHeight(),
                        3 * eight.getWidth(),
                        3,
                        offsets,
                        null);
        int[] row = new int[3 * eight.getWidth()];
        for (int y = 0; y < eight.getHeight(); y++) {
            eight.getPixels(0, y, eight.getWidth(), 1, row);
            Arrays.setAll(
                    row,
                    at -> (int) Math.round(65535 * Math.max(0, (row[at] / 255.0 - 0.02) / 0.98)));
            sixteen.setPixels(0, y, eight.getWidth(), 1, row);
        }
        ColorModel colours =
                new ComponentColorModel(
                        ColorSpace.getInstance(ColorSpace.CS_sRGB),
                        false,
                        false,
                        Transparency.OPAQUE,
                        DataBuffer.TYPE_USHORT);
        Evaluation e = evaluated(written(new BufferedImage(colours, sixteen, false, null)));
        assertTrue(spoiling(e).contains(WarningCode.HISTOGRAM_GAPS), e.warnings().toString());
        assertTrue(e.warnings().toString().contains("at other codes"), e.warnings().toString());
    }

    /** Too few codes are missing to show over the whole range. */
    @Test
    void aCurveThatBrightensInEightBitsIsTold() throws Exception {
        Evaluation e = evaluated(edited(flatbed(), v -> held(255 * Math.pow(v / 255.0, 0.85))));
        assertTrue(spoiling(e).contains(WarningCode.HISTOGRAM_GAPS), e.warnings().toString());
        assertTrue(e.warnings().toString().contains("in a third of its range"));
    }

    /**
     * Curves laid over a scan in 8 bits: what they do to levels is not known, so the interval must
     * hold the level that the scan itself tells.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1.4})
    void levelsOfAnEditedScanAreToldWide(double exponent) throws Exception {
        PaperModel paper =
                PaperModel.faultless("Paper L (simulated)", new Lab(93, 0.3, -3), new Lab(4, 0, 0))
                        .withTone(Tone.AIM.withBlocked(0, 3, false))
                        .withSurface(SimulatedPrint.GOOD_SURFACE);
        Flatbed bed = flatbed();
        Path plain = dir.resolve("scan.png");
        PrintRoom.scan(
                SimulatedPrint.print(paper, Printing.EXACT, 5),
                bed.withSensor(bed.sensor().withEncoding(Encoding.SRGB)),
                5,
                plain);
        int truth = 1;
        while (paper.colourOf(Rgb8.grey(truth)).l() - paper.black().l() < 0.5) {
            truth++;
        }
        Evaluation e = profiled(edited(plain, v -> held(255 * Math.pow(v / 255.0, exponent))));
        assertTrue(spoiling(e).contains(WarningCode.HISTOGRAM_GAPS), e.warnings().toString());
        Wedge shadows = Objects.requireNonNull(e.shadows());
        Integer merged = Objects.requireNonNull(shadows.merged());
        Integer separated = Objects.requireNonNull(shadows.separated());
        assertTrue(merged < truth && truth <= separated, merged + " " + truth + " " + separated);
    }

    /** Red written where blue should be: every grey is still right, and every colour wrong. */
    @Test
    void exchangedChannelsAreRefused() throws Exception {
        BufferedImage image = ImageIO.read(scanned(flatbed()).toFile());
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y);
                int swapped = (rgb & 255) << 16 | (rgb & 0xff00) | ((rgb >> 16) & 255);
                image.setRGB(x, y, 0xff000000 | swapped);
            }
        }
        Path scan = written(image);
        for (Executable reading :
                List.<Executable>of(() -> profiled(scan), () -> evaluated(scan))) {
            Problem problem = assertThrows(Problem.class, reading);
            assertEquals(Problem.Kind.INPUT, problem.kind());
            assertTrue(
                    problem.getMessage().contains("red and blue are exchanged"),
                    problem.getMessage());
        }
    }

    /** Paper below the end of the range, the same in all channels: doubt, as papers are tinted. */
    @Test
    void paperOfOneCodeInAllChannelsIsDoubted() throws Exception {
        PaperModel paper =
                PaperModel.faultless(
                        "Paper G (simulated)", new Lab(92, 0, 0), new Lab(8, 0.1, 0.2));
        Path file = dir.resolve("neutral.tif");
        PrintRoom.scan(
                SimulatedPrint.print(paper, Printing.EXACT, 5),
                flatbed().withFile(ScanFile.TIFF16),
                5,
                file);
        Evaluation e = evaluated(file);
        assertEquals(Set.of(WarningCode.AUTOMATIC_COLOUR), spoiling(e), e.warnings().toString());
        assertTrue(e.warnings().toString().contains("may be on"), e.warnings().toString());
        assertFalse(e.findings().toString().contains("Greys are neutral"));
        // Coding makes slight tints grey: there the same says nothing.
        Path lossy = dir.resolve("neutral.jpg");
        PrintRoom.scan(
                SimulatedPrint.print(paper, Printing.EXACT, 5),
                flatbed().withFile(ScanFile.TIFF16.withFormat(ScanFile.Format.JPEG, 8)),
                5,
                lossy);
        assertFalse(spoiling(evaluated(lossy)).contains(WarningCode.AUTOMATIC_COLOUR));
    }

    @Test
    void automaticColourIsTold() throws Exception {
        Evaluation e = evaluated(neutralised());
        assertTrue(spoiling(e).contains(WarningCode.AUTOMATIC_COLOUR), e.warnings().toString());
    }

    /** As if sRGB were the scanner's profile. */
    private Evaluation profiled(Path scan) throws Exception {
        Path profile = dir.resolve("scanner.icc");
        Files.write(profile, RgbProfiles.of(RgbSpace.SRGB));
        EvaluationRequest given = EvaluationRequest.of(scan);
        return Evaluator.evaluate(
                        new EvaluationRequest(
                                given.files(),
                                given.chart(),
                                Optional.of(profile),
                                given.details(),
                                given.threshold(),
                                given.space()))
                .evaluation();
    }

    /** A profile says nothing about colours that the scanner's software has moved since. */
    @Test
    void aProfileIsNotBelievedWhereColourWasSetAutomatically() throws Exception {
        Evaluation e = profiled(neutralised());
        assertEquals(Trust.PROFILED_SCAN, e.trust());
        assertTrue(spoiling(e).contains(WarningCode.AUTOMATIC_COLOUR), e.warnings().toString());
        Extreme white = Objects.requireNonNull(e.white());
        Lab read = Objects.requireNonNull(white.lab());
        Lab real = SimulatedPrint.goodPaper().white();
        assertEquals(real.l(), read.l(), white.uncertainty().l());
        assertEquals(real.a(), read.a(), white.uncertainty().a());
        assertEquals(real.b(), read.b(), white.uncertainty().b());
        assertFalse(e.findings().toString().contains("Greys are neutral"));
    }

    /** Paper of code about 248, 246, 248 becomes 250 in all channels, nothing else is clipped. */
    private Path neutralised() throws Exception {
        BufferedImage plain = ImageIO.read(scanned(flatbed()).toFile());
        double[] gain = new double[3];
        for (int c = 0; c < 3; c++) {
            double sum = 0;
            for (int x = 0; x < 1000; x++) {
                sum += (plain.getRGB(200 + x, 60) >> (16 - 8 * c)) & 255;
            }
            gain[c] = 250.0 / (sum / 1000);
        }
        return edited(
                flatbed(), v -> held(v * gain[0]), v -> held(v * gain[1]), v -> held(v * gain[2]));
    }

    @Test
    void sharpeningIsTold() throws Exception {
        Flatbed bed = flatbed().withSamplesPerInch(300);
        Evaluation e = evaluated(scanned(bed.withOptics(bed.optics().withSharpening(0.8, 100))));
        assertTrue(spoiling(e).contains(WarningCode.SHARPENED), e.warnings().toString());
    }

    @Test
    void descreeningBlurIsTold() throws Exception {
        Flatbed bed = flatbed().withSamplesPerInch(300);
        Evaluation e = evaluated(scanned(bed.withOptics(bed.optics().withBlur(170))));
        assertTrue(spoiling(e).contains(WarningCode.BLURRED), e.warnings().toString());
        assertFalse(spoiling(e).contains(WarningCode.UPSAMPLED));
    }

    @Test
    void anEnlargedScanIsToldAsSuchAndNotAsBlurred() throws Exception {
        BufferedImage small = ImageIO.read(scanned(flatbed().withSamplesPerInch(150)).toFile());
        BufferedImage large =
                new BufferedImage(
                        2 * small.getWidth(), 2 * small.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = large.createGraphics();
        graphics.setRenderingHint(
                RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        graphics.drawImage(small, 0, 0, large.getWidth(), large.getHeight(), null);
        graphics.dispose();
        Set<WarningCode> told = spoiling(evaluated(written(large)));
        // A cubic overshoots beside edges, so halos may be told too.
        assertTrue(told.contains(WarningCode.UPSAMPLED), told.toString());
        assertFalse(told.contains(WarningCode.BLURRED), told.toString());
    }

    @Test
    void strongLossyCompressionIsToldAndItsPatchesAreFlagged() throws Exception {
        ScanFile jpeg = ScanFile.TIFF16.withFormat(ScanFile.Format.JPEG, 8).withJpegQuality(0.6);
        Evaluation e = evaluated(scanned(flatbed().withSamplesPerInch(300).withFile(jpeg)));
        assertTrue(spoiling(e).contains(WarningCode.LOSSY));
        long coarse =
                e.patches().stream().filter(r -> r.flags().contains(ReadingFlag.COARSE)).count();
        assertTrue(coarse > 50, coarse + " patches are coarse");
    }

    /** What the tables cannot carry is not claimed: neither levels nor faults of the printer. */
    @Test
    void lossyStepsCoarserThanWhatShowsWithholdTheWedges() throws Exception {
        ScanFile jpeg = ScanFile.TIFF16.withFormat(ScanFile.Format.JPEG, 8).withJpegQuality(0.25);
        Evaluation e = evaluated(scanned(flatbed().withSamplesPerInch(300).withFile(jpeg)));
        assertNull(e.shadows());
        Warning why =
                e.warnings().stream()
                        .filter(w -> w.code() == WarningCode.SHADOWS_NOT_JUDGED)
                        .findFirst()
                        .orElseThrow();
        assertTrue(why.text().contains("lossy compression"), why.text());
        assertTrue(why.text().contains("TIFF or PNG"), why.text());
        String findings = e.findings().toString();
        assertFalse(findings.contains("darker than level"), findings);
        assertFalse(findings.contains("break into a step"), findings);
    }

    @Test
    void lightLossyCompressionLeavesTheLevels() throws Exception {
        ScanFile jpeg = ScanFile.TIFF16.withFormat(ScanFile.Format.JPEG, 8).withJpegQuality(0.85);
        Evaluation e = evaluated(scanned(flatbed().withSamplesPerInch(300).withFile(jpeg)));
        Wedge plain = Objects.requireNonNull(evaluated(scanned(flatbed())).shadows());
        Wedge read = Objects.requireNonNull(e.shadows());
        int first = Objects.requireNonNull(plain.best());
        Wedge.Interval interval = Objects.requireNonNull(read.interval());
        assertTrue(interval.low() <= first && first <= interval.high(), interval + " " + first);
    }

    @Test
    void aDirtyGlassIsTold() throws Exception {
        Evaluation e = evaluated(scanned(flatbed().withDirt(new Dirt(10_000, 1000))));
        assertTrue(spoiling(e).contains(WarningCode.DUSTY), e.warnings().toString());
    }

    /** A profile whose red and blue are exchanged: of no scanner, and of no use. */
    @Test
    void aProfileThatDoesNotFitIsTold() throws Exception {
        Flatbed bed = flatbed();
        Path scan = scanned(bed.withSensor(bed.sensor().withEncoding(Encoding.SRGB)));
        byte[] profile = RgbProfiles.of(RgbSpace.SRGB).clone();
        ByteBuffer bytes = ByteBuffer.wrap(profile);
        int tags = bytes.getInt(128);
        for (int i = 0; i < tags; i++) {
            int entry = 132 + 12 * i;
            String name = new String(profile, entry, 4, StandardCharsets.US_ASCII);
            if (name.equals("bXYZ")) {
                // s15Fixed16 X, Y, Z of blue: its Z halved, so that white turns yellow.
                int z = bytes.getInt(entry + 4) + 16;
                bytes.putInt(z, bytes.getInt(z) / 2);
            }
        }
        Path given = dir.resolve("other.icc");
        Files.write(given, profile);
        Evaluation e = Evaluator.evaluate(SimulatedPrint.through(scan, given)).evaluation();
        assertTrue(spoiling(e).contains(WarningCode.PROFILE_DOUBTFUL), e.warnings().toString());
    }

    @Test
    void inkInWindowsIsTold() throws Exception {
        BufferedImage image = ImageIO.read(scanned(flatbed()).toFile());
        // 5 mm of lid, then 10 mm of margin; everything inside gets a coat that takes 6 % of light.
        double perMm = 200 / 25.4;
        int edge = (int) Math.round(15 * perMm);
        for (int y = edge; y < image.getHeight() - edge; y++) {
            for (int x = edge; x < image.getWidth() - edge; x++) {
                int rgb = image.getRGB(x, y);
                int r = held(((rgb >> 16) & 255) * 0.972);
                int g = held(((rgb >> 8) & 255) * 0.972);
                int b = held((rgb & 255) * 0.972);
                image.setRGB(x, y, 0xff000000 | r << 16 | g << 8 | b);
            }
        }
        Evaluation e = evaluated(written(image));
        assertTrue(spoiling(e).contains(WarningCode.WINDOWS_INKED), e.warnings().toString());
    }

    @Test
    void eightBitsInASixteenBitFileAreTold() throws Exception {
        Flatbed bed = flatbed().withFile(ScanFile.TIFF16);
        Path file = scanned(bed);
        byte[] tiff = Files.readAllBytes(file);
        // Little-endian samples after the header: each low byte becomes its high byte.
        boolean little = tiff[0] == 'I';
        for (int i = 4096; i + 1 < tiff.length; i += 2) {
            tiff[little ? i : i + 1] = tiff[little ? i + 1 : i];
        }
        Path even = dir.resolve("even.tif");
        Files.write(even, tiff);
        Optional<Warning> eight =
                evaluated(even).warnings().stream()
                        .filter(warning -> warning.code() == WarningCode.EIGHT_BIT)
                        .findFirst();
        assertTrue(eight.isPresent());
        assertTrue(eight.get().text().contains("only 8 of its 16 bits"));
    }

    /** White and black L* of the good scan, so that the tests above stand on a scan that reads. */
    @Test
    void theGoodScanReadsRight() throws Exception {
        Lab white =
                Objects.requireNonNull(
                        Objects.requireNonNull(evaluated(scanned(flatbed())).white()).lab());
        assertEquals(96.5, white.l(), 0.2);
    }
}

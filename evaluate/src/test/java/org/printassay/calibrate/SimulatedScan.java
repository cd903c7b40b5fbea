package org.printassay.calibrate;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import org.jspecify.annotations.Nullable;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.problem.Problem;
import org.printassay.reading.ReadingFlag;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sample.MarkerBlack;
import org.printassay.sample.PageImage;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Marker;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/**
 * Simulated samples of a real chart: a page of half-millimetre cells is printed with a spread
 * between twins, lit unevenly, and seen through returned light and glare of any kernel. Everything
 * is computed forwards.
 */
public final class SimulatedScan {
    public static final double STEP_MM = 0.5;
    public static final double AROUND_MM = 30;
    private static final double[] PAPER = {0.87, 0.86, 0.83};
    private static final double[] BLACK = {0.0046, 0.0049, 0.0052};

    /** What goes wrong in the scanner; changed by the tests as they need. */
    public double[] glare = {0, 0, 0};

    public double[] returned = {0, 0, 0};
    public @Nullable Convolution glareKernel;
    public @Nullable Convolution returnedKernel;

    /** Glare of each line of the scan, of all that lies on it; beside that of the kernel. */
    public double lineGlare;

    /** Whether the scanner's lines run down the picture instead of across. */
    public boolean linesDown;

    /** What the scanner's own exposure does to all light. */
    public double exposure = 1;

    /** Loss of light in the corners, and a slope along the carriage. */
    public double falloff;

    /** Standard deviation of twins, L*, of ink and of bare paper. */
    public double twinL = 0.25;

    public double paperTwinL = 0.05;
    public double lid = 0.8;

    /** What changes the print itself. */
    public interface Drift {
        /** L* more at a place of the page, for a tone of some L*. */
        double at(double x, double y, double lightness);
    }

    /** How much lighter the print is, but for bare paper. */
    public Drift drift = (x, y, l) -> 0;

    /** Light from outside at a place of the page, paper 1: x and y in millimetres. */
    public DoubleBinaryOperator leak = (x, y) -> 0;

    /** How far around the page the scan reaches, millimetres. */
    public double reachMm = AROUND_MM;

    /** Share of patches that dust makes lighter or darker. */
    public double dusty = 0.01;

    public long seed = 1;
    public boolean grey;

    public final Chart chart;
    public final Sheet sheet;
    private final Map<String, double[]> truth = new HashMap<>();

    public SimulatedScan() throws Problem {
        this(Recipe.Kind.PAPER);
    }

    public SimulatedScan(Recipe.Kind kind) throws Problem {
        chart =
                Charts.create(
                        Recipe.of(kind, PageSize.parse("A4"), Margins.all(12), RgbSpace.SRGB));
        sheet = chart.sheets().get(0);
    }

    /** Reflectance of the paper in a channel. */
    public static double paper(int channel) {
        return PAPER[channel];
    }

    /** Reflectance of a code over paper. */
    public static double reflectance(Rgb8 rgb, int channel) {
        int own = channel == 0 ? rgb.r() : channel == 1 ? rgb.g() : rgb.b();
        double mean = (rgb.r() + rgb.g() + rgb.b()) / 3.0;
        double mixed = (0.9 * own + 0.1 * mean) / 255;
        return BLACK[channel] + (1 - BLACK[channel]) * RgbSpace.SRGB.decode(mixed);
    }

    /** True device light of a patch. */
    public double truth(Patch patch, int channel) {
        return Objects.requireNonNull(truth.get(patch.id()))[channel];
    }

    public SheetSamples scan() {
        Random random = new Random(seed);
        int columns = (int) Math.round((sheet.page().width() + 2 * AROUND_MM) / STEP_MM);
        int rows = (int) Math.round((sheet.page().height() + 2 * AROUND_MM) / STEP_MM);
        float[][] page = new float[3][columns * rows];
        double[][] own = new double[sheet.patches().size()][3];
        for (int i = 0; i < own.length; i++) {
            Patch patch = sheet.patches().get(i);
            own[i] = printed(patch.rgb(), patch.area().centre(), random);
            truth.put(
                    patch.id(),
                    new double[] {
                        own[i][0] * PAPER[0], own[i][1] * PAPER[1], own[i][2] * PAPER[2]
                    });
        }
        // Of their own sequence, so that patches are the same whatever markers a sheet has.
        Random ofMarkers = new Random(~seed);
        List<double[]> blacks = new ArrayList<>();
        for (Marker marker : sheet.markers()) {
            blacks.add(printed(Rgb8.grey(0), marker.area().centre(), ofMarkers));
        }
        for (int c = 0; c < 3; c++) {
            paint(page[c], columns, rows, c, own, blacks);
        }
        float[][] glareSeen = new float[3][];
        float[][] returnedSeen = new float[3][];
        double[] reference = new double[3];
        for (int c = 0; c < 3; c++) {
            if (grey && c != 1) {
                glareSeen[c] = new float[page[c].length];
                returnedSeen[c] = glareSeen[c];
                continue;
            }
            glareSeen[c] = blurred(glareKernel, glare[c], page[c], columns, rows);
            returnedSeen[c] = blurred(returnedKernel, returned[c], page[c], columns, rows);
            int n = 0;
            for (Patch patch : sheet.patches()) {
                if (patch.section() == Section.PAPER) {
                    reference[c] += at(returnedSeen[c], columns, patch.area().centre());
                    n++;
                }
            }
            reference[c] /= n;
        }
        float[][] seen = new float[3][columns * rows];
        double[][] lines = new double[3][linesDown ? columns : rows];
        for (int c = 0; c < 3; c++) {
            for (int i = 0; i < page[c].length; i++) {
                int line = linesDown ? i % columns : i / columns;
                lines[c][line] += page[c][i] / (linesDown ? rows : columns);
            }
        }
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                double light = exposure * light(mm(x), mm(y));
                double outside = leak.applyAsDouble(mm(x), mm(y));
                int i = y * columns + x;
                for (int c = 0; c < 3; c++) {
                    double r = page[c][i];
                    seen[c][i] =
                            (float)
                                    (PAPER[c]
                                                    * light
                                                    * (r
                                                                    * (1
                                                                            + returned[c]
                                                                                    * (returnedSeen[
                                                                                                    c][
                                                                                                    i]
                                                                                            - reference[
                                                                                                    c]))
                                                            + glare[c] * (glareSeen[c][i] - r)
                                                            + lineGlare
                                                                    * (lines[c][linesDown ? x : y]
                                                                            - r))
                                            + PAPER[c] * outside);
                }
            }
        }
        List<PatchSample> samples = new ArrayList<>();
        for (int i = 0; i < own.length; i++) {
            samples.add(sample(sheet.patches().get(i), seen, columns, random));
        }
        return withMarkers(
                new SheetSamples(
                        info(), located(), samples, pageImage(seen, columns, rows), preview()),
                sheet.markers().stream().map(marker -> black(marker, seen, columns)).toList());
    }

    /** The same samples, of which other markers were read. */
    public static SheetSamples withMarkers(SheetSamples samples, List<MarkerBlack> markers) {
        return new SheetSamples(
                samples.scan(),
                samples.located(),
                samples.samples(),
                samples.page(),
                markers,
                samples.census(),
                samples.steps(),
                samples.edges(),
                samples.preview(),
                samples.surface());
    }

    /** Reflectance of a code at a place, as this print has it. */
    private double[] printed(Rgb8 rgb, PointMm at, Random random) {
        boolean paper = rgb.equals(Rgb8.grey(255));
        double spread = paper ? paperTwinL : twinL;
        double tone = Lab.lightness(reflectance(rgb, 1));
        double common =
                spread * random.nextGaussian() + (paper ? 0 : drift.at(at.x(), at.y(), tone));
        double[] printed = new double[3];
        for (int c = 0; c < printed.length; c++) {
            double clean = reflectance(rgb, c);
            double l = Lab.lightness(clean) + common + 0.3 * spread * random.nextGaussian();
            printed[c] = Lab.luminanceFactor(l);
        }
        return printed;
    }

    /** Markers are all black here, without white cells. */
    private MarkerBlack black(Marker marker, float[][] seen, int columns) {
        double[] light = new double[3];
        RectMm area = marker.area();
        for (int c = 0; c < light.length; c++) {
            int n = 0;
            for (double y = area.y() + 1; y < area.bottom() - 1; y += STEP_MM) {
                for (double x = area.x() + 1; x < area.right() - 1; x += STEP_MM) {
                    light[c] += at(seen[grey ? 1 : c], columns, new PointMm(x, y));
                    n++;
                }
            }
            light[c] /= n;
        }
        double error = 2e-5;
        return new MarkerBlack(
                area,
                new LinearRgb(light[0], light[1], light[2]),
                new LinearRgb(error, error, error));
    }

    private static double mm(int cell) {
        return (cell + 0.5) * STEP_MM - AROUND_MM;
    }

    /** Illumination at a place on the page; 1 where it is brightest. */
    public double light(double x, double y) {
        double u = 2 * x / sheet.page().width() - 1;
        double v = 2 * y / sheet.page().height() - 1;
        return 1 - falloff * (0.6 * u * u + 0.25 * v * v + 0.15 * (1 + v) / 2);
    }

    private float[] blurred(
            @Nullable Convolution kernel, double amount, float[] page, int columns, int rows) {
        return kernel == null || amount == 0
                ? new float[page.length]
                : kernel.of(page, columns, rows, lid);
    }

    private static double at(float[] map, int columns, PointMm place) {
        int x = (int) ((place.x() + AROUND_MM) / STEP_MM);
        int y = (int) ((place.y() + AROUND_MM) / STEP_MM);
        return map[y * columns + x];
    }

    private void paint(
            float[] page,
            int columns,
            int rows,
            int channel,
            double[][] own,
            List<double[]> blacks) {
        Arrays.fill(page, (float) lid);
        fill(page, columns, sheet.page(), 1);
        for (Artwork art : sheet.artwork()) {
            if (art instanceof Artwork.Field field) {
                fill(page, columns, field.area(), reflectance(field.rgb(), channel));
            } else if (art instanceof Artwork.Disc disc) {
                for (int y = 0; y < rows; y++) {
                    for (int x = 0; x < columns; x++) {
                        double away =
                                Math.hypot(mm(x) - disc.centre().x(), mm(y) - disc.centre().y());
                        if (away < disc.radius()) {
                            page[y * columns + x] = (float) reflectance(disc.rgb(), channel);
                        }
                    }
                }
            } else if (art instanceof Artwork.Vignette vignette) {
                for (double x = 0; x < vignette.area().width(); x += STEP_MM) {
                    double level =
                            vignette.fromLevel()
                                    + (vignette.toLevel() - vignette.fromLevel())
                                            * x
                                            / vignette.area().width();
                    RectMm area = vignette.area();
                    fill(
                            page,
                            columns,
                            new RectMm(area.x() + x, area.y(), STEP_MM, area.height()),
                            reflectance(Rgb8.grey((int) level), channel));
                }
            } else if (art instanceof Artwork.SlantedSquare square) {
                fill(page, columns, square.area(), reflectance(square.light(), channel));
                fill(page, columns, square.square(), reflectance(square.dark(), channel));
            }
        }
        for (int k = 0; k < blacks.size(); k++) {
            fill(page, columns, sheet.markers().get(k).area(), blacks.get(k)[channel]);
        }
        for (int i = 0; i < own.length; i++) {
            fill(page, columns, sheet.patches().get(i).area(), own[i][channel]);
        }
    }

    private static void fill(float[] page, int columns, RectMm area, double value) {
        int left = (int) Math.round((area.x() + AROUND_MM) / STEP_MM);
        int right = (int) Math.round((area.right() + AROUND_MM) / STEP_MM);
        int top = (int) Math.round((area.y() + AROUND_MM) / STEP_MM);
        int bottom = (int) Math.round((area.bottom() + AROUND_MM) / STEP_MM);
        for (int y = top; y < bottom; y++) {
            Arrays.fill(page, y * columns + left, y * columns + right, (float) value);
        }
    }

    private PatchSample sample(Patch patch, float[][] seen, int columns, Random random) {
        RectMm area = patch.area();
        double insetX = Math.max(1, (area.width() - 12) / 2);
        double insetY = Math.max(1, (area.height() - 12) / 2);
        double dust = random.nextDouble() < dusty ? 0.05 * (random.nextDouble() - 0.4) : 0;
        double[] mean = new double[3];
        double[] error = new double[3];
        for (int c = 0; c < 3; c++) {
            int n = 0;
            for (double y = area.y() + insetY; y < area.bottom() - insetY; y += STEP_MM) {
                for (double x = area.x() + insetX; x < area.right() - insetX; x += STEP_MM) {
                    mean[c] += at(seen[c], columns, new PointMm(x, y));
                    n++;
                }
            }
            mean[c] = mean[c] / n + dust;
            error[c] = 2e-5 + 2e-4 * mean[c];
            mean[c] += error[c] * random.nextGaussian();
        }
        if (grey) {
            mean[0] = mean[1];
            mean[2] = mean[1];
        }
        Set<ReadingFlag> flags = EnumSet.noneOf(ReadingFlag.class);
        return new PatchSample(
                patch,
                new LinearRgb(mean[0], mean[1], mean[2]),
                new LinearRgb(error[0], error[1], error[2]),
                16,
                flags);
    }

    private PageImage pageImage(float[][] seen, int columns, int rows) {
        int across = columns / 2;
        int down = rows / 2;
        PageImage image =
                new PageImage(new PointMm(-AROUND_MM, -AROUND_MM), 2 * STEP_MM, across, down);
        RectMm reach = sheet.page().inset(-reachMm);
        for (int y = 0; y < down; y++) {
            for (int x = 0; x < across; x++) {
                PointMm centre = image.centre(x, y);
                if (centre.x() < reach.x()
                        || centre.x() > reach.right()
                        || centre.y() < reach.y()
                        || centre.y() > reach.bottom()) {
                    continue;
                }
                double[] sum = new double[3];
                for (int c = 0; c < 3; c++) {
                    float[] from = seen[grey ? 1 : c];
                    for (int k = 0; k < 4; k++) {
                        sum[c] += from[(2 * y + k / 2) * columns + 2 * x + k % 2] / 4;
                    }
                }
                image.set(x, y, new LinearRgb(sum[0], sum[1], sum[2]));
            }
        }
        return image;
    }

    public ScanInfo info() {
        return new ScanInfo(
                "simulated.tif",
                "TIFF",
                2480,
                3508,
                grey ? 1 : 3,
                16,
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private LocatedSheet located() {
        return new LocatedSheet(chart, sheet, FLAT, Map.of(), 0, 0, true, List.of(), List.of());
    }

    private static LocatingImage.Preview preview() {
        return new LocatingImage.Preview(new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB), 1);
    }

    private static final Placement FLAT =
            new Placement() {
                @Override
                public PointPx toScan(PointMm page) {
                    return new PointPx(page.x() * 10, page.y() * 10);
                }

                @Override
                public PointMm toPage(PointPx scan) {
                    return new PointMm(scan.x() / 10, scan.y() / 10);
                }

                @Override
                public double samplesPerMm() {
                    return 10;
                }

                @Override
                public double rotationDegrees() {
                    return 0;
                }
            };
}

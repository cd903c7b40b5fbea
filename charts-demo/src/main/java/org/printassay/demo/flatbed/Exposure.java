package org.printassay.demo.flatbed;

import java.io.IOException;
import java.util.Random;
import java.util.stream.IntStream;
import org.printassay.demo.print.Print;

/**
 * One scan being made: from the printed sheet to codes, in the order of the light. Sheet in linear
 * light; blur and sampling; stray light and the lamp's evenness; dirt; noise; encoding. Works in
 * tiles that depend on nothing but the seed and their place, so that the same seed gives the same
 * bytes on any number of processors.
 */
public final class Exposure {
    /** Variance, in cells, of the cubic B-spline that samples the sheet plus that of a cell. */
    static final double SAMPLER_VARIANCE = 1.0 / 3;

    /** Cells may be this much coarser in variance than the blur asked for; saves time. */
    private static final double COARSENESS = 1.6;

    private static final int TILE = 128;

    private final Print print;
    private final Flatbed flatbed;
    private final long seed;
    private final Frame frame;
    private final TileMaker tiles;

    /** Takes finished rows, top first. */
    @FunctionalInterface
    public interface Rows {
        /**
         * A band of rows.
         *
         * @param samples red, green, blue, interleaved; 16 bit samples high byte first; reused
         *     afterwards
         * @param length bytes that count
         */
        void rows(byte[] samples, int length) throws IOException;
    }

    /**
     * Sets a scan up.
     *
     * @param seed decides noise, dirt and the carriage's phase
     */
    public Exposure(Print print, Flatbed flatbed, long seed) {
        this.print = print;
        this.flatbed = flatbed;
        this.seed = seed;
        Random random = new Random(seed ^ 0x0B5E55EDL);
        double phase = random.nextDouble();
        this.frame = new Frame(flatbed, print.sheet().widthMm(), print.sheet().heightMm(), phase);
        Inks inks = new Inks(print, flatbed.sensor());
        Optics optics = flatbed.optics();
        double lid = flatbed.placing().lid();
        int perCell = perCell();
        this.tiles =
                new TileMaker(
                        flatbed,
                        frame,
                        new Raster(print, inks, lid, perCell),
                        optics.returnedLight() > 0 || optics.glare() > 0
                                ? new StrayField(print, inks, optics, lid)
                                : null,
                        new Specks(
                                flatbed.dirt(),
                                frame.frameWidthMm(),
                                frame.frameHeightMm(),
                                random),
                        perCell * 25.4 / print.sheet().dotsPerInch(),
                        AutoLevels.of(print, inks, flatbed));
    }

    /** Where the sheet lies. */
    public Frame frame() {
        return frame;
    }

    /** Makes all rows. */
    public void run(Rows sink) throws IOException {
        int bytes = 3 * flatbed.file().bits() / 8;
        byte[] band = new byte[frame.width() * Math.min(TILE, frame.height()) * bytes];
        int across = (frame.width() + TILE - 1) / TILE;
        for (int top = 0; top < frame.height(); top += TILE) {
            int first = top;
            int rows = Math.min(TILE, frame.height() - top);
            IntStream.range(0, across)
                    .parallel()
                    .forEach(
                            tile -> {
                                int left = tile * TILE;
                                int columns = Math.min(TILE, frame.width() - left);
                                FastNoise noise =
                                        new FastNoise(
                                                seed * 0x2545F4914F6CDD1DL
                                                        + (long) first * across
                                                        + tile);
                                tiles.make(left, first, columns, rows, noise, band);
                            });
            sink.rows(band, frame.width() * rows * bytes);
        }
    }

    /** Dots of the print that may be averaged before sampling. */
    private int perCell() {
        double dot = 25.4 / print.sheet().dotsPerInch();
        double pixel = 25.4 / flatbed.samplesPerInch();
        double blur = flatbed.optics().blurSigmaUm() / 1000;
        double wanted = blur * blur + pixel * pixel / 12;
        int best = 1;
        for (int k = 2; k * dot <= pixel * 1.001; k++) {
            double cell = k * dot;
            if (cell * cell * (SAMPLER_VARIANCE + 1.0 / 12) <= Math.max(COARSENESS * wanted, 0)) {
                best = k;
            }
        }
        return best;
    }
}

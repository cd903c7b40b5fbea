package org.printassay.scan;

import java.io.IOException;
import java.nio.ByteOrder;
import java.util.Optional;
import org.printassay.problem.Problem;

/**
 * How the pixels of a TIFF are stored, checked and limited to what a scan can be.
 *
 * @param stored samples a pixel in one stream, extra ones included: 1 when each channel has its own
 * @param channels samples a pixel that are kept: 1 or 3
 * @param planes streams that are read for a piece: 1 when samples are interleaved, else the kept
 *     channels
 * @param inverted grey with 0 as white
 * @param pieceWidth width of a tile, or of the image for strips
 * @param pieceHeight rows of a tile or strip
 * @param alpha which sample of a pixel is an alpha that the colours were multiplied by, from 0: a
 *     stored one, or the plane of that number; {@link SampleRows#NO_ALPHA} without
 * @param jpegTables tables shared by all JPEG pieces; empty when there are none
 * @param jpegTransform colour transform of JPEG pieces: 1 YCbCr, 0 none
 */
record TiffFormat(
        int width,
        int height,
        int stored,
        int channels,
        int bits,
        ByteOrder order,
        Compression compression,
        boolean differenced,
        boolean inverted,
        boolean mirrored,
        int planes,
        boolean tiled,
        int pieceWidth,
        int pieceHeight,
        Numbers offsets,
        Numbers lengths,
        int alpha,
        Optional<Blob> jpegTables,
        int jpegTransform) {

    enum Compression {
        NONE,
        LZW,
        DEFLATE,
        PACK_BITS,
        JPEG
    }

    /** Offsets or byte counts of strips or tiles. */
    @FunctionalInterface
    interface Numbers {
        long at(int piece);
    }

    /** Bytes that nobody changes. */
    interface Blob {
        byte[] bytes();
    }

    private static final int LONGEST_TILE_SIDE = 1 << 16;
    private static final int WHITE_IS_ZERO = 0;
    private static final int BLACK_IS_ZERO = 1;
    private static final int RGB = 2;
    private static final int PALETTE = 3;
    private static final int CMYK = 5;
    private static final int YCBCR = 6;
    private static final int ASSOCIATED_ALPHA = 1;
    private static final int CENTIMETRE = 3;
    private static final int INCH = 2;

    int piecesAcross() {
        return (width + pieceWidth - 1) / pieceWidth;
    }

    int piecesDown() {
        return (height + pieceHeight - 1) / pieceHeight;
    }

    /** Whether the alpha that colours were multiplied by has a plane of its own. */
    boolean alphaApart() {
        return alpha != SampleRows.NO_ALPHA && alpha >= stored;
    }

    /** Rows of one stream, {@code across} pixels wide. */
    SampleRows sampleRows(int across) {
        ByteOrder sampleOrder = compression == Compression.JPEG ? ByteOrder.BIG_ENDIAN : order;
        return new SampleRows(
                across,
                stored,
                channels / planes,
                bits,
                sampleOrder,
                differenced,
                inverted,
                alphaApart() ? SampleRows.NO_ALPHA : alpha);
    }

    static TiffFormat of(TiffDirectory d, String name, long fileSize) throws IOException, Problem {
        long width = d.number(TiffDirectory.IMAGE_WIDTH, 0);
        long height = d.number(TiffDirectory.IMAGE_LENGTH, 0);
        ScanFiles.checkSize(name, width, height);
        int stored = (int) d.number(TiffDirectory.SAMPLES_PER_PIXEL, 1);
        int photometric = (int) d.number(TiffDirectory.PHOTOMETRIC, -1);
        Compression compression = compression(d, name);
        int channels = channels(photometric, compression, stored, name);
        int bits = bits(d, stored, name);
        if (compression == Compression.JPEG && bits != 8) {
            throw Problem.input(name, "JPEG pieces of more than 8 bits are not read.");
        }
        long predictor = d.number(TiffDirectory.PREDICTOR, 1);
        if (predictor != 1 && predictor != 2) {
            throw Problem.input(
                    name, "predictor " + predictor + " is not read. Save without a predictor.");
        }
        boolean differenced =
                predictor == 2
                        && (compression == Compression.LZW || compression == Compression.DEFLATE);
        boolean apart = d.number(TiffDirectory.PLANAR_CONFIGURATION, 1) == 2 && stored > 1;
        if (apart && photometric == YCBCR) {
            throw Problem.input(
                    name, "has lightness and colour in planes of their own. Save it as RGB.");
        }
        int alpha = alpha(d, channels, stored);
        boolean taken = compression == Compression.JPEG || photometric == WHITE_IS_ZERO;
        if (apart && alpha != SampleRows.NO_ALPHA && taken) {
            throw Problem.input(
                    name,
                    "its colours are multiplied by an alpha channel, in planes of their own. Save it"
                            + " without alpha.");
        }
        boolean tiled = d.has(TiffDirectory.TILE_OFFSETS);
        long pieceWidth = tiled ? d.number(TiffDirectory.TILE_WIDTH, 0) : width;
        long pieceHeight =
                tiled
                        ? d.number(TiffDirectory.TILE_LENGTH, 0)
                        : Math.min(height, d.number(TiffDirectory.ROWS_PER_STRIP, height));
        if (pieceWidth < 1
                || pieceHeight < 1
                || (tiled && Math.max(pieceWidth, pieceHeight) > LONGEST_TILE_SIDE)) {
            throw Problem.input(
                    name,
                    "claims strips or tiles of "
                            + pieceWidth
                            + " x "
                            + pieceHeight
                            + " pixels. Save the scan anew.");
        }
        int planes = apart ? channels : 1;
        long pieces =
                ((width + pieceWidth - 1) / pieceWidth)
                        * ((height + pieceHeight - 1) / pieceHeight)
                        * (apart ? stored : 1);
        int offsetTag = tiled ? TiffDirectory.TILE_OFFSETS : TiffDirectory.STRIP_OFFSETS;
        int lengthTag = tiled ? TiffDirectory.TILE_BYTE_COUNTS : TiffDirectory.STRIP_BYTE_COUNTS;
        long[] offsets = pieces(d, offsetTag, pieces, name);
        long[] lengths;
        if (d.has(lengthTag)) {
            lengths = pieces(d, lengthTag, pieces, name);
        } else if (compression == Compression.NONE && pieces == 1) {
            lengths = new long[] {fileSize};
        } else {
            throw Problem.input(name, "does not say how long its strips are. Save it anew.");
        }
        if (compression == Compression.NONE && pieces == 1 && lengths[0] == 0) {
            // Some writers leave it open; the picture's size tells it.
            lengths[0] = Math.max(0, fileSize - offsets[0]);
        }
        refuseShared(offsets, lengths, fileSize, name);
        Optional<Blob> tables =
                d.blob(TiffDirectory.JPEG_TABLES, 1 << 16).map(bytes -> (Blob) () -> bytes);
        return new TiffFormat(
                (int) width,
                (int) height,
                apart ? 1 : stored,
                channels,
                bits,
                d.order(),
                compression,
                differenced,
                photometric == WHITE_IS_ZERO,
                Orientation.mirrored(d.number(TiffDirectory.ORIENTATION, 1)),
                planes,
                tiled,
                (int) pieceWidth,
                (int) pieceHeight,
                piece -> offsets[piece],
                piece -> lengths[piece],
                alpha,
                tables,
                photometric == YCBCR ? 1 : 0);
    }

    /** A small file whose strips are one and the same could claim hours of reading. */
    private static void refuseShared(long[] offsets, long[] lengths, long fileSize, String name)
            throws Problem {
        double all = 0;
        for (int i = 0; i < lengths.length; i++) {
            if (lengths[i] < 0 || offsets[i] < 0 || lengths[i] > fileSize - offsets[i]) {
                // Cut off, which reading finds and says better.
                return;
            }
            all += lengths[i];
        }
        if (all > fileSize) {
            throw Problem.input(
                    name, "its strips or tiles share the same bytes. Save the scan anew.");
        }
    }

    private static long[] pieces(TiffDirectory d, int tag, long pieces, String name)
            throws IOException, Problem {
        long[] values = d.numbers(tag, pieces);
        if (values.length < pieces) {
            throw Problem.input(
                    name,
                    "lists "
                            + values.length
                            + " strips or tiles where "
                            + pieces
                            + " are needed. Save the scan anew.");
        }
        return values;
    }

    private static Compression compression(TiffDirectory d, String name)
            throws IOException, Problem {
        if (d.number(TiffDirectory.FILL_ORDER, 1) != 1) {
            throw Problem.input(name, "reversed bit order is not read. Save the scan anew.");
        }
        int code = (int) d.number(TiffDirectory.COMPRESSION, 1);
        return switch (code) {
            case 1 -> Compression.NONE;
            case 5 -> Compression.LZW;
            case 7 -> Compression.JPEG;
            case 8, 32946 -> Compression.DEFLATE;
            case 32773 -> Compression.PACK_BITS;
            default ->
                    throw Problem.input(
                            name,
                            "TIFF compression "
                                    + code
                                    + " is not read. Save it uncompressed, or with LZW or"
                                    + " Deflate.");
        };
    }

    private static int channels(int photometric, Compression compression, int stored, String name)
            throws Problem {
        boolean colour =
                photometric == RGB || (photometric == YCBCR && compression == Compression.JPEG);
        boolean grey = photometric == WHITE_IS_ZERO || photometric == BLACK_IS_ZERO;
        if (photometric == CMYK) {
            throw Problem.input(name, "is a CMYK image. Scan or save it as RGB.");
        }
        if (photometric == PALETTE) {
            throw Problem.input(name, "has a colour palette. Scan or save it as RGB.");
        }
        if (!colour && !grey) {
            throw Problem.input(
                    name, "its colours are coded in a way that is not read. Save it as RGB.");
        }
        int channels = colour ? 3 : 1;
        if (stored < channels || stored > 8) {
            throw Problem.input(
                    name, "has " + stored + " samples a pixel. Scan or save it as RGB or grey.");
        }
        return channels;
    }

    /** Where the extra sample stands that colours are multiplied by. */
    private static int alpha(TiffDirectory d, int channels, int stored)
            throws IOException, Problem {
        if (!d.has(TiffDirectory.EXTRA_SAMPLES)) {
            return SampleRows.NO_ALPHA;
        }
        long[] extra = d.numbers(TiffDirectory.EXTRA_SAMPLES, stored - channels);
        for (int i = 0; i < Math.min(extra.length, stored - channels); i++) {
            if (extra[i] == ASSOCIATED_ALPHA) {
                return channels + i;
            }
        }
        return SampleRows.NO_ALPHA;
    }

    private static int bits(TiffDirectory d, int stored, String name) throws IOException, Problem {
        long[] all = d.numbers(TiffDirectory.BITS_PER_SAMPLE, stored);
        long bits = all.length == 0 ? 1 : all[0];
        for (long one : all) {
            if (one != bits) {
                throw Problem.input(name, "its channels differ in depth. Save the scan anew.");
            }
        }
        if (bits != 8 && bits != 16) {
            throw Problem.input(
                    name, "has " + bits + " bits a sample. Scan or save it with 8 or 16.");
        }
        if (d.number(TiffDirectory.SAMPLE_FORMAT, 1) != 1) {
            throw Problem.input(
                    name, "its samples are not unsigned whole numbers. Save it with 16 bits.");
        }
        return (int) bits;
    }

    static Optional<ScanInfo.Resolution> resolution(TiffDirectory d) throws IOException, Problem {
        long unit = d.number(TiffDirectory.RESOLUTION_UNIT, INCH);
        Optional<Double> x = d.rational(TiffDirectory.X_RESOLUTION);
        Optional<Double> y = d.rational(TiffDirectory.Y_RESOLUTION);
        if (x.isEmpty() || y.isEmpty() || (unit != INCH && unit != CENTIMETRE)) {
            return Optional.empty();
        }
        double toInch = unit == CENTIMETRE ? 2.54 : 1;
        return Optional.of(new ScanInfo.Resolution(x.get() * toInch, y.get() * toInch));
    }
}

package org.printassay.scan;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.printassay.problem.Problem;

/**
 * One image file directory of a TIFF (TIFF 6.0 section 2) or BigTIFF, with checked access to its
 * fields. Counts are held against the file's length before anything is allocated.
 */
final class TiffDirectory {
    static final int NEW_SUBFILE_TYPE = 254;
    static final int SUBFILE_TYPE = 255;
    static final int IMAGE_WIDTH = 256;
    static final int IMAGE_LENGTH = 257;
    static final int BITS_PER_SAMPLE = 258;
    static final int COMPRESSION = 259;
    static final int PHOTOMETRIC = 262;
    static final int FILL_ORDER = 266;
    static final int STRIP_OFFSETS = 273;
    static final int ORIENTATION = 274;
    static final int SAMPLES_PER_PIXEL = 277;
    static final int ROWS_PER_STRIP = 278;
    static final int STRIP_BYTE_COUNTS = 279;
    static final int X_RESOLUTION = 282;
    static final int Y_RESOLUTION = 283;
    static final int PLANAR_CONFIGURATION = 284;
    static final int RESOLUTION_UNIT = 296;
    static final int PREDICTOR = 317;
    static final int TILE_WIDTH = 322;
    static final int TILE_LENGTH = 323;
    static final int TILE_OFFSETS = 324;
    static final int TILE_BYTE_COUNTS = 325;
    static final int EXTRA_SAMPLES = 338;
    static final int SAMPLE_FORMAT = 339;
    static final int JPEG_TABLES = 347;
    static final int ICC_PROFILE = 34675;

    /** Bytes of a field type, by its number; 0 for unknown ones. */
    private static final int[] TYPE_BYTES = {
        0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8
    };

    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;
    private static final int MOST_DIRECTORIES = 64;
    private static final int MOST_ENTRIES = 4096;
    private static final int REDUCED_RESOLUTION = 1;
    private static final int TRANSPARENCY_MASK = 4;
    private static final int OLD_REDUCED_RESOLUTION = 2;

    /** An image of less than this share of the largest one's pixels is a preview, not a page. */
    private static final int PREVIEW_SHARE = 4;

    private record Entry(int type, long count, long position) {}

    private final FileChannel channel;
    private final String name;
    private final ByteOrder order;
    private final Map<Integer, Entry> entries = new HashMap<>();

    private TiffDirectory(FileChannel channel, String name, ByteOrder order) {
        this.channel = channel;
        this.name = name;
        this.order = order;
    }

    /**
     * The directory of the one page in the file. Reduced copies, masks and previews are passed
     * over; several pages are refused, as nobody said which one is the scan.
     */
    static TiffDirectory onlyPage(FileChannel channel, String name) throws IOException, Problem {
        ByteBuffer head = ByteBuffer.allocate(16);
        channel.read(head, 0);
        head.flip();
        if (head.limit() < 8) {
            throw ScanFiles.endsEarly(name, "in its header");
        }
        ByteOrder order = head.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
        head.order(order);
        boolean big = head.getShort(2) == 43;
        if (big && (head.limit() < 16 || head.getShort(4) != 8)) {
            throw ScanFiles.endsEarly(name, "in its header");
        }
        long offset = big ? head.getLong(8) : head.getInt(4) & 0xffffffffL;
        Set<Long> seen = new HashSet<>();
        List<TiffDirectory> images = new ArrayList<>();
        // Some writers leave a meaningless offset behind the last directory.
        while (offset != 0 && (images.isEmpty() || offset < channel.size())) {
            if (!seen.add(offset)) {
                throw Problem.input(
                        name + ", byte " + offset,
                        "its image directories run in a circle. Save the scan anew.");
            }
            if (seen.size() > MOST_DIRECTORIES) {
                break;
            }
            TiffDirectory directory = new TiffDirectory(channel, name, order);
            offset = directory.read(offset, big);
            if (directory.has(IMAGE_WIDTH) && !directory.isExtra()) {
                images.add(directory);
            }
        }
        return onlyPage(images, name);
    }

    private static TiffDirectory onlyPage(List<TiffDirectory> images, String name)
            throws IOException, Problem {
        TiffDirectory largest = null;
        double most = -1;
        for (TiffDirectory image : images) {
            if (image.pixels() > most) {
                most = image.pixels();
                largest = image;
            }
        }
        if (largest == null) {
            throw Problem.input(name, "holds no image. Save the scan as TIFF anew.");
        }
        int pages = 0;
        for (TiffDirectory image : images) {
            pages += image.pixels() * PREVIEW_SHARE >= most ? 1 : 0;
        }
        if (pages > 1) {
            throw Problem.input(
                    name, "holds " + pages + " pages. Save each page as a file of its own.");
        }
        return largest;
    }

    /** Whether this is a reduced copy or a mask of another image (TIFF 6.0 tags 254, 255). */
    private boolean isExtra() throws IOException, Problem {
        return (number(NEW_SUBFILE_TYPE, 0) & (REDUCED_RESOLUTION | TRANSPARENCY_MASK)) != 0
                || number(SUBFILE_TYPE, 0) == OLD_REDUCED_RESOLUTION;
    }

    private double pixels() throws IOException, Problem {
        return (double) number(IMAGE_WIDTH, 0) * number(IMAGE_LENGTH, 0);
    }

    /** Reads the entries and returns the offset of the next directory. */
    private long read(long offset, boolean big) throws IOException, Problem {
        ByteBuffer head = bytes(offset, big ? 8 : 2);
        long count = big ? head.getLong() : head.getShort() & 0xffff;
        if (count < 0 || count > MOST_ENTRIES) {
            throw Problem.input(
                    name + ", byte " + offset, "an impossible directory. Save the scan anew.");
        }
        int entryBytes = big ? 20 : 12;
        ByteBuffer table = bytes(offset + (big ? 8 : 2), (int) count * entryBytes);
        for (int i = 0; i < count; i++) {
            int start = i * entryBytes;
            int tag = table.getShort(start) & 0xffff;
            int type = table.getShort(start + 2) & 0xffff;
            long values = big ? table.getLong(start + 4) : table.getInt(start + 4) & 0xffffffffL;
            int size = type < TYPE_BYTES.length ? TYPE_BYTES[type] : 0;
            if (size == 0) {
                continue;
            }
            if (values < 0 || values > channel.size() / size) {
                throw Problem.input(
                        name + ", byte " + offset,
                        "field " + tag + " claims " + values + " values. Save the scan anew.");
            }
            int valueAt = start + (big ? 12 : 8);
            boolean inside = values * size <= (big ? 8 : 4);
            long position =
                    inside
                            ? offset + (big ? 8 : 2) + valueAt
                            : big ? table.getLong(valueAt) : table.getInt(valueAt) & 0xffffffffL;
            entries.putIfAbsent(tag, new Entry(type, values, position));
        }
        long nextAt = offset + (big ? 8 : 2) + count * entryBytes;
        if (nextAt + (big ? 8 : 4) > channel.size()) {
            return 0;
        }
        ByteBuffer next = bytes(nextAt, big ? 8 : 4);
        return big ? next.getLong() : next.getInt() & 0xffffffffL;
    }

    private ByteBuffer bytes(long offset, int length) throws IOException, Problem {
        if (offset < 0 || length < 0 || offset + length > channel.size()) {
            throw ScanFiles.endsEarly(name, "its directory should go on at byte " + offset);
        }
        ByteBuffer buffer = ByteBuffer.allocate(length).order(order);
        while (buffer.hasRemaining()) {
            if (channel.read(buffer, offset + buffer.position()) < 0) {
                throw ScanFiles.endsEarly(name, "its directory should go on at byte " + offset);
            }
        }
        return buffer.flip();
    }

    ByteOrder order() {
        return order;
    }

    boolean has(int tag) {
        return entries.containsKey(tag);
    }

    /** First value of a whole-number field, or a default. */
    long number(int tag, long otherwise) throws IOException, Problem {
        long[] values = numbers(tag, 1);
        return values.length == 0 ? otherwise : values[0];
    }

    /**
     * Values of a whole-number field, {@code most} at the most; empty when the field is missing.
     */
    long[] numbers(int tag, long most) throws IOException, Problem {
        Entry entry = entries.get(tag);
        if (entry == null) {
            return new long[0];
        }
        int count = (int) Math.min(entry.count, most);
        int size = TYPE_BYTES[entry.type];
        ByteBuffer buffer = bytes(entry.position, Math.multiplyExact(count, size));
        long[] values = new long[count];
        for (int i = 0; i < count; i++) {
            values[i] =
                    switch (entry.type) {
                        case SHORT -> buffer.getShort() & 0xffff;
                        case LONG, 13 -> buffer.getInt() & 0xffffffffL;
                        case 16, 18 -> buffer.getLong();
                        case 1, 7 -> buffer.get() & 0xff;
                        default ->
                                throw Problem.input(
                                        name,
                                        "field "
                                                + tag
                                                + " is not a whole number. Save the scan"
                                                + " anew.");
                    };
        }
        return values;
    }

    /** A rational field; empty when missing, not a rational, or not a positive number. */
    Optional<Double> rational(int tag) throws IOException, Problem {
        Entry entry = entries.get(tag);
        if (entry == null || entry.type != RATIONAL || entry.count < 1) {
            return Optional.empty();
        }
        ByteBuffer buffer = bytes(entry.position, 8);
        double numerator = buffer.getInt() & 0xffffffffL;
        double denominator = buffer.getInt() & 0xffffffffL;
        double value = numerator / denominator;
        return Double.isFinite(value) && value > 0 ? Optional.of(value) : Optional.empty();
    }

    /** The bytes of a field, when it is there and not longer than {@code most}. */
    Optional<byte[]> blob(int tag, int most) throws IOException, Problem {
        Entry entry = entries.get(tag);
        if (entry == null || entry.count == 0 || entry.count > most) {
            return Optional.empty();
        }
        return Optional.of(bytes(entry.position, (int) entry.count).array());
    }
}

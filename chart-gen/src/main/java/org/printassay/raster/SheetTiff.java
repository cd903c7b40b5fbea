package org.printassay.raster;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.sheet.Sheet;

/**
 * A sheet as a baseline TIFF (TIFF 6.0): RGB, 8 bit, LZW in strips, with resolution and ICC
 * profile. LZW because every program that prints pictures reads it.
 */
public final class SheetTiff {
    private static final int ROWS_PER_STRIP = 64;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;
    private static final int UNDEFINED = 7;

    private SheetTiff() {}

    private record Field(int tag, int type, int count, ByteBuffer value) {}

    /** Writes the sheet's printable part; the stream is left open. */
    public static void write(Sheet sheet, RgbSpace space, int dpi, OutputStream out)
            throws IOException {
        Canvas canvas = SheetRaster.draw(sheet, dpi);
        List<byte[]> strips = strips(canvas);
        byte[] profile = RgbProfiles.of(space);
        int offset = 8;
        int[] offsets = new int[strips.size()];
        int[] lengths = new int[strips.size()];
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] = offset;
            lengths[i] = strips.get(i).length;
            offset += lengths[i] + (lengths[i] & 1);
        }
        List<Field> fields = new ArrayList<>();
        fields.add(longs(256, canvas.width()));
        fields.add(longs(257, canvas.height()));
        fields.add(shorts(258, 8, 8, 8));
        fields.add(shorts(259, 5));
        fields.add(shorts(262, 2));
        fields.add(longs(273, offsets));
        fields.add(shorts(274, 1));
        fields.add(shorts(277, 3));
        fields.add(longs(278, ROWS_PER_STRIP));
        fields.add(longs(279, lengths));
        fields.add(rational(282, dpi));
        fields.add(rational(283, dpi));
        fields.add(shorts(284, 1));
        fields.add(shorts(296, 2));
        fields.add(new Field(34675, UNDEFINED, profile.length, ByteBuffer.wrap(profile)));
        ByteBuffer head = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
        head.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(offset);
        out.write(head.array());
        for (byte[] strip : strips) {
            out.write(strip);
            if ((strip.length & 1) == 1) {
                out.write(0);
            }
        }
        out.write(directory(fields, offset));
    }

    private static List<byte[]> strips(Canvas canvas) {
        int rowBytes = 3 * canvas.width();
        return IntStream.range(0, (canvas.height() + ROWS_PER_STRIP - 1) / ROWS_PER_STRIP)
                .parallel()
                .mapToObj(
                        strip -> {
                            int y = strip * ROWS_PER_STRIP;
                            int rows = Math.min(ROWS_PER_STRIP, canvas.height() - y);
                            return LzwWriter.encode(canvas.bytes(), y * rowBytes, rows * rowBytes);
                        })
                .toList();
    }

    private static byte[] directory(List<Field> fields, int offset) {
        ByteArrayOutputStream values = new ByteArrayOutputStream();
        int valuesAt = offset + 2 + 12 * fields.size() + 4;
        ByteBuffer table =
                ByteBuffer.allocate(2 + 12 * fields.size() + 4).order(ByteOrder.LITTLE_ENDIAN);
        table.putShort((short) fields.size());
        for (Field field : fields) {
            table.putShort((short) field.tag);
            table.putShort((short) field.type);
            table.putInt(field.count);
            if (field.value.remaining() <= 4) {
                int start = table.position();
                table.put(field.value.duplicate());
                table.position(start + 4);
            } else {
                table.putInt(valuesAt + values.size());
                byte[] bytes = new byte[field.value.remaining()];
                field.value.duplicate().get(bytes);
                values.writeBytes(bytes);
                if ((values.size() & 1) == 1) {
                    values.write(0);
                }
            }
        }
        table.putInt(0);
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.writeBytes(table.array());
        all.writeBytes(values.toByteArray());
        return all.toByteArray();
    }

    private static Field shorts(int tag, int... numbers) {
        ByteBuffer buffer = ByteBuffer.allocate(2 * numbers.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int number : numbers) {
            buffer.putShort((short) number);
        }
        return new Field(tag, SHORT, numbers.length, buffer.flip());
    }

    private static Field longs(int tag, int... numbers) {
        ByteBuffer buffer = ByteBuffer.allocate(4 * numbers.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int number : numbers) {
            buffer.putInt(number);
        }
        return new Field(tag, LONG, numbers.length, buffer.flip());
    }

    private static Field rational(int tag, int number) {
        return new Field(
                tag,
                RATIONAL,
                1,
                ByteBuffer.allocate(8)
                        .order(ByteOrder.LITTLE_ENDIAN)
                        .putInt(number)
                        .putInt(1)
                        .flip());
    }
}

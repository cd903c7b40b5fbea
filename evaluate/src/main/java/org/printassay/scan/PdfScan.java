package org.printassay.scan;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.InflaterInputStream;
import java.util.zip.ZipException;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;

/** A PDF that holds one scanned page; its image is read as a stream of rows. */
final class PdfScan implements ScanImage {
    private final PdfPage page;
    private final ScanInfo info;
    private final @Nullable ScanImage jpeg;

    private PdfScan(PdfPage page, ScanInfo info, @Nullable ScanImage jpeg) {
        this.page = page;
        this.info = info;
        this.jpeg = jpeg;
    }

    static ScanImage open(Path file, String name) throws Problem {
        List<ScanImage> strips = new ArrayList<>();
        for (PdfPage page : PdfPage.read(file, name)) {
            strips.add(open(page, name));
        }
        return strips.size() == 1 ? strips.get(0) : PdfStrips.of(strips);
    }

    private static PdfScan open(PdfPage page, String name) throws Problem {
        PdfImage image = page.image();
        ScanImage jpeg = null;
        int channels = image.channels();
        Optional<byte[]> profile = image.profile();
        Optional<LossyCoding> coding = Optional.empty();
        if (image.coding() == PdfImage.Coding.JPEG) {
            jpeg = JpegScan.open(page.data(), name, image.transform());
            ScanInfo inner = jpeg.info();
            if (inner.width() != image.width()
                    || inner.height() != image.height()
                    || inner.channels() != channels) {
                throw Problem.input(
                        name,
                        "its JPEG image is of another size or colour than the page says. Scan to"
                                + " TIFF or PNG.");
            }
            profile = profile.isPresent() ? profile : inner.iccProfile();
            coding = inner.coding();
        }
        ScanInfo info =
                new ScanInfo(
                        name,
                        "PDF",
                        image.width(),
                        image.height(),
                        channels,
                        image.bits(),
                        page.resolution(),
                        profile,
                        jpeg != null,
                        coding);
        return new PdfScan(page, info, jpeg);
    }

    @Override
    public ScanInfo info() {
        return info;
    }

    @Override
    public void stream(RowSink sink) throws Problem {
        char[] changed = new char[info.width() * info.channels()];
        RowSink drawn = (y, row) -> sink.row(y, drawn(row, changed));
        if (jpeg != null) {
            jpeg.stream(drawn);
            return;
        }
        try (InputStream file = Files.newInputStream(page.data());
                InputStream data =
                        page.image().coding() == PdfImage.Coding.FLATE
                                ? new InflaterInputStream(file)
                                : new BufferedInputStream(file, 1 << 16)) {
            rows(data, drawn);
        } catch (EOFException | ZipException e) {
            throw Problem.input(
                    info.name(), "its image is damaged or ends early. Scan to TIFF or PNG.", e);
        } catch (IOException e) {
            throw ScanFiles.unreadable(info.name(), e);
        }
    }

    /** As the page draws it: inverted and mirrored where it says so. */
    private char[] drawn(char[] row, char[] changed) {
        if (!page.mirrored() && !page.image().inverted()) {
            return row;
        }
        int flip = page.image().inverted() ? 0xffff : 0;
        for (int i = 0; i < row.length; i++) {
            changed[i] = (char) (row[i] ^ flip);
        }
        if (page.mirrored()) {
            SampleRows.mirror(changed, info.width(), info.channels());
        }
        return changed;
    }

    private void rows(InputStream data, RowSink sink) throws IOException, Problem {
        PdfImage image = page.image();
        SampleRows samples =
                new SampleRows(
                        image.width(),
                        image.channels(),
                        image.channels(),
                        image.bits(),
                        ByteOrder.BIG_ENDIAN,
                        image.predictor() == 2,
                        false);
        byte[] line = new byte[samples.rowBytes()];
        byte[] above = new byte[line.length];
        char[] row = new char[image.width() * image.channels()];
        int step = image.channels() * image.bits() / 8;
        for (int y = 0; y < image.height(); y++) {
            int filter = image.predictor() >= 10 ? data.read() : 0;
            if (data.readNBytes(line, 0, line.length) < line.length) {
                throw new EOFException("row " + y + " is not complete");
            }
            PngRows.unfilter(filter, line, above, step);
            samples.unpack(line, 0, row, 0, image.width(), image.channels());
            sink.row(y, row);
            byte[] swap = above;
            above = line;
            line = swap;
        }
    }
}

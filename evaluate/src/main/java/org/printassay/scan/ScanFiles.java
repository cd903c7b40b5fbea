package org.printassay.scan;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.InputPath;
import org.printassay.problem.Problem;

/** Opens scan files; the format is told by content, never by name. */
public final class ScanFiles {
    /**
     * Most pixels a scan may claim: an A2 page at 1200 samples an inch has 0.6 thousand million.
     */
    static final long MOST_PIXELS = 3_000_000_000L;

    /** Longest side a scan may claim. */
    static final int LONGEST_SIDE = 200_000;

    /** What says that a file is a PDF may stand behind other bytes, this far in. */
    private static final int LOOKED_AT = 1024;

    private ScanFiles() {}

    /** Whether a file starts like one of the image formats that are read. */
    public static boolean looksLikeImage(Path file) throws Problem {
        return format(head(file)) != null;
    }

    /**
     * Refuses what is neither an image that is read nor text, such as a measurement.
     *
     * @throws Problem when the file cannot be read, is empty, or is an image or anything else that
     *     is not read
     */
    public static void refuseUnread(Path file) throws Problem {
        byte[] head = head(file);
        Optional<String> why = UnreadFile.why(head);
        if (format(head) == null && why.isPresent()) {
            throw Problem.input(displayName(file), why.get());
        }
    }

    /**
     * Opens a scan and reads its header.
     *
     * @throws Problem when the file is missing, is not an image that is read, or is damaged
     */
    public static ScanImage open(Path file) throws Problem {
        byte[] head = head(file);
        String format = format(head);
        String name = displayName(file);
        if (format == null) {
            throw Problem.input(
                    name,
                    UnreadFile.why(head)
                            .orElse(
                                    "not an image that printassay reads. Save the scan as TIFF,"
                                            + " PNG, JPEG or PDF."));
        }
        return switch (format) {
            case "TIFF" -> TiffScan.open(file, name);
            case "PNG" -> PngScan.open(file, name);
            case "PDF" -> PdfScan.open(file, name);
            default -> JpegScan.open(file, name);
        };
    }

    /** File name without folders, control characters replaced. */
    public static String displayName(Path file) {
        Path last = file.getFileName();
        String name = last == null ? file.toString() : last.toString();
        return name.codePoints()
                .map(c -> Character.isISOControl(c) || isDirectional(c) ? '?' : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    /** Characters that reorder or hide text on a terminal. */
    private static boolean isDirectional(int c) {
        return Character.getType(c) == Character.FORMAT
                || Character.getType(c) == Character.LINE_SEPARATOR
                || Character.getType(c) == Character.PARAGRAPH_SEPARATOR;
    }

    private static byte[] head(Path file) throws Problem {
        InputPath.refuseSpecial(file, displayName(file));
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(LOOKED_AT);
        } catch (NoSuchFileException e) {
            throw Problem.input(
                    displayName(file),
                    "there is no such file (looked for " + file.toAbsolutePath() + ").",
                    e);
        } catch (IOException e) {
            throw Problem.input(
                    displayName(file),
                    Files.isDirectory(file)
                            ? "is a folder. Name the scan files in it."
                            : "cannot be read. Check its permissions.",
                    e);
        }
    }

    private static @Nullable String format(byte[] head) {
        if (UnreadFile.at(head, 0, 'I', 'I', 42, 0)
                || UnreadFile.at(head, 0, 'M', 'M', 0, 42)
                || UnreadFile.at(head, 0, 'I', 'I', 43, 0)
                || UnreadFile.at(head, 0, 'M', 'M', 0, 43)) {
            return "TIFF";
        }
        if (UnreadFile.at(head, 0, 0x89, 'P', 'N', 'G', 13, 10, 26, 10)) {
            return "PNG";
        }
        if (UnreadFile.at(head, 0, 0xff, 0xd8, 0xff)) {
            return "JPEG";
        }
        for (int i = 0; i < head.length; i++) {
            if (UnreadFile.at(head, i, '%', 'P', 'D', 'F', '-')) {
                return "PDF";
            }
        }
        return null;
    }

    /** Refuses sizes that no scan has before anything is allocated. */
    static void checkSize(String name, long width, long height) throws Problem {
        if (width < 1
                || height < 1
                || width > LONGEST_SIDE
                || height > LONGEST_SIDE
                || width * height > MOST_PIXELS) {
            throw Problem.input(
                    name,
                    "claims to be "
                            + width
                            + " x "
                            + height
                            + " pixels, which is not a scan of a sheet. Scan again, or save it anew.");
        }
    }

    /** The file cannot be read for a reason that only the system knows. */
    static Problem unreadable(String name, IOException e) {
        return Problem.input(
                name,
                "cannot be read (" + e.getMessage() + "). Copy the file again, or scan again.",
                e);
    }

    /** The file ends before its image does. */
    static Problem endsEarly(String name, String where) {
        return Problem.input(
                name, "the file ends early (" + where + "). Copy it again, or scan again.");
    }
}

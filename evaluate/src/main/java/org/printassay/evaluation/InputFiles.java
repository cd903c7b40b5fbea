package org.printassay.evaluation;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.printassay.problem.Problem;
import org.printassay.scan.ScanFiles;

/** Names and checksums of input files. */
public final class InputFiles {
    private static final int PIECE = 1 << 20;

    private InputFiles() {}

    /** SHA-256 of bytes, hexadecimal. */
    public static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** Name without folders and SHA-256 of a file. */
    public static SourceFile describe(Path file) throws Problem {
        String name = ScanFiles.displayName(file);
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] piece = new byte[PIECE];
            for (int got = in.read(piece); got >= 0; got = in.read(piece)) {
                digest.update(piece, 0, got);
            }
            return new SourceFile(name, HexFormat.of().formatHex(digest.digest()));
        } catch (IOException e) {
            throw Problem.input(name, "cannot be read. Check that it is there and readable.", e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}

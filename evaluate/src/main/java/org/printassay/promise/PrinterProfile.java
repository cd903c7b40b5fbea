package org.printassay.promise;

import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.printassay.colour.icc.IccException;
import org.printassay.colour.icc.IccProfile;
import org.printassay.colour.icc.IccTransform;
import org.printassay.colour.icc.Intent;
import org.printassay.problem.InputPath;
import org.printassay.problem.Problem;

/**
 * A printer's profile as the user names it.
 *
 * @param name file name without folders
 * @param sha256 of the file, hexadecimal
 * @param profile what it says
 */
public record PrinterProfile(String name, String sha256, IccProfile profile) {
    /**
     * Reads a printer's profile.
     *
     * @param name for messages and reports
     * @throws Problem input, when it cannot be read, is damaged, or is not of a printer
     */
    public static PrinterProfile read(Path file, String name) throws Problem {
        byte[] bytes = InputPath.bytes(file, name, "profile", IccProfile.MOST_BYTES);
        try {
            IccProfile profile = IccProfile.parse(bytes);
            boolean printer =
                    profile.deviceClass() == IccProfile.DeviceClass.OUTPUT
                            && profile.space() != IccProfile.Space.LAB
                            && profile.space() != IccProfile.Space.XYZ;
            if (!printer) {
                throw new IccException(12, "it describes no printer");
            }
            // Mistakes are looked for by every intent: what lacks or damages one is refused here.
            for (Intent intent : Intent.values()) {
                IccTransform.fromColour(profile, intent);
                IccTransform.toColour(profile, intent);
            }
            return new PrinterProfile(name, sha256(bytes), profile);
        } catch (IccException e) {
            throw Problem.input(
                    name,
                    "not a printer's profile ("
                            + e.getMessage()
                            + "). Name the profile that the print was made with.",
                    e);
        }
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}

package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.problem.Problem;

/**
 * Layout version 1 never changes: a print made with it stays readable as long as the program lives.
 * The hashes are of our own making, there is nothing outside to compare with. When this test fails,
 * the change belongs into a new layout version; these lines stay as they are.
 */
class FrozenLayoutTest {
    @ParameterizedTest
    @CsvSource({
        "A4,12,d0f37c51aefad638cee3c73fd2b26bb75ccfaefce276afbefb6ce6a20e24a37a",
        "Letter,12,31b1c225b066287b5cb8e119298b1f9edd54c783fc2a0462a61fe30da5a07d12",
        "A3,12,6187bd1c19bb110ef91223234a7b8d7b1ad0466fa762186decc027ac54032c97",
        "13x19in,12,bc6673b49f7e410fa63dad98fddbde62809e3367dbbc4c6176fa59c82b60a83b",
        "A4,25,d6e21ab52e24378af4cf096fedae1ceca69c1ef786c23c4e2a96afa43519550d"
    })
    void versionOneIsFrozen(String page, String margin, String sha256)
            throws Problem, NoSuchAlgorithmException {
        String text = ChartFile.write(PaperSheetFitTest.chart(page, margin));
        byte[] digest =
                MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        assertEquals(sha256, HexFormat.of().formatHex(digest));
    }
}

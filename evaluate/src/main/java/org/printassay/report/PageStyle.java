package org.printassay.report;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;

/**
 * The style sheet of every page, and the policy that lets a browser use it and nothing else: no
 * scripts, no network, no styles but this one.
 *
 * @param css the sheet
 * @param policy Content-Security-Policy
 */
public record PageStyle(String css, String policy) {
    /** Reads the sheet that comes with the program. */
    static PageStyle load() {
        try (InputStream in = PageStyle.class.getResourceAsStream("page.css")) {
            if (in == null) {
                throw new IllegalStateException("the style sheet is missing");
            }
            String css = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            byte[] hash =
                    MessageDigest.getInstance("SHA-256")
                            .digest(css.getBytes(StandardCharsets.UTF_8));
            return new PageStyle(
                    css,
                    "default-src 'none'; img-src data:; style-src 'sha256-"
                            + Base64.getEncoder().encodeToString(hash)
                            + "'; base-uri 'none'; form-action 'none'");
        } catch (IOException e) {
            throw new IllegalStateException("the style sheet is unreadable", e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}

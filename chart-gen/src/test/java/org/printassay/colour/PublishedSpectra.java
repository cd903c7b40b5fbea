package org.printassay.colour;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Spectra of 24 printed patches, taken from their file by position and not by our reader. */
final class PublishedSpectra {
    private PublishedSpectra() {}

    /** 380 to 680 nm every 10 nm. */
    static List<Spectrum> prints() {
        String text =
                new String(
                        Published.bytes("cgats-rgb-spectral-sample.txt"), StandardCharsets.UTF_8);
        List<Spectrum> spectra = new ArrayList<>();
        for (String line : text.lines().toList()) {
            String[] cells = line.split("\t", -1);
            if (cells.length == 38 && Character.isDigit(cells[0].charAt(0))) {
                spectra.add(
                        new Spectrum(
                                380,
                                10,
                                Arrays.stream(cells, 7, 38).map(Double::valueOf).toList()));
            }
        }
        return spectra;
    }
}

package org.printassay.sheet;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The black and white cells of a marker, its black border included. */
public final class MarkerPattern {
    /** Cells along a side: 6 bits between borders of one cell. */
    public static final int CELLS = 8;

    private static final int BITS = 6;
    private static final List<Long> DICTIONARY = load();

    private final long bits;

    private MarkerPattern(long bits) {
        this.bits = bits;
    }

    /**
     * The pattern of a marker.
     *
     * @throws IllegalArgumentException when the dictionary has no such id
     */
    public static MarkerPattern of(int id) {
        if (id < 0 || id >= DICTIONARY.size()) {
            throw new IllegalArgumentException("no marker has the id " + id);
        }
        return new MarkerPattern(DICTIONARY.get(id));
    }

    /** Whether a cell is black; column and row from 0 at the top left. */
    public boolean black(int column, int row) {
        if (column == 0 || row == 0 || column == CELLS - 1 || row == CELLS - 1) {
            return true;
        }
        int fromBottom = BITS - row;
        int fromRight = BITS - column;
        int index = fromBottom * BITS + fromRight;
        return (bits >>> (BITS * BITS - 1 - index) & 1) == 0;
    }

    private static List<Long> load() {
        try (InputStream in =
                        Objects.requireNonNull(
                                MarkerPattern.class.getResourceAsStream("markers-6x6.txt"));
                BufferedReader lines =
                        new BufferedReader(new InputStreamReader(in, StandardCharsets.US_ASCII))) {
            return lines.lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> Long.parseLong(line, 16))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

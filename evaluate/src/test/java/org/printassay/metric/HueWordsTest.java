package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Names at the CIELAB hue angles of primaries of IEC 61966-2-1 (red 40, yellow 103, green 136, cyan
 * 196, blue 306, magenta 328 degrees, D65, known to every handbook; from memory) and near the axes.
 */
class HueWordsTest {
    @ParameterizedTest
    @CsvSource({
        "40, red",
        "103, yellow",
        "136, yellow-green",
        "196, blue-green",
        "306, violet",
        "0, pink",
        "90, yellow",
        "170, green",
        "270, blue",
        "359, pink",
        "-1, pink",
        "62, orange"
    })
    void anglesHaveNames(double degrees, String name) {
        double angle = Math.toRadians(degrees);
        assertEquals(name, HueWords.hue(2 * Math.cos(angle), 2 * Math.sin(angle)));
    }

    /** What is not sure is not called a cast, nor said not to be there where it was read. */
    @Test
    void aLeanThatIsNotSureIsNoneThatIsRuledOut() {
        assertEquals("no cast", HueWords.words(0.1, 0.4, false));
        assertEquals("no sure cast", HueWords.words(0.3, 1.0, false));
        assertEquals("slightly warm, towards yellow", HueWords.words(0, 1.0, true));
    }
}

package org.printassay.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.problem.Problem;

class CheckedJsonTest {
    private static String refusal(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        Problem problem =
                assertThrows(
                        Problem.class, () -> CheckedJson.parse("odd.json", bytes, "recipe", 1));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        String told = problem.getMessage();
        for (String jargon : new String[] {"Stream", "Feature", "com.", "[Source", "`", "enable"}) {
            assertFalse(told.contains(jargon), told);
        }
        return told;
    }

    /** What the parser says of its own parts and options helps nobody who reads a refusal. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    {"a": NaN}          | NaN'.
                    {"a": +1}           | plus signs.
                    {"a": 1} {"b": 2}   | something follows its end.
                    {"a": [1, 2         | it ends early. Copy it again.
                    {"a": "b            | it ends early. Copy it again.
                    {"a": [1, 2}        | '}'
                    {"a": 1, "a": 2}    | uplicate field 'a'.
                    {"a": 1 // one      | comment
                    {a: 1}              | double-quote
                    """)
    void refusalsAreInPlainWords(String text, String words) {
        String told = refusal(text);
        assertTrue(told.startsWith("odd.json, line 1: is not JSON: "), told);
        assertTrue(told.contains(words), told);
    }

    @Test
    void whatIsTooDeepOrTooLongIsToldSo() {
        String deep = refusal("[".repeat(5000));
        assertTrue(deep.contains("nested deeper"), deep);
        String number = refusal("{\"a\": " + "1".repeat(5000) + "}");
        assertTrue(number.contains("longer number"), number);
    }
}

package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Sheet;

/**
 * Layout versions never change: a print made with one stays readable as long as the program lives.
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
        assertEquals(sha256, sha256(page, margin, 1));
    }

    /** Version 2 has other words than version 1 and the same patches and markers. */
    @ParameterizedTest
    @CsvSource({
        "A4,12,68f57d6e8e1e8094d74091beccc1f6f6bdeac99ae7ac5d258707c5f5acefee98",
        "Letter,12,550ba60edc34fa340c49c4a39cd9694bcab2f5e95a55416e2a41a1dfdec7c59d",
        "A3,12,e5a5be5e95342e60d3c259ff72c5db8249b2f3694ab5f02391e05e55c8d017c3",
        "13x19in,12,79c7d82de2c1ffc468970a0b0586dfc0cc44dc1013637b7a200fd00ea5215c7c",
        "A4,25,2658de9e5ee44fdba9d134e2e285c0caccc3a669e1f77bf3ad85f761e699fb51"
    })
    void versionTwoIsFrozen(String page, String margin, String sha256)
            throws Problem, NoSuchAlgorithmException {
        assertEquals(sha256, sha256(page, margin, 2));
        List<Sheet> one = chart(page, margin, 1).sheets();
        List<Sheet> two = chart(page, margin, 2).sheets();
        for (int i = 0; i < one.size(); i++) {
            assertEquals(one.get(i).patches(), two.get(i).patches());
            assertEquals(one.get(i).markers(), two.get(i).markers());
            assertNotEquals(one.get(i).artwork(), two.get(i).artwork());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "PRINTER,A4,10,c10108afc5ffc0233683f1e2a03679c20e9aa61662fee04f8271ab5aefedc3df",
        "PRINTER,A5,10,4815d25df6871806065e2aba712f67170703d395016967a8127af3cc5d0d733d",
        "SHORT,4x6in,5,2144671077ba6d2e5f226ac28139d019c996d910de3016948f6cd40cd65d24d0",
        "SHORT,A5,10,431ac91a7efe385dec7334911b25d23162f5593d30c4c5169507c7bd51836c9c"
    })
    void otherDesignsAreFrozen(Recipe.Kind kind, String page, String margin, String sha256)
            throws Problem, NoSuchAlgorithmException {
        Recipe recipe =
                new Recipe(kind, PageSize.parse(page), Margins.parse(margin), RgbSpace.SRGB, 1);
        assertEquals(sha256, sha256(Charts.create(recipe)));
    }

    /** A print of either version is found by its code alone. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void everyVersionStaysReadable(int version) throws Problem {
        Chart chart = chart("A4", "12", version);
        String code = chart.sheets().get(0).codeText();
        assertEquals(chart, Charts.fromSheetCode("scan.tif", code));
        assertEquals(chart, ChartFile.parse("chart.json", ChartFile.write(chart)));
    }

    private static Chart chart(String page, String margin, int version) throws Problem {
        return Charts.create(
                new Recipe(
                        Recipe.Kind.PAPER,
                        PageSize.parse(page),
                        Margins.parse(margin),
                        RgbSpace.SRGB,
                        version));
    }

    private static String sha256(String page, String margin, int version)
            throws Problem, NoSuchAlgorithmException {
        return sha256(chart(page, margin, version));
    }

    private static String sha256(Chart chart) throws NoSuchAlgorithmException {
        String text = ChartFile.write(chart);
        byte[] digest =
                MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().formatHex(digest);
    }
}

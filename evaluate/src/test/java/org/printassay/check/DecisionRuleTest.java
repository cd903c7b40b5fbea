package org.printassay.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rule against tables of the normal distribution, and case by case. */
class DecisionRuleTest {
    /** A factor of two, easy to follow. */
    private static final DecisionRule TWO = new DecisionRule(0.01, 1, 2);

    /** Quantiles to four decimals: handbook tables of the standard normal distribution. */
    @ParameterizedTest
    @CsvSource({
        "0.05, 1, 1.9600",
        "0.01, 1, 2.5758",
        "0.01, 10, 3.2905",
        "0.05, 5, 2.5758",
        "0.02, 20, 3.2905"
    })
    void factorsAreQuantilesSharedByAllQuantities(double all, int quantities, double factor) {
        assertEquals(factor, DecisionRule.of(all, quantities).factor(), 0.5e-4);
    }

    @ParameterizedTest(name = "change {0} with u {1} of 1 allowed")
    @CsvSource({
        "0, 0.1, WITHIN",
        "0.2, 0.1, WITHIN",
        "-0.2, 0.1, WITHIN",
        "0.21, 0.1, DRIFTED",
        "-0.21, 0.1, DRIFTED",
        "1, 0.1, DRIFTED",
        "1.01, 0.1, CANNOT_TELL",
        "1.2, 0.1, CANNOT_TELL",
        "1.21, 0.1, FAILED",
        "-1.21, 0.1, FAILED",
        "0.9, 0.5, WITHIN",
        "0, 0.51, CANNOT_TELL",
        "1.9, 0.51, CANNOT_TELL",
        "2.1, 0.51, FAILED",
        "0.001, 0, DRIFTED",
        "0, 0, WITHIN"
    })
    void everyCase(double change, double standard, Outcome outcome) {
        assertEquals(outcome, DecisionRule.decide(change, TWO.halfWidth(standard, null), 1));
    }

    @Test
    void whatIsNotKnownCannotBeTold() {
        assertEquals(Outcome.CANNOT_TELL, DecisionRule.decide(0, TWO.halfWidth(null, 5), 1));
        assertEquals(Outcome.CANNOT_TELL, DecisionRule.decide(100, null, 1));
    }

    /** Student's factors: handbook tables, two-sided 5 % and 1 %. */
    @ParameterizedTest
    @CsvSource({"0.05, 1, 5, 2.5706", "0.01, 1, 10, 3.1693", "0.05, 5, 4, 4.6041"})
    void fewPrintsTellTheirSpreadBadly(double all, int quantities, int freedom, double factor) {
        Double u = DecisionRule.of(all, quantities).halfWidth(1.0, freedom);
        assertNotNull(u);
        assertEquals(factor, u, 0.5e-4);
    }
}

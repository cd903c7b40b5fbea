package org.printassay.check;

import java.util.Random;
import java.util.function.UnaryOperator;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MadePrint;

/**
 * Simulated reprints of an unchanged printer: each wanders a little from the last in blackness, in
 * tone, in the lean of its greys and where its wedges end, by standard deviations near those that
 * the tolerances state; and each is read with its own errors.
 */
final class Reprints {
    private static final double TONE = 0.1;
    private static final double LEAN = 0.07;
    private static final double BLACK = 0.12;
    private static final double WEDGE = 0.12;

    private Reprints() {}

    /** Prints and reads once more. */
    static Evaluation of(MadePrint print, long seed) {
        Random random = new Random(31 * seed + 5);
        double tone = TONE * random.nextGaussian();
        double a = LEAN * random.nextGaussian();
        double b = LEAN * random.nextGaussian();
        UnaryOperator<Lab> change = print.change();
        return print.withBlack(print.black() + BLACK * random.nextGaussian())
                .withShifts(
                        print.shadowShift() + WEDGE * random.nextGaussian(),
                        print.highlightShift() + WEDGE * random.nextGaussian())
                .withChange(
                        truth -> {
                            Lab c = change.apply(truth);
                            double middle = Math.sin(Math.PI * c.l() / 100);
                            return new Lab(
                                    c.l() + tone * middle, c.a() + a * middle, c.b() + b * middle);
                        })
                .evaluation(seed);
    }
}

package org.printassay.compare;

import org.printassay.evaluation.Evaluation;

/** What a print is called in sentences. */
public final class PrintLabel {
    private static final String NAMELESS = "a print without a name";

    private PrintLabel() {}

    /** Its file, by which prints of one paper are told apart; else its paper. */
    public static String byFile(Evaluation print) {
        String paper = print.details().paper();
        return print.files().isEmpty()
                ? paper == null ? NAMELESS : paper
                : print.files().get(0).name();
    }

    /** Its paper; where nobody said it, its file. */
    public static String byPaper(Evaluation print) {
        String paper = print.details().paper();
        return paper == null ? byFile(print) : paper;
    }
}

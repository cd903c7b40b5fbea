package org.printassay.report.paged;

import java.util.ArrayList;
import java.util.List;

/** All pieces of a document in order, some of them in several ways to choose from. */
final class Sequence {
    /**
     * One way to show something.
     *
     * @param cost of choosing it, in the measure of {@link Turn}
     * @param pieces one or more
     */
    record Way(double cost, List<Piece> pieces) {}

    private final List<List<Way>> steps = new ArrayList<>();
    private List<Piece> open = new ArrayList<>();
    private double space;
    private boolean loose;
    private boolean kept;

    /** What follows another, each in one or more ways. */
    List<List<Way>> steps() {
        closeStep();
        return List.copyOf(steps);
    }

    private void closeStep() {
        if (!open.isEmpty()) {
            steps.add(List.of(new Way(0, List.copyOf(open))));
            open = new ArrayList<>();
        }
    }

    /** Space before what follows, added to what there is. */
    void space(double height) {
        space += height;
    }

    /** Lets the space before what follows be stretched. */
    void loosen() {
        loose = true;
    }

    /** Keeps what follows on the page of what stands before it. */
    void keep() {
        kept = true;
    }

    /** A piece at which the page may be turned for so much. */
    void add(double height, double turn, Piece.Painter painter) {
        add(height, 0, turn, painter);
    }

    /** A piece that is taller by {@code more} where a page begins with it. */
    void add(double height, double more, double turn, Piece.Painter painter) {
        double price = kept ? Math.max(turn, Turn.NEVER) : turn;
        open.add(new Piece(space, loose, height, more, price, painter));
        space = 0;
        loose = false;
        kept = false;
    }

    /**
     * Something that may be shown in one of several ways.
     *
     * @param costs of each way
     * @param ways each adds one or more pieces to this sequence
     */
    void either(List<Double> costs, List<Runnable> ways) {
        closeStep();
        double spaceBefore = space;
        boolean looseBefore = loose;
        boolean keptBefore = kept;
        List<Way> made = new ArrayList<>();
        for (int i = 0; i < ways.size(); i++) {
            space = spaceBefore;
            loose = looseBefore;
            kept = keptBefore;
            ways.get(i).run();
            made.add(new Way(costs.get(i), List.copyOf(open)));
            open = new ArrayList<>();
        }
        steps.add(made);
    }
}

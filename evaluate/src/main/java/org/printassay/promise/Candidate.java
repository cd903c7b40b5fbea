package org.printassay.promise;

import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.colour.icc.IccException;

/** One way a print may have come about, and the colours that it would have. */
final class Candidate {
    /** Absolute colour of a file's code. */
    @FunctionalInterface
    interface Prediction {
        Lab of(Rgb8 code);
    }

    private final RouteKind kind;
    private final String words;
    private final Prediction prediction;
    private final Xyz white;

    /**
     * @param words what happened, to follow "as if"
     * @throws IccException when code 255 would print black or without a colour, and nothing can be
     *     relative to it
     */
    Candidate(RouteKind kind, String words, Prediction prediction) throws IccException {
        this.kind = kind;
        this.words = words;
        this.prediction = prediction;
        this.white = prediction.of(Rgb8.grey(255)).toXyz(Xyz.PCS_WHITE);
        if (!(Math.min(white.x(), Math.min(white.y(), white.z())) > 0)) {
            throw new IccException(128, "by it, paper would be black or lack a colour");
        }
    }

    RouteKind kind() {
        return kind;
    }

    String words() {
        return words;
    }

    /** Absolute CIELAB. */
    Lab absolute(Rgb8 code) {
        return prediction.of(code);
    }

    /** Relative to what code 255 prints, as readings are relative to theirs. */
    Lab relative(Rgb8 code) {
        Xyz xyz = prediction.of(code).toXyz(Xyz.PCS_WHITE);
        Xyz to = Xyz.PCS_WHITE;
        return Lab.of(
                new Xyz(
                        xyz.x() / white.x() * to.x(),
                        xyz.y() / white.y() * to.y(),
                        xyz.z() / white.z() * to.z()),
                to);
    }
}

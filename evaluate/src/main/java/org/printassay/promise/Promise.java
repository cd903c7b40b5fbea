package org.printassay.promise;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;

/**
 * A print beside what its printer's profile promises.
 *
 * @param profile the profile's file
 * @param sha256 of that file
 * @param description the profile's own name, may be empty
 * @param route how the print is said to have been made
 * @param patches every patch that was read, in the order of the readings
 * @param judged patches that the summary rests on: those without flags
 * @param meanDeltaE00 mean over them
 * @param p95DeltaE00 95 of 100 are nearer
 * @param maxDeltaE00 furthest
 * @param worst id of the furthest
 * @param promisedFit how well the promised route explains the print: trimmed mean dE00, relative to
 *     paper, one colour a code; null when no code 255 was read, so that neither this nor mistakes
 *     could be judged
 * @param mistake what explains it clearly better; null when nothing does
 */
public record Promise(
        String profile,
        String sha256,
        String description,
        PrintRoute route,
        List<Patch> patches,
        int judged,
        double meanDeltaE00,
        double p95DeltaE00,
        double maxDeltaE00,
        String worst,
        @Nullable Double promisedFit,
        @Nullable Mistake mistake) {
    public Promise {
        patches = List.copyOf(patches);
    }

    /**
     * One patch.
     *
     * @param lab promised colour, absolute
     * @param deltaE00 measured against it
     */
    public record Patch(String id, Lab lab, double deltaE00) {}

    /**
     * A mistake that the evidence is clear for.
     *
     * @param words what happened, to follow "as if"
     * @param fit as {@link Promise#promisedFit}, of this explanation
     */
    public record Mistake(RouteKind kind, String words, double fit) {}
}

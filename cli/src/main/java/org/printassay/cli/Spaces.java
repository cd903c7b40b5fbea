package org.printassay.cli;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;

/** RGB encodings as users type them. */
final class Spaces {
    private Spaces() {}

    static RgbSpace parse(String typed) throws Problem {
        return RgbSpace.ofKey(typed)
                .orElseThrow(
                        () ->
                                Problem.usage(
                                        "RGB encoding \""
                                                + PlainText.line(typed)
                                                + "\" is not known. Use "
                                                + Stream.of(RgbSpace.values())
                                                        .map(RgbSpace::key)
                                                        .collect(Collectors.joining(", "))
                                                + "."));
    }
}

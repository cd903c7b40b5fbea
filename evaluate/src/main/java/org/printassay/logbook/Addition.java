package org.printassay.logbook;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;

/**
 * What is to be added to a logbook.
 *
 * @param readAt when the print was read
 * @param note null for nothing
 */
public record Addition(Evaluation evaluation, Instant readAt, @Nullable String note) {
    /** As many as are worth adding at once: more gain little, and others wait. */
    public static final int AT_ONCE = 50;
}

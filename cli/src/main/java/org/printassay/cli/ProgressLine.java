package org.printassay.cli;

import java.util.concurrent.TimeUnit;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Progress;

/** Progress on standard error, after a second, and only when a person looks on. */
final class ProgressLine implements Progress, AutoCloseable {
    private static final int STEPS = 1000;

    private final String task;

    /** From Java 22 on a console is always there; start with {@code -Djdk.console=java.base}. */
    @SuppressWarnings("SystemConsoleNull")
    private final boolean watched = System.console() != null;

    private final long begin = System.nanoTime();
    private @Nullable ProgressBar bar;

    ProgressLine(String task) {
        this.task = task;
    }

    @Override
    public synchronized void reached(double share) {
        if (!watched || System.nanoTime() - begin < TimeUnit.SECONDS.toNanos(1)) {
            return;
        }
        ProgressBar shown = bar;
        if (shown == null) {
            shown =
                    new ProgressBarBuilder()
                            .setTaskName(task)
                            .setInitialMax(STEPS)
                            .setStyle(
                                    System.getenv("NO_COLOR") == null
                                            ? ProgressBarStyle.UNICODE_BLOCK
                                            : ProgressBarStyle.ASCII)
                            .clearDisplayOnFinish()
                            .build();
            bar = shown;
        }
        shown.stepTo(Math.round(share * STEPS));
    }

    @Override
    public synchronized void close() {
        if (bar != null) {
            bar.close();
        }
    }
}

package org.printassay.evaluation;

import java.util.Locale;
import java.util.Optional;
import org.printassay.sheet.RectMm;
import org.printassay.surface.Along;

/** Which way a sheet went through the printer; drivers turn pages, so only the user knows. */
public enum Feed {
    /** The long side ran along the feed: a short edge went in first. */
    LONG_SIDE,
    /** The short side ran along the feed: a long edge went in first. */
    SHORT_SIDE;

    /** Name in options and files. */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The feed of a {@link #key}. */
    public static Optional<Feed> ofKey(String key) {
        for (Feed feed : values()) {
            if (feed.key().equals(key)) {
                return Optional.of(feed);
            }
        }
        return Optional.empty();
    }

    /** The axis of a page that ran along the feed. */
    Along along(RectMm page) {
        Along longSide = page.height() >= page.width() ? Along.Y : Along.X;
        return this == LONG_SIDE ? longSide : longSide.other();
    }
}

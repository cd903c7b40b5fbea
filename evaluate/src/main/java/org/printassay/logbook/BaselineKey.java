package org.printassay.logbook;

import org.jspecify.annotations.Nullable;

/**
 * What a baseline, and a trend, is of: prints of one printer, paper, route and chart that were read
 * in one way.
 *
 * @param series by its key
 * @param chart null when unknown
 */
record BaselineKey(Series series, @Nullable String chart, String manner) {
    static BaselineKey of(Entry entry) {
        return new BaselineKey(entry.series().key(), entry.chart(), entry.manner());
    }
}

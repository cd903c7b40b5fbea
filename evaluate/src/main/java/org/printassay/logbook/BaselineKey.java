package org.printassay.logbook;

import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.PrintDetails;

/**
 * What a baseline, and a trend, is of: prints of one printer, paper, route and chart that were read
 * in one way.
 *
 * @param series by its key
 * @param chart null when unknown
 * @param manner by its key: it holds names
 */
record BaselineKey(Series series, @Nullable String chart, String manner) {
    static BaselineKey of(Entry entry) {
        return new BaselineKey(
                entry.series().key(), entry.chart(), PrintDetails.key(entry.manner()));
    }
}

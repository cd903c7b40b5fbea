package org.printassay.metric;

/**
 * The levels of a wedge outwards, the anchor first.
 *
 * @param d L* from the anchor
 * @param counts twins
 * @param coded standard error of each level by lossy coding; neighbours may fall on one step of it,
 *     so it stays the same however many of them are taken together
 * @param shared for each cause that moves levels together, what one standard error of it does to d
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record WedgeLevels(double[] d, int[] counts, double[] coded, double[][] shared) {
    int sum(int begin, int length) {
        int sum = 0;
        for (int k = begin; k < begin + length; k++) {
            sum += counts[k];
        }
        return sum;
    }

    double mean(int begin, int length) {
        return mean(d, begin, length);
    }

    private double mean(double[] values, int begin, int length) {
        double sum = 0;
        for (int k = begin; k < begin + length; k++) {
            sum += counts[k] * values[k];
        }
        return sum / sum(begin, length);
    }

    /** Standard error of the distance of a window from the anchor by lossy coding. */
    double codedFromAnchor(int begin, int length) {
        return Math.hypot(Math.max(coded[begin], coded[begin + length - 1]), coded[0]);
    }

    /** The same of the distance of two levels. */
    double codedApart(int one, int other) {
        return Math.hypot(coded[one], coded[other]);
    }

    /** Standard error of the mean of a window by what moves levels together. */
    double shared(int begin, int length) {
        double squares = 0;
        for (double[] cause : shared) {
            squares += Math.pow(mean(cause, begin, length), 2);
        }
        return Math.sqrt(squares);
    }

    /** The same of the distance of two windows. */
    double shared(int begin, int length, int otherBegin, int otherLength) {
        double squares = 0;
        for (double[] cause : shared) {
            double apart = mean(cause, begin, length) - mean(cause, otherBegin, otherLength);
            squares += apart * apart;
        }
        return Math.sqrt(squares);
    }
}

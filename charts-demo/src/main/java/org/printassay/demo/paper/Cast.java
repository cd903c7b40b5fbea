package org.printassay.demo.paper;

/**
 * A lean of greys, added to a* and b*, by tone: full at a quarter, half and three quarters of the
 * way from black to paper, straight lines between, none at black and paper.
 *
 * @param shadowsA a* at a quarter
 * @param shadowsB b* at a quarter
 * @param midtonesA a* at half
 * @param midtonesB b* at half
 * @param highlightsA a* at three quarters
 * @param highlightsB b* at three quarters
 */
public record Cast(
        double shadowsA,
        double shadowsB,
        double midtonesA,
        double midtonesB,
        double highlightsA,
        double highlightsB) {
    /** Neutral greys. */
    public static final Cast NONE = new Cast(0, 0, 0, 0, 0, 0);

    double a(double tone) {
        return along(tone, shadowsA, midtonesA, highlightsA);
    }

    double b(double tone) {
        return along(tone, shadowsB, midtonesB, highlightsB);
    }

    private static double along(double tone, double quarter, double half, double threeQuarters) {
        double[] nodes = {0, quarter, half, threeQuarters, 0};
        double at = 4 * Math.min(1, Math.max(0, tone));
        int left = Math.min(3, (int) at);
        return nodes[left] + (at - left) * (nodes[left + 1] - nodes[left]);
    }
}

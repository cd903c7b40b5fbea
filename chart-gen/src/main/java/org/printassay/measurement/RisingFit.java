package org.printassay.measurement;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.printassay.colour.Lab;

/**
 * The best rising curve through readings (isotonic regression by pooling neighbours: Barlow et al.
 * 1972): papers bend tone, but do not turn it round.
 */
final class RisingFit {
    private RisingFit() {}

    /**
     * Squares of L* about the curve that rises with the expected L*, and about the mean.
     *
     * @param weights of the readings, 0 or more, not all 0
     */
    static double[] squares(List<Lab> expected, List<Lab> read, double[] weights) {
        int[] order =
                IntStream.range(0, read.size())
                        .filter(i -> weights[i] > 0)
                        .boxed()
                        .sorted(Comparator.comparingDouble(i -> expected.get(i).l()))
                        .mapToInt(i -> i)
                        .toArray();
        double[] sum = new double[order.length];
        double[] weight = new double[order.length];
        double[] top = new double[order.length];
        int[] count = new int[order.length];
        int pools = 0;
        for (int i : order) {
            double l = expected.get(i).l();
            if (pools > 0 && top[pools - 1] == l) {
                pools--;
            } else {
                sum[pools] = 0;
                weight[pools] = 0;
                count[pools] = 0;
            }
            top[pools] = l;
            sum[pools] += weights[i] * read.get(i).l();
            weight[pools] += weights[i];
            count[pools]++;
            pools++;
        }
        int kept = 0;
        for (int pool = 0; pool < pools; pool++) {
            sum[kept] = sum[pool];
            weight[kept] = weight[pool];
            count[kept] = count[pool];
            kept++;
            while (kept > 1
                    && sum[kept - 2] / weight[kept - 2] >= sum[kept - 1] / weight[kept - 1]) {
                sum[kept - 2] += sum[kept - 1];
                weight[kept - 2] += weight[kept - 1];
                count[kept - 2] += count[kept - 1];
                kept--;
            }
        }
        double mean = mean(read, weights);
        double about = 0;
        double left = 0;
        int next = 0;
        for (int pool = 0; pool < kept; pool++) {
            for (int k = 0; k < count[pool]; k++) {
                int i = order[next++];
                left += weights[i] * Math.pow(read.get(i).l() - sum[pool] / weight[pool], 2);
                about += weights[i] * Math.pow(read.get(i).l() - mean, 2);
            }
        }
        return new double[] {left, about};
    }

    private static double mean(List<Lab> labs, double[] weights) {
        double sum = 0;
        double all = 0;
        for (int i = 0; i < labs.size(); i++) {
            sum += weights[i] * labs.get(i).l();
            all += weights[i];
        }
        return all == 0 ? 0 : sum / all;
    }
}

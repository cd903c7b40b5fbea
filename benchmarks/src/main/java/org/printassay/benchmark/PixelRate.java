package org.printassay.benchmark;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.Locale;

/**
 * Prints what {@link PixelBenchmark} does as processor time, nanoseconds a pixel, median of many
 * runs: on a busy machine the only fair figure beside another program's.
 */
public final class PixelRate {
    private static final int WARM = 30;
    private static final int RUNS = 31;

    private PixelRate() {}

    /** No arguments; the property {@code printer} names the printing profile. */
    public static void main(String[] args) throws Exception {
        for (String way : new String[] {"rgb-printer", "printer-rgb", "rgb-rgb"}) {
            PixelBenchmark benchmark = new PixelBenchmark();
            benchmark.way = way;
            benchmark.prepare();
            System.out.printf(Locale.ROOT, "%s,8,%.2f%n", way, median(benchmark::bits8));
            System.out.printf(Locale.ROOT, "%s,16,%.2f%n", way, median(benchmark::bits16));
        }
    }

    private static double median(Runnable run) {
        ThreadMXBean clock = ManagementFactory.getThreadMXBean();
        double[] times = new double[WARM + RUNS];
        for (int i = 0; i < times.length; i++) {
            long start = clock.getCurrentThreadCpuTime();
            run.run();
            times[i] = (clock.getCurrentThreadCpuTime() - start) / (double) PixelBenchmark.PIXELS;
        }
        double[] warm = Arrays.copyOfRange(times, WARM, times.length);
        Arrays.sort(warm);
        return warm[RUNS / 2];
    }
}

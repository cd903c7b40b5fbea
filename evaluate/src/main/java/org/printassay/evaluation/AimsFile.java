package org.printassay.evaluation;

import org.printassay.colour.RgbSpace;
import org.printassay.measurement.MeasuredPatch;
import org.printassay.measurement.MeasurementFile;
import org.printassay.problem.Problem;

/** Tells a chart's own reference file, which holds what its codes stand for, from a measurement. */
final class AimsFile {
    /** Reference files are written with fewer digits; no instrument repeats to this. */
    private static final double SAME = 0.02;

    private AimsFile() {}

    /**
     * Refuses a chart's own reference file.
     *
     * @throws Problem input, when it says that it is one, and every colour is exactly that of its
     *     code: instruments' programs copy the words into their measurements
     */
    static void refuse(MeasurementFile file) throws Problem {
        String encoding = file.keywords().get("RGB_ENCODING");
        if (encoding == null || !file.keywords().containsKey("CHART_ID")) {
            return;
        }
        for (RgbSpace space : RgbSpace.values()) {
            if (space.title().equals(encoding) && isOf(file, space)) {
                throw Problem.input(
                        file.name(),
                        "is the chart's own reference file: it holds what the codes stand for, not"
                                + " a measurement. Measure the print, and name that file.");
            }
        }
    }

    private static boolean isOf(MeasurementFile file, RgbSpace space) {
        return file.patches().stream().allMatch(patch -> isOf(patch, space));
    }

    private static boolean isOf(MeasuredPatch patch, RgbSpace space) {
        var aim = space.toLab(patch.rgb());
        var lab = patch.lab();
        return Math.abs(aim.l() - lab.l()) < SAME
                && Math.abs(aim.a() - lab.a()) < SAME
                && Math.abs(aim.b() - lab.b()) < SAME;
    }
}

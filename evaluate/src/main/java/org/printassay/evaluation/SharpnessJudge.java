package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.sample.SurfaceSamples;
import org.printassay.surface.Along;
import org.printassay.texture.EdgeResponse;
import org.printassay.texture.EdgeResponses;

/** Sharpness by direction, from the slanted edges that scans show. */
final class SharpnessJudge {
    private static final double FIVE_PER_MM = 5;

    /** A curve has every fourth value of the responses, 0.2 per millimetre apart. */
    private static final int STEPS = 4;

    private SharpnessJudge() {}

    /** Sharpness by the edges of all scans of the finest sampling; null when none could be read. */
    static PrintSurface.@Nullable Sharpness judge(List<ScanPart> parts) {
        double finest = 0;
        for (ScanPart part : parts) {
            if (!part.samples().surface().edges().isEmpty()) {
                finest = Math.max(finest, part.samples().located().placement().samplesPerMm());
            }
        }
        List<EdgeResponse> across = new ArrayList<>();
        List<EdgeResponse> down = new ArrayList<>();
        for (ScanPart part : parts) {
            if (part.samples().located().placement().samplesPerMm() < 0.95 * finest) {
                continue;
            }
            for (SurfaceSamples.Edge edge : part.samples().surface().edges()) {
                (edge.along() == Along.X ? across : down).add(edge.response());
            }
        }
        if (across.isEmpty() && down.isEmpty()) {
            return null;
        }
        double stepPerMm = STEPS * (across.isEmpty() ? down : across).get(0).stepPerMm();
        EdgeResponses x = new EdgeResponses(across);
        EdgeResponses y = new EdgeResponses(down);
        return new PrintSurface.Sharpness(
                x.halfPerMm(),
                y.halfPerMm(),
                x.at(FIVE_PER_MM),
                y.at(FIVE_PER_MM),
                across.size() + down.size(),
                x.curve(STEPS, finest / 2),
                y.curve(STEPS, finest / 2),
                stepPerMm);
    }
}

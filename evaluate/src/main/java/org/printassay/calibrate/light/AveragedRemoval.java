package org.printassay.calibrate.light;

import java.util.ArrayList;
import java.util.List;
import org.printassay.sample.SheetSamples;

/**
 * The patches freed from the light by several models, each by its weight.
 *
 * @param weighed the models of the light, and how much each weighs
 * @param models what each of them leaves of the patches, in the same order
 * @param mean their weighted mean
 * @param likeliest the model that weighs most
 */
record AveragedRemoval(
        List<KernelChoice.Weighed> weighed,
        List<LightRemoval> models,
        LightRemoval mean,
        ChannelsTogether likeliest) {
    static AveragedRemoval of(
            SheetSamples samples, ScanLight scan, List<KernelChoice.Weighed> weighed) {
        KernelChoice.Weighed likeliest = weighed.get(0);
        double[] weights = new double[weighed.size()];
        List<LightRemoval> models = new ArrayList<>();
        for (int m = 0; m < weights.length; m++) {
            KernelChoice.Weighed model = weighed.get(m);
            weights[m] = model.weight();
            models.add(LightRemoval.of(samples, scan, model.outcome()));
            likeliest = model.weight() > likeliest.weight() ? model : likeliest;
        }
        return new AveragedRemoval(
                weighed, models, LightRemoval.mean(models, weights), likeliest.model());
    }

    /** What the errors of the likeliest model do to {@code corrected}. */
    List<double[][]> causes(ScanLight scan) {
        return mean.causes(scan, likeliest);
    }

    /** What the models disagree by, a cause for each; none where there is but one. */
    List<double[][]> shapes() {
        List<double[][]> shapes = new ArrayList<>();
        for (int m = 0; m < models.size() && models.size() > 1; m++) {
            shapes.add(models.get(m).apartFrom(mean, Math.sqrt(weighed.get(m).weight())));
        }
        return shapes;
    }
}

package org.printassay.calibrate.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.printassay.calibrate.SimulatedScan;
import org.printassay.colour.LinearRgb;
import org.printassay.problem.Problem;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;

/** Exchanged channels are told, and prints of little or no colour are not taken for them. */
class ChannelOrderTest {
    private static Optional<String> fault(UnaryOperator<LinearRgb> change) throws Problem {
        SheetSamples plain = new SimulatedScan().scan();
        List<PatchSample> samples = new ArrayList<>();
        for (PatchSample sample : plain.samples()) {
            samples.add(
                    new PatchSample(
                            sample.patch(),
                            change.apply(sample.linear()),
                            sample.standardError(),
                            sample.blocks(),
                            sample.flags()));
        }
        return ChannelOrder.fault(
                new SheetSamples(
                        plain.scan(), plain.located(), samples, plain.page(), plain.preview()));
    }

    private static LinearRgb toned(LinearRgb light) {
        double grey = 0.2 * light.r() + 0.7 * light.g() + 0.1 * light.b();
        return new LinearRgb(grey, Math.pow(grey, 1.03), Math.pow(grey, 1.1));
    }

    private static LinearRgb weak(LinearRgb light) {
        LinearRgb grey = toned(light);
        return new LinearRgb(
                0.9 * grey.r() + 0.1 * light.r(),
                0.9 * grey.g() + 0.1 * light.g(),
                0.9 * grey.b() + 0.1 * light.b());
    }

    @Test
    void rightAndColourlessPrintsAreNotAccused() throws Problem {
        assertEquals(Optional.empty(), fault(light -> light));
        assertEquals(Optional.empty(), fault(ChannelOrderTest::toned));
        assertEquals(Optional.empty(), fault(ChannelOrderTest::weak));
    }

    @Test
    void everyOtherOrderIsTold() throws Problem {
        assertTrue(
                fault(light -> new LinearRgb(light.b(), light.g(), light.r()))
                        .orElseThrow()
                        .startsWith("its red and blue are exchanged"));
        assertTrue(
                fault(light -> new LinearRgb(light.g(), light.r(), light.b()))
                        .orElseThrow()
                        .startsWith("its red and green are exchanged"));
        assertTrue(
                fault(light -> new LinearRgb(light.g(), light.b(), light.r()))
                        .orElseThrow()
                        .startsWith("its red, green and blue are in a wrong order"));
    }
}

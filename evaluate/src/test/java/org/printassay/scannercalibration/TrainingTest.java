package org.printassay.scannercalibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.problem.Problem;
import org.printassay.scannermodel.ModelFit;
import org.printassay.scannermodel.TrainingPatch;

/** A simulated scanner whose light is that of sRGB; colours drawn by lot. */
class TrainingTest {
    private static List<TrainingPatch> patches(int count) {
        Random random = new Random(3);
        List<TrainingPatch> patches = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double[] v = new double[3];
            for (int c = 0; c < 3; c++) {
                v[c] = i % 4 == 0 && c > 0 ? v[0] : 0.05 + 0.85 * random.nextDouble();
            }
            Lab lab = Lab.of(RgbSpace.SRGB.linearToXyz(v[0], v[1], v[2]), Xyz.PCS_WHITE);
            LinearRgb light = new LinearRgb(v[0], v[1], v[2]);
            patches.add(new TrainingPatch("P" + i, "colour " + i, i % 4 == 0, light, lab));
        }
        return patches;
    }

    @Test
    void misfitsThatLeaveTooFewColoursAreAProblemOfTheFile() throws Problem {
        List<TrainingPatch> patches = patches(ModelFit.FEWEST_COLOURS);
        Training.of("measured.txt", patches);
        int odd = 0;
        for (int i = 0; i < patches.size(); i++) {
            boolean middle = Math.abs(patches.get(i).lab().l() - 65) < 10;
            odd = middle && patches.get(i).lab().chroma() > 30 ? i : odd;
        }
        TrainingPatch was = patches.get(odd);
        Lab wrong = new Lab(was.lab().l(), -was.lab().a(), -was.lab().b());
        patches.set(
                odd, new TrainingPatch(was.id(), was.colour(), was.neutral(), was.light(), wrong));
        Problem problem = assertThrows(Problem.class, () -> Training.of("measured.txt", patches));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.toString().contains("has only 23 colours"), problem::toString);
    }

    @Test
    void aFlatScanDoesNotBelongToAnyMeasurement() {
        List<TrainingPatch> flat = new ArrayList<>();
        for (TrainingPatch p : patches(60)) {
            LinearRgb grey = new LinearRgb(0.5, 0.5, 0.5);
            flat.add(new TrainingPatch(p.id(), p.colour(), p.neutral(), grey, p.lab()));
        }
        Problem problem = assertThrows(Problem.class, () -> Training.of("measured.txt", flat));
        assertTrue(problem.toString().contains("does not belong"), problem::toString);
    }

    @Test
    void moreColoursThanAModelTakesAreThinned() {
        List<TrainingPatch> patches = patches(2000);
        List<TrainingPatch> used = Training.thinned(patches);
        assertEquals(ModelFit.MOST_COLOURS, used.size());
        assertEquals(500, used.stream().filter(TrainingPatch::neutral).count());
        assertEquals(used, Training.thinned(patches));
        List<TrainingPatch> few = patches(100);
        assertEquals(few, Training.thinned(few));
    }
}

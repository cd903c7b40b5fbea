package org.printassay.demo;

import java.util.List;
import org.printassay.colour.Lab;
import org.printassay.demo.flatbed.Encoding;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.paper.Cast;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Surface;
import org.printassay.demo.paper.Tone;
import org.printassay.demo.print.Printing;

/**
 * An invented small print room that tries three papers on one printer. All simulated: papers,
 * printer and numbers are made up.
 *
 * @param key short name for folders
 * @param paper the paper and its faults
 * @param printer what the user writes for the printer
 * @param route what the user writes for the route
 * @param driedHours hours between printing and scanning
 * @param printing how it was printed
 * @param flatbed how it was scanned
 * @param seed decides everything random
 */
public record DemoScenario(
        String key,
        PaperModel paper,
        String printer,
        String route,
        double driedHours,
        Printing printing,
        Flatbed flatbed,
        long seed) {
    private static final String PRINTER = "Printer 1 (simulated)";
    private static final String ROUTE =
            "relative colorimetric with black point compensation (simulated)";

    /** The three papers, in the order of their letters. */
    public static List<DemoScenario> threePapers() {
        return List.of(warmMatteCotton(), coolPearl(), smoothBaryta());
    }

    /** Dull black, shadows blocked through about level 11, warm white, reds and blues weak. */
    public static DemoScenario warmMatteCotton() {
        PaperModel paper =
                new PaperModel(
                        "Paper A, warm matte cotton (simulated)",
                        new Lab(95.8, 0.6, 4.6),
                        new Lab(16.8, 0.4, 1.2),
                        Tone.AIM.withBlocked(7, 12, true).withDotGain(0.01),
                        new Cast(0.2, 0.6, 0.2, 0.5, 0.1, 0.3),
                        List.of(0.93, 0.96, 0.95, 0.95, 0.92, 0.9),
                        new Surface(0.10, 0.10, 0.5, 0.07, 0.35, 0.35, 0.15));
        return scenario("paper-a", paper, 101);
    }

    /** Deep black, cool white with a blue lean, highlights from about level 249 merge. */
    public static DemoScenario coolPearl() {
        PaperModel paper =
                new PaperModel(
                        "Paper B, cool pearl (simulated)",
                        new Lab(97.2, 0.3, -3.4),
                        new Lab(3.6, 0.1, -0.4),
                        Tone.AIM.withMerged(249, 5, false),
                        new Cast(-0.1, -0.9, 0, -1.2, 0, -0.7),
                        PaperModel.FULL_CHROMA,
                        new Surface(0.08, 0.08, 0.3, 0.06, 0.1, 0.2, 0.1));
        return scenario("paper-b", paper, 202);
    }

    /** Good tone at both ends, but mid-tones darker than the aim and greenish. */
    public static DemoScenario smoothBaryta() {
        PaperModel paper =
                new PaperModel(
                        "Paper C, smooth baryta (simulated)",
                        new Lab(96.4, -0.3, 0.8),
                        new Lab(5.1, 0, 0.2),
                        Tone.AIM.withDotGain(0.035),
                        new Cast(-1.0, 0.2, -3.2, 1.0, -1.4, 0.4),
                        PaperModel.FULL_CHROMA,
                        new Surface(0.08, 0.08, 0.3, 0.06, 0.05, 0.2, 0.1));
        return scenario("paper-c", paper, 303);
    }

    private static DemoScenario scenario(String key, PaperModel paper, long seed) {
        // Bluish paper is outside sRGB: the scanner delivers its own, wider colours.
        Flatbed ordinary = Flatbed.ordinary(300);
        Flatbed flatbed = ordinary.withSensor(ordinary.sensor().withEncoding(Encoding.SCANNER));
        return new DemoScenario(key, paper, PRINTER, ROUTE, 24, Printing.EXACT, flatbed, seed);
    }
}

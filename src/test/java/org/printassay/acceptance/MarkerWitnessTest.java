package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.locate.FoundMarker;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.MarkerSearch;
import org.printassay.locate.PointPx;
import org.printassay.scan.ScanFiles;

/**
 * Markers against OpenCV's detector (Debian's python3-opencv, module aruco, sub-pixel corners), on
 * scans that are hard for both. Skipped without it; {@code -Dwitnesses=required} demands it.
 */
class MarkerWitnessTest {
    /** Pixel (0, 0) has its middle at 0 there, at 0.5 here; both are told in our way. */
    private static final String WITNESS =
            """
            import sys, cv2
            words = cv2.aruco.Dictionary_get(cv2.aruco.DICT_6X6_1000)
            how = cv2.aruco.DetectorParameters_create()
            how.cornerRefinementMethod = cv2.aruco.CORNER_REFINE_SUBPIX
            picture = cv2.imread(sys.argv[1], cv2.IMREAD_GRAYSCALE)
            corners, ids, _ = cv2.aruco.detectMarkers(picture, words, parameters=how)
            for c, i in zip(corners, [] if ids is None else ids.flatten()):
                print(i, *(v + 0.5 for v in c.flatten()))
            """;

    /** Root mean square distance of corners on a clear scan; measured: 0.14. */
    private static final double CORNERS_PX = 0.3;

    @TempDir Path dir;

    @Test
    void findsWhatTheWitnessFinds() throws Exception {
        Path python = Path.of("/usr/bin/python3");
        boolean there = python.toFile().canExecute() && run(python, "-c", "import cv2").isEmpty();
        if (!"required".equals(System.getProperty("witnesses"))) {
            assumeTrue(there, "OpenCV for Python is not installed");
        }
        assertTrue(there, "OpenCV for Python is required");
        EditedScan good =
                EditedScan.of(ScanFiles.open(SimulatedPrint.plainGood(dir.resolve("good.png"))));
        Map<String, EditedScan> scans =
                Map.of(
                        "good", good,
                        "blurred", good.blurred(3),
                        "noisy", good.dull(100, 200, 20, 3),
                        "dull", good.dull(120, 140, 1, 3),
                        "all at once", good.blurred(2).dull(100, 130, 3, 3),
                        "turned by a camera",
                                good.mapped(
                                        good.info().width(),
                                        good.info().height(),
                                        good.camera(0.2, 0)));
        for (Map.Entry<String, EditedScan> entry : new TreeMap<>(scans).entrySet()) {
            EditedScan scan = entry.getValue();
            Map<Integer, List<PointPx>> ours = new TreeMap<>();
            LocatingImage image = LocatingImage.of(scan, ScanColour.plain(scan.info()).codeLight());
            for (FoundMarker marker : MarkerSearch.in(image)) {
                ours.put(marker.id(), marker.corners());
            }
            Map<Integer, List<PointPx>> theirs =
                    witness(python, scan.write(dir.resolve("scan.png")));
            assertTrue(
                    ours.keySet().containsAll(theirs.keySet()),
                    entry.getKey() + ": found " + ours.keySet() + " of " + theirs.keySet());
            if (entry.getKey().equals("good")) {
                assertEquals(14, ours.size());
                assertTrue(apart(ours, theirs) < CORNERS_PX, "" + apart(ours, theirs));
            }
        }
    }

    private static double apart(
            Map<Integer, List<PointPx>> ours, Map<Integer, List<PointPx>> theirs) {
        double sum = 0;
        int count = 0;
        for (Map.Entry<Integer, List<PointPx>> entry : theirs.entrySet()) {
            for (int i = 0; i < 4; i++) {
                PointPx a = entry.getValue().get(i);
                PointPx b = ours.getOrDefault(entry.getKey(), entry.getValue()).get(i);
                sum += Math.pow(a.x() - b.x(), 2) + Math.pow(a.y() - b.y(), 2);
                count++;
            }
        }
        return Math.sqrt(sum / Math.max(1, count));
    }

    private static Map<Integer, List<PointPx>> witness(Path python, Path picture) throws Exception {
        Map<Integer, List<PointPx>> found = new TreeMap<>();
        for (String line : run(python, "-c", WITNESS, picture.toString()).lines().toList()) {
            String[] words = line.trim().split(" ", -1);
            if (words.length == 9) {
                List<PointPx> corners = new ArrayList<>();
                for (int i = 1; i < 9; i += 2) {
                    corners.add(
                            new PointPx(
                                    Double.parseDouble(words[i]),
                                    Double.parseDouble(words[i + 1])));
                }
                found.put(Integer.valueOf(words[0]), corners);
            }
        }
        return found;
    }

    private static String run(Path program, String... arguments) throws Exception {
        List<String> command = new ArrayList<>(List.of(program.toString()));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        return said;
    }
}

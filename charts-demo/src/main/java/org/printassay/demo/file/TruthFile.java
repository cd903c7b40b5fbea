package org.printassay.demo.file;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.PrintedPatch;
import org.printassay.problem.Problem;

/** What is true of a simulated print, as JSON: to prove an evaluation right or wrong. */
public final class TruthFile {
    private static final List<Double> THRESHOLDS = List.of(0.5, 1.0);

    private TruthFile() {}

    /**
     * Writes the truth.
     *
     * @param scans scan file names with the flatbed that made each
     */
    public static void write(Print print, Map<String, Flatbed> scans, Path to) throws Problem {
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode root = mapper.createObjectNode();
        root.put("note", "SIMULATED: true values of an invented print on an invented paper");
        root.put("paper", print.paper().name());
        root.set("white", lab(mapper, print.paper().white()));
        root.set("black", lab(mapper, print.colourOf(Rgb8.grey(0))));
        ArrayNode neutrals = root.putArray("neutralL");
        for (int level = 0; level < 256; level++) {
            neutrals.add(print.colourOf(Rgb8.grey(level)).l());
        }
        ArrayNode levels = root.putArray("levels");
        for (double threshold : THRESHOLDS) {
            ObjectNode node = levels.addObject().put("threshold", threshold);
            Levels truth = Levels.of(print, threshold);
            node.put("firstVisible", truth.firstVisible());
            node.put("lastVisible", truth.lastVisible());
        }
        ArrayNode patches = root.putArray("patches");
        for (PrintedPatch patch : print.patches()) {
            Rgb8 rgb = patch.patch().rgb();
            ObjectNode node = patches.addObject().put("id", patch.patch().id());
            node.putArray("rgb").add(rgb.r()).add(rgb.g()).add(rgb.b());
            node.set("expected", lab(mapper, patch.expected()));
            node.set("printed", lab(mapper, patch.printed()));
        }
        ObjectNode scanNode = root.putObject("scans");
        scans.forEach((name, flatbed) -> scanNode.set(name, mapper.valueToTree(flatbed)));
        root.set("printing", mapper.valueToTree(print.printing()));
        try {
            Files.writeString(
                    to, mapper.writerWithDefaultPrettyPrinter().writeValueAsString(root) + "\n");
        } catch (IOException e) {
            throw Problem.output(String.valueOf(to.getFileName()), "cannot be written.");
        }
    }

    private static ObjectNode lab(ObjectMapper mapper, Lab lab) {
        return mapper.createObjectNode().put("l", lab.l()).put("a", lab.a()).put("b", lab.b());
    }

    /**
     * True ends of tone on a paper, over every level.
     *
     * @param firstVisible lowest level from which all through 48 differ from black by the threshold
     *     or more; null when even 48 does not
     * @param lastVisible highest level up to which all from 207 differ from paper by it; null when
     *     even 207 does not
     */
    public record Levels(@Nullable Integer firstVisible, @Nullable Integer lastVisible) {
        /**
         * Finds them.
         *
         * @param threshold L*
         */
        public static Levels of(Print print, double threshold) {
            double black = print.colourOf(Rgb8.grey(0)).l();
            double paper = print.colourOf(Rgb8.grey(255)).l();
            Integer first = null;
            for (int l = 48; l >= 0 && print.colourOf(Rgb8.grey(l)).l() - black >= threshold; l--) {
                first = l;
            }
            Integer last = null;
            for (int l = 207;
                    l <= 255 && paper - print.colourOf(Rgb8.grey(l)).l() >= threshold;
                    l++) {
                last = l;
            }
            return new Levels(first, last);
        }
    }
}

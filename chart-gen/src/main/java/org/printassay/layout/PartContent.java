package org.printassay.layout;

import java.util.ArrayList;
import java.util.List;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.recipe.Part;
import org.printassay.sheet.Section;

/** The patches of a section of an edited recipe. */
final class PartContent {
    private static final int[] HUE_STEPS = {224, 160, 96, 32};
    private static final int EACH_LEVEL = 24;

    private PartContent() {}

    /**
     * First copy in order, the others mixed.
     *
     * @param nth 1 for the first section of its kind in the design: ids of later ones begin with it
     */
    static List<Ink> inks(Part part, int nth, RgbSpace space) {
        String start = nth == 1 ? "" : String.valueOf(nth);
        List<Ink> once = once(part, space);
        List<Ink> inks = new ArrayList<>();
        Shuffle shuffle = new Shuffle(nth);
        for (int copy = 0; copy < part.copies(); copy++) {
            List<Ink> more = new ArrayList<>();
            for (Ink ink : once) {
                String id = start + ink.id() + (char) ('A' + copy);
                more.add(new Ink(id, ink.section(), ink.rgb()));
            }
            for (int i = more.size() - 1; copy > 0 && i > 0; i--) {
                int j = shuffle.next(i + 1);
                Ink held = more.get(i);
                more.set(i, more.get(j));
                more.set(j, held);
            }
            inks.addAll(more);
        }
        return inks;
    }

    /** How many patches a section holds, copies included, without making them. */
    static long count(Part part) {
        long once =
                switch (part.what()) {
                    case NEUTRAL_RAMP -> part.amount();
                    case SHADOWS, HIGHLIGHTS -> steps(part).size();
                    case CUBE ->
                            Math.round(Math.pow(part.amount(), 3) - Math.pow(part.amount() - 2, 3));
                    case HUE_RAMPS -> hues().size();
                    case SKIN -> SkinTones.count();
                    case TINTS -> tints().size();
                    case EVENNESS -> evenness().size();
                    case OWN -> part.colours().size();
                    case STRAY_LIGHT, EDGES, VIGNETTES -> 0;
                };
        return once * part.copies();
    }

    /** Words above a section. */
    static String caption(Part.What what) {
        return switch (what) {
            case NEUTRAL_RAMP -> "Greys from black to paper";
            case SHADOWS -> "Shadows";
            case HIGHLIGHTS -> "Highlights";
            case CUBE -> "Colours";
            case HUE_RAMPS -> "Colours: paper, full, black";
            case SKIN -> "Skin-like tones";
            case STRAY_LIGHT -> "Greys on black and on white";
            case EDGES -> "Sharpness";
            case VIGNETTES -> "Smooth without steps?";
            case TINTS -> "Plain tints. Fine lines or bands?";
            case EVENNESS -> "Evenness";
            case OWN -> "Own colours";
        };
    }

    /** What to look for by eye, where the section is wide enough for it. */
    static String look(Part.What what) {
        return switch (what) {
            case SHADOWS -> "From which patch on do you see steps? In 2000 lux, then in 500";
            case HIGHLIGHTS -> "From which patch on do you see a tint? In 2000 lux, even light";
            case NEUTRAL_RAMP -> "Even steps, none of them tinted?";
            case CUBE, HUE_RAMPS -> "Does each step differ from its next?";
            case SKIN -> "None too red, too yellow, too grey?";
            case EDGES -> "Crisp edges without halos?";
            case TINTS -> "Look from 25 cm in 2000 lux";
            case EVENNESS -> "Alike all over the sheet?";
            case STRAY_LIGHT, VIGNETTES, OWN -> "";
        };
    }

    private static List<Ink> once(Part part, RgbSpace space) {
        return switch (part.what()) {
            case NEUTRAL_RAMP -> ramp(part.amount(), space);
            case SHADOWS -> wedge(part, true);
            case HIGHLIGHTS -> wedge(part, false);
            case CUBE -> cube(part.amount());
            case HUE_RAMPS -> hues();
            case SKIN -> skin(space);
            case TINTS -> tints();
            case EVENNESS -> evenness();
            case OWN -> own(part.colours());
            case STRAY_LIGHT, EDGES, VIGNETTES -> List.of();
        };
    }

    private static List<Ink> ramp(int steps, RgbSpace space) {
        List<Ink> inks = new ArrayList<>();
        for (int step = 0; step < steps; step++) {
            double lightness = 100.0 * step / (steps - 1);
            double linear = Math.min(1, Math.max(0, Lab.luminanceFactor(lightness)));
            Rgb8 rgb = Rgb8.grey((int) Math.round(255 * space.encode(linear)));
            inks.add(new Ink(PaperContent.two("N", step), Section.NEUTRAL_RAMP, rgb));
        }
        return inks;
    }

    private static List<Ink> wedge(Part part, boolean dark) {
        List<Ink> inks = new ArrayList<>();
        for (int step : steps(part)) {
            int level = dark ? step : 255 - step;
            Section section = dark ? Section.SHADOWS : Section.HIGHLIGHTS;
            inks.add(new Ink((dark ? "D" : "H") + level, section, Rgb8.grey(level)));
        }
        return inks;
    }

    /** Distances of a wedge's levels from its end. */
    private static List<Integer> steps(Part part) {
        List<Integer> steps = new ArrayList<>();
        int step = 0;
        while (step <= part.amount()) {
            steps.add(step);
            int usual = step < EACH_LEVEL ? 1 : 2;
            step += part.every() > 0 ? part.every() : usual;
        }
        return steps;
    }

    private static List<Ink> cube(int edge) {
        List<Ink> inks = new ArrayList<>();
        int last = edge - 1;
        for (int r = 0; r < edge; r++) {
            for (int g = 0; g < edge; g++) {
                for (int b = 0; b < edge; b++) {
                    if (r % last == 0 || g % last == 0 || b % last == 0) {
                        Rgb8 rgb = new Rgb8(code(r, last), code(g, last), code(b, last));
                        inks.add(new Ink("C" + r + g + b, Section.CUBE, rgb));
                    }
                }
            }
        }
        return inks;
    }

    private static int code(int step, int last) {
        return (int) Math.round(255.0 * step / last);
    }

    private static List<Ink> hues() {
        List<Ink> inks = new ArrayList<>();
        String names = "RYGCBM";
        boolean[][] full = {
            {true, false, false},
            {true, true, false},
            {false, true, false},
            {false, true, true},
            {false, false, true},
            {true, false, true}
        };
        for (int hue = 0; hue < names.length(); hue++) {
            int step = 1;
            for (int code : HUE_STEPS) {
                inks.add(hue(names.charAt(hue), step++, full[hue], 255, code));
            }
            inks.add(hue(names.charAt(hue), step++, full[hue], 255, 0));
            for (int code : HUE_STEPS) {
                inks.add(hue(names.charAt(hue), step++, full[hue], code, 0));
            }
        }
        return inks;
    }

    private static Ink hue(char name, int step, boolean[] on, int full, int rest) {
        Rgb8 rgb = new Rgb8(on[0] ? full : rest, on[1] ? full : rest, on[2] ? full : rest);
        return new Ink("T" + name + step, Section.HUE_RAMPS, rgb);
    }

    private static List<Ink> skin(RgbSpace space) {
        List<Ink> inks = new ArrayList<>();
        for (Ink ink : SkinTones.twinned(space)) {
            if (ink.id().endsWith("A")) {
                String id = ink.id().substring(0, ink.id().length() - 1);
                inks.add(new Ink(id, Section.SKIN, ink.rgb()));
            }
        }
        return inks;
    }

    private static List<Ink> tints() {
        List<Ink> inks = new ArrayList<>(PrinterContent.neutrals("L"));
        inks.addAll(PrinterContent.colours("L"));
        return inks;
    }

    private static List<Ink> evenness() {
        List<Ink> inks = new ArrayList<>();
        for (Ink ink : PrinterContent.evenness(1, 1)) {
            inks.add(new Ink("E" + ink.rgb().g(), Section.EVENNESS, ink.rgb()));
        }
        return inks;
    }

    private static List<Ink> own(List<Rgb8> colours) {
        List<Ink> inks = new ArrayList<>();
        for (Rgb8 rgb : colours) {
            inks.add(new Ink(PaperContent.two("U", inks.size() + 1), Section.OWN, rgb));
        }
        return inks;
    }
}

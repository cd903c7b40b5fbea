package org.printassay.promise;

import java.util.EnumMap;
import java.util.Map;
import org.printassay.colour.PaperAim;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.IccException;
import org.printassay.metric.ToneAim;
import org.printassay.problem.Problem;
import org.printassay.reading.ReadingSet;

/** Tone as a printer's profile predicts it for the route of the print. */
public final class PromisedTone implements ToneAim {
    private final String words;
    private final Map<RgbSpace, Candidate> promised = new EnumMap<>(RgbSpace.class);

    private PromisedTone(String words) {
        this.words = words;
    }

    /**
     * The aim of a profile.
     *
     * @throws Problem input, when the profile turns out to be damaged
     */
    public static PromisedTone of(PrinterProfile printer, PrintRoute route) throws Problem {
        PromisedTone aim =
                new PromisedTone("what " + printer.name() + " predicts, " + route.words());
        try {
            for (RgbSpace space : RgbSpace.values()) {
                aim.promised.put(space, Candidates.promised(printer.profile(), space, route));
            }
            return aim;
        } catch (IccException e) {
            throw Problem.input(printer.name(), String.valueOf(e.getMessage()), e);
        }
    }

    @Override
    public String words() {
        return words;
    }

    @Override
    public double l(ReadingSet set, PaperAim paper, int level) {
        Candidate candidate = promised.get(set.space());
        if (candidate == null) {
            throw new IllegalStateException("no prediction for " + set.space());
        }
        Rgb8 grey = Rgb8.grey(level);
        return set.trust().absolute() ? candidate.absolute(grey).l() : candidate.relative(grey).l();
    }
}

package org.printassay.metric;

import org.printassay.colour.PaperAim;
import org.printassay.colour.Rgb8;
import org.printassay.reading.ReadingSet;

/** Which L* each grey of a file should have on paper. */
public interface ToneAim {
    /** What tone is held against, to follow "Aim:". */
    String words();

    /**
     * Aim L* of a level, in the frame of the readings: absolute where their trust allows, else
     * relative to paper.
     *
     * @param paper relative colorimetric with black point compensation onto this paper, whose white
     *     and black are in that frame too
     */
    double l(ReadingSet set, PaperAim paper, int level);

    /** What the usual route does: the file's tones onto this paper's white and black. */
    ToneAim PAPER =
            new ToneAim() {
                @Override
                public String words() {
                    return "relative colorimetric with black point compensation onto this paper";
                }

                @Override
                public double l(ReadingSet set, PaperAim paper, int level) {
                    return paper.absoluteLab(set.space(), Rgb8.grey(level)).l();
                }
            };

    /** Equal steps of L* for equal steps of code, from this print's black to its paper. */
    ToneAim EVEN_STEPS =
            new ToneAim() {
                @Override
                public String words() {
                    return "even steps of L* from black to paper";
                }

                @Override
                public double l(ReadingSet set, PaperAim paper, int level) {
                    double black = PAPER.l(set, paper, 0);
                    double white = PAPER.l(set, paper, 255);
                    return black + (white - black) * level / 255;
                }
            };
}

package org.printassay.demo.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.demo.paper.PaperModel;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * One printed sheet, simulated: a rendered page on a paper. Everything random about it comes from
 * its seed, so the same print can be scanned and measured as often as wanted.
 */
public final class Print {
    /** Spread of bare paper against that of ink. */
    private static final double BARE_SPREAD = 0.3;

    private final RenderedSheet sheet;
    private final RgbSpace space;
    private final PaperModel paper;
    private final Printing printing;
    private final List<PrintedPatch> patches;
    private final Texture grain;
    private final Texture texture;
    private final double driftX;
    private final double driftY;
    private final double bandPhase;

    private Print(
            RenderedSheet sheet,
            RgbSpace space,
            PaperModel paper,
            Printing printing,
            List<Patch> chartPatches,
            long seed) {
        this.sheet = sheet;
        this.space = space;
        this.paper = paper;
        this.printing = printing;
        Random random = new Random(seed ^ 0x5EED_0F_A_5EE7L);
        double direction = 2 * Math.PI * random.nextDouble();
        this.driftX = Math.cos(direction);
        this.driftY = Math.sin(direction);
        this.bandPhase = random.nextDouble();
        this.grain = new Texture(paper.surface().grainLengthMm(), random);
        this.texture = new Texture(paper.surface().textureLengthMm(), random);
        List<PrintedPatch> printed = new ArrayList<>();
        for (Patch patch : chartPatches) {
            printed.add(printed(patch, random));
        }
        this.patches = List.copyOf(printed);
    }

    /** Prints a sheet of a chart. */
    public static Print of(
            RenderedSheet rendered,
            RgbSpace space,
            Sheet sheet,
            PaperModel paper,
            Printing printing,
            long seed) {
        return new Print(rendered, space, paper, printing, sheet.patches(), seed);
    }

    /** Prints any page; without known patches twins do not differ. */
    public static Print ofPage(
            RenderedSheet rendered,
            RgbSpace space,
            PaperModel paper,
            Printing printing,
            long seed) {
        return new Print(rendered, space, paper, printing, List.of(), seed);
    }

    private PrintedPatch printed(Patch patch, Random random) {
        Rgb8 rgb = patch.rgb();
        Lab expected = colourOf(rgb);
        double spread = rgb.equals(Rgb8.grey(255)) ? BARE_SPREAD : 1;
        double dl = spread * paper.surface().twinL() * random.nextGaussian();
        double da = spread * paper.surface().twinAb() * random.nextGaussian();
        double db = spread * paper.surface().twinAb() * random.nextGaussian();
        Lab spreadOut =
                new Lab(
                        Math.min(100, Math.max(0, expected.l() + dl)),
                        expected.a() + da,
                        expected.b() + db);
        PointMm centre = onSheet(patch.area().centre());
        double drift = ink(expected) * (driftAlongX(centre.x()) + driftAlongY(centre.y()));
        Lab all =
                new Lab(
                        Math.min(100, Math.max(0, spreadOut.l() + drift)),
                        spreadOut.a(),
                        spreadOut.b());
        return new PrintedPatch(patch, onSheet(patch.area()), expected, spreadOut, all);
    }

    /** The page as rendered. */
    public RenderedSheet sheet() {
        return sheet;
    }

    /** The paper it is printed on. */
    public PaperModel paper() {
        return paper;
    }

    /** How it was printed. */
    public Printing printing() {
        return printing;
    }

    /** RGB encoding of the codes. */
    public RgbSpace space() {
        return space;
    }

    /** The patches of its chart; none for any other page. */
    public List<PrintedPatch> patches() {
        return patches;
    }

    /** True colour of a code on this paper, spread left out. */
    public Lab colourOf(Rgb8 rgb) {
        return paper.colourOf(space, rgb.r(), rgb.g(), rgb.b());
    }

    /** Unevenness of ink. */
    public Texture grain() {
        return grain;
    }

    /** Unevenness of paper. */
    public Texture texture() {
        return texture;
    }

    /** How much ink carries a colour: 0 on bare paper, 1 from a quarter of the tone scale down. */
    public double ink(Lab colour) {
        double share = (paper.white().l() - colour.l()) / (paper.white().l() - paper.black().l());
        double tinted = Math.hypot(colour.a() - paper.white().a(), colour.b() - paper.white().b());
        return Math.min(1, 4 * Math.max(0, share) + tinted / 25);
    }

    /** How visible grain is in a colour: 1 in the middle, 0 on bare paper, little in black. */
    public double grainWeight(Lab colour) {
        double share = (paper.white().l() - colour.l()) / (paper.white().l() - paper.black().l());
        double t = Math.min(1, Math.max(0, share));
        return Math.min(1, 4 * t * (1 - 0.9 * t));
    }

    /** Drift and bands that vary with x: L* added to full ink. */
    public double inkAlongX(double sheetXMm) {
        return driftAlongX(sheetXMm) + bands(Printing.Across.X, sheetXMm);
    }

    /** Drift and bands that vary with y: L* added to full ink. */
    public double inkAlongY(double sheetYMm) {
        return driftAlongY(sheetYMm) + bands(Printing.Across.Y, sheetYMm);
    }

    /** dR/R of lines at a position, for full ink. */
    public double lines(Printing.Across across, double atMm) {
        double sum = 0;
        for (Printing.Line line : printing.lines()) {
            if (line.across() == across && Math.abs(atMm - line.atMm()) <= line.widthMm() / 2) {
                sum += line.contrast();
            }
        }
        return sum;
    }

    /** Where a point of the page stands on the printed sheet. */
    public PointMm onSheet(PointMm page) {
        return new PointMm(sheetX(page.x()), sheetY(page.y()));
    }

    /** Page x to sheet x: scaled about the middle, then moved. */
    public double sheetX(double pageXMm) {
        double middle = sheet.widthMm() / 2;
        return middle + printing.scaleX() * (pageXMm - middle) + printing.offsetXMm();
    }

    /** Page y to sheet y. */
    public double sheetY(double pageYMm) {
        double middle = sheet.heightMm() / 2;
        return middle + printing.scaleY() * (pageYMm - middle) + printing.offsetYMm();
    }

    /** Sheet x to page x; the inverse of {@link #sheetX}. */
    public double pageX(double sheetXMm) {
        double middle = sheet.widthMm() / 2;
        return middle + (sheetXMm - middle - printing.offsetXMm()) / printing.scaleX();
    }

    /** Sheet y to page y; the inverse of {@link #sheetY}. */
    public double pageY(double sheetYMm) {
        double middle = sheet.heightMm() / 2;
        return middle + (sheetYMm - middle - printing.offsetYMm()) / printing.scaleY();
    }

    private RectMm onSheet(RectMm page) {
        return new RectMm(
                sheetX(page.x()),
                sheetY(page.y()),
                printing.scaleX() * page.width(),
                printing.scaleY() * page.height());
    }

    private double driftAlongX(double x) {
        return paper.surface().drift() * driftX * (x / sheet.widthMm() - 0.5);
    }

    private double driftAlongY(double y) {
        return paper.surface().drift() * driftY * (y / sheet.heightMm() - 0.5);
    }

    private double bands(Printing.Across across, double at) {
        double sum = 0;
        for (Printing.Band band : printing.bands()) {
            if (band.across() == across) {
                sum +=
                        band.amplitudeL()
                                * Math.sin(2 * Math.PI * (at / band.periodMm() + bandPhase));
            }
        }
        return sum;
    }
}

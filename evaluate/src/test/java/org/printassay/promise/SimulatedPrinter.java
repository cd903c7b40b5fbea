package org.printassay.promise;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;

/**
 * A made-up RGB printer (simulated, no device): each channel has its own tone, colours mix into
 * each other, paper is not quite white and black not quite black. Its profile is made from the same
 * model as tables of version 2.
 */
public final class SimulatedPrinter {
    private static final int FORWARD = 17;
    private static final int BACKWARD = 33;

    private final double[] exponents;
    private final double mixing;
    private final double black;
    private final Xyz paper;

    /**
     * @param exponents of the channels' tones
     * @param mixing share of the other channels in each, 0 for the primaries of sRGB
     * @param black share of paper's light that full ink leaves
     */
    SimulatedPrinter(double[] exponents, double mixing, double black, Lab paper) {
        this.exponents = exponents.clone();
        this.mixing = mixing;
        this.black = black;
        this.paper = paper.toXyz(Xyz.PCS_WHITE);
    }

    /** An inkjet on glossy paper, as it might be. */
    public static SimulatedPrinter glossy() {
        return new SimulatedPrinter(
                new double[] {1.5, 1.7, 1.6}, 0.07, 0.008, new Lab(95, 0.5, -2));
    }

    /** Another: dull and warm. */
    static SimulatedPrinter matt() {
        return new SimulatedPrinter(new double[] {3.0, 2.8, 2.9}, 0.16, 0.035, new Lab(93, 0.5, 4));
    }

    /** One that takes codes for what they mean. */
    static SimulatedPrinter likeSrgb() {
        return new SimulatedPrinter(new double[] {2.2, 2.2, 2.2}, 0.0, 0.004, new Lab(95, 0, 0));
    }

    /** Absolute colour of a device value. */
    public Lab print(double... device) {
        Xyz xyz = relative(device);
        Xyz white = Xyz.PCS_WHITE;
        return Lab.of(
                new Xyz(
                        xyz.x() * paper.x() / white.x(),
                        xyz.y() * paper.y() / white.y(),
                        xyz.z() * paper.z() / white.z()),
                white);
    }

    private Xyz relative(double... device) {
        double[] light = new double[3];
        double mean = 0;
        for (int c = 0; c < 3; c++) {
            light[c] = black + (1 - black) * Math.pow(device[c], exponents[c]);
            mean += light[c] / 3;
        }
        double all = mean;
        return RgbSpace.SRGB.linearToXyz(
                mix(light[0], all), mix(light[1], all), mix(light[2], all));
    }

    private double mix(double own, double mean) {
        return (1 - mixing) * own + mixing * mean;
    }

    private double[] device(Xyz xyz) {
        double[] m = RgbSpace.SRGB.matrix();
        double[] light = solve(m, new double[] {xyz.x() / 100, xyz.y() / 100, xyz.z() / 100});
        double mean = (light[0] + light[1] + light[2]) / 3;
        double[] device = new double[3];
        for (int c = 0; c < 3; c++) {
            double own = (light[c] - mixing * mean) / (1 - mixing);
            double share = Math.max(0, Math.min(1, (own - black) / (1 - black)));
            device[c] = Math.pow(share, 1 / exponents[c]);
        }
        return device;
    }

    private static double[] solve(double[] m, double[] v) {
        double det = det(m, v, -1);
        return new double[] {det(m, v, 0) / det, det(m, v, 1) / det, det(m, v, 2) / det};
    }

    /** Determinant with one column replaced (Cramer). */
    private static double det(double[] m, double[] v, int column) {
        double[] a = m.clone();
        for (int row = 0; row < 3 && column >= 0; row++) {
            a[3 * row + column] = v[row];
        }
        return a[0] * (a[4] * a[8] - a[5] * a[7])
                - a[1] * (a[3] * a[8] - a[5] * a[6])
                + a[2] * (a[3] * a[7] - a[4] * a[6]);
    }

    /** The profile of this printer. */
    public byte[] profile() {
        byte[] forward = lut(FORWARD, v -> lut16(Lab.of(relative(v), Xyz.PCS_WHITE)));
        byte[] backward =
                lut(
                        BACKWARD,
                        v ->
                                device(
                                        new Lab(
                                                        v[0] * 65535 / 652.8,
                                                        v[1] * 65535 / 256 - 128,
                                                        v[2] * 65535 / 256 - 128)
                                                .toXyz(Xyz.PCS_WHITE)));
        ByteBuffer white = ByteBuffer.allocate(20).put(ascii("XYZ ")).putInt(0);
        for (double value : new double[] {paper.x(), paper.y(), paper.z()}) {
            white.putInt((int) Math.round(value / 100 * 65536));
        }
        List<String> names = List.of("wtpt", "A2B0", "A2B1", "B2A0", "B2A1");
        List<byte[]> tags = new ArrayList<>(List.of(white.array(), forward, forward));
        tags.addAll(List.of(backward, backward));
        int offset = 132 + 12 * names.size();
        int size = offset + tags.stream().mapToInt(t -> t.length).sum();
        ByteBuffer out = ByteBuffer.allocate(size);
        out.putInt(size).putInt(0).putInt(2 << 24).put(ascii("prtrRGB Lab "));
        out.position(36).put(ascii("acsp"));
        out.position(68).putInt(0xF6D6).putInt(0x10000).putInt(0xD32D);
        out.position(128).putInt(names.size());
        for (int i = 0; i < names.size(); i++) {
            out.put(ascii(names.get(i))).putInt(offset).putInt(tags.get(i).length);
            offset += tags.get(i).length;
        }
        tags.forEach(out::put);
        return out.array();
    }

    private static double[] lut16(Lab lab) {
        return new double[] {
            lab.l() * 652.8 / 65535, (lab.a() + 128) * 256 / 65535, (lab.b() + 128) * 256 / 65535
        };
    }

    private static byte[] lut(int grid, UnaryOperator<double[]> table) {
        ByteBuffer b = ByteBuffer.allocate(52 + 24 + 6 * grid * grid * grid);
        b.put(ascii("mft2")).putInt(0).put((byte) 3).put((byte) 3).put((byte) grid).put((byte) 0);
        for (int i = 0; i < 9; i++) {
            b.putInt(i % 4 == 0 ? 65536 : 0);
        }
        b.putShort((short) 2).putShort((short) 2);
        ends(b);
        for (int i = 0; i < grid * grid * grid; i++) {
            int row = i / grid;
            int plane = row / grid;
            double[] place = {plane, row % grid, i % grid};
            for (int c = 0; c < 3; c++) {
                place[c] /= grid - 1;
            }
            for (double value : table.apply(place)) {
                b.putShort((short) Math.round(65535 * Math.max(0, Math.min(1, value))));
            }
        }
        ends(b);
        return b.array();
    }

    private static void ends(ByteBuffer b) {
        for (int c = 0; c < 3; c++) {
            b.putShort((short) 0).putShort((short) 65535);
        }
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}

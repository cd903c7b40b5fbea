package org.printassay.demo.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.PrintedPatch;
import org.printassay.problem.Problem;

/** Simulated readings of a print with an instrument, as ISO 28178 text. */
public final class MeasurementText {
    private MeasurementText() {}

    /**
     * Reads every patch once.
     *
     * @param noise standard deviation of one reading in L*, a* and b* each
     * @param seed decides the noise
     */
    public static String of(Print print, double noise, long seed) {
        Random random = new Random(seed ^ 0x1257_2A3EL);
        StringBuilder text = new StringBuilder(1 << 16);
        text.append("CGATS.17\n")
                .append("# SIMULATED: no instrument read this, no such paper exists\n")
                .append("ORIGINATOR \"printassay, simulated print room\"\n")
                .append("DESCRIPTOR \"Simulated readings of ")
                .append(print.paper().name().replace('"', '\''))
                .append("\"\nCREATED \"2026-01-01\"\n")
                .append("INSTRUMENTATION \"none (simulated)\"\n")
                .append("MEASUREMENT_SOURCE \"Illumination=D50 ObserverAngle=2degree")
                .append(" MeasurementCondition=M1 (simulated)\"\n")
                .append("NUMBER_OF_FIELDS 10\nBEGIN_DATA_FORMAT\n")
                .append("SAMPLE_ID RGB_R RGB_G RGB_B XYZ_X XYZ_Y XYZ_Z LAB_L LAB_A LAB_B\n")
                .append("END_DATA_FORMAT\nNUMBER_OF_SETS ")
                .append(print.patches().size())
                .append("\nBEGIN_DATA\n");
        for (PrintedPatch printed : print.patches()) {
            Lab truth = printed.printed();
            Lab read =
                    new Lab(
                            Math.min(100, Math.max(0, truth.l() + noise * random.nextGaussian())),
                            truth.a() + noise * random.nextGaussian(),
                            truth.b() + noise * random.nextGaussian());
            Rgb8 rgb = printed.patch().rgb();
            Xyz xyz = read.toXyz(Xyz.PCS_WHITE);
            text.append(
                    String.format(
                            Locale.ROOT,
                            "%s %d %d %d %.5f %.5f %.5f %.4f %.4f %.4f%n",
                            printed.patch().id(),
                            rgb.r(),
                            rgb.g(),
                            rgb.b(),
                            xyz.x(),
                            xyz.y(),
                            xyz.z(),
                            read.l(),
                            read.a(),
                            read.b()));
        }
        return text.append("END_DATA\n").toString().replace("\r\n", "\n");
    }

    /** Writes {@link #of} to a file. */
    public static void write(Print print, double noise, long seed, Path to) throws Problem {
        try {
            Files.writeString(to, of(print, noise, seed));
        } catch (IOException e) {
            throw Problem.output(String.valueOf(to.getFileName()), "cannot be written.");
        }
    }
}

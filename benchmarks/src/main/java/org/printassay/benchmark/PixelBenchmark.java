package org.printassay.benchmark;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.IccProfile;
import org.printassay.colour.icc.Intent;
import org.printassay.colour.icc.PixelTransform;
import org.printassay.colour.icc.RgbProfiles;

/**
 * Pixels of random colours through profiles, one thread: nanoseconds a pixel. The printing profile
 * is the file of the system property {@code printer}; {@code icc-rate.sh} does the same with
 * LittleCMS.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class PixelBenchmark {
    static final int PIXELS = 1_000_000;

    /** Source and destination. */
    @Param({"rgb-printer", "printer-rgb", "rgb-rgb"})
    public String way = "";

    private PixelTransform transform;
    private byte[] from8;
    private byte[] to8;
    private short[] from16;
    private short[] to16;

    /** Makes the transform and the pixels. */
    @Setup
    public void prepare() throws Exception {
        IccProfile rgb = IccProfile.parse(RgbProfiles.of(RgbSpace.SRGB));
        IccProfile other = IccProfile.parse(RgbProfiles.of(RgbSpace.ADOBE_RGB));
        if (!way.equals("rgb-rgb")) {
            String file = Objects.requireNonNull(System.getProperty("printer"), "-Dprinter=FILE");
            other = IccProfile.parse(Files.readAllBytes(Path.of(file)));
        }
        boolean back = way.equals("printer-rgb");
        transform =
                PixelTransform.between(
                        back ? other : rgb, back ? rgb : other, Intent.RELATIVE, true);
        Random random = new Random(1);
        from8 = new byte[PIXELS * transform.inputs()];
        to8 = new byte[PIXELS * transform.outputs()];
        from16 = new short[from8.length];
        to16 = new short[to8.length];
        random.nextBytes(from8);
        for (int i = 0; i < from16.length; i++) {
            from16[i] = (short) random.nextInt(65536);
        }
    }

    /** 8 bits a channel. */
    @Benchmark
    @OperationsPerInvocation(PIXELS)
    public byte[] bits8() {
        transform.convert(from8, to8, PIXELS);
        return to8;
    }

    /** 16 bits a channel. */
    @Benchmark
    @OperationsPerInvocation(PIXELS)
    public short[] bits16() {
        transform.convert(from16, to16, PIXELS);
        return to16;
    }
}

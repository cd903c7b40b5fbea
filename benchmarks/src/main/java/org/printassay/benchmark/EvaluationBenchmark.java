package org.printassay.benchmark;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.printassay.calibrate.ScanReadings;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.locate.FoundMarker;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.Locator;
import org.printassay.locate.MarkerSearch;
import org.printassay.sample.PatchSample;
import org.printassay.sample.PatchSampler;
import org.printassay.sample.Sampling;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.ScanFiles;
import org.printassay.scan.ScanImage;

/** The steps of an evaluation in a warm program, on an A4 scan of 300 samples an inch, 16 bit. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class EvaluationBenchmark {
    private Path file;
    private ScanImage scan;
    private ScanColour colour;
    private LocatingImage image;
    private LocatedSheet located;
    private SheetSamples samples;

    /** Makes the scan and everything that a step starts from. */
    @Setup
    public void prepare() throws Exception {
        file = Files.createTempFile("benchmark", ".tif");
        SimulatedScans.write(300, file);
        scan = ScanFiles.open(file);
        colour = ScanColour.embedded(scan.info());
        image = LocatingImage.of(scan, colour.codeLight());
        located = Locator.locate(scan.info(), image, Optional.empty());
        samples = Sampling.read(scan, colour.codeLight(), Optional.empty());
    }

    /** Removes the scan. */
    @TearDown
    public void remove() throws Exception {
        Files.deleteIfExists(file);
    }

    /** Every row decoded, nothing done with it. */
    @Benchmark
    public int rows() throws Exception {
        int[] last = new int[1];
        scan.stream((y, row) -> last[0] = row[0]);
        return last[0];
    }

    /** Rows decoded and averaged into the small image. */
    @Benchmark
    public LocatingImage smallImage() throws Exception {
        return LocatingImage.of(scan, colour.codeLight());
    }

    /** Markers looked for in the small image. */
    @Benchmark
    public List<FoundMarker> markers() {
        return MarkerSearch.in(image);
    }

    /** Markers, sheet code, chart, placement and its refinement. */
    @Benchmark
    public LocatedSheet locating() throws Exception {
        return Locator.locate(scan.info(), image, Optional.empty());
    }

    /** Patches read at full resolution. */
    @Benchmark
    public List<PatchSample> sampling() throws Exception {
        return PatchSampler.sample(scan, colour.codeLight(), located);
    }

    /** Uneven and stray light estimated and removed, colours. */
    @Benchmark
    public ScanReadings light() {
        return ScanReadings.of(List.of(samples), colour);
    }

    /** Everything but the reports. */
    @Benchmark
    public Evaluator.Result all() throws Exception {
        return Evaluator.evaluate(EvaluationRequest.of(file));
    }
}

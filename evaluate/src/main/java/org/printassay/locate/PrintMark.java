package org.printassay.locate;

import boofcv.struct.image.GrayU8;
import java.util.List;
import java.util.Optional;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.problem.Problem;
import org.printassay.scan.CodeLight;
import org.printassay.scan.ScanImage;

/**
 * Which print a scan says that it shows: what tells it from prints of other charts, and from other
 * prints of the same chart.
 *
 * @param chartId chart
 * @param print print number
 */
public record PrintMark(String chartId, int print) {
    /**
     * Reads the sheet code alone, in one pass over the file.
     *
     * @param codes how the scanner's codes stand for light; roughly is enough
     * @param expected the chart that the user names
     * @return empty when there is no code, more than one, or one of a chart that is not known
     * @throws Problem input, when the scan cannot be read
     */
    public static Optional<PrintMark> of(ScanImage scan, CodeLight codes, Optional<Chart> expected)
            throws Problem {
        String name = scan.info().name();
        LocatingImage image = LocatingImage.of(scan, codes);
        GrayU8 grey = image.grey();
        List<SheetCodeReader.Read> found =
                SheetCodeReader.read(grey, image.factor(), MarkerSearch.in(grey, image.factor()));
        if (found.size() != 1) {
            return Optional.empty();
        }
        String text = found.get(0).text();
        try {
            Chart chart = Charts.fromSheetCode(name, text, expected);
            return Optional.of(new PrintMark(chart.id(), chart.print()));
        } catch (Problem e) {
            return Optional.empty();
        }
    }
}

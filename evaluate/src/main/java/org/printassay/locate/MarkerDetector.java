package org.printassay.locate;

import boofcv.abst.fiducial.SquareHamming_to_FiducialDetector;
import boofcv.factory.fiducial.ConfigFiducialHammingDetector;
import boofcv.factory.fiducial.ConfigHammingMarker;
import boofcv.factory.fiducial.FactoryFiducial;
import boofcv.factory.fiducial.HammingDictionary;
import boofcv.struct.image.GrayU8;
import georegression.struct.point.Point2D_F64;
import georegression.struct.shapes.Polygon2D_F64;
import java.util.ArrayList;
import java.util.List;

/** Finds the square markers in a grey image. */
final class MarkerDetector {
    private final SquareHamming_to_FiducialDetector<GrayU8> detector;

    MarkerDetector() {
        ConfigHammingMarker dictionary =
                ConfigHammingMarker.loadDictionary(HammingDictionary.ARUCO_OCV_6x6_1000);
        detector =
                FactoryFiducial.squareHamming(
                        dictionary, new ConfigFiducialHammingDetector(), GrayU8.class);
    }

    /**
     * All markers in an image.
     *
     * @param scale full-resolution pixels a pixel of the image
     */
    List<FoundMarker> detect(GrayU8 image, double scale) {
        detector.detect(image);
        List<FoundMarker> found = new ArrayList<>();
        for (int i = 0; i < detector.totalFound(); i++) {
            Polygon2D_F64 bounds = detector.getBounds(i, null);
            List<PointPx> corners = new ArrayList<>();
            for (int k = 0; k < bounds.size(); k++) {
                Point2D_F64 corner = bounds.get(k);
                corners.add(new PointPx(corner.x * scale, corner.y * scale));
            }
            found.add(new FoundMarker((int) detector.getId(i), corners));
        }
        return found;
    }
}

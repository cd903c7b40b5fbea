package org.printassay.demo.print;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * Takes the profiles off a page's colour spaces, so that rendering yields the very codes of the
 * file in every encoding instead of a conversion to sRGB.
 */
final class DeviceCodes {
    private DeviceCodes() {}

    /** Changes the page in memory. */
    static void keep(PDPage page) {
        visit(
                page.getResources().getCOSObject(),
                Collections.newSetFromMap(new IdentityHashMap<>()));
    }

    private static void visit(COSBase base, Set<COSBase> seen) {
        if (base instanceof COSObject reference) {
            COSBase target = reference.getObject();
            if (target != null) {
                visit(target, seen);
            }
        } else if (!seen.add(base)) {
            return;
        } else if (base instanceof COSDictionary dictionary) {
            for (COSBase value : dictionary.getValues()) {
                visit(value, seen);
            }
        } else if (base instanceof COSArray array) {
            if (array.size() == 2
                    && COSName.ICCBASED.equals(array.getObject(0))
                    && array.getObject(1) instanceof COSDictionary profile) {
                COSName device =
                        profile.getInt(COSName.N) == 1 ? COSName.DEVICEGRAY : COSName.DEVICERGB;
                array.clear();
                array.add(device);
            } else {
                for (int i = 0; i < array.size(); i++) {
                    COSBase item = array.get(i);
                    if (item != null) {
                        visit(item, seen);
                    }
                }
            }
        }
    }
}

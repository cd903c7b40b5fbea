package org.printassay.calibrate.part;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.scan.ScanInfo;

/** Warnings about one scan, each beginning with its name. */
final class HealthNotes {
    private final ScanInfo scan;
    private final List<Warning> warnings = new ArrayList<>();

    HealthNotes(ScanInfo scan) {
        this.scan = scan;
    }

    void add(WarningCode code, String pattern, Object... values) {
        String text = String.format(Locale.ROOT, pattern, values);
        warnings.add(new Warning(code, scan.name() + ": " + text));
    }

    List<Warning> warnings() {
        return List.copyOf(warnings);
    }
}

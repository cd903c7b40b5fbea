package org.printassay.logbook;

import java.nio.file.Path;
import org.printassay.scan.ScanFiles;

/**
 * An SQLite file.
 *
 * @param file made absolute
 */
public record SqlitePlace(Path file) implements LogbookPlace {
    public SqlitePlace {
        file = file.toAbsolutePath().normalize();
    }

    @Override
    public String name() {
        return ScanFiles.displayName(file);
    }

    @Override
    public String shown() {
        return file.toString();
    }
}

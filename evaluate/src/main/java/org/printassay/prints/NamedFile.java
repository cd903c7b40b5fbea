package org.printassay.prints;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.printassay.evaluation.ToldApart;

/**
 * A file and what it is called among the others.
 *
 * @param file where it is
 * @param label its name, after as many of its folders as tell it from the others, with slashes
 */
public record NamedFile(Path file, String label) {
    /** Files as a user names them. */
    public static List<NamedFile> of(List<Path> files) {
        ToldApart names = ToldApart.of(files);
        List<NamedFile> named = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            named.add(new NamedFile(files.get(i), names.name(i)));
        }
        return named;
    }
}

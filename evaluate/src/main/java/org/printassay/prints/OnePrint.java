package org.printassay.prints;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.printassay.evaluation.PrintDetails;

/**
 * The files of one print.
 *
 * @param name what tells it from the others; also the name of the folder of its results
 * @param files its scans, or its measurement files
 * @param said what a list says about it
 * @param apart where names alone say that its files belong together: each as a print of its own, in
 *     case that they do not
 */
public record OnePrint(String name, List<Path> files, PrintDetails said, List<OnePrint> apart) {
    public OnePrint {
        files = List.copyOf(files);
        apart = List.copyOf(apart);
    }

    /** Of files that certainly belong together. */
    public OnePrint(String name, List<Path> files, PrintDetails said) {
        this(name, files, said, List.of());
    }

    /** How many bytes there are to read. */
    long bytes() {
        long sum = 0;
        for (Path file : files) {
            try {
                sum += Files.size(file);
            } catch (IOException e) {
                sum++; // told when it is read
            }
        }
        return sum;
    }
}

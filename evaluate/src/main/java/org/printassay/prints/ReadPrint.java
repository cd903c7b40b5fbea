package org.printassay.prints;

import java.util.List;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;

/** What summaries say of every print that could be read. */
interface ReadPrint {
    /** What was said about it. */
    PrintDetails details();

    /** What it was read from. */
    List<SourceFile> files();
}

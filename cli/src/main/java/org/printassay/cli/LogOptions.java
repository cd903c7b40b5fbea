package org.printassay.cli;

import java.io.PrintWriter;
import org.printassay.logbook.Entry;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.Opening;
import org.printassay.problem.Problem;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What every command of the logbook takes. */
final class LogOptions {
    @Mixin private LogbookOption logbook = new LogbookOption();

    @Option(names = "--json", description = "Print the result as JSON.")
    private boolean json;

    @Spec(Spec.Target.MIXEE)
    private @SuppressWarnings("NullAway.Init") CommandSpec spec;

    Logbook open(Opening opening) throws Problem {
        return logbook.open(opening);
    }

    boolean json() {
        return json;
    }

    /** One line for people. */
    void say(String text) {
        out().println(PlainText.line(text));
    }

    /** Text that is JSON. */
    void print(String text) {
        out().println(text.stripTrailing());
    }

    PrintWriter out() {
        return spec.commandLine().getOut();
    }

    PrintWriter err() {
        return spec.commandLine().getErr();
    }

    /** An entry in one line. */
    static String line(Entry entry) {
        return "no. "
                + entry.id()
                + ", "
                + entry.readAt().toString().substring(0, 10)
                + ", "
                + entry.series().shown()
                + (entry.print() == null ? "" : ", print " + entry.print())
                + " ("
                + entry.manner()
                + ")"
                + (entry.baseline() ? ", baseline" : "")
                + (entry.note() == null ? "" : ": " + entry.note());
    }
}

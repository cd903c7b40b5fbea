package org.printassay.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Evaluations over time. */
@Command(
        name = "log",
        mixinStandardHelpOptions = true,
        subcommands = {
            LogAddCommand.class,
            LogListCommand.class,
            LogShowCommand.class,
            LogTrendCommand.class,
            LogBaselineCommand.class,
            LogExportCommand.class,
            LogImportCommand.class,
            LogRemoveCommand.class
        },
        synopsisSubcommandLabel = "COMMAND",
        description = {
            "Keeps evaluations in a logbook and tells how a printer changes over time.",
            "",
            "The logbook is a file in your data folder. Several stations of a lab share one in a"
                    + " PostgreSQL database: --logbook jdbc:postgresql://host/database?user=NAME, its"
                    + " password in PGPASSWORD or a password file (PGPASSFILE)."
        },
        footer = {
            "",
            "Example:",
            "  printassay log add scan.tif-evaluation/evaluation.json",
            "  printassay log trend --paper \"Paper A\""
        })
final class LogCommand implements Runnable {
    @Spec
    private @SuppressWarnings("NullAway.Init") CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(),
                "Name what to do with the logbook: add, list, show, trend, baseline, export, import"
                        + " or remove.");
    }
}

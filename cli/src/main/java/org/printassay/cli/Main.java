package org.printassay.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.printassay.problem.Problem;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IExitCodeExceptionMapper;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Entry point of the program. */
@Command(
        name = "printassay",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        synopsisSubcommandLabel = "COMMAND",
        description = {
            "Tells how a printer prints on a paper through a profile.",
            "",
            "Print the chart by exactly the route your pictures take, scan it, and read how its"
                    + " tones run, where shadows block, where highlights stop and how neutral its"
                    + " greys are."
        },
        footer = {
            "",
            "Example:",
            "  printassay chart --page A4",
            "  printassay evaluate scan.tif --paper \"Paper A\"",
            "  printassay check after.tif --baseline before.tif",
            "",
            "Exit codes: 0 done, 1 a check failed, 2 wrong use, 3 an input cannot be read, 4 no chart"
                    + " or the wrong one in the scan, 5 the output cannot be written, 6 a check that"
                    + " cannot tell, 70 a fault of ours."
        })
public final class Main implements Runnable {
    /** Exit code for a fault of the program itself. */
    static final int OUR_FAULT = 70;

    /** In the order of the help. */
    private static final List<Class<?>> COMMANDS =
            List.of(
                    ChartCommand.class,
                    EvaluateCommand.class,
                    CompareCommand.class,
                    CheckCommand.class,
                    LogCommand.class,
                    CalibrateCommand.class,
                    DemoCommand.class);

    @Spec
    private @SuppressWarnings("NullAway.Init") CommandSpec spec;

    /** Runs a command and exits with its code. */
    public static void main(String[] arguments) {
        System.exit(run(arguments));
    }

    /** Runs a command and returns its exit code. */
    public static int run(String... arguments) {
        try {
            CommandLine commands = commandLine(needed(arguments));
            int code = commands.execute(arguments);
            return code == 0 && commands.getOut().checkError() ? lost(commands) : code;
        } catch (OutOfMemoryError e) {
            return outOfMemory();
        } catch (StackOverflowError e) {
            System.err.println("An input is nested deeper than any real one. Save it anew.");
            return Problem.Kind.INPUT.exitCode;
        }
    }

    /** What was read is the cause: our own needs are bounded. */
    private static int outOfMemory() {
        System.err.println(
                "An input needs more memory than the program is given. Scan at a lower resolution,"
                        + " or as TIFF or PNG.");
        return Problem.Kind.INPUT.exitCode;
    }

    private static int lost(CommandLine commands) {
        commands.getErr()
                .println(
                        "standard output cannot be written: what was printed is lost. Make room, or"
                                + " send it elsewhere.");
        return Problem.Kind.OUTPUT.exitCode;
    }

    /** The command that is named first, alone: building the others takes time. */
    private static List<Class<?>> needed(String[] arguments) {
        return COMMANDS.stream()
                .filter(c -> arguments.length > 0 && name(c).equals(arguments[0]))
                .findFirst()
                .<List<Class<?>>>map(List::of)
                .orElse(COMMANDS);
    }

    private static String name(Class<?> command) {
        return Objects.requireNonNull(command.getAnnotation(Command.class)).name();
    }

    /** The whole command tree, ready to execute. */
    static CommandLine commandLine() {
        return commandLine(COMMANDS);
    }

    private static CommandLine commandLine(List<Class<?>> subcommands) {
        CommandLine commands = new CommandLine(new Main());
        subcommands.forEach(commands::addSubcommand);
        commands.setOut(new PrintWriter(System.out, true, StandardCharsets.UTF_8));
        commands.setErr(new PrintWriter(System.err, true, StandardCharsets.UTF_8));
        commands.setCaseInsensitiveEnumValuesAllowed(true);
        commands.setExecutionExceptionHandler(
                (exception, command, parsed) -> report(exception, command));
        commands.setParameterExceptionHandler(Main::wrongUse);
        IExitCodeExceptionMapper faults = exception -> OUR_FAULT;
        commands.setExitCodeExceptionMapper(faults);
        return commands;
    }

    private static int report(Exception exception, CommandLine command) {
        if (exception instanceof Problem problem) {
            command.getErr().println(PlainText.line(problem.getMessage()));
            return problem.kind().exitCode;
        }
        // A thread beside this one hands its error over as the cause.
        if (exception.getCause() instanceof OutOfMemoryError) {
            return outOfMemory();
        }
        command.getErr()
                .println(
                        PlainText.line(
                                "printassay has a fault of its own ("
                                        + exception
                                        + "). Please report it with the command and its files."));
        return OUR_FAULT;
    }

    private static int wrongUse(ParameterException exception, String[] arguments) {
        CommandLine command = exception.getCommandLine();
        PrintWriter err = command.getErr();
        String message = exception.getMessage();
        err.println(PlainText.line(message == null ? "wrong use" : message));
        if (!CommandLine.UnmatchedArgumentException.printSuggestions(exception, err)) {
            err.println("See " + command.getCommandSpec().qualifiedName() + " --help.");
        }
        return CommandLine.ExitCode.USAGE;
    }

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(),
                "Name a command: chart, evaluate, compare, check, log, calibrate or demo.");
    }
}

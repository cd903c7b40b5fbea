package org.printassay.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * A manual page in the man macros of roff, from a command's own descriptions. Written here, because
 * the generator that comes with the command-line library stops at AsciiDoc, whose converter would
 * bring a Ruby runtime into the build for five short pages.
 */
final class ManPage {
    private static final List<String> EXIT_CODES =
            List.of(
                    "0", "done",
                    "1", "a check failed: out of tolerance",
                    "2", "wrong use",
                    "3", "an input cannot be read or is not valid",
                    "4", "no chart, or the wrong one, in the scan",
                    "5", "the output cannot be written",
                    "6", "a check cannot tell: uncertainty above tolerance",
                    "70", "a fault of the program");

    private final StringBuilder out = new StringBuilder();

    private ManPage() {}

    /** Name of a command's page: its words joined by hyphens. */
    static String name(CommandLine command) {
        return command.getCommandSpec().qualifiedName("-");
    }

    static String of(CommandLine command) {
        return new ManPage().written(command);
    }

    private String written(CommandLine command) {
        CommandSpec spec = command.getCommandSpec();
        line(
                ".TH \""
                        + escaped(name(command)).toUpperCase(Locale.ROOT)
                        + "\" 1 \"\" \"printassay\" \"printassay manual\"");
        section("NAME");
        List<String> description = texts(spec.usageMessage().description());
        line(escaped(name(command)) + " \\- " + escaped(firstSentence(description)));
        section("SYNOPSIS");
        line(".nf");
        new Help(spec, Help.defaultColorScheme(Ansi.OFF))
                .synopsis(0)
                .lines()
                .forEach(text -> line(escaped(text)));
        line(".fi");
        section("DESCRIPTION");
        paragraphs(description);
        if (!spec.positionalParameters().isEmpty()) {
            section("ARGUMENTS");
            for (PositionalParamSpec parameter : spec.positionalParameters()) {
                item("\\fI" + escaped(parameter.paramLabel()) + "\\fR", parameter);
            }
        }
        section("OPTIONS");
        for (OptionSpec option : spec.options()) {
            if (!option.hidden()) {
                item(names(option), option);
            }
        }
        commands(command);
        footer(spec);
        section("EXIT STATUS");
        for (int i = 0; i < EXIT_CODES.size(); i += 2) {
            tagged(EXIT_CODES.get(i), EXIT_CODES.get(i + 1));
        }
        seeAlso(command);
        return out.toString();
    }

    private void commands(CommandLine command) {
        if (command.getSubcommands().isEmpty()) {
            return;
        }
        section("COMMANDS");
        for (CommandLine below : command.getSubcommands().values()) {
            List<String> words = texts(below.getCommandSpec().usageMessage().description());
            tagged(
                    "\\fB" + escaped(below.getCommandName()) + "\\fR",
                    escaped(firstSentence(words)));
        }
    }

    private void footer(CommandSpec spec) {
        List<String> footer = texts(spec.usageMessage().footer());
        boolean example = false;
        for (String text : footer) {
            if (text.startsWith("Exit codes:")) {
                continue; // they have a section of their own
            }
            if (text.startsWith("Example")) {
                section(text.endsWith("s:") ? "EXAMPLES" : "EXAMPLE");
                example = true;
            } else if (!text.isBlank() && example) {
                if (text.startsWith("  ")) {
                    line(".nf");
                    line(escaped(text));
                    line(".fi");
                } else {
                    line(".PP");
                    line(escaped(text));
                }
            }
        }
    }

    private void seeAlso(CommandLine command) {
        List<String> pages = new ArrayList<>();
        CommandLine parent = command.getParent();
        if (parent != null) {
            pages.add(name(parent));
        }
        command.getSubcommands().values().forEach(below -> pages.add(name(below)));
        if (!pages.isEmpty()) {
            section("SEE ALSO");
            line(
                    pages.stream()
                            .map(page -> "\\fB" + escaped(page) + "\\fR(1)")
                            .collect(Collectors.joining(", ")));
        }
    }

    private static String names(OptionSpec option) {
        String names =
                Arrays.stream(option.names())
                        .map(name -> "\\fB" + escaped(name) + "\\fR")
                        .collect(Collectors.joining(", "));
        return option.arity().max() == 0 || option.paramLabel().isEmpty()
                ? names
                : names + "=\\fI" + escaped(option.paramLabel()) + "\\fR";
    }

    private void item(String tag, ArgSpec of) {
        List<String> texts = new ArrayList<>();
        for (String text : of.description()) {
            String value = String.valueOf(of.defaultValueString(true));
            texts.add(plain(text.replace("${DEFAULT-VALUE}", value)));
        }
        tagged(tag, texts.stream().map(ManPage::escaped).collect(Collectors.joining("\n")));
    }

    /** A tag, and what it means, already escaped. */
    private void tagged(String tag, String meaning) {
        line(".TP");
        line(tag);
        line(meaning);
    }

    private void section(String title) {
        line(".SH " + title);
    }

    private void paragraphs(List<String> texts) {
        for (String text : texts) {
            line(text.isBlank() ? ".PP" : escaped(text));
        }
    }

    private void line(String text) {
        out.append(text).append('\n');
    }

    private static List<String> texts(String[] raw) {
        List<String> texts = new ArrayList<>();
        for (String text : raw) {
            texts.add(plain(text));
        }
        return texts;
    }

    /** Without line ends and percent signs as the command-line library writes them. */
    private static String plain(String text) {
        return text.replace("%n", " ").replace("%%", "%");
    }

    private static String firstSentence(List<String> texts) {
        String first = texts.isEmpty() ? "" : texts.get(0);
        int stop = first.indexOf(". ");
        String sentence = stop < 0 ? first : first.substring(0, stop);
        return sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
    }

    /** Text that roff takes for nothing but text. */
    private static String escaped(String text) {
        String safe = text.replace("\\", "\\e").replace("-", "\\-");
        return safe.startsWith(".") || safe.startsWith("'") ? "\\&" + safe : safe;
    }
}

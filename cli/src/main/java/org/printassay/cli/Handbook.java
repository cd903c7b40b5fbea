package org.printassay.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.AutoComplete;
import picocli.CommandLine;

/**
 * Writes what shells and pagers know of the program, from the same descriptions as {@code --help}:
 * a completion script for bash and zsh, and manual pages. The build runs it.
 */
public final class Handbook {
    private Handbook() {}

    /** Argument: the folder of the ready-to-run program. */
    public static void main(String[] arguments) throws IOException {
        write(Path.of(arguments[0]));
    }

    /**
     * Writes {@code completion/printassay} and {@code man/man1/*.1} into a folder.
     *
     * @param folder made when missing
     * @throws IOException when they cannot be written
     */
    public static void write(Path folder) throws IOException {
        CommandLine program = Main.commandLine();
        String name = program.getCommandName();
        Path completion = Files.createDirectories(folder.resolve("completion"));
        Files.writeString(
                completion.resolve(name), AutoComplete.bash(name, program), StandardCharsets.UTF_8);
        Path pages = Files.createDirectories(folder.resolve("man").resolve("man1"));
        write(program, pages);
    }

    private static void write(CommandLine command, Path folder) throws IOException {
        String name = ManPage.name(command);
        Files.writeString(folder.resolve(name + ".1"), ManPage.of(command), StandardCharsets.UTF_8);
        for (CommandLine below : command.getSubcommands().values()) {
            write(below, folder);
        }
    }
}

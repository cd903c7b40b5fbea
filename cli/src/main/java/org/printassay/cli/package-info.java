/**
 * The command line: one class a command, thin. Commands read options, call the library, write
 * through {@link org.printassay.cli.OutputFolder} and print. {@link org.printassay.cli.Main} turns
 * problems into one line and an exit code.
 */
package org.printassay.cli;

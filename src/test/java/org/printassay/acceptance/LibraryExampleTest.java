package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.PrintStream;
import java.net.URI;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.cli.Main;
import org.printassay.evaluation.Evaluator;
import org.printassay.report.EvaluationJson;

/** The README's example of the modules as libraries is compiled as it stands there, and run. */
class LibraryExampleTest {
    private static final Pattern EXAMPLE =
            Pattern.compile("```java\\n(.*?public class (\\w+) .*?)```", Pattern.DOTALL);

    @TempDir Path dir;

    @Test
    void theReadmesExampleRuns() throws Exception {
        Matcher example = EXAMPLE.matcher(Files.readString(root().resolve("README.md")));
        assertTrue(example.find(), "README.md has no example in Java");
        Path source = dir.resolve(example.group(2) + ".java");
        Files.writeString(source, example.group(1));
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        assertNotNull(compiler, "tests run on a JDK");
        ByteArrayOutputStream complaints = new ByteArrayOutputStream();
        int code =
                compiler.run(
                        null,
                        complaints,
                        complaints,
                        "-Xlint:all",
                        "-proc:none",
                        "-d",
                        dir.toString(),
                        "-cp",
                        classPath(),
                        source.toString());
        assertEquals(0, code, complaints.toString(StandardCharsets.UTF_8));

        Path scan = SimulatedPrint.plainGood(dir.resolve("scan.png"));
        Path result = dir.resolve("evaluation.json");
        String said = run(example.group(2), scan.toString(), result.toString());
        assertTrue(said.contains("evel"), said);
        assertEquals(1, EvaluationJson.read(result).files().size());
    }

    private String run(String name, String... arguments) throws Exception {
        PrintStream before = System.out;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
        URL[] place = {dir.toUri().toURL()};
        try (URLClassLoader loader = new URLClassLoader(place, Evaluator.class.getClassLoader())) {
            loader.loadClass(name)
                    .getMethod("main", String[].class)
                    .invoke(null, (Object) arguments);
        } finally {
            System.setOut(before);
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    /** Where this project's own classes and libraries are, as the test's class path says. */
    private static String classPath() {
        String path = System.getProperty("surefire.test.class.path");
        return path == null ? System.getProperty("java.class.path") : path;
    }

    /** The folder that the program's module stands in. */
    private static Path root() throws Exception {
        URI classes = Main.class.getProtectionDomain().getCodeSource().getLocation().toURI();
        Path at = new File(classes).toPath();
        while (at != null && !Files.exists(at.resolve("README.md"))) {
            at = at.getParent();
        }
        return at == null ? Path.of("../..") : at;
    }
}

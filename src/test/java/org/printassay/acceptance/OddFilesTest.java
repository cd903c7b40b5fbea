package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The corpus of odd files: each is refused in one line that says what is odd, where it can. */
class OddFilesTest {
    @TempDir Path dir;

    private static Path odd(String name) throws URISyntaxException {
        URL url = Objects.requireNonNull(OddFilesTest.class.getResource("/odd/" + name), name);
        return Path.of(url.toURI());
    }

    private CommandLineRun run(String name) throws Exception {
        List<Object> arguments = new ArrayList<>(List.of("evaluate"));
        if (name.endsWith(".json")) {
            arguments.addAll(List.of(odd("data-that-end-early.png"), "--chart"));
        }
        arguments.addAll(List.of(odd(name), "--out", dir.resolve("out")));
        return CommandLineRun.of(arguments.toArray());
    }

    @ParameterizedTest
    @CsvSource({
        "directory-that-points-to-itself.tif, 3, circle",
        "four-thousand-million-strips.tif, 3, ''",
        "strip-beyond-the-end.tif, 3, ends early",
        "no-width.tif, 3, pixels",
        "four-thousand-million-wide.tif, 3, pixels",
        "directory-of-65535-entries.tif, 3, ''",
        "directory-beyond-the-end.tif, 3, ''",
        "two-thousand-million-wide.png, 3, pixels",
        "profile-that-unpacks-to-300-megabytes.png, 4, no printassay chart",
        "data-that-unpack-to-300-megabytes.png, 4, no printassay chart",
        "data-that-end-early.png, 3, ''",
        "far-taller-than-wide.png, 3, ''",
        "chunk-longer-than-the-file.png, 3, ''",
        "page-tree-that-holds-itself.pdf, 3, ''",
        "page-text-that-unpacks-to-300-megabytes.pdf, 3, longer",
        "image-coded-as-fax.pdf, 3, black and white",
        "image-coded-as-jpeg-2000.pdf, 3, JPEG 2000",
        "image-in-cmyk.pdf, 3, CMYK",
        "image-that-is-a-palette.pdf, 3, palette",
        "image-that-ends-early.pdf, 3, ends early",
        "two-images.pdf, 3, 2 images",
        "drawn-page.pdf, 4, drawn page",
        "deep.json, 3, ''",
        "number-of-5000-digits.json, 3, ''",
        "nan.json, 3, NaN",
        "duplicate-keys.json, 3, uplicate",
        "schema-elsewhere.json, 3, ''",
        "schema-with-escape-characters.json, 3, Update",
        "utf-32.json, 3, ''",
        "nan.txt, 3, NaN",
        "endless-number.txt, 3, ''",
        "escape-characters.txt, 3, ''"
    })
    void isRefusedInOneLine(String name, int code, String words) throws Exception {
        CommandLineRun run = run(name);
        assertEquals(code, run.exitCode(), run.err());
        assertEquals(1, run.err().strip().lines().count(), run.err());
        assertTrue(run.err().length() < 600, run.err());
        assertFalse(run.err().strip().chars().anyMatch(Character::isISOControl), run.err());
        assertFalse(run.err().contains("Exception"), run.err());
        assertTrue(run.err().contains(words), run.err());
        assertFalse(Files.exists(dir.resolve("out")));
    }

    /** No file of the corpus goes untested. */
    @Test
    void everyOddFileIsTested() throws Exception {
        CsvSource source =
                OddFilesTest.class
                        .getDeclaredMethod(
                                "isRefusedInOneLine", String.class, int.class, String.class)
                        .getAnnotation(CsvSource.class);
        List<String> tested =
                Stream.of(Objects.requireNonNull(source).value())
                        .map(line -> line.substring(0, line.indexOf(',')))
                        .sorted()
                        .toList();
        assertEquals(files(), tested);
    }

    private static List<String> files() throws IOException, URISyntaxException {
        try (Stream<Path> all = Files.list(odd("README.md").getParent())) {
            return all.map(file -> file.getFileName().toString())
                    .filter(name -> !name.equals("README.md"))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void controlCharactersInFileNamesAreNotShown() throws Exception {
        Path file = Files.writeString(dir.resolve("a\u001b[31mb.tif"), "II*\0");
        CommandLineRun run = CommandLineRun.of("evaluate", file, "--out", dir.resolve("out"));
        assertEquals(3, run.exitCode());
        assertFalse(run.err().strip().chars().anyMatch(Character::isISOControl), run.err());
    }
}

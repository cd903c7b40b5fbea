package org.printassay.logbook;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import org.printassay.problem.Problem;

/**
 * Where the logbook is unless said otherwise: named by {@value #VARIABLE}, else in the user's data
 * folder by the platform's convention: XDG Base Directory Specification 0.8, Apple's File System
 * Programming Guide ("Application Support"), Windows' LOCALAPPDATA (known folder LocalAppData).
 */
public final class DefaultPlace {
    /** Environment variable that names the logbook as {@code --logbook} does. */
    public static final String VARIABLE = "PRINTASSAY_LOGBOOK";

    private static final String FOLDER = "printassay";
    private static final String FILE = "logbook.sqlite";

    private DefaultPlace() {}

    /** The place on this machine. */
    public static LogbookPlace here() throws Problem {
        return of(
                System.getProperty("os.name", ""),
                Path.of(System.getProperty("user.home", ".")),
                System.getenv());
    }

    /**
     * The place on any machine.
     *
     * @param system name of the operating system, as Java says it
     * @param home the user's home folder
     * @param environment environment variables
     */
    static LogbookPlace of(String system, Path home, Map<String, String> environment)
            throws Problem {
        String named = environment.getOrDefault(VARIABLE, "");
        if (!named.isEmpty()) {
            return LogbookPlace.parse(named);
        }
        return new SqlitePlace(dataFolder(system, home, environment).resolve(FOLDER).resolve(FILE));
    }

    private static Path dataFolder(String system, Path home, Map<String, String> environment) {
        String lower = system.toLowerCase(Locale.ROOT);
        if (lower.contains("windows")) {
            String local = environment.getOrDefault("LOCALAPPDATA", "");
            return local.isEmpty() ? home.resolve("AppData").resolve("Local") : Path.of(local);
        }
        if (lower.contains("mac")) {
            return home.resolve("Library").resolve("Application Support");
        }
        String xdg = environment.getOrDefault("XDG_DATA_HOME", "");
        // By the specification a relative path is no path.
        return xdg.startsWith("/") ? Path.of(xdg) : home.resolve(".local").resolve("share");
    }
}

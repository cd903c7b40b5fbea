package org.printassay.logbook;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.problem.Problem;

/**
 * A PostgreSQL database. Only options that choose whom to talk to, and how safely, are taken:
 * others of the driver load classes, read files or write logs. A password is none of them; it comes
 * from the environment or a password file.
 *
 * @param host name or address
 * @param port TCP port
 * @param database name of the database
 * @param options checked options of the driver, by name
 */
public record PostgresPlace(String host, int port, String database, Map<String, String> options)
        implements LogbookPlace {
    /** Where a password may be: PostgreSQL's own environment variable. */
    static final String PASSWORD_VARIABLE = "PGPASSWORD";

    /** Where to put a password, for messages. */
    static final String WHERE_PASSWORDS_GO =
            "Put the password into the environment ("
                    + PASSWORD_VARIABLE
                    + ") or a password file (PGPASSFILE, or .pgpass in the home folder).";

    private static final int USUAL_PORT = 5432;

    private static final Pattern URL =
            Pattern.compile(
                    "jdbc:postgresql://(?<host>[A-Za-z0-9._-]{1,253}|\\[[0-9A-Fa-f:.]{2,45}])"
                            + "(?::(?<port>[0-9]{1,5}))?/(?<database>[^/?#@]{1,200})"
                            + "(?:\\?(?<options>.*))?",
                    Pattern.CASE_INSENSITIVE);

    private static final Map<String, Pattern> ALLOWED =
            Map.of(
                    "user", Pattern.compile("\\P{Cntrl}{1,63}"),
                    "sslmode",
                            Pattern.compile("disable|allow|prefer|require|verify-ca|verify-full"),
                    "sslrootcert", Pattern.compile("\\P{Cntrl}{1,1000}"),
                    "connectTimeout", Pattern.compile("[1-9][0-9]{0,2}"));

    public PostgresPlace {
        options = Map.copyOf(options);
    }

    /**
     * The place that an address names.
     *
     * @throws Problem usage, without repeating any value of the address
     */
    static PostgresPlace parse(String url) throws Problem {
        Matcher parts = URL.matcher(url);
        if (!parts.matches()) {
            if (url.contains("@")) {
                throw Problem.usage(
                        "--logbook: an address holds no user or password before the host; name the"
                                + " user with ?user=NAME. "
                                + WHERE_PASSWORDS_GO);
            }
            throw Problem.usage(
                    "--logbook: the address of a database reads"
                            + " jdbc:postgresql://host:port/database?user=NAME.");
        }
        int port = parts.group("port") == null ? USUAL_PORT : Integer.parseInt(parts.group("port"));
        if (port < 1 || port > 65_535) {
            throw Problem.usage("--logbook: a port is 1 to 65535, got " + port + ".");
        }
        String database = decoded(parts.group("database"));
        if (database.isBlank() || database.chars().anyMatch(Character::isISOControl)) {
            throw Problem.usage("--logbook: the address needs the name of a database.");
        }
        return new PostgresPlace(
                parts.group("host"), port, database, options(parts.group("options")));
    }

    private static Map<String, String> options(String text) throws Problem {
        Map<String, String> out = new TreeMap<>();
        if (text == null || text.isEmpty()) {
            return out;
        }
        for (String option : text.split("&", -1)) {
            int equals = option.indexOf('=');
            String name = equals < 0 ? option : option.substring(0, equals);
            if (name.toLowerCase(Locale.ROOT).contains("password")) {
                throw Problem.usage(
                        "--logbook: a password in an address is seen by others. "
                                + WHERE_PASSWORDS_GO);
            }
            Pattern allowed = ALLOWED.get(name);
            if (allowed == null) {
                String shown = name.matches("[A-Za-z]{1,40}") ? " \"" + name + "\"" : "";
                throw Problem.usage(
                        "--logbook: the option"
                                + shown
                                + " of the address is not taken; these are: "
                                + String.join(", ", new TreeMap<>(ALLOWED).keySet())
                                + ".");
            }
            String value = decoded(equals < 0 ? "" : option.substring(equals + 1));
            if (!allowed.matcher(value).matches() || out.put(name, value) != null) {
                throw Problem.usage(
                        "--logbook: the address has no sensible value for \"" + name + "\".");
            }
        }
        return out;
    }

    private static String decoded(String text) throws Problem {
        try {
            // In a path or option of an address a plus is a plus.
            return URLDecoder.decode(text.replace("+", "%2B"), StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            throw Problem.usage("--logbook: the address has a % that stands for nothing.");
        }
    }

    /** The address for the driver: host, port and database alone. */
    String url() {
        return "jdbc:postgresql://" + host + ":" + port + "/" + encoded(database);
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }

    @Override
    public String name() {
        return database;
    }

    @Override
    public String shown() {
        return url();
    }
}

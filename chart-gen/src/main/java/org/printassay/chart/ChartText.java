package org.printassay.chart;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.StringJoiner;
import org.printassay.colour.Rgb8;
import org.printassay.recipe.Design;
import org.printassay.recipe.DesignJson;
import org.printassay.recipe.Margins;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Marker;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * Writes a chart as JSON with one patch a line. Written by hand because every text in it is our own
 * and needs no escaping: ids and keys are letters, digits and signs, page names are checked.
 */
final class ChartText {
    /** 0.1 micrometre: far below any printer, and the same text on every machine. */
    private static final long UNITS_PER_MM = 10_000;

    private ChartText() {}

    static String of(Chart chart) {
        StringJoiner sheets = new StringJoiner(",\n");
        chart.sheets().forEach(sheet -> sheets.add(sheet(sheet)));
        return "{\n"
                + "  \"schema\": \"printassay/chart/"
                + ChartFile.SCHEMA_VERSION
                + "\",\n"
                + ("  \"id\": \"" + chart.id() + "\",\n")
                + ("  \"name\": \"" + chart.recipe().title() + "\",\n")
                + ("  \"print\": " + chart.print() + ",\n")
                + ("  \"checksum\": \"" + checksum(chart) + "\",\n")
                + ("  \"recipe\": " + recipe(chart.recipe()) + ",\n")
                + "  \"sheets\": [\n"
                + sheets
                + "\n  ]\n}\n";
    }

    /** SHA-256 over the lines of patches and markers of all sheets. */
    static String checksum(Chart chart) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            for (Sheet sheet : chart.sheets()) {
                sha.update(patches(sheet).getBytes(StandardCharsets.UTF_8));
                sha.update(markers(sheet).getBytes(StandardCharsets.UTF_8));
            }
            return HexFormat.of().formatHex(sha.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static String recipe(Recipe recipe) {
        Margins margins = recipe.margins();
        return "{\"kind\": \""
                + recipe.kind().key()
                + "\", \"layoutVersion\": "
                + recipe.layoutVersion()
                + ", \"page\": {\"name\": \""
                + recipe.page().name()
                + "\", \"widthMm\": "
                + mm(recipe.page().widthMm())
                + ", \"heightMm\": "
                + mm(recipe.page().heightMm())
                + "}, \"marginsMm\": {\"top\": "
                + mm(margins.top())
                + ", \"right\": "
                + mm(margins.right())
                + ", \"bottom\": "
                + mm(margins.bottom())
                + ", \"left\": "
                + mm(margins.left())
                + "}, \"space\": \""
                + recipe.space().key()
                + "\""
                + sections(recipe)
                + "}";
    }

    private static String sections(Recipe recipe) {
        Design edited = recipe.edited();
        return edited == null ? "" : ",\n" + DesignJson.write(edited, "    ") + "\n  ";
    }

    private static String sheet(Sheet sheet) {
        RectMm code = sheet.code();
        return "    {\n      \"number\": "
                + sheet.number()
                + ",\n      \"page\": {\"widthMm\": "
                + mm(sheet.page().width())
                + ", \"heightMm\": "
                + mm(sheet.page().height())
                + "},\n      \"printable\": {"
                + box(sheet.printable())
                + "},\n      \"tiff\": {\"file\": \"chart-"
                + sheet.number()
                + ".tif\", "
                + box(sheet.printable())
                + "},\n      \"code\": {\"text\": \""
                + sheet.codeText()
                + "\", "
                + corner(code)
                + ", \"sizeMm\": "
                + mm(code.width())
                + "},\n      \"patches\": [\n"
                + patches(sheet)
                + "\n      ],\n      \"markers\": [\n"
                + markers(sheet)
                + "\n      ]\n    }";
    }

    private static String patches(Sheet sheet) {
        StringJoiner lines = new StringJoiner(",\n");
        for (Patch patch : sheet.patches()) {
            Rgb8 rgb = patch.rgb();
            lines.add(
                    "        {\"id\": \""
                            + patch.id()
                            + "\", \"section\": \""
                            + patch.section().key()
                            + "\", \"rgb\": ["
                            + rgb.r()
                            + ", "
                            + rgb.g()
                            + ", "
                            + rgb.b()
                            + "], "
                            + box(patch.area())
                            + "}");
        }
        return lines.toString();
    }

    private static String markers(Sheet sheet) {
        StringJoiner lines = new StringJoiner(",\n");
        for (Marker marker : sheet.markers()) {
            lines.add(
                    "        {\"id\": "
                            + marker.id()
                            + ", "
                            + corner(marker.area())
                            + ", \"sizeMm\": "
                            + mm(marker.area().width())
                            + "}");
        }
        return lines.toString();
    }

    private static String box(RectMm area) {
        return corner(area)
                + ", \"widthMm\": "
                + mm(area.width())
                + ", \"heightMm\": "
                + mm(area.height());
    }

    private static String corner(RectMm area) {
        return "\"xMm\": " + mm(area.x()) + ", \"yMm\": " + mm(area.y());
    }

    /** By hand: three thousand numbers through a general formatter take longer than the layout. */
    private static String mm(double value) {
        long units = Math.round(value * UNITS_PER_MM);
        String whole = String.valueOf(units / UNITS_PER_MM);
        long rest = units % UNITS_PER_MM;
        if (rest == 0) {
            return whole;
        }
        String digits = String.valueOf(UNITS_PER_MM + rest);
        int end = digits.length();
        while (digits.charAt(end - 1) == '0') {
            end--;
        }
        return whole + '.' + digits.substring(1, end);
    }
}

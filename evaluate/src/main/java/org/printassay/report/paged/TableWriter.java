package org.printassay.report.paged;

import java.util.ArrayList;
import java.util.List;

/**
 * Lays tables into the flow; a table's heads are repeated on every page. The last row of a table of
 * three rows or more never stands alone on a page; of two rows either may.
 */
final class TableWriter {
    private static final double GAP = 9;
    private static final double AIR = 2.6;
    private static final double SAMPLE_WIDTH = 17;
    private static final double SAMPLE_HEIGHT = 8.5;

    /** More lines than this in one cell are cut: no figure is as long. */
    private static final int MOST_LINES = 14;

    private final Flow flow;
    private final Structure structure;
    private final Typeface typeface;
    private final double left;
    private final double width;

    TableWriter(Flow flow, Structure structure, Typeface typeface, double left, double width) {
        this.flow = flow;
        this.structure = structure;
        this.typeface = typeface;
        this.left = left;
        this.width = width;
    }

    void write(Table table) {
        double[] widths = widths(table);
        structure.open("Table");
        if (table.headed()) {
            List<Table.Cell> heads = new ArrayList<>();
            table.columns().forEach(column -> heads.add(Table.Cell.of(column.head())));
            List<List<String>> lines = lines(table, heads, widths, true);
            double height = height(table, lines, true);
            flow.need(3 * height);
            structure.open("THead");
            row(table, heads, lines, widths, true, true);
            structure.close();
            flow.advance(height);
        }
        structure.open("TBody");
        int rows = table.rows().size();
        for (int i = 0; i < rows; i++) {
            List<Table.Cell> row = table.rows().get(i);
            List<List<String>> lines = lines(table, row, widths, false);
            double height = height(table, lines, false);
            boolean alone = rows > 2 && i == rows - 2;
            double together = alone ? height + rowHeight(table, i + 1, widths) : height;
            if (!flow.fits(together) && !flow.atTop()) {
                flow.nextPage();
                repeatHeads(table, widths);
            }
            row(table, row, lines, widths, false, true);
            flow.advance(height);
        }
        structure.close();
        structure.close();
    }

    /** Height of all rows, were they on one page. */
    double height(Table table) {
        double[] widths = widths(table);
        double height = 0;
        for (int row = 0; row < table.rows().size(); row++) {
            height += rowHeight(table, row, widths);
        }
        return height;
    }

    private double rowHeight(Table table, int row, double[] widths) {
        return height(table, lines(table, table.rows().get(row), widths, false), false);
    }

    private double[] widths(Table table) {
        double sum = table.columns().stream().mapToDouble(Table.Column::share).sum();
        double free = width - GAP * (table.columns().size() - 1);
        return table.columns().stream().mapToDouble(c -> c.share() / sum * free).toArray();
    }

    private List<List<String>> lines(
            Table table, List<Table.Cell> row, double[] widths, boolean head) {
        List<List<String>> lines = new ArrayList<>();
        for (int i = 0; i < row.size(); i++) {
            Type type = type(table, i, head);
            double room = widths[i] - indent(row.get(i));
            String text = VisibleText.of(row.get(i).text());
            lines.add(text.isEmpty() ? List.of() : wrap(text, type, room));
        }
        return lines;
    }

    private List<String> wrap(String text, Type type, double room) {
        return typeface.wrap(text, type.size(), room, MOST_LINES);
    }

    private static double indent(Table.Cell cell) {
        return cell.colour() == null ? 0 : SAMPLE_WIDTH + 5;
    }

    private static Type type(Table table, int column, boolean head) {
        return head ? Type.SMALL : table.columns().get(column).type();
    }

    private static double height(Table table, List<List<String>> lines, boolean head) {
        double height = 0;
        for (int i = 0; i < lines.size(); i++) {
            int count = Math.max(1, lines.get(i).size());
            height = Math.max(height, count * type(table, i, head).leading());
        }
        return height + 2 * AIR;
    }

    private void repeatHeads(Table table, double[] widths) {
        if (!table.headed()) {
            return;
        }
        List<Table.Cell> heads = new ArrayList<>();
        table.columns().forEach(column -> heads.add(Table.Cell.of(column.head())));
        List<List<String>> lines = lines(table, heads, widths, true);
        flow.canvas().beginRepeated();
        row(table, heads, lines, widths, true, false);
        flow.canvas().end();
        flow.advance(height(table, lines, true));
    }

    private void row(
            Table table,
            List<Table.Cell> row,
            List<List<String>> lines,
            double[] widths,
            boolean head,
            boolean tagged) {
        Canvas canvas = flow.canvas();
        if (!head) {
            canvas.beginDecoration();
            canvas.rule(left, flow.y(), width, Shade.FAINT.colour());
            canvas.end();
        }
        if (tagged) {
            structure.open("TR");
        }
        double deepest = deepestBaseline(table, lines, head);
        double x = left;
        for (int i = 0; i < row.size(); i++) {
            sample(row.get(i), x);
            if (tagged) {
                structure.open(head || i == 0 ? "TH" : "TD");
                if (head || i == 0) {
                    structure.scope(head ? "Column" : "Row");
                }
            }
            cell(table, row.get(i), lines.get(i), i, x, widths[i], head, tagged, deepest);
            if (tagged) {
                structure.close();
            }
            x += widths[i] + GAP;
        }
        if (tagged) {
            structure.close();
        }
    }

    /** First lines of a row stand on one line, whatever their sizes. */
    private static double deepestBaseline(Table table, List<List<String>> lines, boolean head) {
        double deepest = 0;
        for (int i = 0; i < lines.size(); i++) {
            if (!lines.get(i).isEmpty()) {
                deepest = Math.max(deepest, baseline(type(table, i, head)));
            }
        }
        return deepest;
    }

    private static double baseline(Type type) {
        return (type.leading() + 0.7 * type.size()) / 2;
    }

    private void sample(Table.Cell cell, double x) {
        String colour = cell.colour();
        if (colour == null) {
            return;
        }
        Canvas canvas = flow.canvas();
        double top = flow.y() + AIR + 1;
        canvas.beginDecoration();
        canvas.box(x, top, SAMPLE_WIDTH, SAMPLE_HEIGHT, Shade.SURROUND.colour());
        canvas.box(x + 2.5, top + 2, SAMPLE_WIDTH - 5, SAMPLE_HEIGHT - 4, colour);
        canvas.end();
    }

    private void cell(
            Table table,
            Table.Cell cell,
            List<String> lines,
            int column,
            double x,
            double wide,
            boolean head,
            boolean tagged,
            double deepest) {
        if (lines.isEmpty()) {
            return;
        }
        Type type = type(table, column, head);
        if (tagged) {
            structure.begin(flow.canvas());
        }
        double top = flow.y() + AIR + deepest - baseline(type);
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i) + (i + 1 < lines.size() ? " " : "");
            double start = x + indent(cell);
            if (table.columns().get(column).right()) {
                start = x + wide - typeface.width(lines.get(i)) * type.size();
            }
            flow.line(line, type, start, top);
            top += type.leading();
        }
        if (tagged) {
            flow.canvas().end();
        }
    }
}

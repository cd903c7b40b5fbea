package org.printassay.report.paged;

import java.util.ArrayList;
import java.util.List;

/**
 * Lays tables into the sequence. A table stays in one piece unless it is longer than a page; then
 * its heads are repeated on every page, and no page gets fewer than three of its rows.
 */
final class TableWriter {
    private static final double GAP = 9;
    private static final double APART = 9;
    private static final double AIR = 2.6;
    private static final double SAMPLE_WIDTH = 17;
    private static final double SAMPLE_HEIGHT = 8.5;

    /** What a sample takes before its text. */
    static final double SAMPLE = SAMPLE_WIDTH + 5;

    /** More lines than this in one cell are cut: no figure is as long. */
    private static final int MOST_LINES = 14;

    /** So many rows stand together at the beginning and at the end. */
    private static final int TOGETHER = 3;

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

    /**
     * Adds a table to a sequence.
     *
     * @param longest height of a table that stays in one piece
     * @param turn price of turning the page before it
     */
    void add(Sequence sequence, Table table, double longest, double turn) {
        double[] widths = widths(table);
        double heads = headHeight(table, widths);
        boolean whole = heads + height(table) <= longest;
        if (table.headed()) {
            sequence.add(heads, turn, top -> begin(table, widths));
            sequence.keep();
        }
        int rows = table.rows().size();
        for (int i = 0; i < rows; i++) {
            int number = i;
            boolean together = whole || i < TOGETHER || rows - i < TOGETHER;
            double within = together ? Turn.NEVER : Turn.ROW;
            sequence.add(
                    rowHeight(table, i, widths),
                    heads,
                    i == 0 ? turn : within,
                    top -> paintRow(table, number, widths, top));
        }
    }

    /** Paints a table that stays in one piece, from the flow's place down. */
    void paint(Table table) {
        double[] widths = widths(table);
        if (table.headed()) {
            begin(table, widths);
        }
        for (int i = 0; i < table.rows().size(); i++) {
            paintRow(table, i, widths, false);
        }
    }

    private double headHeight(Table table, double[] widths) {
        return table.headed() ? height(table, lines(table, heads(table), widths, true), true) : 0;
    }

    private static List<Table.Cell> heads(Table table) {
        return table.columns().stream().map(column -> Table.Cell.of(column.head())).toList();
    }

    private void begin(Table table, double[] widths) {
        List<List<String>> lines = lines(table, heads(table), widths, true);
        structure.open("Table");
        structure.open("THead");
        row(table, heads(table), lines, widths, true, true);
        structure.close();
        flow.advance(height(table, lines, true));
    }

    private void paintRow(Table table, int number, double[] widths, boolean top) {
        if (number == 0) {
            if (!table.headed()) {
                structure.open("Table");
            }
            structure.open("TBody");
        }
        if (top) {
            repeatHeads(table, widths);
        }
        List<Table.Cell> row = table.rows().get(number);
        List<List<String>> lines = lines(table, row, widths, false);
        row(table, row, lines, widths, false, true);
        flow.advance(height(table, lines, false));
        if (number == table.rows().size() - 1) {
            structure.close();
            structure.close();
        }
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

    /** Whether every cell takes one line. */
    boolean inSingleLines(Table table) {
        double[] widths = widths(table);
        return table.rows().stream()
                .flatMap(row -> lines(table, row, widths, false).stream())
                .allMatch(lines -> lines.size() <= 1);
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
            double room = widths[i] - indent(table, i, row.get(i));
            String text = VisibleText.of(row.get(i).text());
            lines.add(text.isEmpty() ? List.of() : wrap(text, type, room));
        }
        return lines;
    }

    private List<String> wrap(String text, Type type, double room) {
        return typeface.wrap(text, type.size(), room, MOST_LINES);
    }

    private static double indent(Table table, int column, Table.Cell cell) {
        return apart(table, column) + (cell.colour() == null ? 0 : SAMPLE);
    }

    /** Text that follows numbers, which end at the right, stands a little away from them. */
    private static double apart(Table table, int column) {
        List<Table.Column> columns = table.columns();
        boolean meets =
                column > 0 && columns.get(column - 1).right() && !columns.get(column).right();
        return meets ? APART : 0;
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
        List<List<String>> lines = lines(table, heads(table), widths, true);
        flow.canvas().beginRepeated();
        row(table, heads(table), lines, widths, true, false);
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
            sample(row.get(i), x + apart(table, i));
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
            double start = x + indent(table, column, cell);
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

package org.printassay.report.paged;

import java.util.ArrayList;
import java.util.List;
import org.printassay.report.paged.PagedDocument.Sentence;

/** Lays lists into the sequence. */
final class ListWriter {
    private static final double BULLET_INDENT = 11;
    private static final double NUMBER_INDENT = 20;
    private static final double POINT_GAP = 2;

    /** An item of so few lines stays in one piece. */
    private static final int SHORT = 6;

    private final Sequence sequence;
    private final Flow flow;
    private final Structure structure;
    private final TextWriter text;
    private final double width;

    ListWriter(Sequence sequence, Flow flow, Structure structure, TextWriter text, double width) {
        this.sequence = sequence;
        this.flow = flow;
        this.structure = structure;
        this.text = text;
        this.width = width;
    }

    void points(Type type, List<String> texts) {
        for (int i = 0; i < texts.size(); i++) {
            List<Sentence> said = List.of(new Sentence(type, texts.get(i)));
            item("\u2022", "Disc", type, BULLET_INDENT, said, i == 0, i + 1 == texts.size());
            sequence.space(POINT_GAP);
        }
    }

    void numbered(List<List<Sentence>> items) {
        for (int i = 0; i < items.size(); i++) {
            List<Sentence> said =
                    items.get(i).stream().filter(one -> !one.text().isEmpty()).toList();
            item(
                    String.valueOf(i + 1),
                    "Decimal",
                    Type.FINDING,
                    NUMBER_INDENT,
                    said,
                    i == 0,
                    i + 1 == items.size());
            sequence.space(PagedDocument.GAP);
        }
    }

    private void item(
            String label,
            String numbering,
            Type type,
            double indent,
            List<Sentence> said,
            boolean opens,
            boolean closes) {
        List<List<String>> lines = new ArrayList<>();
        for (Sentence one : said) {
            lines.add(text.wrap(one.text(), one.type(), width - indent));
        }
        boolean whole = lines.stream().mapToInt(List::size).sum() <= SHORT;
        double x = PageFormat.SIDE;
        Runnable begin =
                () -> {
                    if (opens) {
                        structure.open("L");
                        structure.numbering(numbering);
                    }
                    structure.open("LI");
                    structure.open("Lbl");
                    structure.begin(flow.canvas());
                    flow.line(label, type, x, flow.y());
                    flow.canvas().end();
                    structure.close();
                    structure.open("LBody");
                };
        Runnable end =
                () -> {
                    structure.close();
                    structure.close();
                    if (closes) {
                        structure.close();
                    }
                };
        if (said.isEmpty()) {
            sequence.add(
                    type.leading(),
                    Turn.ITEM,
                    top -> {
                        begin.run();
                        end.run();
                    });
        }
        for (int i = 0; i < said.size(); i++) {
            boolean first = i == 0;
            boolean last = i + 1 == said.size();
            text.add(
                    lines.get(i),
                    said.get(i).type(),
                    x + indent,
                    first ? Turn.ITEM : whole ? Turn.NEVER : Turn.LINE,
                    whole ? Turn.NEVER : Turn.LINE,
                    () -> {
                        if (first) {
                            begin.run();
                        }
                        structure.open("P");
                    },
                    () -> {
                        structure.close();
                        if (last) {
                            end.run();
                        }
                    });
        }
    }
}

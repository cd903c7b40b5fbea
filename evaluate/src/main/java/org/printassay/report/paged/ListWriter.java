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

    /** A list of so few lines stays in one piece. */
    private static final int SHORT_LIST = 6;

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
        List<List<Sentence>> items = new ArrayList<>();
        texts.forEach(one -> items.add(List.of(new Sentence(type, one))));
        list(new Kind("Disc", type, BULLET_INDENT, POINT_GAP), items);
    }

    void numbered(List<List<Sentence>> items) {
        list(new Kind("Decimal", Type.FINDING, NUMBER_INDENT, PagedDocument.GAP), items);
    }

    /** How items are numbered, the type of their labels, and the space between them. */
    private record Kind(String numbering, Type label, double indent, double gap) {}

    private void list(Kind kind, List<List<Sentence>> items) {
        List<List<Sentence>> said = new ArrayList<>();
        int lines = 0;
        for (List<Sentence> item : items) {
            List<Sentence> some = item.stream().filter(one -> !one.text().isEmpty()).toList();
            said.add(some);
            for (Sentence one : some) {
                lines += text.wrap(one.text(), one.type(), width - kind.indent()).size();
            }
        }
        for (int i = 0; i < said.size(); i++) {
            boolean alone = i == 1 || i == said.size() - 1;
            double turn = i > 0 && lines <= SHORT_LIST ? Turn.NEVER : alone ? Turn.LINE : Turn.ITEM;
            String label = kind.numbering().equals("Disc") ? "\u2022" : String.valueOf(i + 1);
            item(kind, label, said.get(i), i == 0 ? Turn.ITEM : turn, i == 0, i == said.size() - 1);
            sequence.space(kind.gap());
        }
    }

    private void item(
            Kind kind,
            String label,
            List<Sentence> said,
            double turn,
            boolean opens,
            boolean closes) {
        double indent = kind.indent();
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
                        structure.numbering(kind.numbering());
                    }
                    structure.open("LI");
                    structure.open("Lbl");
                    structure.begin(flow.canvas());
                    flow.line(label, kind.label(), x, flow.y());
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
                    kind.label().leading(),
                    turn,
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
                    first ? turn : whole ? Turn.NEVER : Turn.LINE,
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

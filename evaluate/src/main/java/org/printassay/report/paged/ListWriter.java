package org.printassay.report.paged;

import java.util.List;
import org.printassay.report.paged.PagedDocument.Sentence;

/** Lays lists into the flow. */
final class ListWriter {
    private static final double BULLET_INDENT = 11;
    private static final double NUMBER_INDENT = 20;
    private static final double POINT_GAP = 2;

    private final Flow flow;
    private final Structure structure;
    private final double width;

    ListWriter(Flow flow, Structure structure, double width) {
        this.flow = flow;
        this.structure = structure;
        this.width = width;
    }

    void points(Type type, List<String> texts) {
        structure.open("L");
        structure.numbering("Disc");
        for (String text : texts) {
            item("\u2022", type, BULLET_INDENT, List.of(new Sentence(type, text)));
            flow.advance(POINT_GAP);
        }
        structure.close();
    }

    void numbered(List<List<Sentence>> items) {
        structure.open("L");
        structure.numbering("Decimal");
        for (int i = 0; i < items.size(); i++) {
            List<Sentence> said =
                    items.get(i).stream().filter(one -> !one.text().isEmpty()).toList();
            item(String.valueOf(i + 1), Type.FINDING, NUMBER_INDENT, said);
            flow.advance(PagedDocument.GAP);
        }
        structure.close();
    }

    private void item(String label, Type type, double indent, List<Sentence> said) {
        flow.need(Math.min(3, said.size() + 1) * type.leading());
        structure.open("LI");
        structure.open("Lbl");
        structure.begin(flow.canvas());
        flow.line(label, type, PageFormat.SIDE, flow.y());
        flow.canvas().end();
        structure.close();
        structure.open("LBody");
        for (Sentence one : said) {
            structure.open("P");
            flow.text(one.text(), one.type(), PageFormat.SIDE + indent, width - indent);
            structure.close();
        }
        structure.close();
        structure.close();
    }
}

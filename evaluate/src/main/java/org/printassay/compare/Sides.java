package org.printassay.compare;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.PrintDetails;

/** Groups prints into sides: prints of one paper, printer and route are repeats of each other. */
final class Sides {
    private Sides() {}

    /** What makes prints repeats of each other; {@code unnamed} where nobody named the paper. */
    private record Key(String paper, String printer, String route, String unnamed) {}

    /** Sides in the order in which their first prints come. */
    static List<Side> of(List<NamedPrint> prints) {
        Map<Key, List<NamedPrint>> groups = new LinkedHashMap<>();
        for (int i = 0; i < prints.size(); i++) {
            groups.computeIfAbsent(key(prints.get(i), i), k -> new ArrayList<>())
                    .add(prints.get(i));
        }
        List<List<NamedPrint>> all = List.copyOf(groups.values());
        Set<String> taken = new HashSet<>();
        List<Side> sides = new ArrayList<>();
        for (List<NamedPrint> group : all) {
            String name = unique(name(group.get(0), all), taken);
            sides.add(Side.of(name, group.stream().map(NamedPrint::evaluation).toList()));
        }
        return sides;
    }

    private static Key key(NamedPrint print, int index) {
        PrintDetails d = print.evaluation().details();
        String paper = PrintDetails.key(d.paper());
        return new Key(
                paper,
                PrintDetails.key(d.printer()),
                PrintDetails.key(d.route()),
                paper.isEmpty() ? String.valueOf(index) : "");
    }

    /** The paper; the printer where sides differ in it, the route where sides of this paper do. */
    private static String name(NamedPrint print, List<List<NamedPrint>> all) {
        PrintDetails mine = print.evaluation().details();
        String paper = mine.paper();
        if (PrintDetails.key(paper).isEmpty() || paper == null) {
            return print.source();
        }
        List<PrintDetails> every =
                all.stream().map(group -> group.get(0).evaluation().details()).toList();
        List<PrintDetails> same =
                every.stream()
                        .filter(d -> PrintDetails.key(d.paper()).equals(PrintDetails.key(paper)))
                        .toList();
        String name = paper.strip();
        if (differ(every, PrintDetails::printer)) {
            name += ", " + Objects.requireNonNullElse(mine.printer(), "printer not said");
        }
        if (differ(same, PrintDetails::route)) {
            name += ", " + Objects.requireNonNullElse(mine.route(), "route not said");
        }
        return name;
    }

    private static boolean differ(
            List<PrintDetails> all, Function<PrintDetails, @Nullable String> said) {
        return all.stream().map(said).map(PrintDetails::plain).distinct().count() > 1;
    }

    private static String unique(String name, Set<String> taken) {
        String unique = name;
        for (int n = 2; !taken.add(unique); n++) {
            unique = name + " (" + n + ")";
        }
        return unique;
    }
}

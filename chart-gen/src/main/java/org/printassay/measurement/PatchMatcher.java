package org.printassay.measurement;

import static java.util.stream.Collectors.groupingBy;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Rgb8;
import org.printassay.problem.Problem;
import org.printassay.sheet.Patch;

/**
 * Says which patch of a chart each measured one is: by name where names and codes agree, else by
 * codes, else by reading order where that fits.
 */
final class PatchMatcher {
    private final String name;
    private final @Nullable ChartPatches chart;
    private final List<String> notes;
    private final Map<String, Patch> byId = new HashMap<>();

    PatchMatcher(String name, @Nullable ChartPatches chart, List<String> notes) {
        this.name = name;
        this.chart = chart;
        this.notes = notes;
        if (chart != null) {
            chart.all().forEach(patch -> byId.put(patch.id(), patch));
        }
    }

    MeasurementSet match(RawSet set) throws Problem {
        List<MeasuredPatch> patches =
                chart == null ? named(set.patches()) : matched(chart, inChartsNames(set.patches()));
        return new MeasurementSet(set.conditions(), patches);
    }

    /** Names as the chart spells them, where the codes agree. */
    private List<RawPatch> inChartsNames(List<RawPatch> raw) {
        Map<String, String> known =
                PatchNames.known(byId.keySet(), raw.stream().map(RawPatch::id).toList());
        List<RawPatch> patches = new ArrayList<>();
        for (RawPatch patch : raw) {
            RawPatch renamed = patch.named(known.getOrDefault(patch.id(), patch.id()));
            patches.add(agrees(renamed) ? renamed : patch);
        }
        return patches;
    }

    private List<MeasuredPatch> matched(ChartPatches known, List<RawPatch> raw) throws Problem {
        long byName = raw.stream().filter(this::agrees).count();
        if (byName > 0 && 2 * byName >= raw.size()) {
            return byName(known, raw);
        }
        if (raw.stream().allMatch(patch -> patch.rgb() == null)) {
            return byOrder(known, raw);
        }
        return byCodes(known, raw);
    }

    /** Whether name and codes, where it has codes, are those of a patch of the chart. */
    private boolean agrees(RawPatch patch) {
        Patch own = byId.get(patch.id());
        return own != null && (patch.rgb() == null || patch.rgb().equals(own.rgb()));
    }

    private List<MeasuredPatch> byName(ChartPatches known, List<RawPatch> raw) throws Problem {
        List<MeasuredPatch> patches = new ArrayList<>();
        Map<String, RawPatch> found = new HashMap<>();
        for (int i = 0; i < raw.size(); i++) {
            RawPatch patch = raw.get(i);
            Patch own = byId.get(patch.id());
            if (own != null && agrees(patch)) {
                patches.add(patch.as(own.id(), own.rgb(), true));
                found.put(own.id(), patch);
            } else if (patch.rgb() != null) {
                patches.add(named(patch, i));
            } // else a reading beside the chart, such as the bare paper: of no use without codes
        }
        if (known.order().stream().map(Patch::id).allMatch(found::containsKey)) {
            refuse(
                    OrderCheck.doubt(
                            known,
                            known.order().stream()
                                    .map(Patch::id)
                                    .map(found::get)
                                    .map(RawPatch::lab)
                                    .toList(),
                            true),
                    " Its patch names say otherwise.");
        }
        int others = raw.size() - found.size();
        long missing = known.order().stream().filter(p -> !found.containsKey(p.id())).count();
        notes.add(
                "Patches matched to chart "
                        + known.name()
                        + " by name: "
                        + found.size()
                        + (missing == 0 ? "" : "; not measured: " + missing)
                        + (others == 0 ? "." : "; not of this chart: " + others + "."));
        return patches;
    }

    private List<MeasuredPatch> byOrder(ChartPatches known, List<RawPatch> raw) throws Problem {
        List<Patch> order = known.order();
        refuse(OrderCheck.doubt(known, raw.stream().map(RawPatch::lab).toList(), false), "");
        notes.add("Patches matched to chart " + known.name() + " by reading order, which fits.");
        List<MeasuredPatch> patches = new ArrayList<>();
        for (int i = 0; i < order.size(); i++) {
            patches.add(raw.get(i).as(order.get(i).id(), order.get(i).rgb(), true));
        }
        return patches;
    }

    private void refuse(Optional<String> doubt, String more) throws Problem {
        if (doubt.isPresent()) {
            throw Problem.input(name, doubt.get() + more);
        }
    }

    /**
     * Patches by codes: those that an instrument is led over; of a code that none of them has, the
     * others.
     */
    private static Map<Rgb8, List<Patch>> byCode(ChartPatches known) {
        Map<Rgb8, List<Patch>> led = known.order().stream().collect(groupingBy(Patch::rgb));
        known.all().stream().collect(groupingBy(Patch::rgb)).forEach(led::putIfAbsent);
        return led;
    }

    /** Codes tell the patch only where both sides have them once. */
    private List<MeasuredPatch> byCodes(ChartPatches known, List<RawPatch> raw) throws Problem {
        Map<Rgb8, List<Patch>> chartCodes = byCode(known);
        Map<Rgb8, Integer> counts = new HashMap<>();
        raw.forEach(
                patch -> {
                    if (patch.rgb() != null) {
                        counts.merge(patch.rgb(), 1, Integer::sum);
                    }
                });
        List<MeasuredPatch> patches = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        int shared = 0;
        for (int i = 0; i < raw.size(); i++) {
            RawPatch patch = raw.get(i);
            Rgb8 rgb = patch.rgb();
            List<Patch> own = rgb == null ? List.of() : chartCodes.getOrDefault(rgb, List.of());
            shared += own.isEmpty() ? 0 : 1;
            if (rgb != null && own.size() == 1 && counts.getOrDefault(rgb, 0) == 1) {
                patches.add(patch.as(own.get(0).id(), rgb, true));
                taken.add(own.get(0).id());
            } else {
                patches.add(named(patch, i));
            }
        }
        if (shared == 0) {
            throw Problem.chart(
                    name,
                    "has no patch of chart "
                            + known.name()
                            + " by id and code. Leave --chart away, or name the right file.");
        }
        refuseSameNames(patches);
        notes.add(
                "Patch names differ from those of chart "
                        + known.name()
                        + "; matched by RGB: "
                        + shared
                        + " of "
                        + raw.size()
                        + ", of them "
                        + taken.size()
                        + " to one place.");
        return patches;
    }

    private void refuseSameNames(List<MeasuredPatch> patches) throws Problem {
        Set<String> names = new HashSet<>();
        for (MeasuredPatch patch : patches) {
            if (!names.add(patch.id())) {
                throw Problem.input(
                        name + ", line " + patch.line(),
                        "patch '"
                                + patch.id()
                                + "' has the name of another patch of the chart. Give patches the"
                                + " chart's names, or none.");
            }
        }
    }

    private List<MeasuredPatch> named(List<RawPatch> raw) throws Problem {
        List<MeasuredPatch> patches = new ArrayList<>();
        for (int i = 0; i < raw.size(); i++) {
            patches.add(named(raw.get(i), i));
        }
        return patches;
    }

    private MeasuredPatch named(RawPatch patch, int index) throws Problem {
        Rgb8 rgb = patch.rgb();
        if (rgb == null) {
            throw Problem.input(
                    name + ", line " + patch.line(),
                    "the codes of patch '"
                            + (patch.id().isEmpty() ? String.valueOf(index + 1) : patch.id())
                            + "' are not known. Export RGB with it, or name the chart with --chart"
                            + " chart.json.");
        }
        String id = patch.id().isEmpty() ? String.valueOf(index + 1) : patch.id();
        return patch.as(id, rgb, false);
    }
}

package org.printassay.measurement;

import java.util.List;
import java.util.Map;

/** What a file holds, not yet matched to a chart; several sets may share their conditions. */
record RawFile(String name, List<RawSet> sets, Map<String, String> keywords, List<String> notes) {}

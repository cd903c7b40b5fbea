#!/usr/bin/env bash
# Times whole processes in turns and prints ratios: run from anywhere, after `mvn package -DskipTests`.
# Needs ImageMagick, GNU time and, for the markers, Debian's python3-opencv. Takes a few minutes and
# 2 GB of disk. Nothing of this is a test: times depend on the machine, ratios much less.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
program=$root/cli/target/printassay/bin/printassay
room() { java -Xmx3g -cp "$root/benchmarks/target/classes:$root/benchmarks/target/lib/*" org.printassay.benchmark.SimulatedScans "$@"; }
runs=${RUNS:-5}

# Appends "seconds kilobytes" of one run to a file.
timed() { local to=$1; shift; /usr/bin/time -a -o "$to" -f '%e %M' "$@" >/dev/null 2>&1; }
figures() { sort -n "$1" | awk '{s[NR]=$1; if ($2>m) m=$2} END {printf "min %.2f s, median %.2f s, max %.2f s, peak %.0f MB\n", s[1], s[int((NR+1)/2)], s[NR], m/1024}'; }
ratio() { echo "$(sort -n "$1" | awk '{s[NR]=$1} END {print s[int((NR+1)/2)]}') $(sort -n "$2" | awk '{s[NR]=$1} END {print s[int((NR+1)/2)]}')" | awk '{printf "ratio of medians %.2f\n", $1/$2}'; }

for samples in 600 1200; do
    scan=$work/$samples.tif
    room $samples "$scan"
    cat "$scan" >/dev/null
    for _ in $(seq "$runs"); do
        timed "$work/ours-$samples" "$program" evaluate "$scan" --out "$work/out" --force
        # Its policy may forbid pictures as large as this.
        MAGICK_THREAD_LIMIT=2 timed "$work/magick-$samples" convert "$scan" -scale '1x1!' txt:- ||
            rm -f "$work/magick-$samples"
    done
    echo "A4, $samples samples an inch, 16 bit, $(stat -c %s "$scan" | awk '{printf "%.0f MB", $1/1e6}'):"
    echo "  evaluate   $(figures "$work/ours-$samples")"
    if [ -f "$work/magick-$samples" ]; then
        echo "  averaging  $(figures "$work/magick-$samples")"
        echo "  $(ratio "$work/ours-$samples" "$work/magick-$samples")"
    else
        echo "  averaging  refused by ImageMagick's policy for its size"
    fi
done
for _ in $(seq "$runs"); do timed "$work/chart" "$program" chart --page A4 --out "$work/chart-out" --force; done
echo "chart: $(figures "$work/chart"); PDF $(stat -c %s "$work/chart-out/chart.pdf") bytes"

python=python3
[ -x /usr/bin/python3 ] && python=/usr/bin/python3
if "$python" -c 'import cv2.aruco' 2>/dev/null; then
    convert "$work/600.tif" -depth 8 -colorspace Gray "$work/600.png"
    "$python" - "$work/600.png" <<'P'
import sys, time, cv2
grey = cv2.imread(sys.argv[1], cv2.IMREAD_GRAYSCALE)
cv2.setNumThreads(2)
family = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_6X6_1000) if hasattr(cv2.aruco, 'getPredefinedDictionary') else cv2.aruco.Dictionary_get(cv2.aruco.DICT_6X6_1000)
best = 1e9
for _ in range(5):
    start = time.perf_counter()
    found = cv2.aruco.detectMarkers(grey, family)[1]
    best = min(best, time.perf_counter() - start)
print(f"markers by OpenCV at full resolution (600): {0 if found is None else len(found)} found in {1000 * best:.0f} ms")
P
    echo "markers by printassay: see 'markers' of EvaluationBenchmark, and markersFound in evaluation.json:"
    grep -o '"markersFound" *: *[0-9]*' "$work/out/evaluation.json" | head -1
fi

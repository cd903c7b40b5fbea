#!/usr/bin/env bash
# Times `evaluate` on a folder of scans, whole processes, on one core and on all, in turns: run from anywhere,
# after `mvn package -DskipTests`. Needs GNU time and taskset. SCANS and DPI tell how many scans of what
# sampling are made first (simulated; 100 of 150: some minutes and 1.3 GB of disk), FOLDER keeps them for
# further runs. Nothing of this is a test: times depend on the machine, and on what else runs on it.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
program=$root/cli/target/printassay/bin/printassay
scans=${FOLDER:-$work/scans}
runs=${RUNS:-3}
if [ ! -d "$scans" ]; then
    nice java -Xmx3g -cp "$root/benchmarks/target/classes:$root/benchmarks/target/lib/*" \
        org.printassay.benchmark.FolderOfScans "${SCANS:-100}" "${DPI:-150}" "$scans"
fi
cat "$scans"/* >/dev/null
timed() { local to=$1; shift; /usr/bin/time -a -o "$to" -f '%e %U %S %M' "$@" >/dev/null 2>&1; }
for _ in $(seq "$runs"); do
    timed "$work/one" taskset -c 0 "$program" evaluate "$scans" --out "$work/out" --force
    timed "$work/all" "$program" evaluate "$scans" --out "$work/out" --force
done
echo "$(ls "$scans" | wc -l) scans, $(nproc) cores, load $(cut -d' ' -f1 /proc/loadavg):"
for which in one all; do
    sort -n "$work/$which" | awk -v name="$which" '{t[NR]=$1; u[NR]=$2+$3; if ($4>m) m=$4}
        END {i=int((NR+1)/2); printf "  %s: min %.1f s, median %.1f s, max %.1f s; processor %.1f s of the median; peak %.0f MB\n", name, t[1], t[i], t[NR], u[i], m/1024}'
done
echo "$(sort -n "$work/one" | awk '{s[NR]=$1} END {print s[int((NR+1)/2)]}') $(sort -n "$work/all" | awk '{s[NR]=$1} END {print s[int((NR+1)/2)]}')" |
    awk '{printf "  ratio of medians %.2f\n", $1/$2}'

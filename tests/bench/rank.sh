#!/usr/bin/env bash
# Benchmark of the ranking (not a test): 100,000 invented metals ranked by us, by a numpy program that does the same work, and one
# sweep over the memory that all samples would take, in one run. Needs Debian's python3-numpy, which nothing else needs.
# Writes tests/reports/rank-benchmark.md. Use: tests/bench/rank.sh [BUILD]
set -eu -o pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
build=${1:-$root/build}
metals=100000
ninja -C "$build" bench_rank >/dev/null
ours=$("$build/tests/bench_rank" $metals)
theirs=$(/usr/bin/python3 "$here/rank_numpy.py" $metals 1000)
of() { awk -v key="$1" '$1 == key { v = $2 } END { print v }' <<<"$ours
$theirs"; }
ratio() { awk -v a="$1" -v b="$2" 'BEGIN { printf "%.3g", a / b }'; }
sweep=$(of sweep)
{
  echo "# Benchmark of the ranking"
  echo
  echo "$metals invented metals by conductivity / (density * price); made by tests/bench/rank.sh; processor time of one thread, one run."
  echo "Sweep: reading and writing once the 0.8 GB that 1,000 samples of every metal would take (we keep none of them)."
  echo
  echo "| what | s | numpy / this | this / sweep |"
  echo "|---|---|---|---|"
  echo "| Pourbook, no samples: records resolved with their trails, ordered at three price forms | $(of rank_0) | $(ratio "$(of numpy_0)" "$(of rank_0)") | $(ratio "$(of rank_0)" "$sweep") |"
  echo "| numpy, no samples: arithmetic and order of figures already resolved | $(of numpy_0) | 1 | $(ratio "$(of numpy_0)" "$sweep") |"
  echo "| Pourbook, 1,000 samples each, ranks and ties of the first 300 | $(of rank_1000) | $(ratio "$(of numpy_1000)" "$(of rank_1000)") | $(ratio "$(of rank_1000)" "$sweep") |"
  echo "| numpy, the same | $(of numpy_1000) | 1 | $(ratio "$(of numpy_1000)" "$sweep") |"
  echo "| one sweep over that memory | $sweep | | 1 |"
  echo
  echo "Peak memory of the ranking beyond the catalogue's $(of catalogue_MB) MB: $(($(of peak_MB) - $(of catalogue_MB))) MB (the samples together would take 800 MB)."
} | tee "$root/tests/reports/rank-benchmark.md"

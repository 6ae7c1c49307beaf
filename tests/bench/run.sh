#!/usr/bin/env bash
# Every benchmark of the project in one run, each beside its baseline, into tests/reports/benchmarks.md with curves of growth beside it.
# Takes an hour of a quiet machine; --short a quarter of that (a run each, three powers of ten). Besides the packages of the tests it needs
# python3-numpy, python3-scipy and sqlite3.
#   tests/bench/run.sh [--short] [BUILD]
set -eu -o pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
times=3 decades=5 short=""
[ "${1:-}" != --short ] || { times=1 decades=3 short=" Short form: one run each, so the medians are single figures."; shift; }
build=$(cd "${1:-$root/build}" && pwd)
reports=$root/tests/reports
for module in numpy scipy; do
  /usr/bin/python3 -c "import $module" 2>/dev/null || { echo "run.sh: python3-$module is missing: apt-get install python3-$module" >&2; exit 1; }
done
command -v sqlite3 >/dev/null || { echo "run.sh: sqlite3 is missing: apt-get install sqlite3" >&2; exit 1; }

cmake --build "$build" --target pourbook reference bench_rank bench_drag many-metals growth-chart >/dev/null
part=$(mktemp)
made=$(mktemp)
trap 'rm -f "$part" "$made"' EXIT
{
  echo "# Benchmarks"
  echo
  echo "Made by tests/bench/run.sh at commit $(git -C "$root" rev-parse --short HEAD 2>/dev/null || echo unknown) on $(cd "$here" && python3 -c 'from timing import machine; print(machine())')."
  echo "Ratios are taken pair by pair of runs in turn, so that other work on the machine falls on both.$short"
} >"$made"

# A benchmark that fails stops the run; its headings go one level down.
add() {
  echo "run.sh: $1" >&2
  "$@" >"$part"
  { echo; sed 's/^#/##/' "$part"; } >>"$made"
}
add python3 "$here/commands.py" "$build" $((times * 5))
add python3 "$here/rank.py" "$build" $times
add "$root/tests/eddy/bench_drag.sh" "$build"
add python3 "$root/tests/workshop/bench_import.py" "$build/pourbook" $times
add python3 "$here/window.py" "$build"
add python3 "$here/growth.py" "$build" "$reports" $times $decades
cp "$made" "$reports/benchmarks.md"
echo "run.sh: $reports/benchmarks.md" >&2

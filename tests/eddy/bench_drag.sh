#!/usr/bin/env bash
# Benchmark of the drag: builds bench_drag.cpp, times it beside a plain scipy quadrature of the same integral and beside the
# finite-element solution where gmsh and getdp are installed. Prints the report.   bench_drag.sh [BUILD]
set -eu -o pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
build=${1:-$root/build}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cmake --build "$build" --target bench_drag reference >/dev/null
{
  echo "# Benchmark of the drag"
  echo
  echo "Cylinder 12 x 10 mm in a 13/15 mm tube; made by tests/eddy/bench_drag.sh (processor time; finite elements: wall time)."
  echo
  echo "| what | time |"
  echo "|---|---|"
  "$build/tests/bench_drag" "$build/pourbook-reference.sqlite"
  python3 "$here/bench_scipy.py"
  if command -v gmsh >/dev/null && command -v getdp >/dev/null; then
    cp "$here"/getdp/* "$work"
    cd "$work"
    start=$(date +%s.%N)
    gmsh tube.geo -2 -format msh2 -o tube.msh -setnumber R 0.9230769 -setnumber L 1.5384615 -setnumber b 1.1538462 >/dev/null
    middle=$(date +%s.%N)
    getdp tube.pro -msh tube.msh -solve Steady -pos drag -setnumber u 10 >/dev/null 2>&1
    end=$(date +%s.%N)
    awk -v a="$start" -v b="$middle" -v c="$end" 'BEGIN { printf "| finite elements: mesh | %.2g s |\n| finite elements: one solution | %.2g s |\n", b - a, c - b }'
  else
    echo "| finite elements | not installed |"
  fi
}

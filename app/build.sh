#!/usr/bin/env bash
# Configures and builds for app/run.sh and tests/run.sh: build.sh FOLDER TESTS [TARGET...]   (TESTS: ON or OFF)
# Says what the first build costs, how far it is, and on a failure where the log lies. Writes to standard error only.
set -eu -o pipefail
here=$(cd "$(dirname "$0")/.." && pwd)
build=$1 tests=$2
shift 2
log=$build/build.log
exec >&2

fail() { echo "pourbook: $*"; exit 1; }

mkdir -p "$build" 2>/dev/null && [ -w "$build" ] ||
  fail "'$build' can't be written: copy this folder to a place of your own, or name another with POURBOOK_BUILD=FOLDER"

# A configuration made for another place (the folder was moved, renamed or copied) is made afresh.
made_for=$(sed -n 's/^CMAKE_HOME_DIRECTORY:INTERNAL=//p' "$build/CMakeCache.txt" 2>/dev/null || true)
made_in=$(sed -n 's/^CMAKE_CACHEFILE_DIR:INTERNAL=//p' "$build/CMakeCache.txt" 2>/dev/null || true)
[ "$made_for|$made_in" = "$here|$build" ] || rm -rf "$build/CMakeCache.txt" "$build/CMakeFiles" "$build/build.ninja"

configure() { cmake -S "$here" -B "$build" -G Ninja "$@" >"$log" 2>&1 || { grep -A 4 "CMake Error" "$log" || true; fail "the build could not be configured: $log"; }; }
if [ "$tests" = ON ]; then
  configure -DPOURBOOK_TESTS=ON
elif [ ! -f "$build/build.ninja" ]; then
  configure -DPOURBOOK_TESTS=OFF -DPOURBOOK_WERROR=OFF # a newer compiler's warnings are no reason not to start
fi

# No more compilers than the memory holds: the largest takes about 0.9 GB.
free_MB=$(awk '/^MemAvailable:/ { print int($2 / 1024) }' /proc/meminfo 2>/dev/null || echo 2000)
jobs=$(nproc)
[ "$jobs" -le $((free_MB / 900)) ] || jobs=$((free_MB / 900))
[ "$jobs" -ge 1 ] || jobs=1

[ -x "$build/pourbook" ] || echo "pourbook: the first build takes 3 to 10 minutes on $(nproc) processors and up to 200 MB of disk; later starts take a moment"

# On a terminal one line that counts, elsewhere one for each tenth.
show_progress() {
  local line tenth=0 done of tenths words left percent
  while IFS= read -r line; do
    echo "$line" >>"$log"
    [[ $line =~ ^@([0-9]+)\ ([0-9]+)\ ([0-9]+)\. ]] || continue
    [ "${BASH_REMATCH[1]}" -gt 0 ] || continue
    done=${BASH_REMATCH[1]} of=${BASH_REMATCH[2]} percent=$((100 * BASH_REMATCH[1] / BASH_REMATCH[2]))
    left=$((BASH_REMATCH[3] * (of - done) / done)) tenths=$((percent / 10))
    [ $left -lt 90 ] && left="$left s" || left="$(((left + 30) / 60)) min"
    words="pourbook: building, $done of $of ($percent %), about $left left"
    if [ -t 2 ]; then
      printf '\r%s\033[K' "$words"
    elif [ "$of" -ge 20 ] && [ $tenths -gt $tenth ]; then
      echo "$words"
    fi
    tenth=$tenths
  done
  [ ! -t 2 ] || printf '\r\033[K'
}

: >"$log"
NINJA_STATUS='@%f %t %e@ ' ninja -C "$build" -j "$jobs" "$@" 2>&1 | show_progress ||
  { grep -m 3 -E "error|No space|Killed" "$log" || true; fail "the build stopped; everything it said is in $log"; }

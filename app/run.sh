#!/usr/bin/env bash
# Sets up, builds and starts Pourbook. Arguments go to the program: app/run.sh rank --goal braking-per-cost
# Only the program writes to standard output.
set -eu -o pipefail
here=$(cd "$(dirname "$0")/.." && pwd)

"$here/third_party/install.sh" build >&2
{
  [ -f "$here/build/build.ninja" ] || cmake -S "$here" -B "$here/build" -G Ninja -DPOURBOOK_TESTS=OFF >"$here/.configure.log" 2>&1 ||
    { cat "$here/.configure.log"; echo "pourbook: the build could not be configured"; exit 1; }
  rm -f "$here/.configure.log"
  ninja -C "$here/build" pourbook reference | tail -n 1
} >&2

exec "$here/build/pourbook" "$@"

#!/usr/bin/env bash
# Sets up, builds and starts Pourbook. Arguments go to the program: app/run.sh rank --goal braking-per-cost
# Only the program writes to standard output. POURBOOK_BUILD names another folder for the build.
set -eu -o pipefail
here=$(cd "$(dirname "$0")/.." && pwd)
build=${POURBOOK_BUILD:-$here/build}

"$here/third_party/install.sh" build >&2
"$here/app/build.sh" "$build" OFF pourbook reference
exec "$build/pourbook" "$@"

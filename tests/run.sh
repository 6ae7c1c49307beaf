#!/usr/bin/env bash
# Sets up, builds and runs every test. Arguments go to ctest: tests/run.sh -R rank
set -eu -o pipefail
here=$(cd "$(dirname "$0")/.." && pwd)
build=${POURBOOK_BUILD:-$here/build}

"$here/third_party/install.sh" test
"$here/app/build.sh" "$build" ON
cd "$build"
exec ctest --output-on-failure -j "$(nproc)" "$@"

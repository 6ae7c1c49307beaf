#!/usr/bin/env bash
# Sets up, builds and runs every test. Arguments go to ctest: tests/run.sh -R rank
set -eu -o pipefail
here=$(cd "$(dirname "$0")/.." && pwd)
cd "$here"

third_party/install.sh test
cmake -S . -B build -G Ninja -DPOURBOOK_TESTS=ON >build-configure.log 2>&1 || { cat build-configure.log; echo "pourbook: the build could not be configured"; exit 1; }
rm -f build-configure.log
ninja -C build
cd build
exec ctest --output-on-failure -j "$(nproc)" "$@"

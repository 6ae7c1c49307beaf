#!/usr/bin/env bash
# The page in the browser, tested: answers of the command line as WebAssembly under node against the approved ones, then
# the page itself in Chromium. By hand, after app/web/build.sh; not part of tests/run.sh, which has neither compiler nor browser.
# usage: tests/web/run.sh [FOLDER of app/web/build.sh]
set -eu -o pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
folder=$(cd "${1:-$root/build-web}" && pwd)
for program in node chromium python3; do
  command -v $program >/dev/null || { echo "tests/web: $program is missing: nothing was tested" >&2; exit 2; }
done
program=$(mktemp)
trap 'rm -f "$program"' EXIT
printf '#!/bin/sh\nexec node "%s/web/app/web/command-line.js" "$@"\n' "$folder" >"$program"
chmod +x "$program"
POURBOOK=$program POURBOOK_COMPILE=$folder/here/pourbook-compile python3 "$root/tests/cli/approved.py"
python3 "$root/tests/web/page.py" "$folder/page" ${2:-}

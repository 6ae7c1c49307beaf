#!/usr/bin/env bash
# The page in the browser, tested beside the native program (POURBOOK, or build/pourbook): the command line as WebAssembly under node answers byte for
# byte the same, then the page itself in Chromium. By hand, after app/web/build.sh; not part of tests/run.sh, which has neither compiler nor browser.
# usage: tests/web/run.sh [FOLDER of app/web/build.sh [FOLDER for pictures]]
set -eu -o pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
folder=$(cd "${1:-$root/build-web}" && pwd)
export POURBOOK=${POURBOOK:-$root/build/pourbook}
for program in node chromium python3 "$POURBOOK"; do
  command -v "$program" >/dev/null || { echo "tests/web: $program is missing: nothing was tested" >&2; exit 2; }
done
failed=0
python3 "$root/tests/web/equal.py" "$folder/web/app/web/command-line.js" || failed=1
python3 "$root/tests/web/page.py" "$folder/page" ${2:-} || failed=1
python3 "$root/tests/web/questions.py" "$folder/page" ${2:+--pictures "$2"} || failed=1
python3 "$root/tests/web/own_file.py" "$folder/page" || failed=1
exit $failed

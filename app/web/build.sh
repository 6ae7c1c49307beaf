#!/usr/bin/env bash
# Makes the page in the browser: FOLDER/page, static files for any file server. Debian 12.
# usage: app/web/build.sh [FOLDER]      (default: build-web beside the sources; the libraries' sources are fetched into it once)
set -eu -o pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
folder=${1:-$root/build-web}
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)

export NODE_PATH=/usr/share/nodejs${NODE_PATH:+:$NODE_PATH} # where the compiler finds its scripts, whichever node runs them
"$root/third_party/install.sh" page
"$root/third_party/web/sources.sh" "$folder/sources"

# The reference is compiled by the program for this machine.
cmake -S "$root" -B "$folder/here" -G Ninja -DPOURBOOK_TESTS=OFF -DPOURBOOK_WERROR=OFF >"$folder/here.log"
ninja -C "$folder/here" reference

emcmake cmake -S "$root" -B "$folder/web" -G Ninja -DCMAKE_BUILD_TYPE=Release -DPOURBOOK_TESTS=OFF \
  -DPOURBOOK_WEB_SOURCES="$folder/sources" -DPOURBOOK_REFERENCE="$folder/here/pourbook-reference.sqlite" >"$folder/web.log"
ninja -C "$folder/web" page command-line
rm -rf "$folder/page"
cp -r "$folder/web/page" "$folder/page"
du -sh "$folder/page" | sed 's/^/page: /'

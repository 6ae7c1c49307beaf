#!/usr/bin/env bash
# Installs the Debian 12 packages that Pourbook needs: `install.sh build` to build and run, `install.sh test` for the tests as well.
# Ends with one clear line when a package cannot be had.
set -eu -o pipefail

build="build-essential cmake ninja-build pkg-config libimgui-dev libglfw3-dev libxcb1-dev libfreetype-dev libcairo2-dev libxlsxwriter-dev libsqlite3-dev libsqlitecpp-dev
  nlohmann-json3-dev libcli11-dev libgl1 libgl1-mesa-dri fonts-inter fonts-dejavu-core python3"
test="$build catch2 xvfb xdotool xclip imagemagick bodr python3-periodictable clang-format getdp gmsh git
  poppler-utils librsvg2-bin tidy python3-openpyxl python3-jsonschema"

case "${1:-build}" in
build) wanted=$build ;;
test) wanted=$test ;;
*) echo "install.sh: build or test is expected, not '$1'" >&2; exit 2 ;;
esac

missing=""
for package in $wanted; do
  status=$(dpkg-query -W -f='${Status}' "$package" 2>/dev/null || true)
  [ "$status" = "install ok installed" ] || missing="$missing $package"
done
[ -n "$missing" ] || exit 0

command -v apt-get >/dev/null || { echo "pourbook: this machine has no apt-get; install these yourself:$missing" >&2; exit 1; }
as_root=""
if [ "$(id -u)" != 0 ]; then
  command -v sudo >/dev/null || { echo "pourbook: run as root, or install these yourself:$missing" >&2; exit 1; }
  as_root=sudo
fi
echo "pourbook: installing$missing" >&2
log=$(mktemp)
trap 'rm -f "$log"' EXIT
$as_root apt-get update -qq >"$log" 2>&1 || true
for package in $missing; do
  apt-cache show "$package" >/dev/null 2>&1 || { echo "pourbook: the package '$package' can't be had from this machine's package lists" >&2; exit 1; }
done
if ! $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >"$log" 2>&1; then
  tail -n 5 "$log" >&2
  echo "pourbook: these packages could not be installed:$missing" >&2
  exit 1
fi

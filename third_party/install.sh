#!/usr/bin/env bash
# Installs the Debian packages (12 or 13) that Pourbook needs: `install.sh build` to build and run, `install.sh test` for the tests as well,
# `install.sh page` to make the page in the browser, `install.sh package` to make what is handed out.
# Ends with one clear line when a package cannot be had.
set -eu -o pipefail

build="build-essential cmake ninja-build pkg-config libimgui-dev libglfw3-dev libxcb1-dev libfreetype-dev libcairo2-dev libxlsxwriter-dev libsqlite3-dev libsqlitecpp-dev
  nlohmann-json3-dev libcli11-dev libgl1 libgl1-mesa-dri fonts-inter fonts-dejavu-core python3"
test="$build catch2 xvfb xdotool xclip imagemagick bodr python3-periodictable clang-format getdp gmsh git
  poppler-utils librsvg2-bin tidy python3-openpyxl python3-jsonschema zsh fish"
package="$build file xz-utils"
page="$build emscripten dpkg-dev tcl"

case "${1:-build}" in
build) wanted=$build ;;
test) wanted=$test ;;
page) wanted=$page ;;
package) wanted=$package ;;
*) echo "install.sh: build, test, page or package is expected, not '$1'" >&2; exit 2 ;;
esac

missing=""
if command -v dpkg-query >/dev/null; then
  there=$(dpkg-query -W -f='${db:Status-Abbrev}${Package} ' $wanted 2>/dev/null || true)
  for package in $wanted; do
    case " $there" in *" ii $package "*) ;; *) missing="$missing $package" ;; esac
  done
  [ -n "$missing" ] || exit 0
else
  # Another distribution: whether everything is there shows when the build is configured.
  command -v cmake >/dev/null && command -v ninja >/dev/null && exit 0
  missing=" "$(echo $wanted)
fi

command -v apt-get >/dev/null || { echo "pourbook: this machine has no apt-get; install these yourself:$missing" >&2; exit 1; }
as_root=""
by_hand="su -c 'apt-get update; apt-get install -y --no-install-recommends$missing'"
if [ "$(id -u)" != 0 ]; then
  command -v sudo >/dev/null || { echo "pourbook: no sudo here; install what is missing as root, then start again: $by_hand" >&2; exit 1; }
  as_root=sudo
fi
echo "pourbook: installing$missing (for all: about 200 MB to fetch and 1.1 GB of disk, for the tests 350 MB and 2 GB; some minutes)" >&2
log=$(mktemp 2>/dev/null) || { echo "pourbook: no temporary file can be made: is TMPDIR right?" >&2; exit 1; }
trap 'rm -f "$log"' EXIT

# Fresh desktops hold apt's lock for minutes: wait up to five, and say so.
apt() {
  local tries=0
  until $as_root env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=120 "$@" >"$log" 2>&1; do
    grep -q -i "could not get lock" "$log" && [ $tries -lt 60 ] || return 1
    [ $tries != 0 ] || echo "pourbook: another package manager is at work: waiting for it" >&2
    tries=$((tries + 1))
    sleep 5
  done
}

network=""
if ! apt -o APT::Update::Error-Mode=any update -qq; then
  ! grep -q -i sudo "$log" || { echo "pourbook: sudo refuses; install what is missing as root, then start again: $by_hand" >&2; exit 1; }
  network=" (the package lists could not be fetched: $(grep -m 1 -E '^[EW]:' "$log" | cut -c 1-160 || true); is there a network?)"
fi
for package in $missing; do
  apt-cache show "$package" >/dev/null 2>&1 ||
    { echo "pourbook: the package '$package' can't be had from this machine's package lists$network" >&2; exit 1; }
done
if ! apt install -y -qq --no-install-recommends $missing; then
  tail -n 5 "$log" >&2
  echo "pourbook: these packages could not be installed:$missing$network" >&2
  exit 1
fi

#!/usr/bin/env bash
# The sources of the libraries that the page in the browser is built from: Debian's own, into FOLDER, once.
# Debian has no packages of them for WebAssembly, so that they are compiled here (CMakeLists.txt beside this file).
# usage: third_party/web/sources.sh FOLDER
set -eu -o pipefail
here=$(cd "$(dirname "$0")" && pwd)
folder=${1:?usage: third_party/web/sources.sh FOLDER}
mkdir -p "$folder/lists/partial" "$folder/cache/archives/partial"
folder=$(cd "$folder" && pwd)
cd "$folder"

for program in apt-get dpkg-source tclsh gcc; do
  command -v $program >/dev/null ||
    { echo "sources.sh: $program is missing: apt-get install dpkg-dev tcl build-essential" >&2; exit 1; }
done

echo "deb-src [signed-by=/usr/share/keyrings/debian-archive-keyring.gpg] http://deb.debian.org/debian bookworm main" >sources.list
apt="apt-get -o Dir::Etc::sourcelist=$folder/sources.list -o Dir::Etc::sourceparts=/dev/null -o Dir::State::lists=$folder/lists
  -o Dir::Cache=$folder/cache -o APT::Sandbox::User=$(id -un) -qq"

# name of the folder, Debian's source package
wanted="sqlite:sqlite3 sqlitecpp:sqlitecpp imgui:imgui freetype:freetype png:libpng1.6 z:zlib pixman:pixman cairo:cairo xlsxwriter:libxlsxwriter"
for pair in $wanted; do
  [ -d "${pair%%:*}" ] || missing="${missing:-} $pair"
done
[ -z "${missing:-}" ] || $apt update
for pair in ${missing:-}; do
  name=${pair%%:*} package=${pair#*:}
  echo "fetching $package" >&2
  rm -rf fetched && mkdir fetched
  if (cd fetched && $apt source --download-only "$package" >/dev/null 2>&1); then
    dpkg-source -q --no-check -x fetched/*.dsc fetched/tree >/dev/null
    mv fetched/tree "$name"
  else # the changes of Debian can't be had: what it was made from
    (cd fetched && $apt source --tar-only "$package" >/dev/null)
    mkdir fetched/tree && tar -x -f fetched/*.orig.tar.* -C fetched/tree --strip-components 1
    mv fetched/tree "$name"
  fi
done
rm -rf fetched

python3 "$here/cairo/points_of_splines.py" cairo/src

# SQLite in one file, as its makers advise; lemon and the tables of its parser are made by its own tools.
if [ ! -s sqlite/one/sqlite3.c ]; then
  echo "putting SQLite into one file" >&2
  mkdir -p sqlite/one
  (cd sqlite/one && ../configure --disable-shared --disable-readline >configure.log 2>&1 && make sqlite3.c >make.log 2>&1)
fi

#!/usr/bin/env bash
# Makes what is handed out, from this checkout, into FOLDER: the Debian package, the portable folder as one archive, the data as a
# package of tables beside the compiled reference, and their checksums.
#   make.sh FOLDER     The same sources on the same system give the same bytes. POURBOOK_BUILD names another folder for the build.
set -eu -o pipefail
here=$(cd "$(dirname "$0")/../.." && pwd)
out=${1:?"make.sh: name a folder for what is made"}
mkdir -p "$out"
out=$(cd "$out" && pwd)
[ -z "$(ls -A "$out")" ] || { echo "make.sh: '$out' is not empty: name a new folder" >&2; exit 2; }
build=${POURBOOK_BUILD:-$here/build}
# The time of the commit; an archive without its history passes SOURCE_DATE_EPOCH.
export SOURCE_DATE_EPOCH=${SOURCE_DATE_EPOCH:-$(git -C "$here" log -1 --format=%ct 2>/dev/null || echo 1796040000)}
export XZ_OPT=-T1 TZ=UTC LC_ALL=C.UTF-8

"$here/third_party/install.sh" package
"$here/app/build.sh" "$build" OFF pourbook reference packaging
(cd "$build" && cpack -G DEB -B "$out" >cpack.log 2>&1) || { tail -n 5 "$build/cpack.log" >&2; echo "make.sh: no package: $build/cpack.log" >&2; exit 1; }
rm -rf "$out/_CPack_Packages"

# One archive of a folder, whose files then all bear the same time.
pack() {
  find "$1" -exec touch -h -d "@$SOURCE_DATE_EPOCH" {} +
  tar -C "$out" --sort=name --owner=0 --group=0 --numeric-owner --mode=go-w -cJf "$1.tar.xz" "$(basename "$1")"
  rm -rf "$1"
}

# The portable folder: program, data, fonts, and the libraries that a bare desktop lacks. What a desktop's own libraries of graphics and
# letters lean on stays the system's: an older one beside the program would keep a newer driver from loading.
every_desktop='/(libc|libm|libdl|libpthread|librt|libresolv|ld-linux[^/]*|libstdc\+\+|libgcc_s|libz|libexpat|libGL[^/]*|libEGL|libOpenGL|libX[^/]*|libxcb[^/]*|libfontconfig|libfreetype|libbsd|libmd|libbrotli[^/]*|libpng16)\.so'
version=$("$build/pourbook" --version | sed -n '1s/^pourbook //p')
folder=$out/pourbook-$version-portable
DESTDIR="$folder.staged" cmake --install "$build" --prefix /usr --strip >/dev/null
mv "$folder.staged/usr" "$folder"
rm -rf "$folder.staged"
mkdir -p "$folder/lib" "$folder/licenses" "$folder/share/pourbook/fonts"
cp /usr/share/fonts/opentype/inter/Inter-{Regular,Italic,SemiBold}.otf /usr/share/fonts/truetype/dejavu/DejaVuSans.ttf "$folder/share/pourbook/fonts/"
ldd "$folder/bin/pourbook" | awk '/=> \// { print $3 }' | { grep -v -E "$every_desktop" || true; } | while read -r library; do
  cp -L "$library" "$folder/lib/"
  # The package names the file with or without /usr before it.
  package=$(dpkg-query -S "*/$(basename "$(readlink -f "$library")")" | sed -n '1s/:.*//p')
  cp -L "/usr/share/doc/$package/copyright" "$folder/licenses/$package"
done
for package in fonts-inter fonts-dejavu-core; do cp -L "/usr/share/doc/$package/copyright" "$folder/licenses/$package"; done
cp "$here/app/packaging/portable-copyright" "$folder/licenses/README"
cat >"$folder/pourbook" <<'START'
#!/bin/sh
here=$(dirname "$(readlink -f "$0")")
LD_LIBRARY_PATH="$here/lib${LD_LIBRARY_PATH:+:$LD_LIBRARY_PATH}" exec "$here/bin/pourbook" "$@"
START
chmod 755 "$folder/pourbook"
pack "$folder"

# The data alone: tables for other programs, and the compiled reference for `pourbook --reference FILE`.
data_version=$("$build/pourbook" --version | sed -n '2s/^data //p')
folder=$out/pourbook-data-$data_version
"$build/pourbook" export --to "$folder" >/dev/null
cp "$build/pourbook-reference.sqlite" "$here/db/LICENSE" "$folder/"
cp "$here/db/NEWS.md" "$folder/"
pack "$folder"
(cd "$out" && sha256sum -- *.deb *.tar.xz >SHA256SUMS && cat SHA256SUMS)

#!/usr/bin/env bash
# Makes what is handed out, from this checkout, into FOLDER: the Debian package, the portable folder as one archive, and
# their checksums.   make.sh FOLDER     The same sources on the same system give the same bytes.
set -eu -o pipefail
here=$(cd "$(dirname "$0")/../.." && pwd)
out=${1:?"make.sh: name a folder for what is made"}
mkdir -p "$out"
out=$(cd "$out" && pwd)
build=${POURBOOK_BUILD:-$here/build}
export SOURCE_DATE_EPOCH=${SOURCE_DATE_EPOCH:-$(git -C "$here" log -1 --format=%ct 2>/dev/null || echo 1796040000)}

"$here/third_party/install.sh" build
"$here/app/build.sh" "$build" OFF pourbook reference packaging
(cd "$build" && cpack -G DEB -B "$out" >cpack.log 2>&1) || { tail -n 5 "$build/cpack.log" >&2; echo "make.sh: no package: $build/cpack.log" >&2; exit 1; }
rm -rf "$out/_CPack_Packages"

# The portable folder: program, data, fonts, and the libraries that are not on every desktop of the same age.
version=$("$build/pourbook" --version | cut -d ' ' -f 2)
folder=$out/pourbook-$version-portable
rm -rf "$folder"
DESTDIR="$folder.staged" cmake --install "$build" --prefix /usr --strip >/dev/null
mv "$folder.staged/usr" "$folder"
rm -rf "$folder.staged"
mkdir -p "$folder/lib" "$folder/licenses" "$folder/share/pourbook/fonts"
cp /usr/share/fonts/opentype/inter/Inter-{Regular,Italic,SemiBold}.otf /usr/share/fonts/truetype/dejavu/DejaVuSans.ttf "$folder/share/pourbook/fonts/"
ldd "$folder/bin/pourbook" | awk '/=> \// { print $3 }' | grep -v -E '/(libc|libm|libdl|libpthread|librt|libresolv|ld-linux[^/]*|libGL|libGLX|libGLdispatch|libOpenGL|libEGL)\.so' |
  while read -r library; do
    cp -L "$library" "$folder/lib/"
    package=$(dpkg-query -S "$(readlink -f "$library")" 2>/dev/null | head -n 1 | cut -d : -f 1)
    [ -z "$package" ] || cp -L "/usr/share/doc/$package/copyright" "$folder/licenses/$package"
  done
cp "$here/app/packaging/portable-copyright" "$folder/licenses/README"
cat >"$folder/pourbook" <<'START'
#!/bin/sh
here=$(dirname "$(readlink -f "$0")")
LD_LIBRARY_PATH="$here/lib${LD_LIBRARY_PATH:+:$LD_LIBRARY_PATH}" exec "$here/bin/pourbook" "$@"
START
chmod 755 "$folder/pourbook"
find "$folder" -exec touch -h -d "@$SOURCE_DATE_EPOCH" {} +
tar -C "$out" --sort=name --owner=0 --group=0 --numeric-owner -cJf "$folder.tar.xz" "$(basename "$folder")"
rm -rf "$folder"
(cd "$out" && sha256sum ./*.deb ./*.tar.xz >SHA256SUMS && cat SHA256SUMS)

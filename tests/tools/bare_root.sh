#!/usr/bin/env bash
# Tries the checkout's last commit on a bare Debian, as root, by hand before a release (an hour, 4 GB, needs debootstrap and a network):
#   bare_root.sh bookworm|trixie FOLDER [build|tests|package|install|elsewhere]...
# In the order of the words; without any: build, package, install, tests.
#   build      app/run.sh answers a ranking
#   tests      tests/run.sh
#   package    app/packaging/make.sh into FOLDER/made-SUITE
#   install    what lies there, in a second bare root without a compiler: install, rank, a picture, the window under Xvfb, remove, nothing left
#   elsewhere  the portable folder that the other suite made (its `package` came before) answers and draws here
set -eu -o pipefail
here=$(cd "$(dirname "$0")/../.." && pwd)
suite=${1:?"bare_root.sh: name bookworm or trixie"} folder=${2:?"bare_root.sh: name a folder"}
shift 2
steps=${*:-build package install tests}
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)
root=$folder/$suite user=$folder/$suite-user
epoch=$(git -C "$here" log -1 --format=%ct)

mount_system() {
  mountpoint -q "$1/proc" || mount -t proc proc "$1/proc"
  mountpoint -q "$1/dev/pts" || mount -t devpts -o newinstance,ptmxmode=0666 devpts "$1/dev/pts"
  ln -sf pts/ptmx "$1/dev/ptmx"
}
trap 'umount "$root/proc" "$user/proc" "$root/dev/pts" "$user/dev/pts" 2>/dev/null || true' EXIT
inside() {
  chroot "$1" env -i HOME=/root PATH=/usr/sbin:/usr/bin:/sbin:/bin DEBIAN_FRONTEND=noninteractive SOURCE_DATE_EPOCH="$epoch" \
    quietly="-y -qq -o Dpkg::Use-Pty=0" bash -eu -o pipefail -c "$2"
}

# The base is fetched once; every root is a copy of it. Nobody but root may enter root's home.
make_root() {
  if [ ! -e "$folder/$suite-base/made" ]; then
    rm -rf "$folder/$suite-base"
    debootstrap --variant=minbase "$suite" "$folder/$suite-base" >"$folder/$suite-base.log" 2>&1 || { tail -n 3 "$folder/$suite-base.log" >&2; exit 1; }
    touch "$folder/$suite-base/made"
  fi
  [ -d "$1" ] || cp -a "$folder/$suite-base" "$1"
  chmod 700 "$1/root"
  mount_system "$1"
}

# The window of a program, drawn without a screen. A display's name is shared with the machine: no usual one.
draw='Xvfb :87 -screen 0 1440x900x24 >/dev/null 2>&1 & screen=$!; sleep 2
  DISPLAY=:87 LIBGL_ALWAYS_SOFTWARE=1 $program --screenshot /root/window.png; kill $screen
  [ "$(head -c 4 /root/window.png | tail -c 3)" = PNG ]; ls -l /root/window.png; rm /root/window.png'

try_build() { inside "$root" 'cd /root/pourbook; app/run.sh rank --goal braking-per-cost | sed -n 1,5p; du -sh build'; }
try_tests() { inside "$root" 'cd /root/pourbook; tests/run.sh >/root/tests.log 2>&1 || failed=1; tail -n 15 /root/tests.log; [ -z "${failed:-}" ]'; }

try_package() {
  inside "$root" 'cd /root/pourbook; rm -rf /root/made; app/packaging/make.sh /root/made; ls -l /root/made'
  rm -rf "$folder/made-$suite"
  cp -r "$root/root/made" "$folder/made-$suite"
}

try_install() {
  make_root "$user"
  cp "$folder/made-$suite"/pourbook_*.deb "$user/root/"
  inside "$user" 'apt-get update -qq; dpkg-query -W >/root/before; du -sm --exclude=/proc /
    apt-get $quietly install --no-install-recommends /root/pourbook_*.deb >/dev/null; du -sm --exclude=/proc /
    pourbook --version; pourbook rank --goal braking-per-cost | sed -n 1,3p; pourbook chart rank --goal braking-per-cost --to /root/rank.png; rm /root/rank.png
    apt-get $quietly install --no-install-recommends xvfb >/dev/null'
  inside "$user" "program=pourbook; $draw"
  inside "$user" 'apt-get $quietly purge --auto-remove pourbook xvfb >/dev/null; dpkg-query -W | diff /root/before -; rm /root/pourbook_*.deb
    left=$(find / -xdev -iname "*pourbook*" -not -path "/root/.local/*" -not -path "/var/log/*" -not -path "/proc/*"); [ -z "$left" ] || { echo "left behind: $left"; exit 1; }
    echo "nothing is left but the person'"'"'s own: $(find /root/.local -name "*pourbook*" 2>/dev/null | tr "\n" " ")"'
}

try_elsewhere() {
  local archive
  archive=$(ls "$folder"/made-*/pourbook-*-portable.tar.xz | grep -v "/made-$suite/" | head -n 1)
  make_root "$user"
  cp "$archive" "$user/root/"
  inside "$user" 'apt-get update -qq; apt-get $quietly install --no-install-recommends xvfb xz-utils libgl1 libgl1-mesa-dri libfontconfig1 libxrender1 libxcb-shm0 libxcb-render0 >/dev/null
    cd /root; rm -rf moved pourbook-*-portable; tar -xf pourbook-*-portable.tar.xz; mv pourbook-*-portable moved; moved/pourbook --version'
  inside "$user" "cd /; /root/moved/pourbook rank --goal braking-per-cost | sed -n 1,3p; /root/moved/pourbook chart rank --goal braking-per-cost --to /root/rank.png
    program=/root/moved/pourbook; $draw; rm -rf /root/moved /root/rank.png /root/*.tar.xz"
}

in_sources() {
  make_root "$root"
  mkdir -p "$root/root/pourbook"
  git -C "$here" archive HEAD | tar -x -C "$root/root/pourbook"
  "$1"
}

for step in $steps; do
  echo "== $suite: $step, $(date -u +%H:%M)"
  case $step in
  build | tests | package) time in_sources "try_$step" ;;
  install | elsewhere) time "try_$step" ;;
  *) echo "bare_root.sh: build, tests, package, install or elsewhere is expected, not '$step'" >&2; exit 2 ;;
  esac
done

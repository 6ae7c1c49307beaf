#!/usr/bin/env bash
# Tries the checkout's last commit on a bare Debian, as root, by hand before a release (an hour, 3 GB, needs debootstrap and a network):
#   bare_root.sh bookworm|trixie FOLDER [build|tests|package]...     each step after the ones before; without a word all three
# build: app/run.sh answers a ranking; tests: tests/run.sh; package: app/packaging/make.sh, then install, rank, a picture, remove,
# nothing left, in a second bare root without a compiler.
set -eu -o pipefail
here=$(cd "$(dirname "$0")/../.." && pwd)
suite=${1:?suite} folder=${2:?folder}
shift 2
steps=${*:-build tests package}

# A bare root with the commit in the home of root, which nobody else may enter.
make_root() {
  [ -d "$1/root" ] || debootstrap --variant=minbase "$suite" "$1" http://deb.debian.org/debian >"$1.log" 2>&1 || { tail -n 3 "$1.log"; exit 1; }
  chmod 700 "$1/root"
  mountpoint -q "$1/proc" || mount -t proc proc "$1/proc"
}
inside() { chroot "$1" env -i HOME=/root PATH=/usr/sbin:/usr/bin:/sbin:/bin DEBIAN_FRONTEND=noninteractive bash -eu -o pipefail -c "$2"; }
trap 'umount "$folder/$suite/proc" "$folder/$suite-user/proc" 2>/dev/null || true' EXIT

mkdir -p "$folder"
root=$folder/$suite
make_root "$root"
mkdir -p "$root/root/pourbook"
git -C "$here" archive HEAD | tar -x -C "$root/root/pourbook"
for step in $steps; do
  echo "== $suite: $step, $(date -u +%H:%M)"
  case $step in
  build) time inside "$root" 'cd /root/pourbook; app/run.sh rank --goal braking-per-cost | head -n 5' ;;
  tests) time inside "$root" 'cd /root/pourbook; tests/run.sh 2>&1 | tail -n 15' ;;
  package)
    inside "$root" 'cd /root/pourbook; app/packaging/make.sh /root/made'
    make_root "$folder/$suite-user"
    cp "$root"/root/made/* "$folder/$suite-user/root/"
    inside "$folder/$suite-user" 'apt-get update -qq; dpkg-query -W >/root/before; find / -xdev >/root/files-before
      apt-get install -y -qq --no-install-recommends /root/pourbook_*.deb >/dev/null; pourbook --version; pourbook rank --goal braking-per-cost | head -n 3
      pourbook chart rank --goal braking-per-cost --to /tmp/rank.png; rm /tmp/rank.png
      dpkg -P pourbook >/dev/null; ! find / -xdev -name "*pourbook*" | grep -v "^/root\|^/var/log\|^/proc"
      cd /root; tar -xf pourbook-*-portable.tar.xz; pourbook-*-portable/pourbook rank --goal braking-per-cost | head -n 3'
    ;;
  *) echo "bare_root.sh: build, tests or package is expected, not '$step'" >&2; exit 2 ;;
  esac
done

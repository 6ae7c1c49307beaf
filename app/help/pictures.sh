#!/usr/bin/env bash
# Takes the pictures of the real window that README.md and the help show. Needs the tests' packages.
set -eu
cd "$(dirname "$0")/../.."
mkdir -p app/help/pictures
display=:$((90 + RANDOM % 400))
Xvfb "$display" -screen 0 1600x1000x24 -noreset -nolisten tcp >/dev/null 2>&1 &
server=$!
trap 'kill $server' EXIT
sleep 1
XDG_DATA_HOME=$(mktemp -d) # nobody's own stock in a picture
export XDG_DATA_HOME
for view in metals rank curves drop mix pour; do
  DISPLAY=$display build/pourbook --view "$view" --size 1280x800 --screenshot "app/help/pictures/$view.png"
done

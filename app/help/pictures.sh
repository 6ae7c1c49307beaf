#!/usr/bin/env bash
# Takes the pictures of the real window that README.md shows: every view, and the help beside one. Needs the tests'
# packages.
set -eu
cd "$(dirname "$0")/../.."
pictures=app/help/pictures
work=$(mktemp -d)
export XDG_DATA_HOME=$work # nobody's own stock in a picture
display=:$((90 + RANDOM % 400))
Xvfb "$display" -screen 0 1800x1000x24 -noreset -nolisten tcp >/dev/null 2>&1 &
server=$!
trap 'kill $server; rm -r "$work"' EXIT
sleep 1

# picture NAME VIEW [SIZE [STATE]]: in few colours, which halves and halves again what the file takes
picture() {
  local state=()
  if [ -n "${4:-}" ]; then
    echo "$4" >"$work/window.json"
    state=(--state "$work/window.json")
  fi
  DISPLAY=$display build/pourbook --view "$2" --size "${3:-1280x800}" "${state[@]}" --screenshot "$work/$1.png"
  convert "$work/$1.png" -colors 96 "png8:$pictures/$1.png"
}

pins='"pins": ["za-12", "aluminium-a356-cast", "copper-dhp", "bronze-gunmetal-88-10-2", "bronze-silicon-cast"]'
for view in start metals rank curves compare drop mix pour; do picture "$view" "$view"; done
picture sources sources 1280x800 "{$pins, \"source\": \"usgs-mcs-2026\"}"
picture help drop 1680x800 "{$pins, \"help\": true}"

# The demo's own measurements: invented.
build/pourbook trial add drop --metal za-12 --magnet cylinder:20mmx20mm --grade N52 --tube 22mm:38mm:300mm \
  --times 5.4s,5.5s,5.4s --note "first pour of the sleeve" >/dev/null
build/pourbook stock add za-12 2kg --price "4.50 USD/kg" >/dev/null
build/pourbook price add zinc "4.10 USD/kg" >/dev/null
picture trials trials

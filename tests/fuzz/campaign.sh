#!/usr/bin/env bash
# Processor MINUTES for each reader in short turns, two readers at a time, from the tree's corpus and the inputs kept in
# KEEP, which grows; the sums are printed: campaign.sh FUZZ MINUTES KEEP [READER...]
set -eu -o pipefail
fuzz=$1 minutes=$2 keep=$3
shift 3
[ $# -gt 0 ] || set -- csv workshop-file json stl formula unit composition set-up part figure
mkdir -p "$keep"
for turn in $(seq $((minutes * 4))); do
  printf '%s\n' "$@" | xargs -P 2 -I{} sh -c '"$@" >>"$0/{}.log" 2>&1' \
    "$keep" nice -n 19 "$fuzz" 0.25min {} "$(dirname "$0")/corpus" "$keep" "$(date +%s)" || break
done
awk '/ inputs, /{n[$1] += $2; m[$1] += $4; s[$1] = $7; b[$1] = $10} END {for (r in n) print r, n[r], "inputs", m[r], "processor minutes", s[r], "starting points", b[r], "branches"}' "$keep"/*.log
if grep -H failed: "$keep"/*.log; then exit 1; fi
echo "passed: fuzz campaign"

#!/usr/bin/env bash
# The fuzz program for MINUTES with new seeds, its inputs kept in CORPUS and taken up again: campaign.sh FUZZ MINUTES [CORPUS]
# Readers take turns; ten minutes for each of the seven are seventy minutes.
set -eu -o pipefail
fuzz=$1
end=$(($(date +%s) + $2 * 60))
corpus=${3:-$(dirname "$0")/corpus}
seed=$(date +%s)
while [ "$(date +%s)" -lt "$end" ]; do
  "$fuzz" 20000 "$seed" "$corpus" >/dev/null || { echo "failed: seed $seed"; exit 1; }
  seed=$((seed + 1))
done
echo "passed: fuzz campaign, last seed $seed, $(find "$corpus" -type f | wc -l) inputs kept"

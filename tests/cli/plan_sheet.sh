#!/usr/bin/env bash
# The text plan of three layers is a sheet in every climate: under 70 lines and 80 columns to a
# file, steps from the bottom up, and no word of the engine room.
set -euo pipefail
bulbwright=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

for zone in 4a 5b 6a 7b 8a 9b 10b 11b; do
  for units in mm in; do
    sheet="$work/$zone.$units.txt"
    status=0
    "$bulbwright" plan --top "380 mm" --base "290 mm" --height "360 mm" --zone "$zone" --season 2026 \
      --layer tulip-triumph --layer narcissus-large-cupped --layer crocus-large --units "$units" \
      >"$sheet" || status=$?
    [ "$status" -le 1 ] || { echo "$zone: exit $status"; exit 1; }
    lines=$(wc -l <"$sheet")
    columns=$(LC_ALL=C.UTF-8 wc -L <"$sheet")
    [ "$lines" -lt 70 ] || { echo "$zone $units: $lines lines"; exit 1; }
    [ "$columns" -le 80 ] || { echo "$zone $units: $columns columns"; exit 1; }
    grep -n -i -E "bound|section|certif|taxon|taxa|tulip-triumph|nan" "$sheet" && exit 1
    order=$(grep -o -E "(Bottom|Middle|Top) layer:" "$sheet" | tr -d '\n')
    [ "$order" = "Bottom layer:Middle layer:Top layer:" ] || { echo "$zone: steps $order"; exit 1; }
  done
done

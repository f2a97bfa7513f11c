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

# Rings and rows: what to set where, in words, and what that loses; a drift is not called mixed.
pot=(--top "380 mm" --height "360 mm" --zone 9b --season 2026)
"$bulbwright" plan "${pot[@]}" --layer tulip-triumph --format json >"$work/dense.json"
cat >"$work/rings.json" <<'POT'
{ "pot": { "shape": "round", "top": "380 mm", "height": "360 mm" }, "place": { "zone": "9b" }, "season": 2026,
  "layers": [ { "taxon": "tulip-triumph", "pattern": "rings" } ] }
POT
"$bulbwright" plan "$work/rings.json" | tr '\n' ' ' | tr -s ' ' >"$work/text"
"$bulbwright" plan "$work/rings.json" --format json >"$work/plan.json"
/usr/bin/python3 - "$work" <<'PY'
import json, math, re, sys
work = sys.argv[1]
dense = json.load(open(f"{work}/dense.json"))["layers"][0]
rings = json.load(open(f"{work}/plan.json"))["layers"][0]
assert rings["pattern"] == "rings" and dense["pattern"] == "dense" and "sets" not in dense
assert sum(rings["sets"]) == rings["count"] == len(rings["positions"]) and rings["dense_count"] == dense["count"]
radii = sorted((round(math.hypot(p["x_mm"], p["y_mm"]), 1) for p in rings["positions"]), reverse=True)
for size in rings["sets"]:  # each ring is one
    assert radii[0] - radii[size - 1] < 0.2, radii
    radii = radii[size:]
text = open(f"{work}/text").read()
told = re.search(r"in rings of ([0-9, and]+) from the rim inwards( \((\d+) fewer than fit\))?", text)
assert [int(n) for n in re.findall(r"\d+", told[1])] == rings["sets"], text
assert int(told[3] or 0) == dense["count"] - rings["count"], text
PY
sed 's/"taxon": "tulip-triumph", "pattern": "rings"/"mix": [ { "taxon": "muscari", "share": 1 }, { "taxon": "crocus-large", "share": 1 } ], "arrange": "drift"/' \
  "$work/rings.json" >"$work/drift.json"
"$bulbwright" plan "$work/drift.json" | tr '\n' ' ' | tr -s ' ' | grep -q "each kind together, from left to right" ||
  { echo "a drift is not told"; exit 1; }
status=0
sed 's/"pattern": "rings"/"pattern": "rings", "count": 9/' "$work/rings.json" >"$work/own.json"
"$bulbwright" plan "$work/own.json" >/dev/null 2>"$work/err" || status=$?
[ "$status" -eq 2 ] && grep -q "layers\[0\].pattern: rings and rows" "$work/err" || { echo "a pattern of own bulbs"; exit 1; }

# The grower's own words stand on the sheet.
cat >"$work/notes.json" <<'POT'
{ "pot": { "note": "chipped rim to the wall", "top": "380 mm", "height": "360 mm" }, "place": { "zone": "9b" }, "season": 2026,
  "layers": [ { "taxon": "tulip-triumph", "note": "the pink ones" } ] }
POT
"$bulbwright" plan "$work/notes.json" | grep -q "Your notes *Chipped rim to the wall. Triumph tulips: the pink ones." || { echo "no notes"; exit 1; }

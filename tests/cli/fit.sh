#!/usr/bin/env bash
# fit: documents validate against the schema, printed layouts hold when measured by somebody else, CSV and
# text tell the same count, own counts are spread, and what cannot be is told by exit code.
set -euo pipefail
bulbwright=$1
root=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

"$bulbwright" fit --top "380 mm" --bulb "40 mm" --format json >"$work/round.json"
"$bulbwright" fit --top "600 mm x 200 mm" --shape rectangle --corner "20 mm" --bulb "40 mm" --format json >"$work/trough.json"
"$bulbwright" fit --top "500 mm x 300 mm" --shape oval --bulb "35 mm" --gap "10 mm" --format json >"$work/oval.json"
"$bulbwright" fit --top "400 mm" --shape half-round --bulb "30 mm" --format json >"$work/half.json"
"$bulbwright" fit --top "380 mm" --bulb "40 mm" --count 15 --format json >"$work/own.json"
for pattern in rings rows; do
  "$bulbwright" fit --top "380 mm" --bulb "40 mm" --pattern $pattern --format json >"$work/$pattern.json"
  "$bulbwright" fit --shape oval --top "600 mm x 300 mm" --bulb "40 mm" --pattern $pattern --format json >"$work/oval-$pattern.json"
done

/usr/bin/python3 - "$root/docs/schema/fit.schema.json" "$work"/*.json <<'PY'
import json, math, sys
import jsonschema
schema = json.load(open(sys.argv[1]))
for name in sys.argv[2:]:
    fit = json.load(open(name))
    jsonschema.Draft202012Validator(schema).validate(fit)
    at = [(p["x_mm"], p["y_mm"]) for p in fit["positions"]]
    assert len(at) == fit["count"] <= fit["upper_bound"], name
    assert not fit["sets"] or sum(fit["sets"]) == fit["count"], name
    if fit["pattern"] != "dense":
        assert fit["count"] == fit[fit["pattern"] + "_count"] and fit["dense_count"] >= 20, name
    nearest = min(math.dist(a, b) for i, a in enumerate(at) for b in at[:i]) - fit["bulb_mm"]
    assert nearest >= fit["gap_mm"] - 1e-9, (name, nearest)
    assert abs(nearest - fit["least_gap_mm"]) < 2e-3, (name, nearest)
    if fit["section"]["shape"] == "round":
        room = fit["section"]["diameter_mm"] / 2 - fit["bulb_mm"] / 2 - fit["wall_mm"]
        assert max(math.hypot(*p) for p in at) <= room + 1e-9, name
PY

count=$(/usr/bin/python3 -c 'import json, sys; print(json.load(open(sys.argv[1]))["count"])' "$work/round.json")
rows=$("$bulbwright" fit --top "380 mm" --bulb "40 mm" --format csv | tail -n +2 | wc -l)
[ "$rows" -eq "$count" ] || { echo "CSV has $rows rows, JSON $count bulbs"; exit 1; }
"$bulbwright" fit --top "380 mm" --bulb "40 mm" | grep -q "^$count bulbs fit" || { echo "text tells another count"; exit 1; }

status=0
"$bulbwright" fit --top "30 mm" --bulb "40 mm" --format json >/dev/null 2>&1 || status=$?
[ "$status" -eq 1 ] || { echo "a bulb wider than its outline: exit $status"; exit 1; }
status=0
"$bulbwright" fit --top "200 mm x 100 mm" --bulb "40 mm" 2>"$work/err" || status=$?
[ "$status" -eq 2 ] && grep -q -- "--top: expected one width" "$work/err" || { echo "two sizes for a round outline"; exit 1; }

# More bulbs than are ever packed are refused at once, by number and field.
status=0
timeout 20 "$bulbwright" fit --top "5 m" --bulb "1 mm" --gap "0 mm" --wall "0 mm" >"$work/out" 2>"$work/err" || status=$?
[ "$status" -eq 2 ] && grep -q -- "--bulb: up to [0-9]* bulbs .* at most 5000" "$work/err" && [ ! -s "$work/out" ] ||
  { echo "a layer without limit: exit $status"; cat "$work/err"; exit 1; }
status=0
timeout 20 "$bulbwright" plan --top "5 m" --height "400 mm" --zone 9b --season 2026 --layer crocus-large \
  --gap "0 mm" >"$work/out" 2>"$work/err" || status=$?
[ "$status" -eq 2 ] && grep -q -- "--layer: up to [0-9]* bulbs" "$work/err" && [ ! -s "$work/out" ] ||
  { echo "a planned layer without limit: exit $status"; cat "$work/err"; exit 1; }

# What is proven is told from what was only not found; one bulb is one bulb.
text() { "$bulbwright" fit --shape rectangle --bulb "40 mm" "$@" || true; }
text --top "60 mm x 60 mm" | grep -q "^1 bulb fits\.$" || { echo "one bulb"; exit 1; }
text --top "60 mm x 55 mm" --count 1 2>/dev/null | grep -q "^No bulb fits so far from the wall\.$" || { echo "the wall is the reason"; exit 1; }
text --top "100 mm x 60 mm" --count 3 2>/dev/null | grep -q "no layout can hold more than 1 (" || { echo "a proven refusal"; exit 1; }
"$bulbwright" fit --shape rectangle --top "24 in x 3 in" --bulb "2.5 in" --wall "0.25 in" --gap "0.5 in" |
  grep -q "^8 bulbs fit" || { echo "an exact fit in inches"; exit 1; }

# Rings and rows tell what to set where and what they lose; with own bulbs there is no pattern.
"$bulbwright" fit --top "380 mm" --bulb "40 mm" --pattern rings >"$work/out"
grep -q "^25 bulbs fit in rings, 25 mm apart or more\.$" "$work/out" && grep -q "^From the rim inwards: 15, 9, 1\.$" "$work/out" &&
  grep -q "^2 fewer than the densest layout found, which holds 27\.$" "$work/out" || { echo "rings"; cat "$work/out"; exit 1; }
"$bulbwright" fit --shape rectangle --top "600 mm x 200 mm" --bulb "40 mm" --pattern rows >"$work/out"
grep -q "^Along the length, from one side: 9, 9, 9\.$" "$work/out" && grep -q "^As many as the densest layout found\.$" "$work/out" ||
  { echo "rows"; cat "$work/out"; exit 1; }
status=0
"$bulbwright" fit --top "380 mm" --bulb "40 mm" --count 9 --pattern rings >"$work/out" 2>"$work/err" || status=$?
[ "$status" -eq 2 ] && grep -q -- "--pattern: rings and rows" "$work/err" || { echo "a pattern of own bulbs"; exit 1; }

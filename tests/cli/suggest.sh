#!/usr/bin/env bash
# `bulbwright suggest`: JSON by its schema, pot files that plan as promised, faults and exit codes.
set -u
bulbwright=$(realpath "$1")
root=$(realpath "$2")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
export LC_ALL=C.UTF-8
faults=0
fail() { echo "$*"; faults=1; }

pot=(--top "15 in" --base "12 in" --height "14 in" --zone 9b --window 2027-02-15..2027-04-30)
"$bulbwright" suggest "${pot[@]}" --format json --write pots >all.json || fail "json: exit $?"
"$bulbwright" suggest "${pot[@]}" --format json >again.json || fail "again: exit $?"
cmp -s all.json again.json || fail "the same question has two answers"
"$bulbwright" suggest "${pot[@]}" >all.txt || fail "text: exit $?"
awk '{ if (length($0) > 80) exit 1 }' all.txt || fail "text: a line is too wide"
"$bulbwright" suggest "${pot[@]}" --width 48 >narrow.txt || fail "narrow: exit $?"
awk '{ if (length($0) > 48) exit 1 }' narrow.txt || fail "narrow: a line is too wide"
"$bulbwright" suggest "$root/examples/steps.json" --window 2027-02-15..2027-04-30 \
  --not-eaten-by deer --no-storage --format json >deer.json || fail "file: exit $?"
"$bulbwright" suggest "${pot[@]}" --safe-for pets --format json >pets.json
[ $? -eq 1 ] || fail "nothing to suggest is not told by exit 1"
"$bulbwright" suggest --top "40 cm" --height "36 cm" --site Christchurch --season 2026 \
  --with tulip-triumph --best 2 --format json >south.json || fail "south: exit $?"
for file in pots/stack-*.json; do
  "$bulbwright" plan "$file" --format json >"plan-$(basename "$file")" || fail "plan $file: exit $?"
done

/usr/bin/python3 - "$root" <<'PYTHON' || faults=1
import glob, json, sys
from jsonschema import Draft202012Validator
root = sys.argv[1]
schema = json.load(open(f"{root}/docs/schema/suggest.schema.json"))
pot_schema = json.load(open(f"{root}/docs/schema/pot.schema.json"))
Draft202012Validator.check_schema(schema)
bad = []
for name in ("all", "deer", "pets", "south"):
    document = json.load(open(f"{name}.json"))
    bad += [f"{name}: {e.json_path}: {e.message[:200]}" for e in Draft202012Validator(schema).iter_errors(document)]
    for found in document["suggestions"]:
        bad += [f"{name}: pot: {e.message[:200]}" for e in Draft202012Validator(pot_schema).iter_errors(found["pot"])]
found = json.load(open("all.json"))["suggestions"]
files = sorted(glob.glob("pots/stack-*.json"))
if len(files) != len(found) or len(found) < 6:
    bad.append(f"{len(files)} files for {len(found)} suggestions")
for i, suggestion in enumerate(found):
    if json.load(open(f"pots/stack-{i + 1}.json")) != suggestion["pot"]:
        bad.append(f"file {i + 1} is not the pot of the suggestion")
    plan = json.load(open(f"plan-stack-{i + 1}.json"))
    for wave, layer in zip(plan["waves"], suggestion["layers"], strict=True):
        for key in ("taxon", "first", "peak", "last"):
            if wave[key] != layer[key]:
                bad.append(f"suggestion {i + 1}: {key} {layer[key]}, planned {wave[key]}")
    if [layer["count"] for layer in plan["layers"]] != [layer["count"] for layer in suggestion["layers"]]:
        bad.append(f"suggestion {i + 1}: counts differ from its plan's")
deer = json.load(open("deer.json"))
if not deer["suggestions"] or any(s["storage_weeks"] for s in deer["suggestions"]):
    bad.append("no refrigerator: stored all the same")
if any("eaten by deer" in out["reason"] and out["taxon"].startswith("narcissus") for out in deer["left_out"]):
    bad.append("daffodils left out for deer")
south = json.load(open("south.json"))
if any(not "2026-03-15" <= s["plant"] <= "2026-09-30" for s in south["suggestions"]):
    bad.append("planted out of season in the south")
if any("tulip-triumph" not in [l["taxon"] for l in s["layers"]] for s in south["suggestions"]):
    bad.append("a stack without the kind asked for")
print("\n".join(bad))
sys.exit(1 if bad else 0)
PYTHON

refused() { # TEXT ARGUMENTS...: exit 2, TEXT in the message, nothing on standard output
  local text=$1 status
  shift
  "$bulbwright" suggest "$@" >out 2>err </dev/null
  status=$?
  [ "$status" -eq 2 ] || fail "exit $status: $*"
  [ ! -s out ] || fail "standard output is not empty: $*"
  grep -qF -- "$text" err || fail "no '$text' in: $(cat err)"
}
refused "--safe-for: \"dragons\"" "${pot[@]}" --safe-for dragons
refused "--not-eaten-by: \"dear\"" "${pot[@]}" --not-eaten-by dear
refused "did you mean \"deer\"" "${pot[@]}" --not-eaten-by dear
refused "--with: unknown taxon \"tulip-trumph\"; did you mean \"tulip-triumph\"" "${pot[@]}" --with tulip-trumph
refused "--layers" "${pot[@]}" --layers 5
refused "--best" "${pot[@]}" --best 0
refused "is asked for by --with too" "${pot[@]}" --with muscari --without muscari
refused "2 kinds do not fit in 1 layer" "${pot[@]}" --layers 1 --with muscari --with hyacinth
refused "--top: missing" --zone 9b --season 2026
refused "--zone: missing" --top "38 cm" --season 2026
refused "season" --top "38 cm" --zone 9b
refused "--window" --top "38 cm" --zone 9b --window soon
refused "two seasons" --top "38 cm" --zone 9b --window 2027-04-01..2027-08-01
# Pot files that differ are kept, all of them.
echo mine >pots/stack-2.json && rm pots/stack-1.json
"$bulbwright" suggest "${pot[@]}" --write pots >/dev/null 2>err
[ $? -eq 3 ] || fail "a pot file is overwritten"
[ "$(cat pots/stack-2.json)" = mine ] && [ ! -e pots/stack-1.json ] || fail "some files were written although one could not be"
"$bulbwright" suggest "${pot[@]}" --write pots --force >/dev/null || fail "--force: exit $?"
[ -s pots/stack-1.json ] || fail "--force: nothing written"
exit "$faults"

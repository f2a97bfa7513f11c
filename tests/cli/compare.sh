#!/usr/bin/env bash
# `plan --compare`, several files, `--out-dir`, days without a year, `--season` over a file's own days.
# Arguments: the program, the source folder.
. "$(dirname "$0")/work_folder.bash"
cp "$source/examples/steps.json" "$source/examples/porch-wall.json" .

"$program" plan steps.json --compare 2026-12-25,2027-01-25 >table.txt 2>err.txt || fail "days: exit $?"
[ -s err.txt ] && fail "days: $(cat err.txt)"
grep -q 'as asked *2026-12-25 *2027-01-25' table.txt || fail "no columns: $(head -3 table.txt)"
grep -q 'Plant *Fri 8 Jan 2027 *Fri 25 Dec 2026 *Mon 25 Jan 2027' table.txt || fail "no days: $(cat table.txt)"
for label in Bulbs Refrigerate "Least cold in" "In flower" "Days of it" "Nothing open" Filling; do
  grep -q "^$label" table.txt || fail "no row $label"
done
/usr/bin/python3 -c 'import sys; sys.exit(any(len(line) > 81 for line in open("table.txt", encoding="utf-8")))' || fail "a line is too wide"
"$program" plan steps.json --compare "site=London,zone=8a" --compare "layer=muscari; layer=crocus-large" --format json >flags.json \
  || fail "flags: exit $?"
"$program" plan steps.json porch-wall.json --format json >files.json || fail "files: exit $?"
"$program" plan steps.json porch-wall.json | grep -q 'south steps *porch wall' || fail "files: no columns"
"$program" plan --top "380 mm" --height "360 mm" --season 2026 --layer muscari --compare site=London,site=Oslo >places.txt \
  || fail "a pot that is whole only with a variant: exit $?"
grep -q 'as asked' places.txt && fail "half a pot has a column"
/usr/bin/python3 - "$source/docs/schema" <<'PY' || fail "documents"
import json, subprocess, sys
from jsonschema import Draft202012Validator
schema = json.load(open(sys.argv[1] + "/compare.schema.json"))
Draft202012Validator.check_schema(schema)
plans = Draft202012Validator(json.load(open(sys.argv[1] + "/plan.schema.json")))
for name, labels in (("flags.json", ["as asked", "site=London", "zone=8a", "layer=muscari; layer=crocus-large"]),
                     ("files.json", ["south steps", "porch wall"])):
    document = json.load(open(name))
    Draft202012Validator(schema).validate(document)
    assert [plan["label"] for plan in document["plans"]] == labels, document["plans"]
    for plan in document["plans"]:
        plans.validate(plan["plan"])
flags = json.load(open("flags.json"))["plans"]
assert flags[2]["plan"]["request"]["place"]["zone"] == "8a"
assert [layer["bulbs"][0]["taxon"] for layer in flags[3]["plan"]["layers"]] == ["muscari", "crocus-large"]
PY

mkdir pots && cp steps.json porch-wall.json pots
"$program" plan pots --out-dir sheets >out.txt 2>err.txt || fail "--out-dir: exit $?"
[ -s out.txt ] && fail "--out-dir: something on standard output"
for pot in steps porch-wall; do
  "$program" plan $pot.json | cmp -s - sheets/$pot.txt || fail "--out-dir: $pot is another sheet"
done
sed 's/360 mm/120 mm/' steps.json >shallow.json
"$program" plan steps.json shallow.json --out-dir sheets --format json 2>err.txt; [ $? -eq 1 ] || fail "a pot that cannot be: exit 1 expected"
grep -q '"shallow.json" cannot be planted as asked' err.txt || fail "not named: $(cat err.txt)"
"$program" plan shallow.json --format json | cmp -s - sheets/shallow.json || fail "its sheet says why"

"$program" plan steps.json --season 2027 --format json >next.json 2>err.txt || fail "--season: exit $?"
grep -q 'plant: 2027-01-08 is taken as 2028-01-08' err.txt || fail "--season: $(cat err.txt)"
grep -q '"plant": "2028-01-08"' next.json || fail "--season moves no day"
"$program" shop steps.json --season 2027 >out.txt 2>err.txt || fail "shop --season: exit $?"
sed 's/"2027-01-08"/"01-08"/' steps.json >yearly.json
"$program" plan yearly.json --season 2027 --format json 2>err.txt | cmp -s - <(sed 's/"01-08"/"2028-01-08"/' next.json) || fail "01-08 is 8 January of the season"
[ -s err.txt ] && fail "a day without a year is told: $(cat err.txt)"
sed '/"season"/d' yearly.json >no-season.json

expect() { # TEXT ARGUMENTS...: exit 2, nothing printed, TEXT told
  local text=$1; shift
  "$program" plan "$@" >out.txt 2>err.txt; [ $? -eq 2 ] || fail "$*: exit 2 expected"
  [ -s out.txt ] && fail "$*: something on standard output"
  grep -qF -- "$text" err.txt || fail "$*: no '$text' in $(cat err.txt)"
}
expect 'says no year' no-season.json
expect 'did you mean "site"' steps.json --compare sitte=London
expect 'goes with one pot file' steps.json porch-wall.json --compare 2026-12-25
expect '--out-dir' --out-dir sheets
expect 'goes with one pot' steps.json --compare 2026-12-25 --save x.json
expect '--plant: "13-08"' steps.json --plant 13-08

[ $failures -eq 0 ]

#!/usr/bin/env bash
# `bulbwright bulbs`: list, one taxon, JSON by its schema, CSV and back, faults.
# Arguments: the program, the source folder.
. "$(dirname "$0")/work_folder.bash"

"$program" bulbs >list.txt 2>err.txt || fail "list: exit $?"
[ -s err.txt ] && fail "list: something on standard error"
[ "$(grep -c '^[a-z0-9-]* .* mm .*wk$' list.txt)" -eq 60 ] || fail "list: 60 taxa expected"
"$program" bulbs tulip-triumph >one.txt || fail "one: exit $?"
grep -q 'Triumph tulip (tulip-triumph), genus Tulipa' one.txt || fail "one: heading"
grep -q 'planting depth in a pot *180 mm (100 to 250) *common practice \[' one.txt || fail "one: depth"
grep -q '^\[1\]' one.txt || fail "one: sources"
"$program" bulbs tulip-triumph --units in | grep -q '7 1/8 in (3 7/8 to 9 7/8)' || fail "one: inches"
for width in 40 60 99; do
  "$program" bulbs tulip-triumph muscari --width $width >w.txt || fail "width $width: exit $?"
  awk -v w=$width '{ gsub(/[\200-\277]/, ""); if (length($0) > (w < 72 ? 72 : w)) exit 1 }' w.txt \
    || fail "width $width: a line is too wide"
done
LC_ALL=C "$program" bulbs tulip-triumph | LC_ALL=C grep -q '[^ -~]' && fail "not ASCII outside UTF-8"

"$program" bulbs --format json >all.json || fail "json: exit $?"
"$program" bulbs muscari --format json >one.json || fail "json of one: exit $?"
"$program" bulbs --format csv >all.csv || fail "csv: exit $?"
/usr/bin/python3 - "$source" <<'PY' || fail "documents"
import csv, json, sys
from jsonschema import Draft202012Validator
schema = json.load(open(sys.argv[1] + "/docs/schema/bulbs.schema.json"))
Draft202012Validator.check_schema(schema)
every, one = json.load(open("all.json")), json.load(open("one.json"))
for document in (every, one):
    Draft202012Validator(schema).validate(document)
assert [t["taxon"] for t in one["taxa"]] == ["muscari"]
# The schema can fail: a published figure without a source is not one.
bad = json.loads(json.dumps(one))
bad["taxa"][0]["figures"][0] = {"quantity": "height", "value": 1, "unit": "cm", "origin": "published"}
assert not Draft202012Validator(schema).is_valid(bad)
# Every row of the data file is told, with the same numbers.
data = list(csv.DictReader(open(sys.argv[1] + "/data/taxa.csv", encoding="utf-8", newline="")))
told = {(t["taxon"], f["quantity"]): f for t in every["taxa"] for f in t["figures"]}
assert len(data) == len(told)
for row in data:
    figure = told[row["taxon"], row["quantity"]]
    if row["unit"]:
        assert figure["value"] == float(row["value"]), row
        assert ("low" in figure) == bool(row["low"]) and figure.get("low", 0) == float(row["low"] or 0)
    else:
        assert figure["value"] == row["value"], row
    assert figure["origin"] == row["origin"] and figure.get("source", "") == row["source"]
# CSV: CRLF, the same rows.
raw = open("all.csv", "rb").read()
assert raw.count(b"\r\n") == raw.count(b"\n") and raw.endswith(b"\r\n")
assert list(csv.DictReader(open("all.csv", encoding="utf-8", newline=""))) == data
PY

# A part of the CSV, edited, comes back through --data.
mkdir mine
{ head -1 all.csv; grep '^muscari,depth_to_base,' all.csv | sed 's/,100,50,150,/,70,50,150,/'; } >mine/taxa.csv
"$program" bulbs muscari --data mine | grep -q 'planting depth in a pot *70 mm (50 to 150)' || fail "--data"
printf 'taxon,quantity,value,low,high,unit,origin,source\nmuscari,height,40,50,60,cm,from memory,\n' >mine/taxa.csv
"$program" bulbs --data mine >out.txt 2>err.txt; [ $? -eq 2 ] || fail "--data with a fault: exit 2 expected"
[ -s out.txt ] && fail "--data with a fault: something on standard output"
grep -q '^mine/taxa.csv:2:19: error: muscari: height: low is 50, above the value 40$' err.txt || fail "--data: message: $(cat err.txt)"

"$program" bulbs tulip-triumhp >out.txt 2>err.txt; [ $? -eq 2 ] || fail "unknown: exit 2 expected"
[ -s out.txt ] && fail "unknown: something on standard output"
grep -q 'unknown taxon "tulip-triumhp"; did you mean "tulip-triumph"?' err.txt || fail "unknown: message"
"$program" bulbs --data /no/such/folder >out.txt 2>err.txt; [ $? -eq 2 ] || fail "no folder: exit 2 expected"

# Words and wishes: names of growers, several kinds as a list, flags that pick.
ids() { "$program" bulbs "$@" --format csv | tail -n +2 | cut -d, -f1 | sort -u | tr '\n' ' '; }
same() { [ "$1" = "$2" ] || fail "$3: $1, not $2"; }
same "$(ids grape hyacinth)" "muscari " "two words of one name"
same "$(ids 'Grape hyacinths' snowdrop)" "galanthus muscari " "two names"
same "$(ids crocus)" "crocus-large crocus-species crocus-tommasinianus " "a genus"
same "$(ids narcissus-tazetta narcissus-tazetta-tender)" "narcissus-tazetta narcissus-tazetta-tender " "ids are not joined"
"$program" bulbs paperwhite | grep -q "^Paperwhite .*(narcissus-tazetta-tender)" || fail "one name is told in full"
"$program" bulbs crocus | head -1 | grep -q "^id  *name" || fail "several kinds are listed"
"$program" bulbs --cold none --eaten-by -deer --height "..30 cm" >picked.txt || fail "wishes: exit $?"
grep -q "^ipheion " picked.txt || fail "wishes: a spring starflower is missing"
grep -q "^tulip-\|^freesia \|^narcissus-jonquilla .*deer" picked.txt && fail "wishes: $(cat picked.txt)"
same "$(ids --height '10..15 cm')" "$(ids --height '10 cm..15 cm')" "one unit for both ends"
"$program" bulbs --height "..1 cm" >out.txt 2>err.txt; [ $? -eq 1 ] || fail "no kind: exit 1 expected"
grep -q "no kind" err.txt || fail "no kind: $(cat err.txt)"
for wrong in "--height 30" "--height ..30" "--cold warm" "--eaten-by bear" "--eaten-by -bear"; do
  # shellcheck disable=SC2086 # an option and its value
  "$program" bulbs $wrong >out.txt 2>err.txt; [ $? -eq 2 ] || fail "$wrong: exit 2 expected"
  [ -s out.txt ] && fail "$wrong: something on standard output"
done
"$program" bulbs tulip --eaten-by vole,-squirrel --format json >none.json 2>err.txt
/usr/bin/python3 - "$source" none.json <<'PY' || fail "request"
import json, sys
from jsonschema import Draft202012Validator
document = json.load(open(sys.argv[2]))
Draft202012Validator(json.load(open(sys.argv[1] + "/docs/schema/bulbs.schema.json"))).validate(document)
assert document["request"] == {"ids": ["tulip"], "eaten_by": "vole,-squirrel"}, document["request"]
PY

[ $failures -eq 0 ]

#!/usr/bin/env bash
# `bulbwright shop`: one list over several pots, as text, JSON by its schema and CSV; faults.
# Arguments: the program, the source folder.
. "$(dirname "$0")/work_folder.bash"

cat >steps.json <<'POT'
{ "pot": { "name": "south steps", "top": "380 mm", "base": "290 mm", "height": "360 mm" },
  "place": { "zone": "9b" }, "season": 2026, "plant": "2027-01-08", "pests": ["squirrel"],
  "layers": [ { "taxon": "tulip-triumph", "grade": "12" }, { "taxon": "narcissus-large-cupped" },
              { "taxon": "crocus-large" } ] }
POT
cat >door.json <<'POT'
{ "pot": { "name": "=cmd|' /C calc'!A0", "top": "300 mm", "base": "230 mm", "height": "300 mm" },
  "place": { "zone": "9b" }, "season": 2026, "plant": "2027-01-08",
  "layers": [ { "taxon": "tulip-triumph", "grade": "12", "label": "=1+1" },
              { "taxon": "crocus-large", "count": 20, "own": true } ] }
POT
cat >bowl.json <<'POT'
{ "pot": { "name": "bowl", "top": "300 mm", "base": "250 mm", "height": "120 mm" },
  "place": { "zone": "9b" }, "season": 2026, "plant": "2027-01-08",
  "layers": [ { "taxon": "tulip-triumph" }, { "taxon": "narcissus-large-cupped" } ] }
POT

"$program" shop steps.json door.json >list.txt 2>err.txt || fail "text: exit $?"
[ -s err.txt ] && fail "text: something on standard error: $(cat err.txt)"
grep -q '^Shopping list for 2 pots$' list.txt || fail "text: heading"
grep -q '^ *[0-9]* south steps, bottom layer$' list.txt || fail "text: pot and layer"
grep -q '^ *20 =cmd.*, top layer (your own)$' list.txt || fail "text: own bulbs"
awk '{ if (length($0) > 80) exit 1 }' list.txt || fail "text: a line is too wide"
"$program" shop steps.json door.json --format json >list.json || fail "json: exit $?"
"$program" shop steps.json door.json --format csv >list.csv || fail "csv: exit $?"
"$program" shop door.json steps.json --format csv | cmp -s - list.csv || fail "csv: depends on the order of the pots"
for pot in steps door; do
  "$program" plan $pot.json --format json >$pot-plan.json || fail "plan $pot: exit $?"
done
"$program" shop steps.json bowl.json --format json >partly.json 2>err.txt
[ $? -eq 1 ] || fail "a pot that cannot be: exit 1 expected"
grep -q 'nothing listed for "bowl.json"' err.txt || fail "a pot that cannot be: remark"

/usr/bin/python3 - "$source" <<'PY' || fail "documents"
import csv, json, sys
from jsonschema import Draft202012Validator
schema = json.load(open(sys.argv[1] + "/docs/schema/shop.schema.json"))
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)
both, partly = json.load(open("list.json")), json.load(open("partly.json"))
for document in (both, partly):
    validator.validate(document)
bad = json.loads(json.dumps(both))
del bad["items"][0]["loss_rate"]
assert not validator.is_valid(bad), "the schema cannot fail"

# The list adds up what the plans set.
counts = {}
for pot in ("steps", "door"):
    for layer in json.load(open(pot + "-plan.json"))["layers"]:
        for bulbs in layer["bulbs"]:
            counts[bulbs["taxon"]] = counts.get(bulbs["taxon"], 0) + bulbs["count"]
listed = {}
for item in both["items"]:
    if item["kind"] != "bulb":
        assert item["buy"] >= item["need"], item
        continue
    listed[item["item"]] = listed.get(item["item"], 0) + item["need"]
    lacking = item["need"] - item["own"]
    assert item["spares"] == -(-lacking // 10), item
    assert item["buy"] == lacking + item["spares"], item
    assert sum(s["need"] for s in item["shares"]) == item["need"], item
    assert item["loss_origin"] == "flat rate" and item["loss_rate"] == 0.1
for item in both["items"]:
    if item["packs"]:
        assert sum(p["size"] * p["count"] for p in item["packs"]) >= item["buy"], item
assert listed == counts, (listed, counts)
assert [p["ok"] for p in partly["pots"]] == [True, False]
assert partly["pots"][1]["reason"]
assert all(s["pot_number"] == 1 for i in partly["items"] for s in i["shares"])
for pot in partly["pots"]:
    amounts = [pot[key] for key in ("mix_loose_litres", "perlite_litres", "mesh_mm", "pins", "labels")]
    assert any(amounts) == pot["ok"], "a pot that cannot be planted takes something"
for item in both["items"]:
    for share in item["shares"]:
        assert both["pots"][share["pot_number"] - 1]["number"] == share["pot_number"]
    if item["kind"] == "bulb":
        assert sum(s["own"] for s in item["shares"]) == item["own"], item
assert len(both["request"]) == len(both["pots"])

raw = open("list.csv", "rb").read()
assert raw.startswith(b"taxon,name,grade_cm,label,pot,layer,need,own,spares,buy,pack,packs,price,kind,unit\r\n")
assert raw.count(b"\r\n") == raw.count(b"\n")
rows = list(csv.DictReader(open("list.csv", encoding="utf-8", newline="")))
items = iter(both["items"])
for row in rows:
    assert not any(cell.startswith(("=", "+", "-", "@")) for cell in row.values()), row
    if row["need"]:  # the first row of an item; further sizes of pack follow
        item, covered = next(items), 0
        assert (row["taxon"] or row["name"]) == item["item"] and row["kind"] == item["kind"]
        assert float(row["need"]) == item["need"] and int(row["buy"]) == item["buy"]
        assert int(row["own"]) == item.get("own", 0) and int(row["spares"]) == item["spares"]
        assert row["label"].lstrip("'") == item.get("label", ""), row
        pots = {share["pot_number"] for share in item["shares"]}
        assert bool(row["pot"]) == (len(pots) == 1), row
    else:
        assert row["own"] == row["spares"] == row["buy"] == "", row
    if row["pack"]:
        pack = {"size": int(row["pack"]), "count": int(row["packs"])}
        assert pack in item["packs"], row
assert next(items, None) is None
assert len(rows) == sum(max(1, len(item["packs"])) for item in both["items"])
PY

"$program" shop >out.txt 2>err.txt; [ $? -eq 2 ] || fail "no file: exit 2 expected"
grep -q 'shop: no pot file' err.txt || fail "no file: message"
echo '{ "pot": { "top": "300" } }' >bad.json
sed 's/crocus-large/crocus-lagre/' door.json >typo.json
"$program" shop bad.json steps.json typo.json missing.json >out.txt 2>err.txt; [ $? -eq 2 ] || fail "faults: exit 2 expected"
[ -s out.txt ] && fail "faults: something on standard output"
grep -q '^bad.json:1:' err.txt || fail "faults: bad.json is not named"
grep -q '^typo.json:4:.*crocus-lagre.*did you mean "crocus-large"' err.txt || fail "faults: typo.json is not named: $(cat err.txt)"
grep -q "missing.json" err.txt || fail "faults: missing.json is not named"
"$program" shop steps.json --out steps.json >out.txt 2>err.txt && fail "an input was overwritten"

[ $failures -eq 0 ]

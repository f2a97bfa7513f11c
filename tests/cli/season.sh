#!/usr/bin/env bash
# `bulbwright season`: files and folders, all forms, the JSON by its schema and against `plan` and `shop`,
# a drawer too small, pots that fail, faults.
# Arguments: the program, the source folder.
. "$(dirname "$0")/work_folder.bash"

mkdir pots
cat >pots/steps.json <<'POT'
{ "pot": { "name": "south steps", "group": "south side", "top": "380 mm", "height": "360 mm" },
  "place": { "zone": "9b" }, "season": 2026, "plant": "2027-01-02", "pests": ["squirrel"],
  "layers": [ { "taxon": "tulip-triumph" }, { "taxon": "narcissus-large-cupped" }, { "taxon": "crocus-large" } ] }
POT
cat >pots/porch.json <<'POT'
{ "pot": { "name": "=porch", "group": "south side", "top": "300 mm", "height": "300 mm" },
  "place": { "zone": "9b" }, "season": 2026, "plant": "2027-01-02",
  "layers": [ { "taxon": "tulip-single-late" }, { "taxon": "muscari" } ] }
POT
sed 's/=porch/twin/; s/south side/gate/' pots/porch.json >pots/twin.json
echo '{ "note": "no pot: not JSON of that name" }' >pots/readme.txt

"$program" season pots >by-folder.txt 2>err.txt || fail "folder: exit $?"
[ -s err.txt ] && fail "folder: something on standard error: $(cat err.txt)"
"$program" season pots/porch.json pots/steps.json pots/twin.json | cmp -s - by-folder.txt || fail "a folder is its files by name"
grep -q '^3 pots, spring 2027: ' by-folder.txt || fail "heading"
grep -q 'Sat 2 Jan *Fill, plant and water in all 3 pots' by-folder.txt || fail "the pots of one day stand together: $(cat by-folder.txt)"
/usr/bin/python3 -c 'import sys; sys.exit(any(len(line) > 81 for line in open("by-folder.txt", encoding="utf-8")))' || fail "a line is too wide"
LC_ALL=C "$program" season pots --units in --by week >ascii.txt || fail "ascii: exit $?"
LC_ALL=C grep -q '[^ -~]' ascii.txt && fail "ascii: $(LC_ALL=C grep -n '[^ -~]' ascii.txt | head -3)"
grep -q '^28 Dec *Sat 2 Jan: Fill' ascii.txt || fail "by week: $(cat ascii.txt)"
for form in json jsonl csv; do
  "$program" season pots --drawer "2 l" --hours 1 --format $form >season.$form || fail "$form: exit $?"
done
for pot in porch steps twin; do "$program" plan pots/$pot.json --format json >$pot.plan; done
"$program" shop pots/*.json --format json >shop.json
"$program" season pots --drawer "2 l" >small.txt || fail "small drawer: exit $?"
grep -q '^Too full ' small.txt || fail "overflow is not named"
grep -Eq 'Least change that makes it fit|together these do|Not even all' small.txt || fail "no advice"
"$program" season pots --drawer "500 l" | grep -q '^All of it fits.$' || fail "large drawer"

mkdir bad && cp pots/*.json bad
echo '{ "pot": { "top": "300" } }' >bad/a-typo.json
sed 's/360 mm/120 mm/; s/south steps/shallow/' pots/steps.json >bad/shallow.json
"$program" season bad --format json >partly.json 2>err.txt; [ $? -eq 1 ] || fail "pots that fail: exit 1 expected"
grep -q '^bad/a-typo.json:1:.*pot.top' err.txt || fail "fault of a file: $(cat err.txt)"
grep -q '"bad/shallow.json" cannot be planted as asked' err.txt || fail "no plan: $(cat err.txt)"
"$program" season bad >partly.txt 2>/dev/null
grep -q '^Left out: a-typo. ' partly.txt && grep -q '^Left out: shallow. ' partly.txt || fail "not named: $(head -12 partly.txt)"

/usr/bin/python3 -B - "$source" <<'PY' || fail "documents"
import csv, json, sys
from datetime import date, timedelta
from jsonschema import Draft202012Validator
sys.path.insert(0, sys.argv[1] + "/tests/cli")
from undocumented import undocumented
folder = sys.argv[1] + "/docs/schema/"
schema = json.load(open(folder + "season.schema.json"))
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)
plan_validator = Draft202012Validator(json.load(open(folder + "plan.schema.json")))
season, partly = json.load(open("season.json")), json.load(open("partly.json"))
for document in (season, partly):
    validator.validate(document)
    for pot in document["pots"]:
        if "plan" in pot:
            plan_validator.validate(pot["plan"])
bad = json.loads(json.dumps(season))
del bad["storage"]["weeks"][0]["litres"]
assert not validator.is_valid(bad), "the schema cannot fail"

for document in (season, partly):
    found = sorted(set(undocumented(schema, document)))
    assert not found, found

# Plans are those of `plan`, the list is that of `shop`.
plans = {name: json.load(open(name + ".plan")) for name in ("porch", "steps", "twin")}
assert [pot["plan"] for pot in season["pots"]] == [plans[n] for n in ("porch", "steps", "twin")]
assert season["shopping"] == json.load(open("shop.json"))["items"]
jobs = [(d["date"], d["what"]) for plan in plans.values() for d in plan["dates"]]
assert sorted((j["date"], j["what"]) for j in season["calendar"]) == sorted(jobs)
assert [j["date"] for j in season["calendar"]] == sorted(j["date"] for j in season["calendar"])

# Bags add up to the weeks and to what is beyond the drawer.
def day(text):
    return date.fromisoformat(text)
bags = season["storage"]["bags"]
assert bags and season["storage"]["capacity_l"] == 2
def held(at):
    return sum(bag["litres"] for bag in bags if day(bag["in"]) <= at < day(bag["out"]) and not bag["potted"])
for week in season["storage"]["weeks"]:
    assert day(week["start"]).weekday() == 0
    most = max(held(day(week["start"]) + timedelta(n)) for n in range(7))
    assert abs(most - week["litres"]) < 0.06 * len(bags), (week, most)
over = season["storage"]["overflow"]
assert over and all(o["litres"] > 0 for o in over)
assert held(day(over[0]["from"])) > 1.7 and held(day(over[0]["from"]) - timedelta(1)) < 2.3
assert season["storage"]["least_changes"] or season["storage"]["changes_together"]
assert {g["group"] for g in season["groups"]} == {"south side", "gate"}
open_days = set()
for plan in plans.values():
    for wave in plan["waves"]:
        first = day(wave["first"])
        open_days |= {first + timedelta(n) for n in range((day(wave["last"]) - first).days + 1)}
assert season["display"]["days_in_flower"] == len(open_days)
assert sum(week["days"] for week in season["display"]["weeks"]) == len(open_days)
filled = season["filling"]
assert sum(len(d["pots"]) for d in filled["days"]) == 3 and filled["hours_a_day"] == 1
assert all(d["hours"] <= 1 or len(d["pots"]) == 1 for d in filled["days"])
assert season["ok"] and not partly["ok"]
by_name = {pot["name"]: pot for pot in partly["pots"]}
assert "plan" not in by_name["a-typo"] and "no unit" in by_name["a-typo"]["error"]
assert by_name["shallow"]["plan"]["ok"] is False and by_name["shallow"]["error"]

lines = [json.loads(line) for line in open("season.jsonl")]
assert lines[0]["record"] == "season" and lines[0]["storage"] == season["storage"]
pots = [{k: v for k, v in line.items() if k != "record"} for line in lines if line["record"] == "pot"]
assert pots == season["pots"]
assert [{k: v for k, v in l.items() if k != "record"} for l in lines if l["record"] == "job"] == season["calendar"]

raw = open("season.csv", "rb").read()
assert raw.count(b"\r\n") == raw.count(b"\n")
rows = list(csv.DictReader(open("season.csv", encoding="utf-8", newline="")))
assert [(r["date"], r["what"]) for r in rows] == [(j["date"], j["what"]) for j in season["calendar"]]
assert not any(cell.startswith(("=", "+", "-", "@")) for row in rows for cell in row.values())
assert sum(int(r["bulbs"]) for r in rows if r["what"] == "storage-start") == sum(b["bulbs"] for b in bags)
PY

expect() { # TEXT ARGUMENTS...: exit 2, nothing printed, TEXT told
  local text=$1; shift
  "$program" season "$@" >out.txt 2>err.txt; [ $? -eq 2 ] || fail "$*: exit 2 expected"
  [ -s out.txt ] && fail "$*: something on standard output"
  grep -qF -- "$text" err.txt || fail "$*: no '$text' in $(cat err.txt)"
}
mkdir empty
expect 'season: no pot file'
expect 'cannot read "none.json"' pots/steps.json none.json
expect 'holds no pot file' empty
expect 'did you mean "12 l"' pots --drawer 12
expect '--drawer:' pots --drawer "0 l"
expect '--hours:' pots --hours 25
expect '--zone:' pots --zone 99z
expect 'pot.top' bad/a-typo.json

[ $failures -eq 0 ]

#!/usr/bin/env bash
# docs/schema/pot.schema.json against the examples, against wrong files and against the reader's own
# list of keys. Judge: the JSON Schema implementation python3-jsonschema.
set -euo pipefail
source_root=$2
[ -x /usr/bin/python3 ] && /usr/bin/python3 -c 'import jsonschema' 2>/dev/null || {
  echo "python3-jsonschema is not installed"; exit 1; }
/usr/bin/python3 - "$source_root" <<'PYTHON'
import glob, json, re, sys
import jsonschema

root = sys.argv[1]
schema = json.load(open(f"{root}/docs/schema/pot.schema.json", encoding="utf-8"))
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)

def without_comments(text):
    """Texts are kept whole, // and /* */ comments outside them become blanks."""
    return re.sub(r'("(?:\\.|[^"\\])*")|//[^\n]*|/\*.*?\*/',
                  lambda m: m.group(1) or " ", text, flags=re.S)

failures = []
examples = sorted(glob.glob(f"{root}/examples/*.json"))
if not examples:
    failures.append("no examples found")
for name in examples:
    pot = json.loads(without_comments(open(name, encoding="utf-8").read()))
    failures += [f"{name}: {error.message}" for error in validator.iter_errors(pot)]

def good():
    return {"pot": {"top": "380 mm"}, "place": {"zone": "9b"},
            "layers": [{"taxon": "tulip-triumph"}]}
if not validator.is_valid(good()):
    failures.append("the least good file is refused")

# Wrong at one place each; the reader refuses every one of them too (bad_pot_file_test).
wrong = {
    "unknown key": lambda f: f["pot"].update(headspase="20 mm"),
    "bare number": lambda f: f["pot"].update(top=15),
    "no unit": lambda f: f["pot"].update(top="15"),
    "negative": lambda f: f["pot"].update(top="-380 mm"),
    "shape": lambda f: f["pot"].update(shape="rund"),
    "material": lambda f: f["pot"].update(material="papier"),
    "profile beside top": lambda f: f["pot"].update(
        profile=[{"height": "0 mm", "width": "1 m"}, {"height": "1 m", "width": "1 m"}]),
    "zone number": lambda f: f["place"].update(zone=9),
    "zone half": lambda f: f["place"].update(zone="9"),
    "zone 14a": lambda f: f["place"].update(zone="14a"),
    "two kinds of place": lambda f: f["place"].update(site="X"),
    "no kind of place": lambda f: f.update(place={}),
    "records and two kinds": lambda f: f.update(place={"records": "a.csv", "site": "X", "zone": "9b"}),
    "date form": lambda f: f.update(plant="8 Jan 2027"),
    "plant and flower": lambda f: f.update(plant="2027-01-08", flower="2027-03-20"),
    "order": lambda f: f.update(order="by-height"),
    "spread": lambda f: f.update(spread="yes"),
    "spread and flower": lambda f: f.update(spread=True, flower="2027-03-20"),
    "season": lambda f: f.update(season=1899),
    "empty layers": lambda f: f.update(layers=[]),
    "count 0": lambda f: f["layers"][0].update(count=0),
    "count 1001": lambda f: f["layers"][0].update(count=1001),
    "count 2.5": lambda f: f["layers"][0].update(count=2.5),
    "one kind in a mix": lambda f: f.update(layers=[{"mix": [{"taxon": "a", "share": 1}]}]),
    "share missing": lambda f: f.update(
        layers=[{"mix": [{"taxon": "a", "share": 1}, {"taxon": "b"}]}]),
    "share negative": lambda f: f.update(
        layers=[{"mix": [{"taxon": "a", "share": 1}, {"taxon": "b", "share": -1}]}]),
    "taxon and mix": lambda f: f["layers"][0].update(
        mix=[{"taxon": "a", "share": 1}, {"taxon": "b", "share": 1}]),
    "weeks beside mix": lambda f: f.update(layers=[{"storage_weeks": 6,
        "mix": [{"taxon": "a", "share": 1}, {"taxon": "b", "share": 1}]}]),
    "grade number": lambda f: f["layers"][0].update(grade=12),
    "pest": lambda f: f.update(pests=["lion"]),
    "storage": lambda f: f.update(storage={"temperature": "5"}),
}
for what, change in wrong.items():
    pot = good()
    change(pot)
    if validator.is_valid(pot):
        failures.append(f"accepted: {what}")

# The keys of the schema are the keys of the reader, and the page names each of them.
header = open(f"{root}/src/input/pot_file_keys.hpp", encoding="utf-8").read()
def keys(name):
    block = re.search(rf"\b{name}\{{(.*?)\}};", header, re.S).group(1)
    return set(re.findall(r'Words\{"([^"]+)"\}', block))
def properties(*path):
    node = schema
    for step in path:
        node = node["properties"][step]
        node = node.get("items", node)
    return set(node["properties"])
for name, path in {"file_keys": (), "pot_keys": ("pot",), "profile_keys": ("pot", "profile"),
                   "place_keys": ("place",), "normals_keys": ("place", "normals"),
                   "storage_keys": ("storage",), "layer_keys": ("layers",),
                   "part_keys": ("layers", "mix")}.items():
    if keys(name) != properties(*path):
        failures.append(f"{name}: reader and schema differ by {keys(name) ^ properties(*path)}")
page = open(f"{root}/docs/pot-file.md", encoding="utf-8").read()
for name in re.findall(r"std::array (\w+_keys)\{", header):
    failures += [f"docs/pot-file.md does not name {key}" for key in keys(name)
                 if not re.search(rf'[`"]{re.escape(key)}[`"]', page)]
for block in re.findall(r"```json\n(.*?)```", page, re.S):
    failures += [f"docs/pot-file.md: {error.message}"
                 for error in validator.iter_errors(json.loads(without_comments(block)))]
print("\n".join(failures) if failures else
      f"{len(examples)} examples good, {len(wrong)} wrong files refused, keys agree")
sys.exit(1 if failures else 0)
PYTHON

#!/usr/bin/env bash
# Plans that can and cannot be carried out validate against docs/schema/plan.schema.json, by an
# independent validator (python3-jsonschema), and hold no key that the schema does not document.
set -euo pipefail
bulbwright=$1
source_folder=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

plan() { # NAME EXPECTED_EXIT ARGUMENTS...
  local name=$1 expected=$2 status=0
  shift 2
  "$bulbwright" plan "$@" --format json >"$work/$name.json" || status=$?
  [ "$status" -eq "$expected" ] || { echo "$name: exit $status, expected $expected"; exit 1; }
}

three=(--layer tulip-triumph --layer narcissus-large-cupped --layer crocus-large)
plan terrace 0 --top "380 mm" --base "290 mm" --height "360 mm" --zone 9b "${three[@]}" --plant 2027-01-08
plan shallow 1 --top "380 mm" --height "120 mm" --zone 9b --season 2026 "${three[@]}"
plan trough 0 --shape rectangle --top "60 cm x 20 cm" --height "30 cm" --zone 7a --season 2026 \
  --layer "2 narcissus-jonquilla + 1 muscari" --layer "crocus-large = 20"
plan wall 0 --shape half-round --top "40 cm x 20 cm" --height "30 cm" --zone 8a --season 2026 \
  --layer tulip-triumph
plan oval 0 --shape oval --top "50 cm x 30 cm" --height "30 cm" --zone 6b --season 2026 \
  --layer narcissus-large-cupped --layer galanthus

/usr/bin/python3 - "$source_folder/docs/schema/plan.schema.json" "$work"/*.json <<'PYTHON'
import json
import sys

from jsonschema import Draft202012Validator

schema = json.load(open(sys.argv[1], encoding="utf-8"))
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)


def undocumented(value, rule, path):
    """Keys of `value` that `rule` does not name."""
    while "$ref" in rule:
        rule = schema["$defs"][rule["$ref"].rsplit("/", 1)[1]]
    for option in rule.get("oneOf", []):
        if value.get("shape") == option["properties"]["shape"]["const"]:
            rule = option
    if isinstance(value, dict):
        for key, item in value.items():
            if key not in rule.get("properties", {}):
                yield f"{path}.{key}"
            else:
                yield from undocumented(item, rule["properties"][key], f"{path}.{key}")
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from undocumented(item, rule["items"], f"{path}[{index}]")


faults = 0
for name in sys.argv[2:]:
    document = json.load(open(name, encoding="utf-8"))
    found = [f"{error.json_path}: {error.message[:200]}" for error in validator.iter_errors(document)]
    found += [f"{path}: not in the schema" for path in undocumented(document, schema, "$")]
    for fault in found[:20]:
        print(f"{name}: {fault}")
    faults += len(found)
sys.exit(1 if faults else 0)
PYTHON

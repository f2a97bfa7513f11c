#!/usr/bin/env bash
# Plans that can and cannot be carried out validate against docs/schema/plan.schema.json, by an
# independent validator (python3-jsonschema), and hold no key that the schema does not document. What
# each echoes as its request is a pot file by docs/schema/pot.schema.json and gives the same plan.
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
bowl=(--top "300 mm" --height "300 mm")
plan one_bulb 0 "${bowl[@]}" --zone 8a --season 2026 --layer "hyacinth = 1"
plan own_bulbs 0 "${bowl[@]}" --zone 8a --season 2026 --layer "hyacinth = 3, own"
plan too_many 1 "${bowl[@]}" --zone 8a --season 2026 --layer "hyacinth = 900"
plan too_wide 1 --top "40 mm" --height "300 mm" --zone 8a --season 2026 --layer hyacinth
plan tropics 0 "${bowl[@]}" --site Singapore --season 2026 --layer tulip-triumph --storage-weeks 0
plan south 0 "${bowl[@]}" --zone 9b --south --region all --season 2026 --layer narcissus-large-cupped
plan wanted 0 "${bowl[@]}" --zone 9b --flower 2027-03-20..2027-04-05 --layer tulip-triumph
plan unreachable 1 "${bowl[@]}" --zone 9b --flower 2026-10-01 --layer tulip-triumph
plan spread 0 --top "380 mm" --height "360 mm" --zone 9b --season 2026 --spread --order by-flowering "${three[@]}"
plan everything 0 --top "380 mm" --base "12 in" --height "36 cm" --thickness "10 mm" --headspace "1 in" \
  --material plastic --name "south steps" --last-crop Hyacinthus --zone 7b --exposure warm-wall --plant 2026-11-20 \
  --gap "20 mm" --wall "15 mm" --storage-temperature "41 F" --storage-method "paper bag" --pest vole --wet-winter \
  --layer tulip-triumph
{ echo date,tmin_c,tmax_c
  for day in $(seq 0 800); do date -u -d "2024-09-01 + $day days" "+%F,4,12"; done; } >"$work/terrace.csv"
plan records 0 "${bowl[@]}" --records "$work/terrace.csv" --latitude 38 --plant 2025-12-01 --layer tulip-triumph
plan running 0 "${bowl[@]}" --records "$work/terrace.csv" --zone 9b --season 2026 --layer tulip-triumph
# Every kind alone, in a pot that the deepest takes.
for kind in $("$bulbwright" bulbs --format csv | tail -n +2 | cut -d, -f1 | sort -u); do
  status=0
  "$bulbwright" plan --top "400 mm" --height "500 mm" --zone 7a --season 2026 --layer "$kind" --format json \
    >"$work/kind-$kind.json" || status=$?
  [ "$status" -le 1 ] || { echo "$kind: exit $status"; exit 1; }
done

# The echoed request gives the same document again.
for name in one_bulb trough south wanted spread everything records shallow; do
  /usr/bin/python3 -c 'import json, sys; json.dump(json.load(open(sys.argv[1]))["request"], sys.stdout)' "$work/$name.json" \
    >"$work/$name.request"
  "$bulbwright" plan "$work/$name.request" --format json >"$work/$name.again" || [ "$name" = shallow ]
  cmp "$work/$name.json" "$work/$name.again" || { echo "$name: the echoed request plans otherwise"; exit 1; }
done

/usr/bin/python3 -B - "$source_folder/docs/schema" "$work"/*.json <<'PYTHON'
import json
import sys

from jsonschema import Draft202012Validator

sys.path.insert(0, sys.argv[1] + "/../../tests/cli")
from undocumented import undocumented

schema = json.load(open(sys.argv[1] + "/plan.schema.json", encoding="utf-8"))
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)
pot_file = Draft202012Validator(json.load(open(sys.argv[1] + "/pot.schema.json", encoding="utf-8")))


faults = 0
for name in sys.argv[2:]:
    document = json.load(open(name, encoding="utf-8"))
    found = [f"{error.json_path}: {error.message[:200]}" for error in validator.iter_errors(document)]
    found += [f"request: {error.message[:200]}" for error in pot_file.iter_errors(document["request"])]
    found += [f"{path}: not in the schema" for path in undocumented(schema, document, skip={"$.request"})]
    for fault in found[:20]:
        print(f"{name}: {fault}")
    faults += len(found)
sys.exit(1 if faults else 0)
PYTHON

#!/usr/bin/env bash
# `bulbwright places` as a whole, and --data: places of one's own pass the same checks.
set -euo pipefail
bulbwright=$1
source_folder=$2
python=/usr/bin/python3
[ -x "$python" ] || python=python3
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0
fail() { echo "FAILED: $*"; failed=1; }

valid() {
  "$python" - "$1" "$source_folder/docs/schema/places.schema.json" <<'PY' || fail "$1 does not follow its schema"
import json, sys
import jsonschema
jsonschema.validate(json.load(open(sys.argv[1])), json.load(open(sys.argv[2])))
PY
}
$bulbwright places --format json > "$work/all.json"
$bulbwright places --near "37.8, -122.4" --count 3 --format json > "$work/near.json"
$bulbwright places --zone 9b --region north-american --format json > "$work/zone.json"
for name in all near zone; do valid "$work/$name.json"; done
[ "$(grep -c '"name"' "$work/all.json")" = 379 ] || fail "not all places"

$bulbwright places san francisco | grep -q "San Francisco, California" || fail "search by words"
$bulbwright places --near 51.5,-0.1 --count 1 | grep -q "London" || fail "nearest to London"
$bulbwright places --zone 9b | grep -q "spread between stations" || fail "a zone's spread"
$bulbwright places GB 8b | grep -q "zone" || fail "country and zone"

# Whose data it is.
for owner in WorldClim NOAA "CC BY-SA 4.0" "Met Office"; do
  $bulbwright --version | tr '\n' ' ' > "$work/version"
  grep -qF "$owner" "$work/version" || fail "--version does not name $owner"
done

# The zone profiles are those of data/zone_profiles.py, which reads the same file on its own.
"$python" "$source_folder/data/zone_profiles.py" > "$work/profiles.csv"
cat > "$work/profiles.py" <<'PY'
import csv, json, subprocess, sys
bad = 0
for row in csv.DictReader(open(sys.argv[2])):
    if row["region"] != "all" and row["zone"] not in ("6b", "8b", "9b", "11a"):
        continue
    command = [sys.argv[1], "places", "--format", "json", "--zone", row["zone"], "--region", row["region"]]
    if row["side"] == "south":
        command.append("--south")
    ours = json.loads(subprocess.run(command, check=True, capture_output=True).stdout)["profile"]
    same = ours["stations"] == int(row["stations"])
    for m in range(12):
        for key, stem in (("tmin_c", "tmin"), ("tmax_c", "tmax"), ("spread_k", "spread")):
            same = same and abs(ours[key][m] - float(row[f"{stem}_{m + 1:02d}"])) <= 0.0502
    if not same:
        print("differs:", row["zone"], row["side"], row["region"])
        bad += 1
sys.exit(bad > 0)
PY
"$python" "$work/profiles.py" "$bulbwright" "$work/profiles.csv" || fail "zone profiles"

# The CSV can be given back: the same places come out.
mkdir "$work/data"
$bulbwright places --format csv > "$work/data/places.csv"
$bulbwright places --data "$work/data" --format json | cmp -s - "$work/all.json" || fail "CSV round trip"

# Columns are named as the keys of the JSON, and say the same.
$bulbwright places --near "37.8, -122.4" --count 3 --format csv > "$work/near.csv"
"$python" - "$work/near.csv" "$work/near.json" <<'PY' || fail "CSV and JSON differ"
import csv, json, sys
rows = list(csv.DictReader(open(sys.argv[1], newline="")))
answer = json.load(open(sys.argv[2]))
places = [answer["profile"], *answer["places"]]
assert len(rows) == len(places) == 4
for row, place in zip(rows, places):
    for key, text in row.items():
        if key[-3] == "_" and key[-2:].isdigit():
            assert float(text) == place[key[:-3]][int(key[-2:]) - 1], key
        elif key in ("latitude", "longitude", "elevation_m"):
            assert float(text) == place[key], key
        elif key == "zone_estimated":
            assert json.loads(text) == place[key], key
        elif key == "distance_km":
            assert float(text) == place.get(key, 0.0), key
        else:
            assert text == place[key], key
    assert any(key.startswith("rain_mm_") for key in row)
PY

# A place of one's own is found, overrides one of the same name, and narrows its zone; older names of columns do.
cat > "$work/data/places.csv" <<'CSV'
tmax_01,tmax_02,tmax_03,tmax_04,tmax_05,tmax_06,tmax_07,tmax_08,tmax_09,tmax_10,tmax_11,tmax_12,tmin_01,tmin_02,tmin_03,tmin_04,tmin_05,tmin_06,tmin_07,tmin_08,tmin_09,tmin_10,tmin_11,tmin_12,site,lat,lon,source,usda_zone
12,13,14,15,16,17,18,18,18,17,14,12,5,6,7,8,9,10,11,11,11,10,7,5,"Saltmarsh Lane, library terrace",38,-123,own thermometer,9b
CSV
$bulbwright places saltmarsh --data "$work/data" | grep -q "own thermometer" || fail "own place"
$bulbwright places --zone 9b --data "$work/data" | grep -q "Saltmarsh" || fail "own place in its zone"
$bulbwright cold --site saltmarsh --data "$work/data" > /dev/null || fail "cold at an own place"

refused() {
  local want=$1
  shift
  local code=0
  "$bulbwright" places "$@" > "$work/out" 2> "$work/err" || code=$?
  [ "$code" = 2 ] || fail "exit $code instead of 2: $*"
  [ -s "$work/out" ] && fail "stdout is not empty: $*"
  grep -qF -- "$want" "$work/err" || fail "'$want' missing in: $(cat "$work/err")"
}
refused "did you mean" Seatle
refused "no position" --near 100,0
refused "no position" --near here
refused "goes with --zone" --south
refused "goes with --near" --count 3
refused "another question" Seattle --zone 9b
refused "3a" --zone 3a
sed -i 's/,5,6,7,8,9,10,/,15,6,7,8,x,10,/; s/,38,-123,/,98,-123,/; s/,9b/,9c/' "$work/data/places.csv"
refused "error: tmin_01 is 15, not below the month's maximum, 12" --data "$work/data"
for field in lat tmin_05 usda_zone; do grep -q "$field" "$work/err" || fail "$field is not told"; done
printf 'name,latitude,longitude,source\na,1,2,b\n' > "$work/data/places.csv"
refused 'no column "tmin_c_01"' --data "$work/data"

exit $failed

#!/usr/bin/env bash
# `bulbwright cold` as a whole: the documented forms, exit codes, and agreement within 0.1 % with
# tests/climate_reference.py, which shares no code with the program.
set -euo pipefail
bulbwright=$1
source_folder=$2
python=/usr/bin/python3
[ -x "$python" ] || python=python3
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0
fail() { echo "FAILED: $*"; failed=1; }

# Records from the weather files of the tests (see tests/vectors/noaa/README.md).
noaa="$source_folder/tests/vectors/noaa"
awk -F, 'NR==1 {print "tmax_c,date,tmin_c"} $1=="Seattle" {print $3","$2","$4}' "$noaa/weather.csv" > "$work/seattle.csv"
awk -F, 'NR==1 {print "tmax_c,date,tmin_c"} $1=="New York" {print $3","$2","$4}' "$noaa/weather.csv" > "$work/new-york.csv"
awk -F, 'NR==1 {print "time,temperature_c"; next} {print $1","$2}' "$noaa/seattle-weather-hourly-normals.csv" > "$work/hourly.csv"

cat > "$work/compare.py" <<'PY'
import json, subprocess, sys
bulbwright, reference, kind, file, latitude, first, last = sys.argv[1:]
ours = json.loads(subprocess.run(
    [bulbwright, "cold", "--records", file, "--latitude", latitude, "--from", first, "--to", last,
     "--format", "json"], check=True, capture_output=True).stdout)
theirs = json.loads(subprocess.run(
    [sys.executable, reference, kind, file, first, last, "--latitude", latitude,
     "--tau", str(ours["pot"]["lag_hours"])], check=True, capture_output=True).stdout)
bad = []
for key, value in theirs.items():
    got = ours["total"][key]
    # 0.1 %, or half a step of what is printed
    step = {"hours_0_7": 1, "utah_units": 0.5}.get(key, 0.01)
    if abs(got - value) > max(0.001 * abs(value), 0.51 * step):
        bad.append(f"{key}: {got} against {value}")
print(f"{file.split('/')[-1]} {first}..{last}: " + ("; ".join(bad) or "agrees"))
sys.exit(bool(bad))
PY
compare() { "$python" "$work/compare.py" "$bulbwright" "$source_folder/tests/climate_reference.py" "$@" || fail "$*"; }
compare daily "$work/seattle.csv" 47.45 2012-11-01 2013-02-28
compare daily "$work/seattle.csv" 47.45 2013-10-01 2014-03-31
compare daily "$work/seattle.csv" 47.45 2014-11-01 2015-02-28
compare daily "$work/new-york.csv" 40.7 2012-11-01 2013-02-28
compare daily "$work/new-york.csv" 40.7 2013-10-01 2014-03-31
compare daily "$work/seattle.csv" -35 2012-03-01 2012-08-31
compare hourly "$work/hourly.csv" 47.45 2010-01-02 2010-12-31
compare hourly "$work/hourly.csv" 47.45 2010-11-01 2010-12-31

# Documents follow their schema.
valid() {
  "$python" - "$1" "$source_folder/docs/schema/$2.schema.json" <<'PY' || fail "$1 does not follow $2"
import json, sys
import jsonschema
document, schema = (json.load(open(name)) for name in sys.argv[1:3])
jsonschema.validate(document, schema)
unnamed = set(document) - set(schema["properties"])
unnamed |= set(document.get("record", {})) - set(schema["properties"]["record"]["properties"])
if unnamed:
    sys.exit(f"not in the schema: {unnamed}")
PY
}
$bulbwright cold --site "San Francisco" --from 2026-11-01 --to 2027-02-28 --format json > "$work/three.json"
$bulbwright cold --zone 9b --region maritime --format json > "$work/zone.json"
$bulbwright cold --records "$work/seattle.csv" --latitude 47.45 --format json > "$work/yearly.json"
$bulbwright cold --records "$work/seattle.csv" --latitude 47.45 --from 2012-11-01 --to 2013-02-28 --format json > "$work/exact.json"
for name in three zone yearly exact; do valid "$work/$name.json" cold; done

# The record goes on with the site's normals where it stops.
head -300 "$work/seattle.csv" > "$work/part.csv"
$bulbwright cold --records "$work/part.csv" --site Seattle --from 2012-10-01 --to 2013-03-31 --format json > "$work/part.json"
valid "$work/part.json" cold
grep -q '"expected_days": 15[0-9]' "$work/part.json" || fail "a record is not continued"

# The same bytes twice, and CSV with one row a winter and month and a total each.
$bulbwright cold --zone 9b > "$work/one.txt"
$bulbwright cold --zone 9b > "$work/two.txt"
cmp -s "$work/one.txt" "$work/two.txt" || fail "two runs differ"
[ "$($bulbwright cold --site Seattle --format csv | wc -l)" = 22 ] || fail "CSV rows"
LC_ALL=C $bulbwright cold --site Seattle | LC_ALL=C grep -q '[^ -~]' && fail "non-ASCII in the C locale"
[ "$(LC_ALL=C $bulbwright cold --site Seattle --width 50 | awk '{ if (length($0) > m) m = length($0) } END { print (m <= 50) }')" = 1 ] ||
  fail "wider than asked for"

# A tropical place says that there is no natural cold.
$bulbwright cold --site Singapore | grep -q "no natural cold" || fail "a tropical place is not told"

refused() {
  local want=$1
  shift
  local code=0
  "$bulbwright" cold "$@" > "$work/out" 2> "$work/err" || code=$?
  [ "$code" = 2 ] || fail "exit $code instead of 2: $*"
  [ -s "$work/out" ] && fail "stdout is not empty: $*"
  grep -qF -- "$want" "$work/err" || fail "'$want' missing in: $(cat "$work/err")"
}
refused "no place"
refused "did you mean" --site "Sann Francisco"
refused "places:" --site "San"
refused "9c" --zone 9c
refused "3a" --zone 3a
refused "--from" --site Seattle --to 2027-02-28
refused "2027-02-29" --site Seattle --from 2026-11-01 --to 2027-02-29
refused "before" --site Seattle --from 2027-11-01 --to 2027-02-28
refused "one end" --site Seattle --from 11-01 --to 2027-02-28
refused "latitude" --records "$work/seattle.csv"
refused "covers 2012-01-01 to 2015-12-31" --records "$work/seattle.csv" --latitude 47 --from 2016-01-01 --to 2016-02-01
refused "cannot read" --records "$work/none.csv" --latitude 47
refused "directory" --records "$work" --latitude 47
refused "region" --site Seattle --region maritime
sed 's/^\([^,]*\),2012-05-05,.*/\1,2012-05-05,99/' "$work/seattle.csv" > "$work/bad.csv"
refused "bad.csv:127:1" --records "$work/bad.csv" --latitude 47

exit $failed

#!/usr/bin/env bash
# A place by its position: flags and pot file alike, in every command that takes a place.
set -euo pipefail
bulbwright=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0
fail() { echo "FAILED: $*"; failed=1; }

pot=(--top "15 in" --base "12 in" --height "14 in" --layer tulip-triumph --season 2026)
near=(--near "38.58,-121.49" --elevation "9 m")
"$bulbwright" plan "${pot[@]}" "${near[@]}" --save "$work/pot.json" > "$work/plan.txt" || fail "plan: exit $?"
grep -q "Sacramento" "$work/plan.txt" || fail "the plan does not name the place"
"$bulbwright" plan "$work/pot.json" | cmp -s - "$work/plan.txt" || fail "the file saved plans otherwise"
grep -q '"near": "38.58, -121.49"' "$work/pot.json" || fail "near is not saved"
grep -q '"elevation": "9 m"' "$work/pot.json" || fail "elevation is not saved"
"$bulbwright" shop "$work/pot.json" > /dev/null || fail "shop: exit $?"
"$bulbwright" cold "${near[@]}" > "$work/cold.txt" || fail "cold: exit $?"
"$bulbwright" suggest --top "10 in" --height "9 in" --season 2026 "${near[@]}" > /dev/null || fail "suggest: exit $?"
"$bulbwright" places "${near[@]}" > "$work/places.txt" || fail "places: exit $?"
grep -q "rain" "$work/places.txt" || fail "places tells no rain"
grep -q "weight 0" "$work/places.txt" || fail "places tells no weights of stations"
grep -q "weight 0" "$work/cold.txt" || fail "cold tells no weights of stations"
"$bulbwright" plan "${pot[@]}" --near "38.58,-121.49" > "$work/assumed.txt" || fail "without elevation: exit $?"
# --near replaces the file's place, and the other way round.
"$bulbwright" plan "$work/pot.json" --zone 9b > "$work/zone.txt" || fail "zone over near: exit $?"
"$bulbwright" plan "${pot[@]}" --zone 9b | cmp -s - "$work/zone.txt" || fail "zone over near differs"
# South of the equator the season is the calendar year.
"$bulbwright" plan "${pot[@]}" --near "-43.53,172.63" --elevation "10 m" --format json > "$work/south.json" || true
grep -q '"2026-' "$work/south.json" || fail "south"

# Records beside the place tell how the spot differs, and the offset is kept with the pot.
{ echo "date,tmin_c,tmax_c"; for d in $(seq 10 31); do echo "2026-10-$d,14,24"; done
  for d in $(seq 10 30); do echo "2026-11-$d,9,17"; done; } > "$work/autumn.csv"
"$bulbwright" plan "${pot[@]}" "${near[@]}" --records "$work/autumn.csv" --format json > "$work/records.json"
grep -q '"code": "record-offset"' "$work/records.json" || fail "the record is not compared"
"$bulbwright" plan "${pot[@]}" "${near[@]}" --offset "-3 C, 0.5 C" --save "$work/hollow.json" > "$work/hollow.txt"
grep -q '"offset": "-3 C, 0.5 C"' "$work/hollow.json" || fail "the offset is not saved"
tr '\n' ' ' < "$work/hollow.txt" | tr -s ' ' > "$work/words"
grep -q "3.0 °C colder at night" "$work/words" || fail "the offset is not told"
"$bulbwright" plan "$work/hollow.json" | cmp -s - "$work/hollow.txt" || fail "the file with an offset plans otherwise"
"$bulbwright" plan "${pot[@]}" "${near[@]}" --offset "5.4 F" --format json > "$work/f.json"
"$bulbwright" plan "${pot[@]}" "${near[@]}" --offset "3 K" --format json > "$work/k.json"
diff <(grep -v '"offset": "' "$work/f.json") <(grep -v '"offset": "' "$work/k.json") > /dev/null || fail "5.4 F is not 3 K"
# A short record of another season is compared only.
"$bulbwright" plan "${pot[@]:0:8}" --season 2030 "${near[@]}" --records "$work/autumn.csv" --format json > "$work/later.json"
grep -q "hold no whole winter" "$work/later.json" || fail "a short record of another season"
"$bulbwright" cold "${near[@]}" --records "$work/autumn.csv" > "$work/cold.txt" || fail "cold with a short record: exit $?"
grep -q "of your records" "$work/cold.txt" || fail "cold does not compare the record"

# A wet winter brings perlite and shelter unless the file says otherwise; far stations are a warning.
rainy=(--near "47.61,-122.33" --elevation "50 m")
"$bulbwright" plan "${pot[@]}" "${rainy[@]}" --format json > "$work/wet.json"
grep -q '"what": "keep-from-rain"' "$work/wet.json" || fail "no shelter from rain in Seattle"
grep -q '"perlite_litres": 0.0' "$work/wet.json" && fail "no perlite in Seattle"
"$bulbwright" plan "${pot[@]}" "${rainy[@]}" --winter ordinary --format json > "$work/told.json"
grep -q '"what": "keep-from-rain"' "$work/told.json" && fail "--winter ordinary is not obeyed"
grep -q '"perlite_litres": 0.0' "$work/told.json" || fail "--winter ordinary has perlite"
"$bulbwright" plan "${pot[@]}" --near "64.5,-21" --elevation "60 m" --format json > "$work/far.json"
grep -q '"code": "stations-' "$work/far.json" || fail "stations are not told"
"$bulbwright" cold --near "23,4" --elevation "600 m" --format json > "$work/sahara.json"
grep -q '"expected_error_k"' "$work/sahara.json" || fail "no error to expect"
grep -q '"code": "stations-far"' "$work/sahara.json" || fail "far stations are no warning"
"$bulbwright" cold "${near[@]}" --format csv > "$work/cold.csv"
grep -q "rain_mm" "$work/cold.csv" || fail "no rain in the table"

refused() {
  local want=$1
  shift
  local code=0
  "$bulbwright" "$@" > "$work/out" 2> "$work/err" || code=$?
  [ "$code" = 2 ] || fail "exit $code instead of 2: $*"
  [ -s "$work/out" ] && fail "stdout is not empty: $*"
  tr '\n' ' ' < "$work/err" | tr -s ' ' | grep -qF -- "$want" || fail "'$want' missing in: $(cat "$work/err")"
}
refused "did you mean \"38.58, -121.49\"" plan "${pot[@]}" --near "-121.49,38.58"
refused "is no position" cold --near here
refused "in the sea" cold --near "38.58,-140"
refused "pole" cold --near "89,0"
refused "no height there" cold --near "52.37,4.90" --elevation "5000 m"
refused "goes with near" plan "${pot[@]}" --zone 9b --elevation "9 m"
refused "more than one kind" plan "${pot[@]}" --near "38.58,-121.49" --zone 9b
refused "has no unit" cold --near "38.58,-121.49" --elevation 9
refused "did you mean \"1.2 C\"" cold "${near[@]}" --offset 1.2
refused "out of range" cold "${near[@]}" --offset "40 F"
refused "goes with zone, site, near or normals" cold --records "$work/autumn.csv" --latitude 38 --offset "1 C"
refused "no kind of winter" plan "${pot[@]}" --zone 9b --winter soggy
refused "contradicts --winter" plan "${pot[@]}" --zone 9b --winter dry --wet-winter
exit $failed

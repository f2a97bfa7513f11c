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
grep -q "rain, mm" "$work/places.txt" || fail "places tells no rain"
grep -q " km, " "$work/places.txt" || fail "places tells no stations"
"$bulbwright" plan "${pot[@]}" --near "38.58,-121.49" > "$work/assumed.txt" || fail "without elevation: exit $?"
# --near replaces the file's place, and the other way round.
"$bulbwright" plan "$work/pot.json" --zone 9b > "$work/zone.txt" || fail "zone over near: exit $?"
"$bulbwright" plan "${pot[@]}" --zone 9b | cmp -s - "$work/zone.txt" || fail "zone over near differs"
# South of the equator the season is the calendar year.
"$bulbwright" plan "${pot[@]}" --near "-43.53,172.63" --elevation "10 m" --format json > "$work/south.json" || true
grep -q '"2026-' "$work/south.json" || fail "south"

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
exit $failed

#!/usr/bin/env bash
# A NOAA station file tells its own latitude; one given beside it goes first; other records need one.
set -euo pipefail
bulbwright=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
fail() { echo "$1"; exit 1; }

# GHCN-Daily as published: tenths of a degree. The values are invented.
{ echo '"STATION","DATE","LATITUDE","NAME","TMAX","TMIN"'
  seq 0 800 | sed 's/.*/2024-09-01 + & days/' | date -u -f - '+"XX000000001","%F","LAT","SALTMARSH","120","40"'
} >"$work/pattern.csv"
sed "s/\"LAT\"/\"38.5\"/" "$work/pattern.csv" >"$work/north.csv"
sed "s/\"LAT\"/\"-38.5\"/" "$work/pattern.csv" >"$work/south.csv"
sed "s/\"LAT\"/\"\"/" "$work/pattern.csv" >"$work/silent.csv"

# The plan without the request that it echoes, which differs in what was written.
told() { sed '/^  "request": {/,/^  },/d'; }
plan() {
  "$bulbwright" plan --top "380 mm" --height "360 mm" --layer tulip-triumph --season 2025 --format json "$@" >"$work/whole"
  local status=$?
  told <"$work/whole"
  return $status
}

plan --records "$work/north.csv" >"$work/own" || fail "a station file alone: exit $?"
plan --records "$work/north.csv" --latitude 38.5 >"$work/given" || fail "with its latitude: exit $?"
cmp "$work/own" "$work/given" || fail "its own latitude plans otherwise than the same given"
grep -q '"south"' <(plan --records "$work/south.csv") || fail "a southern station is not in the south"
plan --records "$work/south.csv" --latitude 38.5 | cmp - "$work/given" || fail "a latitude given does not go first"
"$bulbwright" plan --records - --top "380 mm" --height "360 mm" --layer tulip-triumph --season 2025 \
  --format json <"$work/north.csv" | told | cmp - "$work/own" || fail "a station file on standard input plans otherwise"
status=0
plan --records "$work/silent.csv" >"$work/out" 2>"$work/err" || status=$?
[ "$status" -eq 2 ] || fail "no latitude anywhere: exit $status"
grep -q "needs a latitude beside it" "$work/err" || fail "no latitude anywhere: $(cat "$work/err")"
[ ! -s "$work/out" ] || fail "no latitude anywhere: something on standard output"

#!/usr/bin/env bash
# plan --save: the pot file that flags amount to plans the same pot, and nothing is lost by it.
set -u
bulbwright=$(realpath "$1")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
faults=0
fail() { echo "$*"; faults=1; }

pot=(--top "15 in" --base "12 in" --height "14 in" --zone 9b --pest squirrel --storage-method "paper bag"
  --layer "tulip-triumph = 12" --layer "2 narcissus-jonquilla + 1 muscari" --layer crocus-large)
same() { # NAME FLAGS...: the saved file gives the plan of the flags, byte for byte
  local name=$1
  shift
  "$bulbwright" plan "${pot[@]}" "$@" --format json --save "$work/$name.json" >"$work/flags" ||
    fail "$name: exit $?"
  "$bulbwright" plan "$work/$name.json" --format json >"$work/file" || fail "$name: file: exit $?"
  cmp "$work/flags" "$work/file" || fail "$name: the saved file plans otherwise"
}
same planted --plant 2027-01-08
same chosen --season 2026
same wanted --flower 2027-03-20
same window --flower 2027-02-20..2027-04-10 --gap "1 in"
same region --season 2026 --region maritime
same spread --season 2026 --spread --order by-flowering
# Records are found from the saved file's folder, wherever they were named from.
mkdir "$work/records" "$work/pots"
{ echo date,tmin_c,tmax_c
  for day in $(seq 0 800); do date -u -d "2024-09-01 + $day days" "+%F,4,12"; done; } >"$work/records/terrace.csv"
(cd "$work/records" && "$bulbwright" plan "${pot[@]:0:6}" --layer tulip-triumph --records terrace.csv --latitude 38 \
  --plant 2025-12-01 --format json --save ../pots/recorded.json) >"$work/flags" || fail "records: exit $?"
(cd / && "$bulbwright" plan "$work/pots/recorded.json" --format json) >"$work/file" || fail "records: file: exit $?"
# The request echoes the path of the records as it was given, which is another.
without_request() { /usr/bin/python3 -c 'import json, sys; plan = json.load(open(sys.argv[1])); del plan["request"]; print(plan)' "$1"; }
[ "$(without_request "$work/flags")" = "$(without_request "$work/file")" ] || fail "the saved file with records plans otherwise"
(cd "$work" && "$bulbwright" plan pots/recorded.json --save again.json && cat again.json) | grep -q '"records/terrace.csv"' ||
  fail "records of a file saved elsewhere are lost"

"$bulbwright" shop "$work"/*.json >/dev/null || fail "shop does not read the saved files"

# What is there already is kept, unless it is the same or --force is given.
echo "{} // mine" >"$work/mine.json"
"$bulbwright" plan "${pot[@]}" --plant 2027-01-08 --save "$work/mine.json" >"$work/out" 2>"$work/err"
[ $? -eq 3 ] || fail "a file that differs is not refused with 3"
grep -q "is there already and differs" "$work/err" || fail "no word of it: $(cat "$work/err")"
[ "$(cat "$work/mine.json")" = "{} // mine" ] || fail "the grower's file is gone"
[ ! -s "$work/out" ] || fail "a plan is printed although its file could not be written"
"$bulbwright" plan "${pot[@]}" --plant 2027-01-08 --save "$work/planted.json" >"$work/out" || fail "the same again: $?"
"$bulbwright" plan "${pot[@]}" --plant 2027-01-08 --save "$work/mine.json" --force >"$work/out" || fail "--force: $?"
cmp -s "$work/mine.json" "$work/planted.json" || fail "--force does not replace"
# Nothing is written when the input is wrong or when another file fails.
"$bulbwright" plan "${pot[@]}" --plant 2027-13-08 --save "$work/new.json" >/dev/null 2>&1
[ $? -eq 2 ] || fail "a wrong date is not refused with 2"
"$bulbwright" plan "${pot[@]}" --plant 2027-01-08 --save "$work/new.json" --out "$work" >/dev/null 2>&1
[ $? -eq 3 ] || fail "--out to a folder is not refused with 3"
"$bulbwright" plan "${pot[@]}" --plant 2027-01-08 --save "$work/new.json" --out "$work/new.json" >/dev/null 2>&1
[ $? -eq 3 ] || fail "one file for two outputs is not refused with 3"
"$bulbwright" plan "$work/planted.json" --zone 8a --save "$work/planted.json" --force >/dev/null 2>&1
[ $? -eq 3 ] || fail "an input is overwritten"
[ ! -e "$work/new.json" ] || fail "a file was written although the run failed"
"$bulbwright" plan "${pot[@]}" --plant 2027-01-08 --save - >/dev/null 2>&1
[ $? -eq 2 ] || fail "--save - is not refused with 2"
[ -z "$(find "$work" -name '.bulbwright-*')" ] || fail "temporary files are left"
"$bulbwright" plan "${pot[@]}" --plant 2027-01-08 --save "$work/none/yet/new.json" >/dev/null || fail "a missing folder: exit $?"
cmp -s "$work/none/yet/new.json" "$work/planted.json" || fail "a missing folder is not made for the file"
exit "$faults"

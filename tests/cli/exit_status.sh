#!/usr/bin/env bash
# Exit codes and streams of the whole program: 0 done, 1 cannot be carried out (printed all the same),
# 2 wrong input (nothing on standard output, one message naming the field), 3 writing failed.
set -u
bulbwright=$1
root=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
faults=0

# expect STATUS TEXT COMMAND...: status, and TEXT in standard error (empty: nothing asked)
expect() {
  local status=$1 text=$2
  shift 2
  "$@" >"$work/out" 2>"$work/err"
  local got=$?
  [ "$got" -eq "$status" ] || { echo "exit $got, not $status: $*"; cat "$work/err"; faults=1; }
  if [ "$status" -ge 2 ]; then
    [ ! -s "$work/out" ] || { echo "standard output is not empty: $*"; faults=1; }
    [ "$(wc -c <"$work/err")" -le 2000 ] || { echo "message over 2,000 bytes: $*"; faults=1; }
  fi
  [ -z "$text" ] || grep -qF -- "$text" "$work/err" || { echo "no '$text' in: $(cat "$work/err")"; faults=1; }
}
pot() { printf '%s' "$1" >"$work/pot.json"; }
good='"pot":{"top":"380 mm","height":"360 mm"},"season":2026'

expect 0 "" "$bulbwright" plan "$root/examples/steps.json"
expect 0 "" "$bulbwright" --help
expect 0 "" "$bulbwright" plan --help
expect 0 "" "$bulbwright" --version
expect 1 "" "$bulbwright" plan --top "380 mm" --height "120 mm" --zone 9b --season 2026 \
  --layer tulip-triumph --layer narcissus-large-cupped --layer crocus-large
grep -q "would" "$work/out" || { echo "a plan that cannot be is not printed"; faults=1; }

expect 2 "unknown command" "$bulbwright" plam
expect 2 "did you mean \"--layer\"" "$bulbwright" plan --lyer x
expect 2 "did you mean \"15 cm\" or \"15 in\"" "$bulbwright" plan --top 15 --zone 9b --layer muscari
expect 2 "No such file" "$bulbwright" plan "$work/none.json"
expect 2 "directory" "$bulbwright" plan "$work"
head -c 10000000 /dev/zero | tr '\0' ' ' >"$work/large.json"
expect 2 "large.json" "$bulbwright" plan "$work/large.json"
pot '{'"$good"',"layers":[{"taxon":"tulip-triumph"}]'
expect 2 "pot.json:1:" "$bulbwright" plan "$work/pot.json"
printf '{"pot":{"name":"\xff"}}' >"$work/pot.json"
expect 2 "UTF-8" "$bulbwright" plan "$work/pot.json"

# refused JSON TEXT: a pot file that is wrong in one thing
refused() {
  pot "$1"
  expect 2 "$2" "$bulbwright" plan "$work/pot.json"
}
zone='"place":{"zone":"9b"}'
layers='"layers":[{"taxon":"tulip-triumph"}]'
refused '{'"$good,$zone,$layers"',"headspase":1}' "headspase"
refused '{"pot":{"top":"380 mm","height":"360 mm","headspase":"25 mm"},"season":2026,'"$zone,$layers"'}' 'did you mean "headspace"'
refused '{"pot":{"top":"380","height":"360 mm"},"season":2026,'"$zone,$layers"'}' "no unit"
refused '{"pot":{"top":380,"height":"360 mm"},"season":2026,'"$zone,$layers"'}' "pot.top"
refused '{"pot":{"top":"-380 mm","height":"360 mm"},"season":2026,'"$zone,$layers"'}' "pot.top"
refused '{"pot":{"top":"6 m","height":"360 mm"},"season":2026,'"$zone,$layers"'}' "pot.top"
refused '{"pot":{"top":"200 mm","base":"400 mm","height":"360 mm"},"season":2026,'"$zone,$layers"'}' "base"
refused '{"pot":{"top":"380 mm","height":"360 mm","material":"terracota"},"season":2026,'"$zone,$layers"'}' 'terracotta'
refused '{"pot":{"top":"380 mm","height":"360 mm","shape":"rond"},"season":2026,'"$zone,$layers"'}' 'round'
refused '{'"$good,$zone"',"layers":[{"taxon":"tulip-triumf"}]}' "tulip-triumph"
refused '{'"$good,$zone"',"layers":[]}' "layers"
refused '{'"$good,$zone"',"layers":[{"taxon":"muscari","count":0}]}' "count"
refused '{'"$good,$zone"',"layers":[{"taxon":"muscari","count":1001}]}' "count"
refused '{'"$good,$zone"',"layers":[{"mix":[{"taxon":"muscari","share":-1},{"taxon":"hyacinth","share":1}]}]}' "share"
refused '{'"$good,$zone"',"layers":[{"mix":[{"taxon":"muscari"},{"taxon":"hyacinth","share":1}]}]}' "share"
refused '{'"$good,$zone,$layers"',"plant":"2027-02-30"}' "2027-02-30"
refused '{'"$good,$zone,$layers"',"season":2027}' "season"
refused '{'"$good"',"place":{"zone":9},'"$layers"'}' "zone"
refused '{'"$good"',"place":{"zone":"9"},'"$layers"'}' "9b"
refused '{'"$good"',"place":{"zone":"9b","site":"London"},'"$layers"'}' "place"
refused '{'"$good"',"place":{},'"$layers"'}' "place"
refused '{'"$good,$zone,$layers"'} x' "pot.json:1:"
refused "$(printf '[%.0s' $(seq 40))" "pot.json:1:"

expect 3 "cannot write" sh -c '"$1" plan "$2" >/dev/full' sh "$bulbwright" "$root/examples/steps.json"
expect 3 "cannot write" "$bulbwright" plan "$root/examples/steps.json" --out "$work/pot.json/plan.txt"
cp "$root/examples/steps.json" "$work/steps.json"
expect 3 "is an input" "$bulbwright" plan "$work/steps.json" --out "$work/steps.json"
cmp -s "$root/examples/steps.json" "$work/steps.json" || { echo "an input was overwritten"; faults=1; }
expect 0 "" "$bulbwright" plan "$work/steps.json" --out "$work/plan.txt"
"$bulbwright" plan "$root/examples/steps.json" | cmp -s - "$work/plan.txt" || { echo "--out differs"; faults=1; }
"$bulbwright" plan - <"$root/examples/steps.json" | cmp -s - "$work/plan.txt" || { echo "stdin differs"; faults=1; }

exit $faults

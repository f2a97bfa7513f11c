#!/usr/bin/env bash
# Where a pot file may come from, and how flags are told wrong, through the whole program.
set -u
bulbwright=$1
root=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
faults=0
fail() { echo "$*"; faults=1; }

# The same plan whether the file is named, piped, redirected or substituted.
steps=$root/examples/steps.json
"$bulbwright" plan "$steps" >"$work/named" || fail "a named file is not planned"
"$bulbwright" plan - <"$steps" >"$work/redirected" || fail "- is not planned"
cat "$steps" | "$bulbwright" plan - >"$work/piped" || fail "a pipe is not planned"
"$bulbwright" plan <(cat "$steps") >"$work/substituted" || fail "<(...) is not planned"
for form in redirected piped substituted; do
  cmp -s "$work/named" "$work/$form" || fail "the plan of the $form file differs"
done
# Flags that say the same as the file give the same plan as the file.
"$bulbwright" plan "$steps" --format json >"$work/file.json"
"$bulbwright" plan "$steps" --top "38 cm" --zone 9B --plant 2027-01-08 --format json >"$work/flags.json"
# All but the request that is echoed: --plant takes the place of the season.
for form in file flags; do sed -i '/^  "request": {/,/^  },/d' "$work/$form.json"; done
cmp -s "$work/file.json" "$work/flags.json" || fail "flags equal to the file change the plan"

# refused TEXT ARGUMENTS...: exit 2 at once, TEXT in the message, nothing on standard output
refused() {
  local text=$1 status
  shift
  timeout 10 "$bulbwright" "$@" >"$work/out" 2>"$work/err" </dev/null
  status=$?
  [ "$status" -eq 2 ] || fail "exit $status: $*"
  [ ! -s "$work/out" ] || fail "standard output is not empty: $*"
  [ "$(wc -c <"$work/err")" -le 2000 ] || fail "message over 2,000 bytes: $*"
  grep -qF -- "$text" "$work/err" || fail "no '$text' in: $(cat "$work/err")"
}
mkfifo "$work/pipe"
refused "no regular file" plan "$work/pipe"
refused "no regular file" plan /dev/zero
refused "the file holds no data" plan -
refused "--top needs a value after the \"=\"" plan --top= --zone 9b
refused "--top needs a value after it" plan "$steps" --top
refused "--top is given more than once" plan "$steps" --top "1 m" --top "2 m"
refused "--top: empty" plan "$steps" --top ""
refused "--layer: \"a\" has no share" plan "$steps" --layer "a + b"
refused "--layer: unknown taxon \"tulip-trumph\"; did you mean \"tulip-triumph\"?" \
  plan "$steps" --layer tulip-trumph
refused "--layer: 1 for a mix of 2 kinds; expected at least one of each" \
  plan --top "300 mm" --height "300 mm" --zone 8b --season 2027 --layer "20 galanthus + 1 muscari = 1"
wide=$work/wide.json
printf '{ "pot": { "top": "4 m", "height": "400 mm" }, "place": { "zone": "8b" }, "season": 2027,\n  "layers": [ { "taxon": "muscari", "count": 9 },\n    { "taxon": "galanthus" } ] }' >"$wide"
refused "wide.json:3:5: error: layers[1]: up to " plan "$wide"
refused "wide.json:3:5: error: layers[1]: up to " shop "$wide"
refused "error: --top: up to " suggest --top "4.9 m" --height "400 mm" --zone 8b --layers 2 --season 2027
refused "--wall: \"-1 mm\" is out of range" plan "$steps" --wall "-1 mm"
refused "pot.base: 290 mm is too wide for a rim of 200 mm" plan "$steps" --top "200 mm"
refused "season 2027" plan "$steps" --plant 2027-01-08 --season 2027
# Standard input is read once, and who names it twice is told so.
refused "standard input is read once" shop - -
"$bulbwright" plan - --records - --latitude 47 <"$steps" >"$work/out" 2>"$work/err"
[ $? -eq 2 ] && grep -q -- "--records: standard input is read once" "$work/err" || fail "plan - --records -: $(cat "$work/err")"
refused "--records: cannot read \"$work/none.csv\"" plan "$steps" --records "$work/none.csv" --latitude 47
refused "pot.top: a pot so wide" plan <(echo '{"pot":{"top":"1 mm"},"place":{"zone":"9b"},"season":2026,"layers":[{"taxon":"muscari"}]}')
refused "places: no place is named" places Londn
grep -q "site" "$work/err" && fail "places WORD is told of a site"
# Several wrong flags are told at once.
refused "--zone: \"9c\" is no hardiness zone" plan "$steps" --zone 9c --top 6m --pest lion
grep -q -- "--top: \"6m\" is out of range" "$work/err" || fail "only one of three faults is told"
grep -q -- "--pest: \"lion\" is no known pest" "$work/err" || fail "only two of three faults are told"
exit "$faults"

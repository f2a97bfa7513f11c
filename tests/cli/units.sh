#!/usr/bin/env bash
# One ruler, one thermometer, one scale a document: with --units in no metric unit stands in any
# text, with --units mm no other one, whatever the answer has to say. Lines are joined before the
# look, so that a number is never parted from its unit.
set -uo pipefail
bulbwright=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$source/examples"

# Invented readings, a winter of 8 degrees with a gap of two days.
{ echo "date,tmin_c,tmax_c"
  seq 0 800 | sed 's/.*/2024-09-01 + & days/' | date -u -f - '+%F,4,12' | sed '100,101d'
} >"$work/days.csv"

metric='\b(mm|cm|km|kg|litres?|degrees C)\b|\d (m|l|C|°C)\b|°C'
other='\b(inch|inches|ft|qt|quarts?|lb|miles|degrees F)\b|(?<!zone )(?<!zone 1)\d (in|feet|F|°F)\b|\d"|°F'
failed=0
texts=0

# text_of STATUS ARGUMENTS...: runs the command with both units and looks at what it prints.
text_of() {
  local expected=$1
  shift
  for units in in mm; do
    status=0
    "$bulbwright" "$@" --units "$units" >"$work/text" 2>"$work/err" || status=$?
    if [ "$status" -ne "$expected" ]; then
      echo "$* --units $units: exit $status, not $expected: $(head -3 "$work/err")"
      failed=1
    fi
    [ -s "$work/text" ] || { echo "$* --units $units: no text"; failed=1; }
    [ "$units" = in ] && forbidden=$metric || forbidden=$other
    if tr '\n' ' ' <"$work/text" | tr -s ' ' | grep -oP ".{0,40}($forbidden).{0,20}"; then
      echo "  ^ $* --units $units"
      failed=1
    fi
    texts=$((texts + 1))
  done
}

pot=(--top 15in --base 12in --height 14in --season 2026)
stack=(--layer tulip-triumph --layer narcissus-large-cupped --layer crocus-large)

for file in *.json; do text_of 0 plan "$file"; done
for zone in 4a 7a 9b 11b; do text_of 0 plan "${pot[@]}" "${stack[@]}" --zone "$zone" --pest squirrel; done
text_of 0 plan "${pot[@]}" "${stack[@]}" --site Melbourne --wet-winter
text_of 0 plan --top 15in --base 12in --height 14in --layer tulip-triumph --season 2025 --records "$work/days.csv" --latitude 38
# refused: too shallow, too many bulbs, too wide a bulb, mix of last year, a day out of reach
text_of 1 plan --top "200 mm" --height "100 mm" --season 2026 "${stack[@]}" --zone 9b
text_of 1 plan "${pot[@]}" --layer "tulip-triumph = 300" --zone 9b
text_of 1 plan --top "50 mm" --height "400 mm" --season 2026 --layer hyacinth --zone 7a
text_of 1 plan "${pot[@]}" --layer tulip-triumph --zone 9b --last-crop Tulipa
text_of 1 plan "${pot[@]}" --layer tulip-triumph --zone 8a --flower 2027-01-01
text_of 1 plan "${pot[@]}" --layer tulip-triumph --zone 9b --storage-weeks 30
# warned: close together, thin mix between, warm mix, a warm refrigerator, under-chilled, wishes
text_of 0 plan "${pot[@]}" --layer "tulip-triumph = 28" --zone 7a
text_of 0 plan --top 15in --height "255 mm" --season 2026 --layer tulip-triumph --layer crocus-large --zone 7a
text_of 0 plan "${pot[@]}" --layer tulip-triumph --zone 7a --plant 2026-09-16
text_of 0 plan "${pot[@]}" --layer tulip-triumph --layer muscari --zone 9b --storage-temperature "9 C"
text_of 0 plan "${pot[@]}" --layer tulip-triumph --layer muscari --zone 10a --storage-weeks 2
text_of 0 plan "${pot[@]}" "${stack[@]}" --zone 9b --flower 2027-03-20
text_of 0 plan "${pot[@]}" "${stack[@]}" --zone 9b --spread
text_of 0 suggest "${pot[@]}" --zone 9b --window 2027-02-15..2027-04-30
text_of 1 suggest "${pot[@]}" --zone 9b --window 2027-02-15..2027-04-30 --safe-for pets
text_of 0 cold --zone 9b
text_of 0 cold --zone 4a --south
text_of 0 cold --site London
text_of 0 cold --records "$work/days.csv" --latitude 38
text_of 0 cold --records "$work/days.csv" --from 2024-11-01 --to 2025-02-28 --latitude 38
text_of 0 shop ./*.json
text_of 0 places --zone 9b
text_of 0 places London
text_of 0 bulbs
text_of 0 fit --top "380 mm" --bulb "40 mm" --gap "25 mm"

echo "$texts texts"
exit "$failed"

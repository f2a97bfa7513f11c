#!/usr/bin/env bash
# --data DIR: every table of one's own is read, checked like the built-in one, and none is passed
# over; a kind of a new genus needs rows alone. Arguments: the program, the source folder.
. "$(dirname "$0")/work_folder.bash"

mkdir mine
plan() { "$program" plan --top "300 mm" --height "300 mm" --zone 8a --season 2026 "$@" --data mine; }
refused() {  # text that standard error must hold; arguments of the program
  local want=$1
  shift
  "$program" "$@" >out.txt 2>err.txt
  [ $? -eq 2 ] || fail "'$want': exit 2 expected"
  [ -s out.txt ] && fail "'$want': something on standard output"
  grep -qF -- "$want" err.txt || fail "'$want' missing in: $(cat err.txt)"
}

# A kind of a genus that the program does not know, by data alone.
"$program" bulbs muscari --format csv |
  sed 's/^muscari,/winter-daffodil,/; s/,Muscari,/,Sternbergia,/; s/,Grape hyacinth,/,Winter daffodil,/' >mine/taxa.csv
printf 'genus,plural,names,shape_factor,origin,source\nSternbergia,winter daffodils,winter daffodil|sternbergia,%s,from memory,\n' 0.5 >mine/genera.csv
printf 'code,trigger,severity,topic,hazard,advice,short_text,origin,source\naconite,genus=sternbergia,high,poison,{Kinds} make ill,Call a poison centre,,from memory,\n' >mine/cautions.csv
plan --layer winter-daffodil >out.txt 2>err.txt || fail "a new genus: exit $?, $(cat err.txt)"
grep -q 'Winter daffodils' out.txt || fail "a new genus is not named on the sheet"
plan --layer winter-daffodil --pest vole --format json >small.json || fail "a new genus: JSON"
grep -q 'Winter daffodils make ill' small.json || fail "the plural of a new genus is not in its cautions"
plan --layer winter-daffodil --last-crop "winter daffodils" >out.txt 2>err.txt; [ $? -eq 1 ] || fail "last crop of a new genus: exit 1 expected"
grep -qi 'sternbergia' out.txt || fail "last crop of a new genus: not named"
plan --layer winter-daffodil --last-crop tulips >out.txt 2>err.txt || fail "last crop of another genus: exit $?"
sed -i 's/,0\.5,/,1.5,/' mine/genera.csv
plan --layer winter-daffodil --pest vole --format json >large.json || fail "another shape: JSON"
python3 - <<'PY' || fail "bulbs of another shape leave the same room for mix"
import json
small, large = (json.load(open(name)) for name in ("small.json", "large.json"))
assert small["materials"]["mix_litres"] > large["materials"]["mix_litres"]
PY

# A faulty row and a good one of the same quantity below it.
printf 'taxon,quantity,value,low,high,unit,origin,source\nx,cold_weeks,abc,,,weeks,from memory,\nx,cold_weeks,15,,,weeks,from memory,\n' >mine/taxa.csv
refused 'mine/taxa.csv:2:14: error: x: cold_weeks: value is "abc"; expected a number' bulbs --data mine
rm mine/taxa.csv mine/genera.csv mine/cautions.csv

# Packs and cautions of one's own.
printf 'kind,match,sizes,origin,source\nbulb,tulip-triumph,7,from memory,\n' >mine/packs.csv
cat >pot.json <<'POT'
{ "pot": { "top": "300 mm", "height": "300 mm" }, "place": { "zone": "8a" }, "season": 2026,
  "layers": [ { "taxon": "tulip-triumph" } ] }
POT
"$program" shop pot.json --data mine --format csv | grep -q '^tulip-triumph,.*,7,[0-9]*,,bulb,bulb' || fail "own packs are not read"
printf 'kind,match,sizes,origin,source\nbulb,*,0,from memory,\n' >mine/packs.csv
refused 'mine/packs.csv:2:8: error: sizes has "0" is not a whole number from 1 to 1000' shop pot.json --data mine
rm mine/packs.csv
cautions='code,trigger,severity,topic,hazard,advice,short_text,origin,source\n'
printf "${cautions}steps-wet,always,low,steps,Wet steps are slippery,Sweep them,Sweep the steps.,from memory,\n" >mine/cautions.csv
plan --layer tulip-triumph | grep -q 'Sweep the steps' || fail "own cautions are not read"
plan --layer tulip-triumph --format json | grep -q 'pets-tulip' || fail "own cautions drive out the others"
printf "${cautions}steps-wet,allways,low,steps,Wet steps,Sweep them,,from memory,\n" >mine/cautions.csv
refused 'error: steps-wet: trigger holds the unknown term "allways"; did you mean "always"?' plan pot.json --data mine
rm mine/cautions.csv

# The built-in tables, read as one's own, name no kind and no genus that is not known.
cp "$source"/data/{bloom,cautions,packs}.csv mine/
"$program" plan pot.json --data mine >out.txt || fail "the built-in tables are refused"
"$program" plan pot.json | cmp -s - out.txt || fail "the built-in tables read again give another plan"
rm mine/*

# Nothing is passed over in silence.
printf 'kind,match,sizes,origin,source\nbulb,tulip-trumph,7,from memory,\n' >mine/packs.csv
refused 'mine/packs.csv:2:6: error: match is the unknown "tulip-trumph"; did you mean "tulip-triumph"?' plan pot.json --data mine
rm mine/packs.csv
printf 'taxon,quantity,value,unit,origin,source\nclass-2,base_c,1,degC,from memory,\ntulip-trumph,base_c,1,degC,from memory,\n' >mine/bloom.csv
refused 'mine/bloom.csv:3:1: error: taxon is the unknown "tulip-trumph"; did you mean "tulip-triumph"?' plan pot.json --data mine
rm mine/bloom.csv
printf "${cautions}steps-wet,taxon=tulip-trumph,low,steps,Wet steps,Sweep them,,from memory,\n" >mine/cautions.csv
refused 'error: steps-wet: trigger holds the unknown "taxon=tulip-trumph"; did you mean "tulip-triumph"?' plan pot.json --data mine
rm mine/cautions.csv
refused '--data: "mine" holds no taxa.csv' plan pot.json --data mine
printf 'kind,match,sizes,origin,source\nbulb,*,5,from memory,\n' >mine/packs.csv
echo notes >mine/notes.txt
"$program" shop pot.json --data mine >out.txt || fail "a file of notes is in the way"
for name in pack.csv winter.csv Taxa.csv taxa.cvs; do
  touch "mine/$name"
  refused "\"mine/$name\" is none of the tables that are read" plan pot.json --data mine
  rm "mine/$name"
done
touch mine/cautoins.csv
refused 'did you mean "cautions.csv"?' plan pot.json --data mine
rm mine/cautoins.csv

# Control characters stay out, in whatever column.
printf 'kind,match,sizes,origin,source\nbulb,*,5,from memory,a\033[31mred\n' >mine/packs.csv
refused 'mine/packs.csv:2:22: error: "a\x1b[31mred" holds a control character' shop pot.json --data mine
printf 'kind,match,sizes,origin,source\nbulb,*,5,from memory,a\342\200\256b\n' >mine/packs.csv
refused 'error: "a\u202eb" holds a control character' shop pot.json --data mine
printf 'kind,match,sizes,origin,source\nbulb,*,5,from memory,a\377b\n' >mine/packs.csv
refused 'error: "a\xffb" holds a control character or is no UTF-8' shop pot.json --data mine
rm mine/packs.csv

# Cells of own tables are guarded against spreadsheets.
"$program" places "Seattle" --format csv >seattle.csv || fail "places"
python3 - <<'PY'
import csv
rows = list(csv.reader(open("seattle.csv", newline="", encoding="utf-8")))
rows = [rows[0], rows[1]]
rows[1][0], rows[1][1] = "=cmd()", "@A"
source, confidence = rows[0].index("source"), rows[0].index("confidence")
rows[1][source], rows[1][confidence] = "+c", "a;=1+1"
csv.writer(open("mine/places.csv", "w", newline="", encoding="utf-8")).writerows(rows)
PY
"$program" places "=cmd()" --data mine --format csv >out.txt || fail "own place: exit $?"
for cell in "'=cmd()" "'@A" "'+c" '"a;=1+1"'; do
  grep -qF -- "$cell" out.txt || fail "cell $cell: $(cat out.txt)"
done

[ $failures -eq 0 ]

#!/usr/bin/env bash
# No output takes the place of a file that the run has read, whatever it is called; what is replaced
# keeps its mode; several outputs are written all or none, also when the system fails between them.
# FAILING_CALLS: the library of tests/cli/faults, preloaded.
set -u
bulbwright=$(realpath "$1")
root=$(realpath "$2")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
faults=0
fail() { echo "$*"; faults=1; }
umask 022

{ echo date,tmin_c,tmax_c
  for day in $(seq 0 800); do date -u -d "2024-09-01 + $day days" "+%F,4,12"; done; } >r.csv
fresh() { # an empty folder with a pot file, its records and own tables
  rm -rf "$work/f"
  mkdir -p "$work/f/data" && cd "$work/f" || exit 1
  cp "$root/data/taxa.csv" "$root/data/places.csv" "$root/data/bloom.csv" data/
  cp ../r.csv .
  printf '%s' '{"pot":{"top":"380 mm","height":"360 mm"},"place":{"records":"r.csv","latitude":38},
    "season":2025,"layers":[{"taxon":"muscari"}]}' >rp.json
  cp "$root/examples/steps.json" a.json
  cp -r . ../f.before
}
same_as_before() { # NAME: nothing in the folder was changed, added or left
  diff -rq --no-dereference . ../f.before >../difference 2>&1 || fail "$1: $(cat ../difference)"
}
rm -rf f.before && fresh
again() { rm -rf ../f.before; fresh; }

# --- inputs -------------------------------------------------------------------------------------------------
kept() { # COMMAND...: refused with 3 and the reason, nothing changed
  "$bulbwright" "$@" >../out 2>../err
  local got=$?
  [ "$got" -eq 3 ] || fail "exit $got, not 3: $*"
  grep -q "is an input; it is left as it was" ../err || fail "no reason for $*: $(cat ../err)"
  [ ! -s ../out ] || fail "something on standard output: $*"
  same_as_before "$*"
}
pot=(--top "380 mm" --height "360 mm" --zone 9b --season 2026 --layer muscari)
kept plan rp.json --out r.csv
kept plan rp.json --out ./data/../r.csv
kept shop rp.json --out r.csv
kept suggest rp.json --out r.csv
kept cold rp.json --out r.csv
kept plan rp.json --save r.csv --force
kept plan --top "380 mm" --height "360 mm" --records r.csv --latitude 47 --season 2025 --layer muscari --save r.csv --force
kept plan a.json --out a.json
kept shop rp.json a.json --out a.json
for table in taxa places bloom; do
  kept plan "${pot[@]}" --data data --out data/$table.csv
  kept shop a.json --data data --out data/$table.csv
done
kept suggest --top "380 mm" --height "360 mm" --zone 9b --season 2026 --data data --out data/taxa.csv
kept cold --zone 9b --data data --out data/places.csv
kept places --data data --out data/places.csv
kept bulbs --data data --out data/taxa.csv
# By standard input, by a link, by a second name.
refused() { # NAME, after a run with its status in $?
  [ "$2" -eq 3 ] || fail "$1: exit $2, not 3"
  same_as_before "$1"
}
"$bulbwright" plan - --out a.json <a.json >/dev/null 2>&1; refused "standard input" $?
"$bulbwright" plan /dev/stdin --out a.json <a.json >/dev/null 2>&1; refused "/dev/stdin" $?
"$bulbwright" plan "${pot[@]}" --records - --latitude 38 --out r.csv <r.csv >/dev/null 2>&1; refused "records by standard input" $?
"$bulbwright" plan a.json >>a.json 2>/dev/null; refused "standard output into the input" $?
ln -s "$PWD/a.json" ../link.json
"$bulbwright" plan ../link.json --out a.json >/dev/null 2>&1; refused "read through a link" $?
"$bulbwright" plan a.json --out ../link.json >/dev/null 2>&1; refused "written through a link" $?
ln a.json ../second.json
"$bulbwright" plan a.json --out ../second.json >/dev/null 2>&1; refused "a second name" $?
rm ../link.json ../second.json
mkdir w && cp a.json w/stack-1.json && rm -rf ../f.before && cp -r . ../f.before
kept suggest w/stack-1.json --write w --force

# --- one file under two names -----------------------------------------------------------------------------------
again
twice() {
  "$bulbwright" "$@" >/dev/null 2>../err
  local got=$?
  [ "$got" -eq 3 ] || fail "exit $got, not 3: $*"
  grep -q "would be written twice" ../err || fail "no reason for $*: $(cat ../err)"
}
ln -s . here && rm -rf ../f.before && cp -r . ../f.before
twice plan a.json --save z.json --out z.json
twice plan a.json --save z.json --out ./z.json
twice plan a.json --save z.json --out here/z.json
twice plan a.json --save z.json --out "$PWD/here/here/z.json"
twice suggest a.json --write w3 --out w3/stack-1.json
twice suggest a.json --write here/w3 --out ./w3/stack-1.json
ln -s z.json dangling && rm -rf ../f.before && cp -r . ../f.before
twice plan a.json --save z.json --out dangling
same_as_before "twice"

# --- modes, links, names --------------------------------------------------------------------------------------------
again
mode() { stat -c %a "$1"; }
for bits in 600 640 664 755; do
  echo old >o.txt && chmod $bits o.txt
  "$bulbwright" plan a.json --out o.txt || fail "mode $bits: exit $?"
  [ "$(mode o.txt)" = $bits ] || fail "mode $bits became $(mode o.txt)"
  grep -qx old o.txt && fail "mode $bits: not replaced"
done
rm o.txt && "$bulbwright" plan a.json --out o.txt && [ "$(mode o.txt)" = 644 ] || fail "a new file has mode $(mode o.txt)"
echo old >ro.txt && chmod 444 ro.txt
"$bulbwright" plan a.json --out ro.txt 2>../err
[ $? -eq 3 ] || fail "a write-protected file is not refused with 3"
grep -q "write-protected" ../err || fail "write-protected: $(cat ../err)"
[ "$(cat ro.txt)" = old ] || fail "a write-protected file is replaced"
"$bulbwright" plan a.json --save ro.txt --force >/dev/null 2>&1
[ "$(cat ro.txt)" = old ] || fail "a write-protected file is replaced by --save --force"
echo old >real.txt && ln -s real.txt link.txt && ln -s missing.txt dang.txt && ln -s loop loop
"$bulbwright" plan a.json --out link.txt || fail "link: exit $?"
[ -L link.txt ] && cmp -s real.txt o.txt || fail "a link is not kept, or its file not written"
"$bulbwright" plan a.json --out dang.txt || fail "dangling link: exit $?"
[ -L dang.txt ] && cmp -s missing.txt o.txt || fail "a dangling link is not followed"
"$bulbwright" plan a.json --out loop 2>/dev/null
[ $? -eq 3 ] && [ -L loop ] || fail "a loop of links is not refused"
for length in 249 255; do
  name=$(printf "%${length}s" | tr ' ' n)
  "$bulbwright" plan a.json --out "$name" && cmp -s "$name" o.txt || fail "a name of $length characters"
done
"$bulbwright" plan a.json --out "$(printf '%256s' | tr ' ' n)" 2>/dev/null
[ $? -eq 3 ] || fail "a name of 256 characters is not refused with 3"
truncate -s 3G huge.json # its size alone tells that it differs
([ -n "${SANITIZERS:-}" ] || ulimit -v 1000000
 "$bulbwright" plan a.json --save huge.json >/dev/null 2>../err; [ $? -eq 3 ]) || fail "a huge file: not refused with 3"
grep -q "differs" ../err || fail "a huge file: $(cat ../err)"
rm huge.json
echo "before" >log.txt
"$bulbwright" plan a.json --out /dev/stdout >>log.txt || fail "/dev/stdout: exit $?"
{ echo before; cat o.txt; } | cmp -s - log.txt || fail "--out /dev/stdout replaces what standard output holds"

# --- all or none --------------------------------------------------------------------------------------------------------
none() { # NAME STATUS: exit 3 and nothing changed
  [ "$2" -eq 3 ] || fail "$1: exit $2, not 3"
  same_as_before "$1"
}
again
"$bulbwright" plan a.json --save s.json --out /dev/full >/dev/null 2>&1; none "--out /dev/full" $?
"$bulbwright" plan a.json --save s.json >/dev/full 2>/dev/null; none "full standard output" $?
"$bulbwright" plan a.json --save s.json >&- 2>/dev/null; none "closed standard output" $?
"$bulbwright" suggest a.json --write newd/deep --out a.json/x >/dev/null 2>&1; none "a file where the folder should be" $?
(ulimit -f 1; "$bulbwright" plan a.json --save s.json --out o.txt >/dev/null 2>&1); none "files limited in size" $?

if [ -n "${FAILING_CALLS:-}" ]; then
  failing() { # CALL:N:ERRNO COMMAND...
    local call=$1
    shift
    LD_PRELOAD=$FAILING_CALLS FAIL_CALL=$call "$bulbwright" "$@" >/dev/null 2>../err
    local got=$?
    grep -q "cannot write" ../err || fail "$call: no reason: $(cat ../err)"
    none "$call: $*" "$got"
  }
  LD_PRELOAD=$FAILING_CALLS FAIL_CALL=rename:1:5 "$bulbwright" plan a.json --out o.txt 2>/dev/null &&
    fail "the failing calls do not fail"
  rm -f o.txt
  "$bulbwright" plan a.json --out old.txt && cp a.json old.json && "$bulbwright" suggest a.json --write w >/dev/null
  for file in w/*; do echo "{}" >"$file"; done
  chmod 600 old.txt
  rm -rf ../f.before && cp -r . ../f.before
  for errno in 5 18 28; do # EIO, EXDEV, ENOSPC
    for nth in 1 2; do
      failing rename:$nth:$errno plan a.json --save old.json --force --out old.txt --zone 8a
      failing fsync:$nth:$errno plan a.json --save new.json --out new.txt
      failing write:$nth:$errno plan a.json --save old.json --force --out new.txt
      failing write:$nth:$errno plan a.json --save new/new.json --out newer/still/new.txt
    done
    failing rename:1:$errno plan a.json --save new.json --out new.txt # the first takes its place by link()
    failing rename:2:$errno suggest a.json --write w --force --out old.txt
    failing rename:4:$errno suggest a.json --write w --force
    failing rename:1:$errno suggest a.json --write w2/w3 --out new.txt
  done
  [ "$(mode old.txt)" = 600 ] || fail "a private file that was put back has mode $(mode old.txt)"
  # Where the file system knows no second names, files are put back all the same.
  LD_PRELOAD=$FAILING_CALLS FAIL_CALL=link:1:1 "$bulbwright" plan a.json --zone 8a --save old.json --force --out old.txt ||
    fail "without link(): exit $?"
  [ -z "$(find . -name '.bulbwright-*')" ] || fail "without link(): something is left"
  LD_PRELOAD=$FAILING_CALLS FAIL_CALL=link:1:1 "$bulbwright" plan a.json --save fresh.json --out fresh.txt || fail "new files without link(): exit $?"
fi

# --- signals -----------------------------------------------------------------------------------------------------------------
again
mkfifo ../pipe
for signal in INT TERM HUP; do
  # Waits for a reader of the pipe, with the other file staged. A shell's background jobs ignore SIGINT.
  env --default-signal=INT,HUP "$bulbwright" plan a.json --save s.json --out ../pipe &
  writer=$!
  for _ in $(seq 600); do
    [ -n "$(find . -name '.bulbwright-*' -size +0)" ] && break
    sleep 0.1
  done
  [ -n "$(find . -name '.bulbwright-*')" ] || fail "$signal: nothing was staged"
  kill -s $signal $writer
  wait $writer 2>/dev/null
  got=$?
  [ "$got" -eq $((128 + $(kill -l $signal))) ] || fail "$signal: exit $got"
  same_as_before "$signal"
done
exit "$faults"

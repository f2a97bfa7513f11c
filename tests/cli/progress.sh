#!/bin/bash
# The line that tells of long work: on a terminal alone, after a second, gone at the end.
# Usage: progress.sh PROGRAM SOURCE_FOLDER
program=$(realpath "$1")
pot=$(realpath "$2")/examples/steps.json
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failures=0
fail() { echo "progress: $*"; failures=1; }

# Standard error is the terminal that script(1) makes; standard input keeps the program waiting.
waiting() {
  TERM=xterm script -qec "(sleep 3; cat '$pot') | '$program' plan - $* >$work/out" "$work/seen" >/dev/null
}
waiting
grep -q "bulbwright: 1 s" "$work/seen" || fail "no line after a second: $(cat "$work/seen")"
grep -q $' s\x1b\\[K\r\x1b\\[K' "$work/seen" || fail "the line stays"
grep -q "Fill and plant" "$work/out" || fail "no plan"
waiting --quiet
grep -q "bulbwright: 1 s" "$work/seen" && fail "--quiet shows it"
(sleep 3; cat "$pot") | "$program" plan - >"$work/out" 2>"$work/err"
[ -s "$work/err" ] && fail "no terminal, and yet: $(cat "$work/err")"
[ $failures -eq 0 ]

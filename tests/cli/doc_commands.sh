#!/usr/bin/env bash
# Every command that README, docs, the manual and --help show runs as it is printed: exit 0, no word on
# standard error. A block fenced "```sh build" needs packages or the source and is left to tests/run.sh;
# a "```json" block of README and docs/pot-file.md is a pot file that can be planted.
# Arguments: the program, the source folder.
set -u
bulbwright=$(realpath "$1")
root=$(realpath "$2")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export LC_ALL=C.UTF-8
mkdir "$work/bin" "$work/blocks"
ln -s "$bulbwright" "$work/bin/bulbwright"
PATH=$work/bin:$PATH
faults=0
fail() { echo "$*"; faults=1; }

# blocks_of FILE FENCE: writes each block to blocks/FILE.LINE and prints their names.
blocks_of() {
  awk -v fence="\`\`\`$2" -v to="$work/blocks/$(basename "$1")" '
    /^```/ && open {close(out); open = 0; next}
    $0 == fence {out = to "." NR; printf "" > out; print out; open = 1; next}
    open {print > out}' "$1"
}

run_block() { # NAME FILE: runs it where the examples lie
  [ -d "$work/place" ] || { mkdir "$work/place" && cp -r "$root/examples" "$work/place"; }
  (cd "$work/place" && bash -eu -o pipefail "$2" >"$work/out" 2>"$work/err" </dev/null)
  local got=$?
  [ "$got" -eq 0 ] || fail "$1: exit $got"
  [ ! -s "$work/err" ] || fail "$1: $(cat "$work/err")"
  [ -s "$work/out" ] || [ -n "$(find "$work/place" -newer "$2" -type f)" ] || fail "$1: nothing printed, nothing written"
  ran=$((ran + 1))
}

ran=0
for document in "$root/README.md" "$root"/docs/*.md; do
  rm -rf "$work/place"
  for block in $(blocks_of "$document" sh); do run_block "$(basename "$block")" "$block"; done
done
[ "$ran" -ge 5 ] || fail "only $ran blocks of commands were found"
[ "$(cat "$work/blocks/README.md".* | grep -c bulbwright)" -ge 5 ] || fail "README's commands were not found"

for document in "$root/README.md" "$root/docs/pot-file.md"; do
  found=$(blocks_of "$document" json)
  [ -n "$found" ] || fail "no pot file in $document"
  for pot in $found; do
    bulbwright plan "$pot" >"$work/out" 2>"$work/err" || fail "$(basename "$pot"): $(cat "$work/err")"
  done
done

rm -rf "$work/place"
for command in "" $(awk -F'`' '/^\| `/ {print $2}' "$root/README.md"); do
  # shellcheck disable=SC2086 # no command is no word
  bulbwright $command --help | awk '/^Example/ {open = 1; next} open && /^$/ {exit} open' >"$work/blocks/help"
  run_block "$command --help" "$work/blocks/help"
done

# A paragraph each; roff writes a backslash as \e.
awk '/^\.Sh / {examples = /EXAMPLES/} examples && !/^\./' "$root/docs/man/bulbwright.1" | sed 's/\\e/\\/g' >"$work/manual"
awk -v RS= -v to="$work/blocks/manual" '{print > to "." NR}' "$work/manual"
rm -rf "$work/place"
[ -s "$work/blocks/manual.1" ] || fail "the manual has no examples"
for block in "$work"/blocks/manual.*; do run_block "$(basename "$block")" "$block"; done
exit "$faults"

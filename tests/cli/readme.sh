#!/usr/bin/env bash
# What the README shows is what the program does: the plan of the example pot to the letter, and every
# command it names answers --help with a usage line.
set -euo pipefail
bulbwright=$1
root=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

awk '/^## A plan/ {wanted = 1} wanted && /^```/ {if (open) exit; open = 1; next} open' "$root/README.md" \
  >"$work/readme.txt"
"$bulbwright" plan "$root/examples/steps.json" >"$work/plan.txt"
if [ -n "${UPDATE_README:-}" ]; then
  awk -v plan="$work/plan.txt" '
    /^## A plan/ {wanted = 1}
    wanted && /^```/ && !open {print; open = 1; while ((getline line < plan) > 0) print line; next}
    wanted && open && /^```/ {wanted = open = 0}
    !open' "$root/README.md" >"$work/README.md"
  cp "$work/README.md" "$root/README.md"
else
  diff -u "$work/readme.txt" "$work/plan.txt" || { echo "README's plan is not the program's: UPDATE_README=1"; exit 1; }
fi

for command in $(awk -F'`' '/^\| `/ {print $2}' "$root/README.md"); do
  "$bulbwright" "$command" --help | grep -q "Usage: bulbwright $command" || { echo "no $command"; exit 1; }
done
for script in examples/first-plan.sh tests/run.sh; do
  grep -q "$script" "$root/README.md" || { echo "README does not name $script"; exit 1; }
  [ -x "$root/$script" ] || { echo "$script cannot be run"; exit 1; }
done
for file in "$root"/examples/*.json; do
  "$bulbwright" plan "$file" >/dev/null || { echo "$file has no plan"; exit 1; }
done

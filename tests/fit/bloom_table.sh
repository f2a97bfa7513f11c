#!/bin/bash
# data/bloom.csv is what the fit writes: bloom_table.sh BLOOM_FIT SOURCE_FOLDER
# The new table and the figures stay beside the fit.
set -u
out="$(dirname "$1")"
"$1" --stored --write "$out/bloom.csv" > "$out/bloom_fit.txt" || exit 1
diff -u "$2/data/bloom.csv" "$out/bloom.csv"

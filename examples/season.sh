#!/usr/bin/env bash
# The year of the terrace of Saltmarsh Lane Library: all pots of this folder on one page, their jobs and what to
# buy as tables, a sheet for each pot, and the same pots a year later.
# Usage: examples/season.sh [FOLDER]; the program is $BULBWRIGHT, else the one on the PATH.
set -euo pipefail
pots=$(cd "$(dirname "$0")" && pwd)
to=${1:-season-2026}
bulbwright=${BULBWRIGHT:-bulbwright}

"$bulbwright" season "$pots" --drawer "6 l" --hours 4 --out "$to/season.txt"
"$bulbwright" season "$pots" --drawer "6 l" --by week --out "$to/weeks.txt"
"$bulbwright" season "$pots" --out "$to/jobs.csv" --format csv
"$bulbwright" shop "$pots"/*.json --format csv --out "$to/shopping.csv"
"$bulbwright" plan "$pots" --out-dir "$to/sheets"
"$bulbwright" plan "$pots/steps.json" --compare 12-25,01-25 --out "$to/what-if.txt"
"$bulbwright" season "$pots" --season 2027 --quiet --out "$to/next-year.txt"
ls "$to" "$to/sheets"

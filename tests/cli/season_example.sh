#!/usr/bin/env bash
# examples/season.sh does what it says with the pots of the terrace, at fixed dates.
# Arguments: the program, the source folder.
set -eu
program=$(realpath "$1") source=$(realpath "$2")
work=$(mktemp -d) && trap 'rm -rf "$work"' EXIT
cd "$work"
export LC_ALL=C.UTF-8
BULBWRIGHT=$program "$source/examples/season.sh" out >listing.txt 2>err.txt || { cat err.txt; exit 1; }
[ ! -s err.txt ] || { echo "on standard error: $(cat err.txt)"; exit 1; }
/usr/bin/python3 - "$source/examples" <<'PY'
import csv, glob, json, os, sys
names = sorted(glob.glob(sys.argv[1] + "/*.json"))
pots = [json.load(open(name)) for name in names]  # plain JSON, as jq and Python read it
assert len(pots) >= 8
shapes = {pot["pot"].get("shape", "round") for pot in pots}
assert shapes == {"round", "rectangle", "oval", "half-round"}, shapes
assert any("profile" in pot["pot"] for pot in pots) and any(pot["pot"].get("material") == "fabric" for pot in pots)
assert any("records" in pot["place"] for pot in pots) and any("site" in pot["place"] for pot in pots)
assert any("flower" in pot for pot in pots)
assert any(layer.get("use") == "forcing" for pot in pots for layer in pot["layers"])
stems = [os.path.splitext(os.path.basename(name))[0] for name in names]
assert sorted(os.listdir("out/sheets")) == sorted(stem + ".txt" for stem in stems)
season = open("out/season.txt", encoding="utf-8").read()
assert max(map(len, season.splitlines())) <= 80
for pot in pots:
    assert pot["pot"]["name"] in season, pot["pot"]["name"]
rows = list(csv.DictReader(open("out/jobs.csv", encoding="utf-8", newline="")))
assert {row["pot"] for row in rows} == {pot["pot"]["name"] for pot in pots}
planted = {row["pot"]: row["date"] for row in rows if row["what"] == "plant"}
assert planted["south steps"] == "2027-01-08" and planted["east bowl"] == "2026-12-28", planted
assert planted["sister library"] < "2026-09", planted  # its autumn is in March
assert "2028" in open("out/next-year.txt", encoding="utf-8").read()
assert "2026-12-25" not in season
PY

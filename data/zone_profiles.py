#!/usr/bin/env python3
"""Prints the profile of every hardiness zone from 4a to 11b as CSV: mean monthly normals of the zone's
stations in places.csv and the standard deviation between them. Python's standard library only.

    data/zone_profiles.py > zone_profiles.csv

The program makes the same profiles itself, so that places added with --data count; a test compares
the two. Rules: docs/cold.md, part 1. Figures made from places.csv carry its terms
(places.LICENSE.md).
"""
import csv
import pathlib
import statistics
import sys

MONTHS = [f"{m:02d}" for m in range(1, 13)]
ZONES = [f"{n}{half}" for n in range(4, 12) for half in "ab"]
ALL = [f"{n}{half}" for n in range(1, 14) for half in "ab"]


def read_stations():
    with open(pathlib.Path(__file__).with_name("places.csv"), newline="") as file:
        for row in csv.DictReader(file):
            zone = row["zone"].rstrip("~")
            if not zone:
                continue
            tmin = [float(row[f"tmin_c_{m}"]) for m in MONTHS]
            tmax = [float(row[f"tmax_c_{m}"]) for m in MONTHS]
            means = [(a + b) / 2 for a, b in zip(tmin, tmax)]
            yield {"zone": zone, "lat": float(row["latitude"]), "country": row["country"], "tmin": tmin,
                   "tmax": tmax, "maritime": round(max(means) - min(means), 6) <= 15}


REGIONS = {
    "all": lambda s: True,
    "north-american": lambda s: s["country"] in ("US", "CA", "MX"),
    "maritime": lambda s: s["maritime"],
    "continental": lambda s: not s["maritime"],
}


def select(stations, zones, south, region):
    return [s for s in stations
            if s["zone"] in zones and (s["lat"] < 0) == south and REGIONS[region](s)]


def stations_of(stations, zone, south, region):
    i = ALL.index(zone)
    wide = ALL[max(0, i - 1):i + 2]
    for zones, from_region in (([zone], region), (wide, region), (wide, "all")):
        found = select(stations, zones, south, from_region)
        if len(found) >= 3:
            return found
    if south:
        found = [dict(s, lat=-s["lat"], tmin=s["tmin"][6:] + s["tmin"][:6],
                      tmax=s["tmax"][6:] + s["tmax"][:6])
                 for s in select(stations, [zone], False, "all")]
    return found


def main():
    stations = list(read_stations())
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["zone", "side", "region", "stations", "lat"] + [f"tmin_{m}" for m in MONTHS]
                 + [f"tmax_{m}" for m in MONTHS] + [f"spread_{m}" for m in MONTHS])
    for zone in ZONES:
        for side in ("north", "south"):
            for region in REGIONS:
                found = stations_of(stations, zone, side == "south", region)
                means = [[(s["tmin"][m] + s["tmax"][m]) / 2 for s in found] for m in range(12)]
                out.writerow([zone, side, region, len(found),
                              f"{statistics.fmean(s['lat'] for s in found):.4f}"]
                             + [f"{statistics.fmean(s['tmin'][m] for s in found):.4f}" for m in range(12)]
                             + [f"{statistics.fmean(s['tmax'][m] for s in found):.4f}" for m in range(12)]
                             + [f"{statistics.stdev(means[m]):.4f}" for m in range(12)])


main()

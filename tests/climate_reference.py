#!/usr/bin/env python3
"""An independent, plain implementation of the cold measures, in Python's standard library only.

    climate_reference.py daily FILE FROM TO --latitude DEG --tau HOURS
    climate_reference.py hourly FILE FROM TO --tau HOURS

FILE is a records file as `bulbwright cold --records` reads it (columns date, tmin_c, tmax_c; or
time, temperature_c). Prints one line of JSON: hours at 0 to 7.2 degC, Utah units, Dynamic portions,
mean of the air, and cold weeks of a pot, over the days from FROM to TO, both included, the record cut
to them.

Written from the published equations, sharing no code or tables with the program; the pot is
integrated by small steps where the program uses the exact solution. Sources: docs/cold.md.
"""
import argparse
import csv
import datetime
import json
import math


def day_length(latitude, day_of_year):
    """Spencer 1971; sunrise at -0.8333 degrees."""
    g = 2 * math.pi * (day_of_year - 1) / 365
    declination = (0.006918 - 0.399912 * math.cos(g) + 0.070257 * math.sin(g)
                   - 0.006758 * math.cos(2 * g) + 0.000907 * math.sin(2 * g)
                   - 0.002697 * math.cos(3 * g) + 0.00148 * math.sin(3 * g))
    phi = math.radians(latitude)
    x = ((-math.sin(math.radians(0.8333)) - math.sin(phi) * math.sin(declination))
         / (math.cos(phi) * math.cos(declination)))
    return 24.0 if x <= -1 else 0.0 if x >= 1 else 24 / math.pi * math.acos(x)


def hours_of_days(latitude, days):
    """Linvill 1990 with the night moved by an hour. days: [(date, tmin, tmax)], consecutive."""
    def sun(date):
        n = day_length(latitude, date.timetuple().tm_yday)
        return 12 - n / 2, 12 + n / 2

    def dusk(date, low, high):
        rise, fall = sun(date)
        n = fall - rise
        return low + (high - low) * math.sin(math.pi * n / (n + 4))

    one = datetime.timedelta(days=1)
    hours = []
    for i, (date, low, high) in enumerate(days):
        before = days[i - 1] if i else (date - one, low, high)
        after = days[i + 1] if i + 1 < len(days) else (date + one, low, high)
        rise, fall = sun(date)
        _, fall_before = sun(before[0])
        rise_after, _ = sun(after[0])
        for h in range(24):
            if rise < h <= fall:
                t = low + (high - low) * math.sin(math.pi * (h - rise) / (fall - rise + 4))
            else:
                if h <= rise:
                    start, end = dusk(*before), low
                    since, night = h + 24 - fall_before, rise + 24 - fall_before
                else:
                    start, end = dusk(date, low, high), after[1]
                    since, night = h - fall, rise_after + 24 - fall
                t = start + (end - start) * math.log(1 + since) / math.log(1 + night)
            hours.append(t)
    return hours


def utah(t):
    """Richardson and others 1974, Celsius steps."""
    t -= 1e-9
    if t <= 1.4:
        return 0.0
    if t <= 2.4:
        return 0.5
    if t <= 9.1:
        return 1.0
    if t <= 12.4:
        return 0.5
    if t <= 15.9:
        return 0.0
    return -0.5 if t <= 18.0 else -1.0


def portions(hours):
    """Fishman, Erez, Couvillon 1987: the precursor relaxes to an equilibrium, and is fixed at 1."""
    total, precursor = 0.0, 0.0
    for t in hours:
        kelvin = t + 273.0
        equilibrium = 139500.0 / 2.567e18 * math.exp((12888.8 - 4153.5) / kelvin)
        rate = 2.567e18 * math.exp(-12888.8 / kelvin)
        precursor = equilibrium + (precursor - equilibrium) * math.exp(-rate)
        if precursor >= 1.0:
            z = math.exp(1.6 * 277.0 * (kelvin - 277.0) / kelvin)
            fixed = precursor * z / (1 + z)
            total += fixed
            precursor -= fixed
    return total


def response(t):
    """Share of full cold."""
    if 1.6 <= t <= 9:
        return 1.0
    if -2 < t < 1.6:
        return (1 + math.cos(math.pi * (1.6 - t) / 3.6)) / 2
    if 9 < t < 14:
        return (1 + math.cos(math.pi * (t - 9) / 5)) / 2
    return 0.0


def cold_weeks(lead, hours, tau, latent_k, steps=60):
    """The pot by explicit steps of a minute; cold by hour means; loose and fixed cold by the day.
    lead: hours of the days before, which only set the pot's temperature."""
    sequence = lead + hours
    sequence = sequence[:24] + sequence  # the first day twice
    t, ice, air_before = sequence[23], 0.0, sequence[23]
    loose = fixed = 0.0
    for day in range(len(sequence) // 24):
        gained, kept = 0.0, 1.0
        for air in sequence[24 * day:24 * day + 24]:
            total = 0.0
            for k in range(steps):
                outside = air_before + (air - air_before) * (k + 0.5) / steps
                start = t
                t += (outside - t) / tau / steps
                if (t < 0 and ice < 1) or (t > 0 and ice > 0):
                    wanted = ice - t / latent_k
                    ice = min(1.0, max(0.0, wanted))
                    t = (ice - wanted) * latent_k
                total += (start + t) / 2
            mean = total / steps
            air_before = air
            gained += response(mean)
            if mean > 16:
                kept *= 0.5 ** ((mean - 16) / 4 / 72)
        if day < 1 + len(lead) // 24:
            continue
        loose += gained
        if loose > 240:
            fixed += loose - 240
            loose = 240.0
        loose *= kept
    return (loose + fixed) / 168


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("kind", choices=["daily", "hourly"])
    parser.add_argument("file")
    parser.add_argument("first", type=datetime.date.fromisoformat)
    parser.add_argument("last", type=datetime.date.fromisoformat)
    parser.add_argument("--latitude", type=float, default=45.0)
    parser.add_argument("--tau", type=float, required=True)
    options = parser.parse_args()
    with open(options.file, newline="") as file:
        rows = list(csv.DictReader(file))
    lead_from = options.first - datetime.timedelta(days=14)
    if options.kind == "daily":
        days = [(datetime.date.fromisoformat(r["date"]), float(r["tmin_c"]), float(r["tmax_c"]))
                for r in rows]
        hours = hours_of_days(options.latitude,
                              [d for d in days if options.first <= d[0] <= options.last])
        lead = hours_of_days(options.latitude,
                             [d for d in days if lead_from <= d[0] < options.first])
    else:
        timed = [(datetime.date.fromisoformat(r["time"][:10]), float(r["temperature_c"]))
                 for r in rows]
        hours = [t for date, t in timed if options.first <= date <= options.last]
        lead = [t for date, t in timed if lead_from <= date < options.first]
        lead = lead[len(lead) % 24:]  # whole days
    print(json.dumps({
        "mean_c": sum(hours) / len(hours),
        "hours_0_7": sum(1 for t in hours if -1e-9 <= t <= 7.2 + 1e-9),
        "utah_units": sum(utah(t) for t in hours),
        "chill_portions": portions(hours),
        "cold_weeks": cold_weeks(lead, hours, options.tau, 334.0 * 0.5 / 2.2),
    }))


main()

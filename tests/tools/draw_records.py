#!/usr/bin/env python3
"""Draws a share of the records of db/elements and db/alloys for a second reading against their sources.

draw_records.py [--share 0.05 | --count N] [--seed N] [--db DIR] [--since REVISION]

One line a record: id, figure with unit, source key, locator. The same seed draws the same records as long as the records are the same.
--since: only from records whose figure stood under no record of that revision.
"""
import argparse
import json
import pathlib
import random
import subprocess


def figure(record):
    """The record's figure on one line, as it stands in the file."""
    unit = record.get("unit", "")
    if "points" in record:
        at = record.get("temperature_unit", "")
        start = f" from {record['from']}" if "from" in record else ""
        return "; ".join(f"{value} at {where}" for where, value in record["points"]) + f" [{unit}, {at}{start}]"
    if "equation" in record:
        equation = record["equation"]
        terms = ", ".join(equation["coefficients"])
        where = f"offset {equation.get('offset', '0')} over {' to '.join(equation['range'])}"
        return f"{equation['form']} ({terms}) {where} [{unit}, {record.get('temperature_unit', '')}]"
    for key in ("value", "text"):
        if key in record:
            return f"{record[key]} [{unit}]" if unit else record[key]
    return "none found"


def records(db):
    """Every record as (id, record), files in name order."""
    for folder in ("elements", "alloys"):
        for path in sorted((db / folder).glob("*.json")):
            for record in json.loads(path.read_text(encoding="utf-8"))["records"]:
                yield record["id"], record


def said(slug, record):
    """What a record says, whatever its id."""
    return slug, record["property"], record.get("source", ""), figure(record)


def said_at(revision, db):
    """What every record of a revision says."""
    git = ["git", "-C", str(db)]
    for folder in ("elements", "alloys"):
        listed = subprocess.run([*git, "ls-tree", "--name-only", revision, folder + "/"], capture_output=True, text=True, check=True)
        for name in listed.stdout.split():
            text = subprocess.run([*git, "show", f"{revision}:./{name}"], capture_output=True, text=True, check=True).stdout
            for record in json.loads(text)["records"]:
                yield said(pathlib.Path(name).stem, record)


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--share", type=float, default=0.05, help="share of all records, 0 to 1")
    parser.add_argument("--count", type=int, help="number of records instead of a share")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--db", type=pathlib.Path, default=pathlib.Path(__file__).resolve().parents[2] / "db")
    parser.add_argument("--since", help="a git revision: only records that say what none said then")
    options = parser.parse_args()
    if not 0 < options.share <= 1:
        parser.error("--share must be above 0 and at most 1")
    every = list(records(options.db))
    if options.since:
        then = set(said_at(options.since, options.db))
        every = [(label, record) for label, record in every if said(label.split(".")[0], record) not in then]
    count = options.count or max(1, round(options.share * len(every)))
    if count > len(every):
        parser.error(f"there are {len(every)} records")
    for index in sorted(random.Random(options.seed).sample(range(len(every)), count)):
        label, record = every[index]
        print(f"{label}  {figure(record)}  {record.get('source', '')}  {record.get('locator', '')}")


if __name__ == "__main__":
    main()

# Checks the table of what contributors are asked for against the record of the same book: check_rescans.py TABLE.csv
# RECORD.json. Prints how many pictures it asks for.
import csv
import json
import math
import sys

STEPS = {150, 200, 300, 400, 600, 800, 1200, 1600, 2400, 3200, 4800}


def check(condition, *what):
    if not condition:
        sys.exit(" ".join(map(str, what)))


def down(mm):
    """As the table rounds it: down to a thousandth."""
    return math.floor(mm * 1000 + 1e-6) / 1000


def check_original(line, picture):
    check(line["file"] == picture["file"] and line["contributor"] == (picture["contributor"] or ""), "another picture:", line)
    original = picture["original"] or {"kind": "", "size_mm": None}
    size = original["size_mm"] or {}
    check(line["original"] == original["kind"], "another original:", line)
    for side in ("width", "height"):
        told = line[f"original_{side}_mm"]
        check((float(told) if told else None) == (down(size[side]) if size else None), "another size:", line)


def check_setting(line, picture, findings, tolerance):
    if not line["setting_ppi"]:
        return
    setting, size = int(line["setting_ppi"]), picture["original"]["size_mm"]
    needed = [finding["rescan_needed_ppi"] for finding in findings if finding["rescan_needed_ppi"]]
    check(setting in STEPS, "not a usual setting:", line)
    check(setting == max(STEPS) or setting >= max(needed, default=0) * (1 - tolerance), "too low a setting:", line, needed)
    pixels = sorted(math.floor(size[side] / 25.4 * setting + 0.5) for side in ("width", "height"))
    check(sorted([int(line["width_px"]), int(line["height_px"])]) == pixels, "other pixels:", line, pixels)


def check_frames(line, frames):
    told = list(zip(line["pages"].split(" "), line["frames"].split(" ")))
    there = [(str(frame["page"] or "cover"), frame["id"]) for frame in frames]
    seen = [(str(frame["page"] or "cover"), frame["id"]) for frame in frames if frame["crop_px"]]
    check(set(seen) <= set(told) <= set(there) and len(set(told)) == len(told), "other frames:", line, there)
    sizes = [(frame["placed_width_mm"], frame["placed_height_mm"]) for frame in frames if frame["crop_px"]]
    if sizes:
        width, height = max(sizes, key=lambda size: size[0] * size[1])
        near = abs(float(line["printed_width_mm"]) - width) < 0.01 and abs(float(line["printed_height_mm"]) - height) < 0.01
        check(near, "printed at another size:", line, width, height)


def check_reason(line, findings, record):
    rules = {finding["rule"] for finding in findings if finding["grade"] in ("hold", "query")}
    if any(line["picture"] in spot["pictures"] for glass in record["glasses"] for spot in glass["spots"]):
        rules.add("dirty-glass")
    check(line["reason"] in rules, "a reason that nothing was found for:", line, rules)


with open(sys.argv[1], encoding="utf-8", newline="") as file:
    lines = list(csv.DictReader(file, strict=True))
with open(sys.argv[2], encoding="utf-8") as file:
    record = json.load(file)
pictures = {picture["id"]: picture for picture in record["pictures"]}
check(len({line["picture"] for line in lines}) == len(lines), "a picture is asked for twice")
for line in lines:
    findings = [finding for finding in record["findings"] if finding["picture"] == line["picture"]]
    check_original(line, pictures[line["picture"]])
    check_setting(line, pictures[line["picture"]], findings, record["press"]["density_tolerance"])
    check_frames(line, [frame for frame in record["frames"] if frame["picture"] == line["picture"]])
    check_reason(line, findings, record)
    check(line["instruction"] and line["why"] and line["if_lost"], "no words:", line)
for finding in record["findings"]:
    if finding["rule"] in ("too-few-pixels", "missing-picture") and finding["grade"] != "note":
        check(finding["picture"] in {line["picture"] for line in lines}, "not asked for:", finding)
print(len(lines), "pictures are asked for")

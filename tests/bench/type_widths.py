#!/usr/bin/env python3
"""How narrow type is: advances of letters in fonts, as the estimate of engine/rules/lean_type.h wants them.

Prints for each font, in thousandths of the type size: the mean advance over a text, the means of the classes of
characters that the estimate tells apart, weighted as the text uses them, and the height of capitals and of x.
Usage: type_widths.py BOOK.XML FONT.ttf...   (the words of the book's text elements are the text)
"""
import struct
import sys
import xml.etree.ElementTree as tree
from collections import Counter

THIN = set(" ,.:;!|'‘’()[]-/ijltfrIJ1ιłí")
WIDE = set("mwMW@%—…œæ&")


def tables(data):
    count = struct.unpack(">H", data[4:6])[0]
    for i in range(count):
        tag, _, offset, length = struct.unpack(">4sLLL", data[12 + 16 * i:28 + 16 * i])
        yield tag.decode(), data[offset:offset + length]


def glyphs(cmap):
    """Glyph of each character, from the table's format 4 part."""
    for i in range(struct.unpack(">H", cmap[2:4])[0]):
        start = struct.unpack(">L", cmap[8 + 8 * i:12 + 8 * i])[0]
        part = cmap[start:]
        if struct.unpack(">H", part[:2])[0] != 4:
            continue
        half = struct.unpack(">H", part[6:8])[0]
        words = lambda at: struct.unpack(f">{half // 2}H", part[at:at + half])
        ends, starts, deltas, ranges = words(14), words(16 + half), words(16 + 2 * half), words(16 + 3 * half)
        found = {}
        for k, (first, last) in enumerate(zip(starts, ends)):
            for code in range(first, min(last, 0xFFFE) + 1):
                if ranges[k] == 0:
                    found[code] = (code + deltas[k]) & 0xFFFF
                    continue
                at = 16 + 3 * half + 2 * k + ranges[k] + 2 * (code - first)
                glyph = struct.unpack(">H", part[at:at + 2])[0]
                found[code] = (glyph + deltas[k]) & 0xFFFF if glyph else 0
        return found
    raise SystemExit("no usable character map")


def measure(path, uses):
    table = dict(tables(open(path, "rb").read()))
    units = struct.unpack(">H", table["head"][18:20])[0]
    long_metrics = struct.unpack(">H", table["hhea"][34:36])[0]
    told = len(table["OS/2"]) >= 90  # older tables tell no heights
    x_height, capitals = struct.unpack(">hh", table["OS/2"][86:90]) if told else (0, 0)
    glyph_of = glyphs(table["cmap"])

    def advance(char):
        at = min(glyph_of[ord(char)], long_metrics - 1) * 4
        return 1000 * struct.unpack(">H", table["hmtx"][at:at + 2])[0] / units

    def mean(wanted):
        chosen = {c: n for c, n in uses.items() if wanted(c) and glyph_of.get(ord(c))}
        return sum(advance(c) * n for c, n in chosen.items()) / sum(chosen.values())

    figures = [mean(lambda c: True), mean(lambda c: c == " "), mean(lambda c: c in THIN and c != " "),
               mean(lambda c: c.islower() and c not in THIN and c not in WIDE),
               mean(lambda c: c.isupper() and c not in THIN and c not in WIDE), mean(lambda c: c in WIDE),
               1000 * x_height / units, 1000 * capitals / units]
    print("  ".join(f"{figure:6.0f}" for figure in figures), path.rsplit("/", 1)[-1])


texts = [e.text or "" for e in tree.parse(sys.argv[1]).iter() if e.tag.endswith("}text")]
uses = Counter(" ".join(" ".join(texts).split()))
print(f"{sum(uses.values())} characters; thousandths of the type size")
print("  ".join(f"{name:>6}" for name in ["mean", "space", "thin", "small", "capit.", "wide", "x", "H"]))
for path in sys.argv[2:]:
    measure(path, uses)

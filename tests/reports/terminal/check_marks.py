# Checks marks against the record of the same run, by arithmetic of its own:
# check_marks.py BOOK.xml RECORD.json MARKS.xfdf [COVER_MARKS.xfdf]
# Each finding must have its marks, on the right page of the finished PDF, at its place to 0.01 pt, with its words; each
# mark must lie on its page; and Apache PDFBox must read the same places. Prints how many marks there are.
import json
import math
import pathlib
import subprocess
import sys
import xml.etree.ElementTree as tree

NEAR = 0.01  # points
SPACE = "{http://ns.adobe.com/xfdf/}"
BOOK = "{urn:stoneproof:book:1}"


def points(mm):
    return mm * 72 / 25.4


class Page:
    """A page of the finished PDF: whose page it shows, what of it, in mm from the top left corner of its trim."""

    def __init__(self, number, left, right, top, bottom, own_left, own_right):
        self.number, self.left, self.right, self.top, self.bottom = number, left, right, top, bottom
        self.own_left, self.own_right = own_left, own_right

    def rect(self, area):
        """The area's part on this page in points from its lower left corner, or None."""
        left, right = max(area[0], self.own_left), min(area[2], self.own_right)
        top, bottom = max(area[1], self.top), min(area[3], self.bottom)
        if right - left <= 0.05 or bottom <= top:
            return None
        return [points(left - self.left), points(self.bottom - bottom), points(right - self.left), points(self.bottom - top)]


def length(text):
    """In mm."""
    return float(text[:-2]) * {"mm": 1, "cm": 10, "in": 25.4, "pt": 25.4 / 72}[text[-2:]]


def pages_of(book, record):
    """Of the block, in order: pages, spreads as two, blanks; numbered as the description numbers them."""
    bleed, first_side = record["book"]["bleed_mm"], record["book"]["first_page"]
    pages = []
    for element in book.find(BOOK + "pages"):
        kind, first = element.tag[len(BOOK):], int(element.get("number"))
        width, height = (length(element.get(side)) if element.get(side) else record["book"]["trim_mm"][side]
                         for side in ("width", "height"))
        for i in range(int(element.get("count", "1")) if kind == "blank" else 2 if kind == "spread" else 1):
            is_right = (first + i) % 2 == (1 if first_side == "right" else 0)
            start = width * i if kind == "spread" else 0
            left = start - bleed["inside" if is_right else "outside"]
            right = start + width + bleed["outside" if is_right else "inside"]
            own = [left, right]
            if kind == "spread":
                own[0 if is_right else 1] = width  # the fold
            pages.append(Page(first if kind == "spread" else first + i, left, right, -bleed["top"],
                              height + bleed["bottom"], *own))
    return pages


def cover_of(record):
    cover, book = record["book"]["cover"], record["book"]
    past = dict(book["bleed_mm"])
    if book["binding"] == "case":
        past = dict.fromkeys(past, book["binding_details"]["turn_in_mm"])
    left, right = -past["outside"], cover["size_mm"]["width"] + past["outside"]
    return [Page(0, left, right, -past["top"], cover["size_mm"]["height"] + past["bottom"], left, right)]


def box_of(area):
    """Left, top, right and bottom, not thinner than 2 mm."""
    wide, high = max(area["width"], 2), max(area["height"], 2)
    x, y = area["x"] + area["width"] / 2, area["y"] + area["height"] / 2
    return [x - wide / 2, y - high / 2, x + wide / 2, y + high / 2]


def turned_box(frame):
    rect, turn = frame["frame_mm"], math.radians(frame["turn_degrees"])
    x, y = rect["x"] + rect["width"] / 2, rect["y"] + rect["height"] / 2
    wide = abs(rect["width"] * math.cos(turn)) + abs(rect["height"] * math.sin(turn))
    high = abs(rect["width"] * math.sin(turn)) + abs(rect["height"] * math.cos(turn))
    return {"x": x - wide / 2, "y": y - high / 2, "width": wide, "height": high}


def same(a, b):
    return len(a) == len(b) and all(abs(x - y) <= NEAR for x, y in zip(a, b))


def check(condition, *what):
    if not condition:
        sys.exit(" ".join(map(str, what)))


def marks_of(file):
    reader = pathlib.Path(__file__).parent.parent / "record/pdfbox.sh"
    by_pdfbox = json.loads(subprocess.run(["bash", reader, file], check=True, capture_output=True).stdout)
    marks = []
    for mark in tree.parse(file).getroot().find(SPACE + "annots"):
        rect = [float(part) for part in mark.get("rect").split(",")]
        words = mark.find(SPACE + "contents").text
        marks.append({**mark.attrib, "kind": mark.tag[len(SPACE):], "rect": rect, "contents": words})
    check(len(by_pdfbox) == len(marks), "PDFBox reads", len(by_pdfbox), "marks of", len(marks))
    for theirs, mark in zip(by_pdfbox, marks):
        for key in ("kind", "page", "color", "name", "title", "subject", "contents"):
            check(theirs[key] == mark[key], "PDFBox reads", theirs, "in place of", mark)
        check(same(theirs["rect"], mark["rect"]), "PDFBox reads", theirs["rect"], "in place of", mark["rect"])
    check(len({mark["name"] for mark in marks}) == len(marks), "two marks have one name")
    return marks


def check_file(marks, pages, findings):
    """The marks of one file, finding by finding in the order of the record."""
    left = iter(marks)
    for finding in findings:
        here = [(index, page) for index, page in enumerate(pages) if page.number == finding["page"]]
        places = []
        if finding["area_mm"] is not None:
            places = [(index, page.rect(box_of(finding["area_mm"]))) for index, page in here]
            places = [place for place in places if place[1] is not None]
        for index, rect in places or [(None, None)]:
            mark = next(left, None)
            check(mark, "no mark for", finding)
            check(mark["contents"].startswith(finding["grade"].capitalize() + ". "), "no grade in", mark)
            check(finding["message"] in mark["contents"] and finding["remedy"] in mark["contents"], "other words:", mark)
            check(mark["kind"] == ("square" if rect else "text"), "wrong kind:", mark)
            if rect:
                check(int(mark["page"]) == index and same(mark["rect"], rect), mark, "in place of", index, rect)
            else:
                check(int(mark["page"]) in ([index for index, page in here] or [0]), "on another page:", mark)
            page = pages[int(mark["page"])]
            width, height = points(page.right - page.left), points(page.bottom - page.top)
            x, y, right, top = mark["rect"]
            check(-NEAR <= x < right <= width + NEAR and -NEAR <= y < top <= height + NEAR, "off the page:", mark)
    check(next(left, None) is None, "marks without a finding")


book, record = tree.parse(sys.argv[1]).getroot(), json.load(open(sys.argv[2], encoding="utf-8"))
frames = {frame["id"]: frame for frame in record["frames"]}
for finding in record["findings"]:
    if finding["rule"] in ("too-few-pixels", "missing-picture"):  # about the whole frame
        box = turned_box(frames[finding["frame"]])
        check(same(list(box.values()), list(finding["area_mm"].values())), "not at its frame:", finding)

marks, apart = marks_of(sys.argv[3]), len(sys.argv) > 4
of_cover = [finding for finding in record["findings"] if finding["page"] == 0]
of_block = [finding for finding in record["findings"] if finding["page"] != 0]
check_file(marks, pages_of(book, record), of_block if apart else record["findings"])
print(len(marks), end="")
if apart:
    cover_marks = marks_of(sys.argv[4])
    check_file(cover_marks, cover_of(record), of_cover)
    print(" and", len(cover_marks), end="")
print(" marks, each at its place")

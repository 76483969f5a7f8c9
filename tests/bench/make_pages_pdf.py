#!/usr/bin/env python3
"""Makes a PDF as a layout program would: pages of text with three pictures each, one of them in a form, one clipped.
Usage: make_pages_pdf.py OUT.pdf PAGES JPEG...     (every picture is an object of its own, made of the JPEGs by turns)"""
import random
import struct
import sys
import zlib

FONT = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"


def size_of(jpeg):
    """Width and height of its frame (ISO 10918-1, B.2.2)."""
    at = 2
    while True:
        marker, length = struct.unpack(">HH", jpeg[at : at + 4])
        if 0xFFC0 <= marker <= 0xFFC2:
            height, width = struct.unpack(">HH", jpeg[at + 5 : at + 9])
            return width, height
        at += 2 + length


class Pdf:
    def __init__(self, path):
        self.file = open(path, "wb")
        self.file.write(b"%PDF-1.6\n%\xe2\xe3\xcf\xd3\n")
        self.places = [0]

    def reserve(self):
        self.places.append(0)
        return len(self.places) - 1

    def put(self, number, body):
        self.places[number] = self.file.tell()
        self.file.write(b"%d 0 obj\n" % number + body + b"\nendobj\n")
        return number

    def add(self, body):
        return self.put(self.reserve(), body)

    def stream(self, dictionary, data):
        return self.add(b"<<" + dictionary + b"/Length %d>>\nstream\n" % len(data) + data + b"\nendstream")

    def deflated(self, dictionary, data):
        return self.stream(dictionary + b"/Filter/FlateDecode", zlib.compress(data))

    def end(self, root):
        table = self.file.tell()
        self.file.write(b"xref\n0 %d\n0000000000 65535 f \n" % len(self.places))
        for place in self.places[1:]:
            self.file.write(b"%010d 00000 n \n" % place)
        self.file.write(b"trailer\n<</Size %d/Root %d 0 R>>\nstartxref\n%d\n%%%%EOF\n" % (len(self.places), root, table))


def lines_of_text(random_words):
    """56 lines of eleven words, kerned here and there as layout programs do."""
    out = [b"BT /T 9.5 Tf 13 TL 1 0 0 1 50 790 Tm"]
    for _ in range(56):
        pieces = []
        for _ in range(11):
            word = "".join(random_words.choice("etaoinshrdlu") for _ in range(random_words.randint(2, 9)))
            cut = random_words.randint(1, len(word))
            pieces.append("(%s)%d(%s )" % (word[:cut], random_words.randint(-40, 40), word[cut:]))
        out.append(b"[" + "".join(pieces).encode() + b"] TJ T*")
    return b"\n".join(out + [b"ET"])


def main():
    out, pages = sys.argv[1], int(sys.argv[2])
    jpegs = [open(name, "rb").read() for name in sys.argv[3:]]
    words = random.Random(7)
    pdf = Pdf(out)
    root, tree = pdf.reserve(), pdf.reserve()
    program = pdf.deflated(b"", open(FONT, "rb").read())
    widths = b" ".join(b"%d" % words.randint(300, 700) for _ in range(32, 127))
    descriptor = pdf.add(b"<</Type/FontDescriptor/FontName/ABCDEF+DejaVuSans/Flags 32/Ascent 760/Descent -240/FontFile2 %d 0 R>>" % program)
    font = pdf.add(b"<</Type/Font/Subtype/TrueType/BaseFont/ABCDEF+DejaVuSans/Encoding/WinAnsiEncoding/FirstChar 32/LastChar 126"
                   b"/Widths[" + widths + b"]/FontDescriptor %d 0 R>>" % descriptor)
    kids = []
    for page in range(pages):
        pictures = []
        for i in range(3):
            jpeg = jpegs[(3 * page + i) % len(jpegs)]
            pictures.append(pdf.stream(b"/Type/XObject/Subtype/Image/Width %d/Height %d/BitsPerComponent 8/ColorSpace/DeviceRGB"
                                       b"/Filter/DCTDecode" % size_of(jpeg), jpeg))
        form = pdf.deflated(b"/Type/XObject/Subtype/Form/BBox[0 0 200 150]/Matrix[1 0 0 1 30 30]/Resources<</XObject<</P %d 0 R>>>>"
                            % pictures[2], b"q 0.3 w 0 0 200 150 re S 200 0 0 150 0 0 cm /P Do Q")
        content = pdf.deflated(b"", b"q 240 0 0 180 50 600 cm /A Do Q\nq 300 400 200 150 re W n 0.98 0.17 -0.17 0.98 0 0 cm "
                               b"240 0 0 180 320 330 cm /B Do Q\nq 1 0 0 1 20 20 cm /F Do Q\n0.5 w 0 0 0 1 K 50 780 m 545 780 l S\n"
                               + lines_of_text(words))
        kids.append(pdf.add(b"<</Type/Page/Parent %d 0 R/Contents %d 0 R/TrimBox[10 10 585 832]/Resources<</Font<</T %d 0 R>>/XObject"
                            b"<</A %d 0 R/B %d 0 R/F %d 0 R>>>>>>" % (tree, content, font, pictures[0], pictures[1], form)))
    pdf.put(tree, b"<</Type/Pages/Count %d/MediaBox[0 0 595 842]/Kids[" % pages + b" ".join(b"%d 0 R" % kid for kid in kids) + b"]>>")
    pdf.put(root, b"<</Type/Catalog/Pages %d 0 R>>" % tree)
    pdf.end(root)


main()

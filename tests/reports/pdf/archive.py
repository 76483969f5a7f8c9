"""Looks a PDF over by the clauses of ISO 19005-3:2012 (PDF/A-3), conformance level B, that a document of ours can meet or
break, through what qpdf reads of it. Prints the clauses that were checked, or complaints with their clause; the exit status
is 1 with complaints. The clauses' numbers are from memory: no copy of the standard was at hand.

Usage: archive.py FILE.pdf
"""

import base64
import json
import re
import struct
import subprocess
import sys
import xml.etree.ElementTree as xml

import cff

RDF = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
DC = "{http://purl.org/dc/elements/1.1/}"
XMP = "{http://ns.adobe.com/xap/1.0/}"
PDF = "{http://ns.adobe.com/pdf/1.3/}"
PDFAID = "{http://www.aiim.org/pdfa/ns/id/}"


class File:
    def __init__(self, path):
        self.bytes = open(path, "rb").read()
        told = subprocess.run(
            ["qpdf", "--json=2", "--json-key=qpdf", "--json-stream-data=inline", "--decode-level=generalized", path],
            check=True, capture_output=True).stdout
        self.objects = json.loads(told)["qpdf"][1]
        self.trailer = self.objects.pop("trailer")["value"]
        self.catalog = self.at(self.trailer["/Root"])
        self.pages = [o for o in self.dictionaries() if o.get("/Type") == "/Page"]

    def at(self, value):
        """What a value is or refers to."""
        while isinstance(value, str) and re.fullmatch(r"\d+ \d+ R", value):
            found = self.objects["obj:" + value]
            value = found["stream"]["dict"] if "stream" in found else found["value"]
        return value

    def data(self, reference):
        return base64.b64decode(self.objects["obj:" + reference]["stream"]["data"])

    def streams(self):
        return [o["stream"]["dict"] for o in self.objects.values() if "stream" in o]

    def dictionaries(self):
        """Every dictionary of the file, also those inside others."""
        found = []

        def walk(value):
            if isinstance(value, dict):
                found.append(value)
                for inner in value.values():
                    walk(inner)
            elif isinstance(value, list):
                for inner in value:
                    walk(inner)

        for each in self.objects.values():
            walk(each["stream"]["dict"] if "stream" in each else each["value"])
        return found

    def of(self, key, value):
        return [d for d in self.dictionaries() if d.get(key) == value]


def text(value):
    return value[2:] if isinstance(value, str) and value[:2] == "u:" else value


CLAUSES = []


def clause(number, words):
    def named(check):
        CLAUSES.append((number, words, check))
        return check
    return named


@clause("6.1.2", "header, then a comment of at least four bytes beyond ASCII")
def header(f):
    return re.match(rb"%PDF-1\.[0-7]\r?\n%[\x80-\xff]{4}", f.bytes)


@clause("6.1.3", "trailer with an ID and without encryption; nothing after the end")
def trailer(f):
    return len(f.trailer["/ID"]) == 2 and "/Encrypt" not in f.trailer and re.search(rb"%%EOF\r?\n?$", f.bytes)


@clause("6.1.4", "cross-reference table with single line ends")
def cross_references(f):
    start = int(re.search(rb"startxref\s+(\d+)", f.bytes[-100:]).group(1))
    return re.match(rb"xref\r?\n0 \d+\r?\n", f.bytes[start:])


@clause("6.1.7.1", "streams are in the file")
def streams(f):
    return all(key not in s for s in f.streams() for key in ("/F", "/FFilter", "/FDecodeParms"))


@clause("6.1.7.2", "no LZW, no encryption filter")
def filters(f):
    return all(s.get("/Filter") in (None, "/FlateDecode", "/DCTDecode") for s in f.streams())


@clause("6.1.9", "objects begin and end on lines of their own")
def objects(f):
    begun = len(re.findall(rb"(?:^|\n)\d+ 0 obj\r?\n", f.bytes))
    ended = len(re.findall(rb"\nendobj\r?\n", f.bytes))
    return begun == ended == len(f.objects)


@clause("6.1.13", "limits: pages of 3 to 14,400 units, strings of 32,767 bytes, names of 127")
def limits(f):
    boxes = [f.at(p["/MediaBox"]) for p in f.pages]
    texts = [v for d in f.dictionaries() for v in d.values() if isinstance(v, str)]
    return (all(3 <= b[2] - b[0] <= 14400 and 3 <= b[3] - b[1] <= 14400 for b in boxes)
            and all(len(t) < 32767 for t in texts) and all(len(k) < 128 for d in f.dictionaries() for k in d))


@clause("6.2.2", "pages have their own resources")
def resources(f):
    return all("/Resources" in p for p in f.pages)


@clause("6.2.3", "one output intent with an RGB profile that says its own size")
def output_intent(f):
    intents = [f.at(i) for i in f.catalog["/OutputIntents"]]
    profile = f.data(intents[0]["/DestOutputProfile"])
    return (len(intents) == 1 and intents[0]["/S"] == "/GTS_PDFA1" and text(intents[0]["/OutputConditionIdentifier"])
            and f.at(intents[0]["/DestOutputProfile"])["/N"] == 3 and struct.unpack(">I", profile[:4])[0] == len(profile)
            and profile[8] in (2, 4) and profile[12:20] == b"mntrRGB " and profile[36:40] == b"acsp")


@clause("6.2.4.3", "device colours are those of the output intent")
def colours(f):
    spaces = {json.dumps(f.at(d[k])) for d in f.dictionaries() for k in ("/ColorSpace", "/CS") if k in d}
    contents = b"".join(f.data(p["/Contents"]) for p in f.pages)
    return spaces <= {'"/DeviceRGB"'} and not re.search(rb"(?m)[\d.] (g|G|k|K|cs|CS)$", contents)


@clause("6.2.5", "graphics states set nothing but opacity")
def graphics_states(f):
    found = [f.at(s) for p in f.pages for s in f.at(f.at(p["/Resources"]).get("/ExtGState", {})).values()]
    return all(set(s) <= {"/Type", "/ca", "/CA"} for s in found)


@clause("6.2.8", "pictures have no alternates, no OPI, no interpolation")
def images(f):
    return all(not {"/Alternates", "/OPI", "/Interpolate"} & set(i) for i in f.of("/Subtype", "/Image"))


@clause("6.2.9", "no reference, PostScript or OPI in forms")
def forms(f):
    return (not f.of("/Subtype", "/PS")
            and all(not {"/OPI", "/Ref", "/PS", "/Subtype2"} & set(i) for i in f.of("/Subtype", "/Form")))


@clause("6.2.10", "a page with veils says in which space they are blended")
def transparency(f):
    return all(p.get("/Group", {}).get("/S") == "/Transparency" and p["/Group"].get("/CS") == "/DeviceRGB" for p in f.pages
               if re.search(rb"/A\d+ gs", f.data(p["/Contents"])))


def fonts(f):
    """Composite fonts with their descendant, descriptor and program."""
    for font in f.of("/Subtype", "/Type0"):
        below = f.at(f.at(font["/DescendantFonts"])[0])
        descriptor = f.at(below["/FontDescriptor"])
        yield font, below, descriptor, f.data(descriptor[PROGRAMS[below["/Subtype"]]])


PROGRAMS = {"/CIDFontType2": "/FontFile2", "/CIDFontType0": "/FontFile3"}


def glyphs(f, font, below):
    """What the program calls the glyph of every code from 0 on, and what the PDF says of its width."""
    widths = f.at(below["/W"])
    if below["/Subtype"] == "/CIDFontType2":
        mapped = f.data(below["/CIDToGIDMap"])
        return list(zip(struct.unpack(f">{len(mapped) // 2}H", mapped), widths[1]))
    by_cid = {first + i: w for first, run in zip(widths[::2], widths[1::2]) for i, w in enumerate(run)}
    cids = [int(cid) for cid in re.findall(rb"(?m)^<[0-9A-F]{4}> (\d+)$", f.data(font["/Encoding"]))]
    return [(cid, by_cid[cid]) for cid in [0] + cids]


def advances(program):
    """Units in an em, and the advance of every glyph, from a TrueType file."""
    tables = {}
    for i in range(struct.unpack(">H", program[4:6])[0]):
        tag, _, at, _ = struct.unpack(">4sIII", program[12 + 16 * i:28 + 16 * i])
        tables[tag] = at
    em = struct.unpack(">H", program[tables[b"head"] + 18:][:2])[0]
    count = struct.unpack(">H", program[tables[b"hhea"] + 34:][:2])[0]
    return em, [struct.unpack(">H", program[tables[b"hmtx"] + 4 * i:][:2])[0] for i in range(count)]


@clause("6.2.11.2", "no fonts but composite ones over TrueType and CFF")
def font_kinds(f):
    kinds = {d["/Subtype"] for d in f.of("/Type", "/Font")}
    programs = [f.at(d["/FontFile3"])["/Subtype"] for d in f.of("/Type", "/FontDescriptor") if "/FontFile3" in d]
    return kinds <= {"/Type0", *PROGRAMS} and set(programs) <= {"/CIDFontType0C"}


@clause("6.2.11.3", "codes lead to glyphs by Identity-H and a map in the file, or a CMap of its collection")
def font_maps(f):
    def mapped(font, below):
        own = f.at(below["/CIDSystemInfo"])
        if below["/Subtype"] == "/CIDFontType2":
            return font["/Encoding"] == "/Identity-H" and own["/Supplement"] == 0 and glyphs(f, font, below)
        encoding, told = f.at(font["/Encoding"]), f.data(font["/Encoding"]).decode()
        said = "<</Registry(%s)/Ordering(%s)/Supplement %d>>" % (text(own["/Registry"]), text(own["/Ordering"]), own["/Supplement"])
        return (encoding["/CIDSystemInfo"] == own and said in told and "/CMapName" + encoding["/CMapName"] in told
                and encoding.get("/WMode", 0) == 0 and "/WMode" not in told and "CIDToGIDMap" not in below and glyphs(f, font, below))
    return all(mapped(font, below) for font, below, _, _ in fonts(f))


@clause("6.2.11.4", "fonts are embedded; subsets list no CIDs")
def font_files(f):
    begins = {"/CIDFontType2": b"\0\1\0\0", "/CIDFontType0": b"\1\0\4"}
    return all(program.startswith(begins[below["/Subtype"]]) and "/CIDSet" not in descriptor
               and re.match(r"/[A-Z]{6}\+", font["/BaseFont"]) for font, below, descriptor, program in fonts(f))


@clause("6.2.11.5", "widths are those of the font")
def font_widths(f):
    for font, below, _, program in fonts(f):
        if below["/Subtype"] == "/CIDFontType2":
            em, known = advances(program)
            known = {glyph: known[min(glyph, len(known) - 1)] for glyph, _ in glyphs(f, font, below)}
        else:
            em, known = cff.widths(program)
        if any(abs(known[glyph] * 1000 / em - width) > 1 for glyph, width in glyphs(f, font, below)):
            return False
    return True


@clause("6.2.11.8", "no glyph is the one for missing ones")
def no_missing_glyph(f):
    return all(glyph != 0 for font, below, _, _ in fonts(f) for glyph, _ in glyphs(f, font, below)[1:])


def annotations(f):
    return [f.at(a) for p in f.pages for a in f.at(p.get("/Annots", []))]


@clause("6.3.1", "annotations are links and notes")
def annotation_kinds(f):
    return {a["/Subtype"] for a in annotations(f)} <= {"/Link", "/Text"}


@clause("6.3.2", "annotations print and are not hidden; notes neither grow nor turn")
def annotation_flags(f):
    hidden, invisible, toggle, no_view = 2, 1, 256, 32
    return all(a["/F"] & 4 and not a["/F"] & (hidden | invisible | toggle | no_view)
               and (a["/Subtype"] != "/Text" or a["/F"] & 24 == 24) for a in annotations(f))


@clause("6.3.3", "notes have an appearance, the normal one only")
def appearances(f):
    return all(set(a["/AP"]) == {"/N"} and f.at(a["/AP"]["/N"])["/Subtype"] == "/Form"
               for a in annotations(f) if a["/Subtype"] == "/Text")


@clause("6.4, 6.5, 6.9, 6.10, 6.11", "no forms to fill in, actions, layers, alternate presentations, requirements")
def nothing_else(f):
    barred = {"/A", "/AA", "/OpenAction"}
    return (not {"/AcroForm", "/AA", "/OpenAction", "/OCProperties", "/Requirements", "/NeedsRendering"} & set(f.catalog)
            and not any(barred & set(a) for a in annotations(f)) and not any({"/AA", "/PresSteps"} & set(p) for p in f.pages)
            and not {"/JavaScript", "/AlternatePresentations"} & set(f.catalog.get("/Names", {})))


def description(f):
    packet = f.data(f.catalog["/Metadata"])
    return packet, xml.fromstring(packet.decode("utf-8")).find(RDF + "RDF/" + RDF + "Description")


@clause("6.6.2.1", "metadata in the file as it is, without bytes or encoding in its packet header")
def metadata(f):
    packet, about = description(f)
    head = packet[:packet.index(b"?>")]
    return (about is not None and "/Filter" not in f.at(f.catalog["/Metadata"]) and packet in f.bytes
            and b"bytes=" not in head and b"encoding=" not in head)


@clause("6.6.2.3", "metadata of known schemas only")
def schemas(f):
    return all(e.tag.startswith((DC, XMP, PDF, PDFAID)) for e in description(f)[1])


def seconds(date):
    """The digits of a date, whichever way it is written."""
    return None if date is None else re.sub(r"[^\d]", "", text(date))


@clause("6.6.3", "the information dictionary and the metadata say the same")
def information(f):
    info, about = f.at(f.trailer["/Info"]), description(f)[1]

    def first(tag):
        found = about.find(tag + f"/{RDF}Alt/{RDF}li")
        return None if found is None else found.text

    def plain(tag):
        return about.findtext(tag)

    return (text(info.get("/Title")) == (first(DC + "title") or "") and text(info.get("/Subject")) == first(DC + "description")
            and text(info.get("/Creator")) == plain(XMP + "CreatorTool") and text(info.get("/Producer")) == plain(PDF + "Producer")
            and seconds(info.get("/CreationDate")) == seconds(plain(XMP + "CreateDate"))
            and seconds(info.get("/ModDate")) == seconds(plain(XMP + "ModifyDate"))
            and not {"/Author", "/Keywords"} & set(info))


@clause("6.6.4", "the file says that it is PDF/A-3b")
def conformance(f):
    about = description(f)[1]
    return about.findtext(PDFAID + "part") == "3" and about.findtext(PDFAID + "conformance") == "B"


@clause("6.8", "files inside have a kind, two names, a relation and their size; the document names them as its own")
def embedded_files(f):
    listed = f.at(f.at(f.at(f.catalog.get("/Names", {})).get("/EmbeddedFiles", {})).get("/Names", []))
    own = f.at(f.catalog.get("/AF", []))
    for reference in listed[1::2]:
        file = f.at(reference)
        stream, data = f.at(file["/EF"]["/F"]), f.data(file["/EF"]["/F"])
        if not (reference in own and text(file["/F"]) and text(file["/UF"]) and "/" in stream["/Subtype"][1:]
                and file["/AFRelationship"] in ("/Source", "/Data", "/Alternative", "/Supplement", "/Unspecified")
                and stream["/Params"]["/Size"] == len(data)):
            return False
    return sorted(listed[1::2]) == sorted(own) and listed[::2] == sorted(listed[::2])


def main(path):
    file = File(path)
    complaints = 0
    for number, words, check in CLAUSES:
        try:
            met = check(file)
        except (KeyError, IndexError, TypeError, AttributeError, ValueError, struct.error) as fault:
            met, words = False, f"{words} ({fault!r})"
        complaints += not met
        print(f"{number}: {'' if met else 'NOT MET: '}{words}")
    return 1 if complaints else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))

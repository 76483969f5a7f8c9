"""Reads from a bare CFF font (Adobe Technical Notes 5176 and 5177) what a PDF says of it too: how wide its glyphs are."""

import struct


def index(data, at):
    """The entries of an INDEX, and where it ends."""
    count, = struct.unpack_from(">H", data, at)
    if count == 0:
        return [], at + 2
    size = data[at + 2]
    offsets = [int.from_bytes(data[at + 3 + i * size:at + 3 + (i + 1) * size], "big") for i in range(count + 1)]
    base = at + 2 + (count + 1) * size
    return [data[base + a:base + b] for a, b in zip(offsets, offsets[1:])], base + offsets[-1]


def real(data, at):
    digits = ""
    while True:
        for nibble in (data[at] >> 4, data[at] & 15):
            if nibble == 15:
                return float(digits), at + 1
            digits += "0123456789.EX?-"[nibble].replace("X", "E-")
        at += 1


def number(data, at, in_dict):
    """An operand and where it ends, or nothing where an operator is."""
    b = data[at]
    if b == 28:
        return struct.unpack_from(">h", data, at + 1)[0], at + 3
    if in_dict and b == 29:
        return struct.unpack_from(">i", data, at + 1)[0], at + 5
    if in_dict and b == 30:
        return real(data, at + 1)
    if not in_dict and b == 255:
        return struct.unpack_from(">i", data, at + 1)[0] / 65536, at + 5
    if 32 <= b <= 246:
        return b - 139, at + 1
    if 247 <= b <= 250:
        return (b - 247) * 256 + data[at + 1] + 108, at + 2
    if 251 <= b <= 254:
        return -(b - 251) * 256 - data[at + 1] - 108, at + 2
    return None


def dictionary(data):
    found, operands, at = {}, [], 0
    while at < len(data):
        operand = number(data, at, True)
        if operand:
            operands.append(operand[0])
            at = operand[1]
        else:
            escaped = data[at] == 12
            found[(12, data[at + 1]) if escaped else data[at]] = operands
            operands, at = [], at + 1 + escaped
    return found


def stated_width(char_string):
    """What a glyph says of its width, beside the nominal one; nothing where it has the default one. Routines are not
    followed: a subset of ours has none."""
    operands, at = [], 0
    while operand := number(char_string, at, False):
        operands.append(operand[0])
        at = operand[1]
    operator = char_string[at]
    own = {14: 0, 21: 2, 4: 1, 22: 1}.get(operator)  # endchar, rmoveto, vmoveto, hmoveto
    if own is None:
        raise ValueError(f"a glyph begins with the operator {operator}")
    return operands[0] if len(operands) > own else None


def widths(font):
    """Units in an em, and by CID (glyph number where the font is not CID-keyed) how many each glyph is wide."""
    _, at = index(font, font[2])
    tops, at = index(font, at)
    top = dictionary(tops[0])
    glyphs, _ = index(font, top[17][0])
    by_cid = (12, 30) in top

    def private_of(holder):
        size, at = holder[18]
        return dictionary(font[at:at + size])

    if by_cid:
        privates = [private_of(dictionary(d)) for d in index(font, top[(12, 36)][0])[0]]
        select = selected(font, top[(12, 37)][0], len(glyphs))
        names = charset(font, top[15][0], len(glyphs))
    else:
        privates, select, names = [private_of(top)], [0] * len(glyphs), range(len(glyphs))
    found = {}
    for name, which, glyph in zip(names, select, glyphs):
        width = stated_width(glyph)
        default, nominal = privates[which].get(20, [0])[0], privates[which].get(21, [0])[0]
        found[name] = default if width is None else nominal + width
    return 1 / top.get((12, 7), [0.001])[0], found


def selected(font, at, count):
    """Which private dictionary each glyph has (FDSelect)."""
    if font[at] == 0:
        return list(font[at + 1:at + 1 + count])
    ranges, = struct.unpack_from(">H", font, at + 1)
    found = []
    for i in range(ranges):
        first, which, end = struct.unpack_from(">HBH", font, at + 3 + 3 * i)
        found += [which] * (end - first)
    return found


def charset(font, at, count):
    """The CID of each glyph."""
    form, at, found = font[at], at + 1, [0]
    while len(found) < count:
        first, = struct.unpack_from(">H", font, at)
        left = int.from_bytes(font[at + 2:at + 2 + form], "big")  # form 0 has no ranges, those of 1 and 2 as many bytes
        found += range(first, first + left + 1)
        at += 2 + form
    return found

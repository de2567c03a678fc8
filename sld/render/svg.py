"""A sheet as SVG: true millimetres, a group for each device with its hover title, the font inside."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import pairwise
from xml.sax.saxutils import escape, quoteattr

from sld.render.colour import BLACK, ink
from sld.render.font import further_base64, subset_base64
from sld.render.picture import svg_picture
from sld.sheet.sheet import Group, Sheet
from sld.symbols.script import runs_left, starts_right
from sld.symbols.stroke import Arc, Circle, Curve, Dash, Fill, Point, Polyline, Stroke, Text
from sld.symbols.typeface import FAMILY, font_size_mm, printable

__all__ = ["anchors", "inline_svg", "letters", "style", "svg"]

WIDTH_MM = 0.25
HEIGHT_MM = 2.5
_MIRRORED = ("()", "[]", "{}", "<>", "«»", "‹›", "≤≥")
"""Signs that a viewer shows turned in text that runs from right to left."""
_FORBIDDEN = re.compile("[\ufffe\uffff]")
DEVICE_LAYERS = ("symbol", "flag")


@lru_cache(maxsize=16384)
def _number(value: float) -> str:
    """Return a number with at most three decimals, without what can be left out."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _clean(text: str) -> str:
    """Return the text with the characters that XML 1.0 forbids made spaces."""
    shown = printable(text)
    return shown if shown.isascii() else _FORBIDDEN.sub(" ", shown)


def _pair(point: Point) -> str:
    return f"{_number(point[0])} {_number(point[1])}"


def _line_path(stroke: Polyline) -> str:
    """Return the path data of a polyline, with H and V for its horizontal and vertical parts."""
    points = [(_number(x), _number(y)) for x, y in stroke.points]
    words = [f"M{points[0][0]} {points[0][1]}"]
    for (x1, y1), (x2, y2) in pairwise(points):
        if x1 != x2 and y1 != y2:
            words.append(f"L{x2} {y2}")
        else:
            words.append(f"V{y2}" if y1 != y2 else f"H{x2}")
    return "".join(words) + ("Z" if stroke.closed else "")


def _arc_path(arc: Arc) -> str:
    """Return the path data of an arc; a full turn needs two."""
    rx, ry = _number(arc.radius_x_mm), _number(arc.radius_y_mm)

    def at(angle_deg: float) -> str:
        a = math.radians(angle_deg)
        return _pair((arc.centre[0] + arc.radius_x_mm * math.cos(a), arc.centre[1] + arc.radius_y_mm * math.sin(a)))

    turn = arc.end_deg - arc.start_deg
    middle = (arc.start_deg + arc.end_deg) / 2
    sweep = 1 if turn >= 0 else 0
    halves = f"A{rx} {ry} 0 0 {sweep} {at(middle)}A{rx} {ry} 0 0 {sweep} {at(arc.end_deg)}"
    return f"M{at(arc.start_deg)}{halves}"


def _curve_path(curve: Curve) -> str:
    groups = [curve.points[n : n + 3] for n in range(1, len(curve.points), 3)]
    return f"M{_pair(curve.points[0])}" + "".join("C" + " ".join(_pair(p) for p in group) for group in groups)


def _pen(stroke: Polyline | Circle | Arc | Curve, colour: str) -> str:
    """Return the attributes in which a stroke differs from the default pen."""
    ink = "" if colour == BLACK else f' stroke="{colour}"'
    width = ink + ("" if stroke.width_mm == WIDTH_MM else f' stroke-width="{_number(stroke.width_mm)}"')
    if not isinstance(stroke, Polyline) or stroke.dash is Dash.CONTINUOUS:
        return width
    dashes = " ".join(_number(part * stroke.width_mm) for part in stroke.dash.value)
    # the dots of ISO 128-2 are half a line width long and hardly print; a round cap makes them one and a half
    cap = ' stroke-linecap="round"' if stroke.dash is Dash.DOTTED else ""
    return f'{width} stroke-dasharray="{dashes}"{cap}'


def _filled(stroke: Stroke, colour: str) -> str:
    """Return the attribute that fills a shape, nothing for one that is not filled."""
    fill = stroke.fill if isinstance(stroke, Polyline | Circle) else Fill.NONE
    if fill is Fill.NONE:
        return ""
    return f' fill="{colour}"' if fill is Fill.INK else ' fill="#fff"'


def _shapes(strokes: Iterable[Stroke], scheme: str) -> Iterator[str]:
    """Yield the elements of all strokes but texts; neighbours drawn with one pen share a path."""
    pen, path = "", ""
    for stroke in strokes:
        if isinstance(stroke, Text):
            continue
        colour = ink(stroke, scheme)
        attributes, fill = _pen(stroke, colour), _filled(stroke, colour)
        if isinstance(stroke, Circle) or fill or attributes != pen:
            if path:
                yield f'<path d="{path}"{pen}/>'
            path = ""
        pen = attributes
        if isinstance(stroke, Circle):
            x, y = stroke.centre
            radius = _number(stroke.radius_mm)
            yield f'<circle cx="{_number(x)}" cy="{_number(y)}" r="{radius}"{attributes}{fill}/>'
            continue
        if isinstance(stroke, Polyline):
            data = _line_path(stroke)
        else:
            data = _arc_path(stroke) if isinstance(stroke, Arc) else _curve_path(stroke)
        if fill:
            yield f'<path d="{data}"{attributes}{fill}/>'
        else:
            path += data
    if path:
        yield f'<path d="{path}"{pen}/>'


def _text(text: Text) -> str:
    """Return one line of text, started at its baseline."""
    words = _clean(text.text)
    size = "" if text.height_mm == HEIGHT_MM else f' font-size="{_number(font_size_mm(text.height_mm))}"'
    space = ' xml:space="preserve"' if words != words.strip() or "  " in words else ""
    # a viewer orders letters itself; the end of a line that runs from right to left is its left end
    way = ' direction="rtl" text-anchor="end"' if starts_right(words) else ""
    return f'<text x="{_number(text.at[0])}" y="{_number(text.at[1])}"{size}{space}{way}>{escape(words)}</text>'


def _identifiers(groups: Iterable[Group]) -> list[str]:
    """Return an XML name for each group, made from its key, none twice."""
    used: set[str] = set()
    names = []
    for group in groups:
        name = re.sub(r"[^A-Za-z0-9_.-]", "_", group.key)
        name = stem = name if re.match(r"[A-Za-z_]", name) else f"_{name}"
        count = 1
        while name in used:
            count += 1
            name = f"{stem}-{count}"
        used.add(name)
        names.append(name)
    return names


def _group(group: Group, identifier: str, scheme: str) -> Iterator[str]:
    """Yield the lines of one group. scheme: of the sheet's colours."""
    texts = [stroke for stroke in group.strokes if isinstance(stroke, Text)]
    words = [group.layer, group.kind, "" if group.status == "new" else group.status]
    attributes = f' id="{identifier}" class={quoteattr(_clean(" ".join(word for word in words if word)))}'
    hidden = ""
    if group.layer == "frame":
        attributes += ' aria-hidden="true"'
    elif group.layer in DEVICE_LAYERS:
        # the label says it all; the same words as text would be read twice
        label = group.title.split("\n")[0] or " ".join(text.text for text in texts) or group.key
        attributes += f' role="graphics-symbol img" aria-label={quoteattr(_clean(label))}'
        hidden = ' aria-hidden="true"'
    yield f"<g{attributes}>"
    if group.title:
        yield f"<title>{escape(chr(10).join(_clean(line) for line in group.title.split(chr(10))))}</title>"
    yield from _shapes(group.strokes, scheme)
    if texts:
        yield f'<g fill="#000" stroke="none"{hidden}>'
        yield from (_text(text) for text in texts)
        yield "</g>"
    yield "</g>"


def letters(sheets: Iterable[Sheet]) -> str:
    """Return the characters that stand on some sheets, each once, and the space."""
    strokes = (stroke for sheet in sheets for group in sheet.groups for stroke in group.strokes)
    texts = {stroke.text for stroke in strokes if isinstance(stroke, Text)}
    found = {" "}.union(*map(_clean, texts))
    mirrored = {sign for pair in _MIRRORED if not found.isdisjoint(pair) for sign in pair}
    return "".join(sorted(found | mirrored if runs_left("".join(found)) else found))


def style(characters: str, sheets: Iterable[Sheet]) -> str:
    """Return the style sheet: the font with these characters; kerning off, so that widths are as measured.

    sheets: those whose letters it is for; what the font lacks comes from the user's.
    """
    signs, further = further_base64(sheets)
    codes = ",".join(f"U+{ord(sign):X}" for sign in signs)
    return (
        f"{_face(subset_base64(characters))}{_face(further, f';unicode-range:{codes}') if signs else ''}"
        "text{font-kerning:none;font-variant-ligatures:none}"
    )


def _face(font: str, further: str = "") -> str:
    return f'@font-face{{font-family:"{FAMILY}";src:url(data:font/woff;base64,{font}) format("woff"){further}}}'


def svg(sheet: Sheet, characters: str = "") -> bytes:
    """Return the sheet as an SVG document, UTF-8. The same sheet gives the same bytes.

    characters: those of all sheets of a drawing (`letters`), so that all carry one font, which takes long to cut out;
    without them, the sheet's own.
    """
    inked = f"<style>{style(characters or letters((sheet,)), (sheet,))}</style>"
    return "\n".join(['<?xml version="1.0" encoding="UTF-8"?>', *_document(sheet, inked, ""), ""]).encode("utf-8")


def inline_svg(sheet: Sheet) -> str:
    """Return the sheet as an element of a page that has its `style`; ids begin with the sheet, `s2-`."""
    return "\n".join(_document(sheet, "", f"s{sheet.number}-"))


def anchors(sheet: Sheet) -> dict[str, str]:
    """Return the id of each device's symbol within a page, by the key of each device that it stands for."""
    names = zip(sheet.groups, _identifiers(sheet.groups), strict=True)
    return {
        key: f"s{sheet.number}-{identifier}"
        for group, identifier in names
        if group.layer == "symbol"
        for key in (group.key, *group.stands_for)
    }


def _document(sheet: Sheet, inked: str, prefix: str) -> Iterator[str]:
    """Yield the lines of the root element. inked: the element with the font, or nothing. prefix: of all ids."""
    width, height = _number(sheet.width_mm), _number(sheet.height_mm)
    name = f"{prefix}sheet-{sheet.number}"
    language = quoteattr(_clean(sheet.language))
    described = f' aria-describedby="{name}-desc"' if sheet.description else ""
    yield (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}" '
        f'lang={language} xml:lang={language} role="graphics-document document" '
        f'aria-labelledby="{name}-title"{described}>'
    )
    yield f'<title id="{name}-title">{escape(_clean(sheet.title))}</title>'
    if sheet.description:
        yield f'<desc id="{name}-desc">{escape(_clean(sheet.description))}</desc>'
    if inked:
        yield inked
    yield f'<rect width="{width}" height="{height}" fill="#fff"/>'
    yield (
        f'<g fill="none" stroke="#000" stroke-width="{_number(WIDTH_MM)}" font-family="{FAMILY}" '
        f'font-size="{_number(font_size_mm(HEIGHT_MM))}">'
    )
    for group, identifier in zip(sheet.groups, _identifiers(sheet.groups), strict=True):
        yield from _group(group, prefix + identifier, sheet.colour)
    yield "</g>"
    for number, picture in enumerate(sheet.pictures, 1):
        yield from svg_picture(picture, f"{prefix}picture-{number}")
    yield "</svg>"

"""SVG -> shapes: groups, paths and basic shapes of SVG 1.1 with plain colours, everything else refused by its name."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from xml.etree import ElementTree

from sld.picture.colour import colour
from sld.picture.outline import moved_and_turned, outline, path_of
from sld.picture.picture import BadPicture, Segment, Shape, Shapes

__all__ = ["read_svg"]

MAX_ELEMENTS_COUNT = 3_000
MAX_SEGMENTS_COUNT = 20_000
MAX_DEPTH_COUNT = 40

SVG = "{http://www.w3.org/2000/svg}"
DRAWN = {"path", "rect", "circle", "ellipse", "line", "polyline", "polygon"}
PASSED_OVER = {"title", "desc", "metadata", "defs"}
"""What draws nothing by itself; what refers to it is refused where it does so."""

INHERITED = ("fill", "stroke", "stroke-width", "fill-rule", "color")
START: Mapping[str, str] = {"fill": "#000000", "stroke": "none", "stroke-width": "1", "fill-rule": "nonzero"}
REFUSED = {"clip-path", "mask", "filter", "marker", "marker-start", "marker-mid", "marker-end", "stroke-dasharray"}
WHOLE = {"opacity", "fill-opacity", "stroke-opacity"}

Matrix = tuple[float, float, float, float, float, float]


@dataclass(frozen=True, slots=True)
class _Place:
    """What holds for an element by the groups around it: presentation, transform, and how deep it is."""

    look: Mapping[str, str]
    matrix: Matrix
    depth: int


def _parsed(content: bytes) -> ElementTree.Element:
    """Return the root. Raises BadPicture where it is not plain XML in UTF-8."""
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise BadPicture("the SVG is not UTF-8 text", "save it as UTF-8") from None
    if re.search(r"<!\s*(?:ENTITY|DOCTYPE[^>]*\[)", text, re.IGNORECASE):
        raise BadPicture("the SVG defines entities", "save it as plain SVG")
    text = re.sub(r"^\s*<\?xml[^>]*\?>", "", text)
    try:
        root = ElementTree.fromstring(text)
    except (ElementTree.ParseError, ValueError) as problem:
        raise BadPicture(f"the SVG is not well-formed: {problem}", "save it again as plain SVG") from None
    if root.tag not in (f"{SVG}svg", "svg"):
        raise BadPicture("the file is not an SVG", "save the picture as PNG or SVG")
    return root


def _look(element: ElementTree.Element, around: Mapping[str, str]) -> dict[str, str]:
    """Return the presentation of an element: its attributes, then its style, over what is inherited."""
    given = dict(element.attrib)
    for rule in given.get("style", "").split(";"):
        key, _, value = rule.partition(":")
        if value:
            given[key.strip()] = value.replace("!important", "").strip()
    for key in REFUSED & set(given):
        if given[key] not in ("none", ""):
            raise BadPicture(f"the SVG uses `{key}`", "turn it into plain paths")
    for key in WHOLE & set(given):
        if given[key].strip() not in ("1", "1.0", "100%"):
            raise BadPicture(f"the SVG uses `{key}`", "use full colours")
    if given.get("display") == "none" or given.get("visibility") == "hidden":
        return {**around, "fill": "none", "stroke": "none", "hidden": "yes"}
    kept = {key: given[key] for key in INHERITED if given.get(key, "inherit") != "inherit"}
    return {**around, **kept}


def _elements(element: ElementTree.Element, place: _Place) -> Iterator[tuple[str, ElementTree.Element, _Place]]:
    """Yield the shapes below an element with what holds for them. Raises BadPicture for what cannot be taken."""
    if place.depth > MAX_DEPTH_COUNT:
        raise BadPicture("the SVG is nested too deeply", "ungroup it")
    for child in element:
        if not isinstance(child.tag, str) or (child.tag.startswith("{") and not child.tag.startswith(SVG)):
            continue  # a comment, or what an editor keeps for itself
        name = child.tag.removeprefix(SVG)
        if name in PASSED_OVER:
            continue
        if name not in DRAWN | {"g"}:
            raise BadPicture(f"the SVG has a `{name}`, which cannot be taken", "turn everything into plain paths")
        look = _look(child, place.look)
        if "hidden" in look:
            continue
        here = _Place(look, moved_and_turned(place.matrix, child.get("transform", "")), place.depth + 1)
        if name == "g":
            yield from _elements(child, here)
        else:
            yield name, child, here


def _shape(name: str, element: ElementTree.Element, place: _Place) -> Shape | None:
    """Return an element as a shape; None where there is nothing to see."""
    own = place.look.get("color", "#000000")
    fill = "" if name == "line" else colour(place.look["fill"], own)
    line = colour(place.look["stroke"], own)
    a, b, c, d, _, _ = place.matrix
    width = _length(place.look["stroke-width"], "stroke-width") * abs(a * d - b * c) ** 0.5
    segments = outline(path_of(name, element.attrib), place.matrix)
    if not segments or not (fill or (line and width)):
        return None
    return Shape(segments, fill, line if width else "", width if line else 0.0, place.look["fill-rule"] == "evenodd")


def _length(text: str, what: str) -> float:
    found = re.fullmatch(r"\s*(\d+\.?\d*|\.\d+)(?:px)?\s*", text)
    if not found:
        raise BadPicture(f"the SVG has a `{what}` of `{text[:20]}`", "write a plain number")
    return float(found[1])


def _box(shapes: list[Shape]) -> tuple[float, float, float, float]:
    """Return the box around all control points, with half the width of the outlines."""
    found = [
        (x - half, y - half, x + half, y + half)
        for shape in shapes
        for half in [shape.line_width_px / 2]
        for _, points in shape.path
        for x, y in points
    ]
    lefts, tops, rights, bottoms = zip(*found, strict=True)
    return min(lefts), min(tops), max(rights), max(bottoms)


def _shifted(path: tuple[Segment, ...], dx_px: float, dy_px: float) -> tuple[Segment, ...]:
    return tuple((word, tuple((x + dx_px, y + dy_px) for x, y in points)) for word, points in path)


def read_svg(content: bytes) -> Shapes:
    """Return the shapes of an SVG, cut to the box that they fill. Raises BadPicture."""
    root = _parsed(content)
    if sum(1 for _ in root.iter()) > MAX_ELEMENTS_COUNT:
        raise BadPicture(f"the SVG has more than {MAX_ELEMENTS_COUNT} elements", "simplify it")
    start = _Place(_look(root, START), (1.0, 0.0, 0.0, 1.0, 0.0, 0.0), 0)
    found = [_shape(name, element, place) for name, element, place in _elements(root, start)]
    shapes = [shape for shape in found if shape]
    if not shapes:
        raise BadPicture("the SVG shows nothing", "check what it holds")
    if sum(len(shape.path) for shape in shapes) > MAX_SEGMENTS_COUNT:
        raise BadPicture(f"the SVG has more than {MAX_SEGMENTS_COUNT} path segments", "simplify it")
    left, top, right, bottom = _box(shapes)
    if not (right - left > 0 and bottom - top > 0 and max(map(abs, (left, top, right, bottom))) < 1e6):
        raise BadPicture("the shapes of the SVG have no proper extent", "check what it holds")
    placed = tuple(
        Shape(_shifted(s.path, -left, -top), s.fill, s.line, s.line_width_px, s.even_odd) for s in shapes
    )  # fmt: skip
    return Shapes(right - left, bottom - top, placed)

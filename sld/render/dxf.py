"""A sheet as DXF (release AC1024, text form): model space in millimetres, y up, the page's lower left corner at (0, 0).

Layers tell what a line is for, every symbol is a block inserted at its origin, lines carry width and pattern, texts are
TEXT entities in a style of the sheets' font, fitted to the width they have on the sheet whatever font a reader has.
"""

from __future__ import annotations

import io
import math
import threading
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from typing import Any

from sld.render.colour import BLACK, SCHEMES, ink
from sld.render.missing import MissingEzdxf
from sld.sheet.sheet import NOTHING_TOLD, About, Group, Sheet
from sld.symbols.stroke import Arc, Circle, Curve, Dash, Fill, Point, Polyline, Stroke, Text
from sld.symbols.typeface import FONT_FILE, printable, text_width_mm

__all__ = ["APPLICATION", "LAYER_OF", "TEXT_LAYER", "dxf"]

LAYER_OF = {
    "frame": "FRAME",
    "enclosure": "ENCLOSURE",
    "ac": "POWER-AC",
    "dc": "POWER-DC",
    "earth": "EARTH",
    "data": "DATA",
    "symbol": "SYMBOL",
    "label": "TEXT",
    "flag": "FLAG",
    "table": "TABLE",
}
"""The DXF layer of each layer of the sheet."""

COLOURED = {role: LAYER_OF[role] for role in ("ac", "dc", "earth", "data")}
"""The layers that have a colour of their own on a sheet in colour, by the role of their strokes."""

TEXT_LAYER = "TEXT"
"""Where the texts of the diagram go; those of frame, tables and flags stay with them."""

APPLICATION = "SLD"
"""Name under which an insert carries the key of its device as extended data."""

MARK = "999\nsld sheet {}\n"
"""A comment at the head of the file, by which a sheet of an earlier drawing is known again."""

STYLE = "SHEET"
RELEASE = "R2010"
MILLIMETRES = 4
CIRCLE_PARTS_COUNT = 36

_ONE_AT_A_TIME = threading.Lock()


def _ezdxf() -> Any:
    """Return the library. Raises MissingEzdxf."""
    try:
        import ezdxf
    except ImportError:
        raise MissingEzdxf from None
    return ezdxf


class _Page:
    """Strokes in page millimetres, y down, entered into a layout or block with y up about an origin."""

    def __init__(self, document: Any, space: Any, origin: Point, scheme: str) -> None:
        self._document, self._space, self._origin, self._scheme = document, space, origin, scheme

    def at(self, point: Point) -> Point:
        """Return where a point of the page is in the space."""
        return (round(point[0] - self._origin[0], 6), round(self._origin[1] - point[1], 6))

    def draw(self, stroke: Stroke, layer: str) -> None:
        """Enter one stroke."""
        if isinstance(stroke, Text):
            self._text(stroke, layer)
            return
        pen: dict[str, Any] = {"layer": layer, "lineweight": round(stroke.width_mm * 100)}
        colour = ink(stroke, self._scheme)
        if colour != BLACK and layer not in COLOURED.values():
            pen["true_color"] = int(colour[1:], 16)
        if isinstance(stroke, Polyline):
            pen["linetype"] = _linetype(self._document, stroke.dash, stroke.width_mm)
            self._polyline(stroke, pen)
        elif isinstance(stroke, Circle):
            self._circle(stroke, pen)
        elif isinstance(stroke, Arc):
            self._arc(stroke, pen)
        else:
            self._curve(stroke, pen)

    def _polyline(self, stroke: Polyline, pen: dict[str, Any]) -> None:
        points = [self.at(point) for point in stroke.points]
        self._fill(stroke.fill, points, pen)
        self._space.add_lwpolyline(points, close=stroke.closed, dxfattribs=pen)

    def _circle(self, stroke: Circle, pen: dict[str, Any]) -> None:
        (x, y), r = self.at(stroke.centre), stroke.radius_mm
        angles = [2 * math.pi * n / CIRCLE_PARTS_COUNT for n in range(CIRCLE_PARTS_COUNT)]
        self._fill(stroke.fill, [(x + r * math.cos(a), y + r * math.sin(a)) for a in angles], pen)
        self._space.add_circle((x, y), r, dxfattribs=pen)

    def _fill(self, fill: Fill, corners: Sequence[Point], pen: dict[str, Any]) -> None:
        """Fill a shape, or cover what lies below it."""
        if fill is Fill.INK:
            hatch = self._space.add_hatch(dxfattribs={"layer": pen["layer"]})
            hatch.dxf.color = 256  # as the layer
            hatch.paths.add_polyline_path(corners, is_closed=True)
        elif fill is Fill.PAPER:
            self._space.add_wipeout(corners, dxfattribs={"layer": pen["layer"]})

    def _arc(self, stroke: Arc, pen: dict[str, Any]) -> None:
        """Enter an arc; with y up it runs the other way, and DXF wants it anticlockwise."""
        first, last = sorted((-stroke.start_deg, -stroke.end_deg))
        centre, rx, ry = self.at(stroke.centre), stroke.radius_x_mm, stroke.radius_y_mm
        if math.isclose(rx, ry):
            self._space.add_arc(centre, rx, first, last, dxfattribs=pen)
            return
        # the parameter of an ellipse counts from its longer axis, which may be the upright one
        turn_deg, major, ratio = (0.0, (rx, 0.0), ry / rx) if rx > ry else (90.0, (0.0, ry), rx / ry)
        whole = last - first >= 360.0
        start, end = (0.0, math.tau) if whole else (math.radians(angle - turn_deg) for angle in (first, last))
        self._space.add_ellipse(centre, major, ratio, start, end, dxfattribs=pen)

    def _curve(self, stroke: Curve, pen: dict[str, Any]) -> None:
        for n in range(0, len(stroke.points) - 3, 3):
            corners = [self.at(point) for point in stroke.points[n : n + 4]]
            self._space.add_open_spline([(*corner, 0.0) for corner in corners], degree=3, dxfattribs=pen)

    def _text(self, stroke: Text, layer: str) -> None:
        from ezdxf.enums import TextEntityAlignment

        words = printable(stroke.text)
        if not words.strip():
            return
        end = (stroke.at[0] + text_width_mm(stroke.text, stroke.height_mm), stroke.at[1])
        entity = self._space.add_text(
            _escaped(words), height=stroke.height_mm, dxfattribs={"layer": layer, "style": STYLE}
        )
        entity.set_placement(self.at(stroke.at), self.at(end), align=TextEntityAlignment.FIT)


def _escaped(words: str) -> str:
    """Return a text in which per cent signs and carets stand for themselves: DXF codes characters with them."""
    return words.replace("^", "^ ").replace("%%", "%%%%%%")


def _linetype(document: Any, dash: Dash, width_mm: float) -> str:
    """Return the name of a line pattern, entered on first use: ISO 128-2 measures dashes in line widths."""
    if dash is Dash.CONTINUOUS:
        return "CONTINUOUS"
    name = f"{dash.name}-{round(width_mm * 100):03d}"
    if name not in document.linetypes:
        lengths = [part * width_mm for part in dash.value]
        signed = [length if n % 2 == 0 else -length for n, length in enumerate(lengths)]
        document.linetypes.add(name, [sum(lengths), *signed], description=dash.name.lower())
    return name


class _Blocks:
    """Blocks by the name of the symbol; a symbol drawn in another way (wider leads, thinner lines) has its own."""

    def __init__(self, document: Any, scheme: str) -> None:
        self._document, self._scheme = document, scheme
        self._names: dict[tuple[str, tuple[str, ...]], str] = {}

    def name_of(self, group: Group, strokes: Iterable[Stroke], origin: Point) -> str:
        """Return the block with these strokes about an origin, made on first use."""
        found = tuple(strokes)
        key = (group.kind, tuple(_outlined(stroke, origin) for stroke in found))
        if key in self._names:
            return self._names[key]
        ways = sum(kind == group.kind for kind, _ in self._names)
        name = self._names[key] = group.kind.upper() + (f"-{ways + 1}" if ways else "")
        page = _Page(self._document, self._document.blocks.new(name), origin, self._scheme)
        for stroke in found:
            page.draw(stroke, LAYER_OF["symbol"])
        return name


def _outlined(stroke: Stroke, origin: Point) -> str:
    """Return a stroke about an origin in words that are equal for equal strokes, wherever they stand."""

    def near(points: Iterable[Point]) -> str:
        return " ".join(f"{x - origin[0]:.3f},{y - origin[1]:.3f}".replace("-0.000", "0.000") for x, y in points)

    if isinstance(stroke, Text):
        return f"{near([stroke.at])} {stroke.height_mm} {stroke.text}"
    if isinstance(stroke, Polyline):
        return f"{near(stroke.points)} {stroke.width_mm} {stroke.dash} {stroke.closed} {stroke.fill}"
    if isinstance(stroke, Circle):
        return f"{near([stroke.centre])} {stroke.width_mm} {stroke.radius_mm} {stroke.fill}"
    if isinstance(stroke, Arc):
        radii = f"{stroke.radius_x_mm} {stroke.radius_y_mm}"
        return f"{near([stroke.centre])} {stroke.width_mm} {radii} {stroke.start_deg} {stroke.end_deg}"
    return f"{near(stroke.points)} {stroke.width_mm} curve"


def _entered(document: Any, sheet: Sheet) -> None:
    """Enter the groups of the sheet: symbols as inserts, the rest as it is."""
    space = document.modelspace()
    page = _Page(document, space, (0.0, sheet.height_mm), sheet.colour)
    blocks = _Blocks(document, sheet.colour)
    for group in sheet.groups:
        layer = LAYER_OF[group.layer]
        texts = [stroke for stroke in group.strokes if isinstance(stroke, Text)]
        shapes = [stroke for stroke in group.strokes if not isinstance(stroke, Text)]
        if group.kind and group.at and shapes:
            name = blocks.name_of(group, shapes, group.at)
            insert = space.add_blockref(name, page.at(group.at), dxfattribs={"layer": layer})
            insert.set_xdata(APPLICATION, [(1000, printable(group.key)[:250])])
        else:
            for stroke in shapes:
                page.draw(stroke, layer)
        for text in texts:
            page.draw(text, TEXT_LAYER if group.layer in ("symbol", "label", "enclosure") else layer)


def _prepared(ezdxf: Any, sheet: Sheet, about: About) -> Any:
    """Return a document with units, layers, text style and properties, and nothing drawn."""
    document = ezdxf.new(RELEASE, setup=False, units=MILLIMETRES)
    header = document.header
    header["$MEASUREMENT"], header["$LTSCALE"], header["$LWDISPLAY"] = 1, 1.0, 1
    document.appids.new(APPLICATION)
    for name in dict.fromkeys(LAYER_OF.values()):
        document.layers.add(name, color=7)  # black on paper, white on a dark screen
    for role, name in COLOURED.items():
        if sheet.colour in SCHEMES:
            document.layers.get(name).dxf.true_color = int(SCHEMES[sheet.colour][role][1:], 16)
    document.styles.add(STYLE, font=FONT_FILE.name)
    document.set_wipeout_variables(frame=0)
    document.set_modelspace_vport(sheet.height_mm, (sheet.width_mm / 2, sheet.height_mm / 2))
    space = document.modelspace()
    space.reset_extents((0, 0, 0), (sheet.width_mm, sheet.height_mm, 0))
    space.reset_limits((0, 0), (sheet.width_mm, sheet.height_mm))
    # the library leaves the header as it is where a corner of the layout is the origin
    header["$EXTMIN"], header["$EXTMAX"] = (0, 0, 0), (sheet.width_mm, sheet.height_mm, 0)
    told = {"Title": sheet.title, "Subject": sheet.description, "Author": about.author,
            "Keywords": ", ".join(about.keywords), "Date": about.date}  # fmt: skip
    for name, value in told.items():
        if value:
            header.custom_vars.append(name, printable(value)[:250])
    return document


def dxf(sheet: Sheet, about: About = NOTHING_TOLD) -> bytes:
    """Return the sheet as a DXF file. about: author, keywords and date for its properties.

    The same arguments give the same bytes. Raises MissingEzdxf where the library is not installed.
    """
    with _fixed_metadata(ezdxf := _ezdxf()):
        document = _prepared(ezdxf, sheet, about)
        _entered(document, sheet)
        for kind in sorted(document.entitydb.dxf_types_in_use()):
            document.classes.add_class(kind)  # the library would enter them in the order of a set
        stream = io.StringIO()
        document.write(stream)
        return bytes(document.encode(f"{MARK.format(sheet.number)}{stream.getvalue()}"))


@contextmanager
def _fixed_metadata(ezdxf: Any) -> Iterator[None]:
    """Let the library write neither clock nor random numbers; it has one setting for all threads, so one at a time."""
    with _ONE_AT_A_TIME:
        before = ezdxf.options.write_fixed_meta_data_for_testing
        ezdxf.options.write_fixed_meta_data_for_testing = True
        try:
            yield
        finally:
            ezdxf.options.write_fixed_meta_data_for_testing = before

"""The symbol sheet and its page: every symbol of the catalogue in a cell of its own."""

from __future__ import annotations

from sld.gallery.markdown import GENERATED, plain, table_lines
from sld.sheet.ink import moved, strokes_box
from sld.sheet.lettering import wrap
from sld.sheet.listings.laid import lines_height_mm, lines_strokes
from sld.sheet.paper import Paper, frame_box
from sld.sheet.sheet import Group, Sheet
from sld.symbols.catalogue import Family, Symbol, family, names, symbol
from sld.symbols.stroke import MODULE_MM, Circle, Fill, Polyline, Stroke

__all__ = ["SHEETS", "symbols_page", "symbols_sheet"]

SHEETS = {"IEC": "symbols.svg", "ANSI": "symbols-ansi.svg"}
"""The picture of each family."""

IN_A_DRAWING = (
    "The symbols are a library of their own: elements for a drawing by schemdraw. Each name below is one, "
    "`circuit_breaker` as `CircuitBreaker`; `family` chooses between the two, the pins are anchors (`feed` towards the "
    f"strings, `supply` towards the network), and one unit of the drawing is the module of {MODULE_MM:g} mm."
)
EXAMPLE = """\
from sld.symbols import CircuitBreaker, Earth, Fuse, SwitchDisconnector, drawing

plan = drawing()
switch = plan.add(SwitchDisconnector())
breaker = plan.add(CircuitBreaker())  # begins where the one before ends
plan.add(Fuse(family="ANSI").at(breaker.supply))
plan.add(Earth().at(switch.feed))
plan.save("row.svg")
"""

COLUMNS = 5
CELL_MM = 70.0
SYMBOL_MM = 22.5
PADDING_MM = 3.0
TITLE = "Graphical symbols"
PIN_MM = 0.5


def _text_lines(each: Symbol) -> list[str]:
    """Return the wording of a cell: name, title, source and whether both families share it, wrapped to its width."""
    width_mm = CELL_MM - 2 * PADDING_MM
    texts = (each.name, str(each.title), each.source, *(["IEC and ANSI alike"] if each.shared else []))
    return [line for text in texts for line in wrap(text, width_mm)]


def _cell(each: Symbol, left_mm: float, top_mm: float) -> Group:
    """Return a symbol in the middle of its field, on the grid, with its pins marked and the wording below."""
    box = strokes_box(each.strokes)
    x = left_mm + CELL_MM / 2 - (box.left_mm + box.right_mm) / 2
    y = top_mm + PADDING_MM + SYMBOL_MM / 2 - (box.top_mm + box.bottom_mm) / 2
    strokes: list[Stroke] = [moved(stroke, x, y) for stroke in each.strokes]
    strokes += [Circle((x + px, y + py), PIN_MM, 0.13, Fill.NONE) for _, (px, py) in each.pins]
    text_top = top_mm + PADDING_MM + SYMBOL_MM
    strokes += lines_strokes(_text_lines(each), left_mm + PADDING_MM, left_mm + CELL_MM - PADDING_MM, text_top)
    return Group(f"symbol.{each.name}", "symbol", tuple(strokes), str(each.title))


def _frame(left_mm: float, top_mm: float, height_mm: float) -> Stroke:
    right_mm, bottom_mm = left_mm + CELL_MM, top_mm + height_mm
    corners = ((left_mm, top_mm), (right_mm, top_mm), (right_mm, bottom_mm), (left_mm, bottom_mm))
    return Polyline(corners, 0.13, closed=True)


def symbols_sheet(of: Family) -> Sheet:
    """Return all symbols of a family on one sheet, as long as they need; rows are as high as their longest wording."""
    found = [of.symbol(name) for name in names()]
    probe = frame_box(Paper("", 0.0, 0.0))
    left, top = probe.left_mm, probe.top_mm
    groups: list[Group] = []
    frames: list[Stroke] = []
    for start in range(0, len(found), COLUMNS):
        row = found[start : start + COLUMNS]
        lines_count = max(len(_text_lines(each)) for each in row)
        height = PADDING_MM + SYMBOL_MM + lines_height_mm(lines_count) + PADDING_MM
        for column, each in enumerate(row):
            groups.append(_cell(each, left + column * CELL_MM, top))
            frames.append(_frame(left + column * CELL_MM, top, height))
        top += height
    width_mm = left + COLUMNS * CELL_MM - probe.right_mm
    height_mm = top - probe.bottom_mm
    description = (
        f"{len(found)} graphical symbols after {of.standard}, each with its name, meaning and source; circles mark "
        "terminals."
    )
    title = f"{TITLE}, {of.name}"
    return Sheet(width_mm, height_mm, 1, title, description, "en", (Group("cells", "table", tuple(frames)), *groups))


def symbols_page() -> str:
    """Return the page."""
    lines = [
        GENERATED,
        "",
        f"# {TITLE}",
        "",
        "Each device has a symbol in two families, and a spec chooses one of them with `drawing.symbols`. Circles mark "
        f"the terminals; they lie on a grid of {MODULE_MM:g} mm and are the same in both families. Sources say which "
        "standard's meaning a symbol follows, and where the number is from memory; the geometry is our own.",
        "",
    ]
    lines += ["## In a drawing of your own", "", IN_A_DRAWING, "", "```python", EXAMPLE.rstrip(), "```", ""]
    for name, picture in SHEETS.items():
        standard = family(name).standard
        lines += [f"## {name}: {standard}", "", f"[![Symbols after {standard}]({picture})]({picture})", ""]
    rows = (
        (
            f"`{name}`",
            plain(str(iec.title) if iec.title == ansi.title else f"{iec.title} / {ansi.title}"),
            plain(iec.source),
            plain(f"alike: {ansi.source}" if ansi.shared else ansi.source),
        )
        for name in names()
        for iec, ansi in [(symbol(name), symbol(name, "ANSI"))]
    )
    lines += ["## Sources", ""]
    return "\n".join([*lines, *table_lines(("Name", "Title", "Source, IEC", "Source, ANSI"), rows)])

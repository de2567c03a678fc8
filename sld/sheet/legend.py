"""The legend of a plan: the lines, marks and symbols that it uses, and nothing else."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from sld.documents.section import FlagForm
from sld.frozen import dataclass
from sld.layout.diagram.diagram import LineKind, Medium
from sld.layout.diagram.flags import REVISED
from sld.layout.passes.stack import FLAG_MM
from sld.layout.plan import Plan
from sld.sheet.conductor import DATA_LINES, DOT_MM, LINES, conductor, dot
from sld.sheet.ink import for_status, strokes_box
from sld.sheet.listings import Legend, LegendEntry, flag_strokes, revision_strokes
from sld.sheet.place import SymbolSource
from sld.symbols.stroke import Box, Dash, Polyline, Stroke, Text
from sld.words import Language, Sayable, phrase

__all__ = ["legend"]

SAMPLE_MM = 15.0


@dataclass(frozen=True, slots=True)
class _Entry:
    """An entry before its words are chosen."""

    strokes: tuple[Stroke, ...]
    box: Box
    meaning: Sayable


def _line(stroke: Stroke, meaning: Sayable) -> _Entry:
    return _Entry((stroke,), Box(0.0, -1.0, SAMPLE_MM, 1.0), meaning)


def _marks(plan: Plan) -> list[_Entry]:
    """Return the entries of lines and marks."""
    row = ((0.0, 0.0), (SAMPLE_MM, 0.0))
    used, media = {wire.kind for wire in plan.wires if not wire.medium}, {wire.medium for wire in plan.wires}
    entries = [_line(conductor(row, kind), LINES[kind].meaning) for kind in LineKind if kind in used]
    entries += [
        _line(conductor(row, LineKind.DATA, medium=medium), DATA_LINES[medium].meaning)
        for medium in Medium if medium in media
    ]  # fmt: skip
    if plan.frames:
        entries.append(_line(Polyline(row, 0.25, Dash.BOUNDARY), phrase("Enclosure")))
    if plan.dots:
        width = LINES[LineKind.AC].width_mm
        cross = (Polyline(row, width), Polyline(((SAMPLE_MM / 2, 0.0), (SAMPLE_MM / 2, 3.0)), width))
        entries.append(
            _Entry((*cross, dot((SAMPLE_MM / 2, 0.0))), Box(0.0, -DOT_MM, SAMPLE_MM, 3.0), phrase("Connected"))
        )
    if plan.crossings_count:
        upright = Polyline(((SAMPLE_MM / 2, -2.0), (SAMPLE_MM / 2, 2.0)), 0.25)
        entries.append(
            _Entry((Polyline(row, 0.25), upright), Box(0.0, -2.0, SAMPLE_MM, 2.0), phrase("Crossing, not connected"))
        )
    if any(cell.alike for cell in plan.cells):
        sample = Text((0.0, 0.0), "n ×")
        meaning = phrase("n equal branches drawn once; -TB1…9-FC1 is -TB1-FC1 to -TB9-FC1")
        entries.append(_Entry((sample,), strokes_box((sample,)), meaning))
    return entries + _statuses(plan)


def _statuses(plan: Plan) -> list[_Entry]:
    """Return the entries that tell new, existing and future devices apart, where the plan has more than new ones."""
    used = {cell.status for cell in plan.cells}
    if used <= {"new"}:
        return []
    box = Box(0.0, 0.0, 7.5, 5.0)
    corners = ((0.0, 0.0), (7.5, 0.0), (7.5, 5.0), (0.0, 5.0))
    looks = {
        "new": phrase("New device"),
        "existing": phrase("Existing device or conductor (thinner line)"),
        "future": phrase("Future device or conductor (dashed)"),
    }
    outline = (Polyline(corners, closed=True),)
    return [_Entry(for_status(outline, status), box, text) for status, text in looks.items() if status in used]


def _one(plans: Sequence[Plan]) -> Plan:
    """Return all that several plans show as one plan, of which the places do not matter."""
    return Plan(
        0.0,
        0.0,
        tuple(cell for plan in plans for cell in plan.cells),
        tuple(wire for plan in plans for wire in plan.wires),
        tuple(dot for plan in plans for dot in plan.dots),
        tuple(frame for plan in plans for frame in plan.frames),
        tuple(flag for plan in plans for flag in plan.flags),
        (),
        sum(plan.crossings_count for plan in plans),
    )


def _flag(form: FlagForm, box: Box) -> tuple[Stroke, ...]:
    return revision_strokes("A", box) if form is FlagForm.REVISED else flag_strokes(1, box, form)


def legend(
    plans: Sequence[Plan], symbols: SymbolSource, language: Language, standard: str = "",
    forms: Mapping[int, FlagForm] = MappingProxyType({}),
) -> Legend:  # fmt: skip
    """Return the legend of some plans: line kinds and marks, then each symbol once, the low ones first.

    standard: what the symbols follow, told in the title. forms: of the flags, by their numbers.
    """
    plan = _one(plans)
    entries = _marks(plan)
    forms = {**forms, REVISED: FlagForm.REVISED}
    flagged = {forms.get(flag.number, FlagForm.ADVICE) for flag in plan.flags}
    box = Box(0.0, 0.0, FLAG_MM, FLAG_MM)
    entries += [_Entry(_flag(form, box), box, form.value) for form in FlagForm if form in flagged]
    drawn_ones = [
        _Entry(for_status(drawn.strokes, "new"), strokes_box(drawn.strokes), drawn.title)
        for drawn in map(symbols.symbol, dict.fromkeys(cell.symbol for cell in plan.cells if cell.symbol))
    ]
    drawn_ones.sort(key=lambda entry: round(entry.box.height_mm, 2))  # rows of like height take least room
    title = phrase("Legend; symbols after {standard}", standard=standard) if standard else phrase("Legend")
    worded = (LegendEntry(each.strokes, each.box, language.divisible(each.meaning)) for each in (*entries, *drawn_ones))
    return Legend("legend", language.say(title), tuple(worded))

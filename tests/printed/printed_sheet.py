"""Reads finished sheets as a person does: texts by their places, tables by their rules, symbols by their ink.

Nothing here knows how a text was made. It reads `Sheet`s, what `run.draw` returns, and finds a text of a device beside
the device's designation, a cell of a table below its heading, a value of the title block below its caption.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from functools import cache
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory

from sld import layout, run
from sld.documents.cell import Cell
from sld.documents.registry import KINDS
from sld.documents.section import Form, Table
from sld.sheet.compose import Composition
from sld.sheet.ink import moved
from sld.sheet.sheet import About, Group, Sheet
from sld.symbols import catalogue
from sld.symbols.spans import STRIP_REACH_M
from sld.symbols.stroke import MODULE_MM, Arc, Circle, Curve, Polyline, Stroke, Text
from sld.symbols.typeface import text_width_mm
from sld.words import ENGLISH

__all__ = ["SPECS", "Drawing", "calculation", "calculation_sheets", "cells", "checked", "drawing", "flattened"]

HERE = Path(__file__).parent
SPECS = ("workshop", "cottage", "ranch", "yard", "meadow")
NEAR_MM = 0.2
PITCH_MM = 4.2
"""Between the baselines of two lines of one text in 2.5 mm letters, a little more."""

CAPTION_MM = 1.8
TITLE_MM = 3.5
MEMORY_SIGN = "*"


class Label(str):
    """The text of a label. It is the same whether two things stand on lines of their own or behind a comma on one."""

    __slots__ = ()

    def __eq__(self, other: object) -> bool:
        """Compare without the commas."""
        return isinstance(other, str) and self.replace(",", "") == other.replace(",", "")

    __hash__ = str.__hash__

    def begins(self, text: str) -> bool:
        """Return whether it begins with a text, without the commas."""
        return self.replace(",", "").startswith(text.replace(",", ""))


@dataclass(frozen=True, repr=False)
class Drawing:
    """The sheets of one spec, and what its files say about themselves."""

    sheets: tuple[Sheet, ...]
    about: About

    def __repr__(self) -> str:
        """Return words for a failing test, which need not have every stroke."""
        return f"{self.sheets[0].title} of {len(self.sheets)}" if self.sheets else "no sheet"

    def device(self, designation: str) -> Group:
        """Return the group of the device whose first text is its designation. Fails where there is not exactly one.

        A sign of an earth connection that bears the designation of its conductor, and says no more, is none.
        """
        found = [group for group in self._devices() if _lines(group)[:1] == [designation]]
        if not found:  # a bar is named by the caption of the frame around it
            found = [
                group for group in self._devices() if not _lines(group) and group.title.startswith(f"{designation} ")
            ]
        if len(found) > 1:
            found = [group for group in found if len(_lines(group)) > 1]
        assert len(found) == 1, f"{designation} stands at {len(found)} devices"
        return found[0]

    def designations(self) -> list[str]:
        """Return the designations of all devices that have a symbol, in drawing order."""
        return [name for group in self._devices() if group.kind for name in _lines(group)[:1] if name[0] == "-"]

    def label(self, designation: str) -> Label:
        """Return what stands beside a device besides its designation, above the symbol first, as one line; the signs
        for what is from memory left out, see `signed`."""
        return Label(self.signed(designation).replace(MEMORY_SIGN, ""))

    def signed(self, designation: str) -> str:
        """Return the same with these signs."""
        return " ".join(_lines(self.device(designation))[1:])

    def marks(self, designation: str) -> str:
        """Return the small letters inside the symbol of a device, from the top."""
        return " ".join(text.text for text in _ordered(self.device(designation), CAPTION_MM))

    def meaning(self, designation: str) -> str:
        """Return what the symbol at a device means: the title of that symbol of the catalogue which has its ink."""
        group = self.device(designation)
        assert group.at
        ink = tuple(moved(stroke, -group.at[0], -group.at[1]) for stroke in group.strokes)
        drawn = _pieces(ink)
        left = min(x for stroke in ink if isinstance(stroke, Polyline) for x, _ in stroke.points)
        feeds = {round(y, 2) + 0.0 for stroke in ink if isinstance(stroke, Polyline) for x, y in stroke.points
                 if abs(x - left) < 0.01}  # fmt: skip
        strip = [stroke for stroke in ink if isinstance(stroke, Polyline) and stroke.closed
                 and stroke.points[0][0] == left and max(x for x, _ in stroke.points) - left < 1.01]  # fmt: skip
        if strip:  # of terminals: the ink does not depend on those between the first and the last
            feeds = {round(min(feeds) + STRIP_REACH_M * MODULE_MM, 2), round(max(feeds) - STRIP_REACH_M * MODULE_MM, 2)}
        family = "ANSI" if "IEEE 315" in "".join(self.titles()) else "IEC"
        titles = {title for title, pieces in _catalogue(family, tuple(sorted(feeds))) if pieces == drawn}
        assert len(titles) == 1, f"the symbol at {designation} is that of {titles or 'nothing'}"
        return titles.pop()

    def frame(self, designation: str) -> str:
        """Return the caption of the enclosure that begins with a designation, wherever its lines went."""
        for sheet in self.sheets:
            first = [text for group in sheet.groups if group.layer == "enclosure" for text in _texts(group)]
            others = [text for group in sheet.groups if group.layer == "label" for text in _texts(group)]
            for text in first:
                if text.text.split()[0] == designation:
                    return " ".join(each.text for each in _below_each_other(text, others))
        raise AssertionError(f"no enclosure {designation}")

    def flags(self, designation: str) -> set[str]:
        """Return the numbers of the warning triangles around a device's designation."""
        sheet, at = self._place(designation)
        flags = [text for group in sheet.groups if group.layer == "flag" for text in _texts(group)]
        homes = {text: self._nearest(sheet, text) for text in flags}
        return {text.text for text, home in homes.items() if home == at}

    def _place(self, designation: str) -> tuple[Sheet, tuple[float, float]]:
        group = self.device(designation)
        sheet = next(sheet for sheet in self.sheets if group in sheet.groups)
        return sheet, next(text.at for text in _ordered(group, 2.5) if text.text.split()[0] == designation)

    def _nearest(self, sheet: Sheet, flag: Text) -> tuple[float, float]:
        """Return the place of the designation a flag belongs to: the one before it in its line, else the nearest."""
        heads = [head for group in sheet.groups if group.layer == "symbol" for head in _ordered(group, 2.5)[:1]]
        level = [head for head in heads if abs(head.at[1] - flag.at[1]) < 1.5 and head.at[0] < flag.at[0]]
        return min(level or heads, key=lambda head: _distance_mm(head, flag)).at

    def rows(self, title: str) -> list[dict[str, str]]:
        """Return the rows of a table, each text by the heading of its column, rows parted by rules; without the signs
        for what is from memory."""
        heads, rows = self.table(title)
        return [dict(zip(heads, [cell.replace(MEMORY_SIGN, "") for cell in row], strict=True)) for row in rows]

    def row(self, title: str, first: str) -> dict[str, str]:
        """Return the row of a table whose first cell is a text. Fails where there is not exactly one."""
        found = [row for row in self.rows(title) if next(iter(row.values())) == first]
        assert len(found) == 1, f"{len(found)} rows of {title} begin with {first}"
        return found[0]

    def pairs(self, title: str) -> dict[str, str]:
        """Return the quantities of a table of two columns, or of two such beside each other, with their values."""
        rows = [[cell.replace(MEMORY_SIGN, "") for cell in row] for row in self.table(title)[1]]
        return {name: value for row in rows for name, value in zip(row[::2], row[1::2], strict=True) if name}

    def paragraphs(self, title: str) -> list[str]:
        """Return the paragraphs of a list without the dots before them, or their numbers, which must count up."""
        found: list[str] = []
        for group in self._tables(title):
            texts = [t for t in _texts(group) if t.height_mm == 2.5]
            second = _second_column_mm(texts)
            for text in sorted(texts, key=lambda t: (t.at[0] >= second, t.at[1], t.at[0])):
                if text.text.startswith("continued on sheet"):
                    continue
                for word in text.text.split():
                    if word in ("•", f"{len(found) + 1}."):
                        found.append("")
                    elif found:
                        found[-1] = f"{found[-1]} {word}".strip()
        return found

    def flagged(self, title: str) -> dict[str, str]:
        """Return what a list of findings says by the number of the flag."""
        found: dict[str, str] = {}
        for group in self._tables(title):
            numbers = sorted((t for t in _texts(group) if t.height_mm == CAPTION_MM), key=lambda t: t.at[1])
            texts = sorted((t for t in _texts(group) if t.height_mm == 2.5), key=lambda t: t.at[1])
            starts = [number.at[1] - PITCH_MM for number in numbers]
            for number, start, end in zip(numbers, starts, [*starts[1:], math.inf], strict=True):
                said = " ".join(text.text for text in texts if start < text.at[1] <= end)
                found[number.text] = said.split(" continued on sheet")[0]
        return found

    def legend(self, title: str = "Legend") -> dict[str, tuple[Polyline | Circle | Arc | Curve, ...]]:
        """Return the ink of each sample of the legend by its meaning."""
        found = {}
        for group in self._tables(title):
            texts = [text for text in _texts(group) if text.height_mm == 2.5]
            columns = sorted({round(text.at[0], 1) for text in texts})
            heads = [t for t in texts if not any(_is_above(other, t) for other in texts)]
            for head in heads:
                lines = _below_each_other(head, texts)
                middle = (lines[0].at[1] + lines[-1].at[1]) / 2
                before = max([x for x in columns if x < head.at[0] - 1], default=0.0)
                found[" ".join(line.text for line in lines).replace("- ", "-")] = _samples(group, before, head, middle)
        return found

    def field(self, caption: str) -> str:
        """Return what the title block of sheet 1 says below a caption, the lowest where a table has the same one."""
        texts = sorted(self._title_block(), key=lambda text: text.at[1])
        head = [text for text in texts if text.text == caption and text.height_mm == CAPTION_MM][-1]
        column = [text for text in texts if abs(text.at[0] - head.at[0]) < NEAR_MM and text.at[1] > head.at[1]]
        end = next((text.at[1] for text in column if text.height_mm == CAPTION_MM), math.inf)
        return " ".join(text.text for text in column if text.at[1] < end)

    def revisions(self) -> list[dict[str, str]]:
        """Return the rows of the table of earlier revisions from the top, by the headings at its foot."""
        texts = self._title_block()
        foot, *below = sorted(text.at[1] for text in texts if text.text == "Rev.")
        if not below:
            return []
        heads = {text.at[0]: text.text for text in texts if text.at[1] == foot}
        lines = sorted({text.at[1] for text in texts if text.at[1] < foot and text.height_mm == 2.5})
        return [{heads[t.at[0]]: t.text for t in texts if t.at[1] == y and t.at[0] in heads} for y in lines]

    def hover(self, designation: str) -> str:
        """Return what a pointer resting on a device says."""
        return self.device(designation).title

    def hover_of_flags(self) -> dict[str, str]:
        """Return what a pointer resting on each flag says, by its number."""
        flags = [group for sheet in self.sheets for group in sheet.groups if group.layer == "flag"]
        return {_texts(group)[0].text: group.title for group in flags}

    def titles(self) -> list[str]:
        """Return the titles of all tables and lists, in printed order, continued ones once."""
        tables = [group for sheet in self.sheets for group in sheet.groups if group.key.startswith("block")]
        titles = [text.text for group in tables for text in _texts(group) if text.height_mm == TITLE_MM]
        return list(dict.fromkeys(title.removesuffix(" (continued)") for title in titles))

    def texts(self) -> list[str]:
        """Return every text of every sheet."""
        return [text.text for sheet in self.sheets for group in sheet.groups for text in _texts(group)]

    def _devices(self) -> Iterator[Group]:
        return (group for sheet in self.sheets for group in sheet.groups if group.layer == "symbol")

    def _title_block(self) -> list[Text]:
        (group,) = [group for group in self.sheets[0].groups if group.key == "title-block"]
        return _texts(group)

    def _tables(self, title: str) -> list[Group]:
        """Return the pieces of a table or list: groups whose largest text begins with the title."""
        found = []
        for sheet in self.sheets:
            for group in sheet.groups:
                heads = [text.text for text in _texts(group) if text.height_mm == TITLE_MM]
                if group.layer == "table" and heads and heads[0].split(" (")[0].split(";")[0] == title:
                    found.append(group)
        return found

    def table(self, title: str) -> tuple[list[str], list[tuple[str, ...]]]:
        """Return the headings of a table and the texts of its rows."""
        heads: list[str] = []
        rows: list[tuple[str, ...]] = []
        for group in self._tables(title):
            below = next(text.at[1] for text in _texts(group) if text.height_mm == TITLE_MM)
            texts = [text for text in _texts(group) if text.at[1] > below and "continued on sheet" not in text.text]
            rules = sorted(
                {
                    s.points[0][1]
                    for s in group.strokes
                    if isinstance(s, Polyline) and _is_level(s) and len(s.points) == 2
                }
            )
            parted = pairwise([below, *rules, math.inf])
            bands = [band for top, foot in parted if (band := [t for t in texts if top < t.at[1] <= foot])]
            columns = _columns(bands[0])
            heads = [head for head, _, _ in columns]
            rows += [_cells(band, columns) for band in bands[1:]]
        return heads, rows


def _distance_mm(head: Text, flag: Text) -> float:
    """Return how far a flag stands from a line of text, left, right, above or below."""
    left, right = head.at[0], head.at[0] + text_width_mm(head.text, head.height_mm)
    return math.hypot(max(0.0, left - flag.at[0], flag.at[0] - right), head.at[1] - flag.at[1])


def _pieces(strokes: Sequence[Stroke]) -> frozenset[object]:
    """Return the ink of a symbol with the letters inside it, without the labels beside it."""
    shapes = [stroke for stroke in strokes if not isinstance(stroke, Text)]
    letters = {(text.text, *_round(text.at)) for text in strokes if isinstance(text, Text) and _is_inside(text)}
    return frozenset(flattened(*shapes) | letters)


@cache
def _catalogue(family: str, feeds_mm: tuple[float, ...]) -> tuple[tuple[str, frozenset[object]], ...]:
    """Return title and ink of every symbol, those that can span rows also with terminals at these heights."""
    found = []
    for name in catalogue.names():
        drawn = catalogue.symbol(name, family)
        found.append((str(drawn.title), _pieces(drawn.strokes)))
        found.append((str(drawn.title), _pieces(catalogue.turned(name, family).strokes)))
        with suppress(ValueError):
            found.append((str(drawn.title), _pieces(catalogue.stretched(name, feeds_mm, family).strokes)))
    return tuple(found)


def _columns(heading: list[Text]) -> list[tuple[str, float, float]]:
    """Return heading, left edge and right edge of each column."""
    found = []
    for top in sorted(
        (text for text in heading if not any(_is_above(other, text) for other in heading)), key=lambda t: t.at[0]
    ):
        lines = _below_each_other(top, heading)
        right = max(line.at[0] + text_width_mm(line.text, line.height_mm) for line in lines)
        found.append((" ".join(line.text for line in lines), min(line.at[0] for line in lines), right))
    return found


def _cells(band: list[Text], columns: list[tuple[str, float, float]]) -> tuple[str, ...]:
    """Return the texts of a row by column: those that begin with the heading's left edge, or end with its right one."""
    cells = [""] * len(columns)
    for text in sorted(band, key=lambda t: t.at[1]):
        end = text.at[0] + text_width_mm(text.text, text.height_mm)
        places = [n for n, (_, left, _) in enumerate(columns) if abs(left - text.at[0]) < NEAR_MM]
        places = places or [n for n, (_, _, right) in enumerate(columns) if abs(right - end) < NEAR_MM]
        places = places or [n for n, (_, left, right) in enumerate(columns) if left < end and text.at[0] < right]
        assert len(places) == 1, f"{text.text} stands in no column"
        cells[places[0]] = f"{cells[places[0]]} {text.text}".strip()
    return tuple(cells)


def _samples(group: Group, before: float, head: Text, middle: float) -> tuple[Polyline | Circle | Arc | Curve, ...]:
    """Return the ink between the column before and a meaning, at about the height of its middle line."""
    found = []
    for stroke in group.strokes:
        if isinstance(stroke, Text) or (isinstance(stroke, Polyline) and _is_wide(stroke)):
            continue
        x, y = _middle(stroke)
        if before < x < head.at[0] and abs(y - (middle - 1.0)) < 4.0:
            found.append(stroke)
    return tuple(found)


def _middle(stroke: Polyline | Circle | Arc | Curve) -> tuple[float, float]:
    points = (stroke.centre,) if isinstance(stroke, Circle | Arc) else stroke.points
    return sum(p[0] for p in points) / len(points), sum(p[1] for p in points) / len(points)


def _is_wide(stroke: Polyline) -> bool:
    return _is_level(stroke) and abs(stroke.points[0][0] - stroke.points[-1][0]) > 40.0


def _is_level(stroke: Polyline) -> bool:
    return max(p[1] for p in stroke.points) - min(p[1] for p in stroke.points) < 0.01


def _is_above(other: Text, text: Text) -> bool:
    """Return whether a line is the one before another of the same text."""
    lower = text.at[1] - other.at[1]
    return other is not text and 0.1 < lower < PITCH_MM and _same_column(other, text)


def _same_column(one: Text, other: Text) -> bool:
    ends = [text.at[0] + text_width_mm(text.text, text.height_mm) for text in (one, other)]
    return abs(one.at[0] - other.at[0]) < NEAR_MM or abs(ends[0] - ends[1]) < NEAR_MM


def _below_each_other(first: Text, others: list[Text]) -> list[Text]:
    """Return a line with those that go on below it."""
    found = [first]
    while following := [text for text in others if _is_above(found[-1], text)]:
        found.append(following[0])
    return found


def _texts(group: Group) -> list[Text]:
    return [stroke for stroke in group.strokes if isinstance(stroke, Text)]


def _second_column_mm(texts: list[Text]) -> float:
    """Return where the numbers of a list that stands in two columns begin the second time."""
    starts = sorted(text.at[0] for text in texts if re.fullmatch(r"\d+\.|•", text.text))
    return next((after - 1.0 for before, after in pairwise(starts) if after - before > 40.0), math.inf)


def _ordered(group: Group, height_mm: float) -> list[Text]:
    texts = (text for text in _texts(group) if text.height_mm == height_mm)
    return sorted(texts, key=lambda text: (round(text.at[1], 1), text.at[0]))


def _lines(group: Group) -> list[str]:
    """Return the lines of a group from the top, the designation apart from what else is in its line.

    The letters inside the symbol are none.
    """
    lines = [text.text for text in _ordered(group, 2.5) if not _is_inside(text)]
    first = re.fullmatch(r"(?:\d+ × )?(-\S+|PE)(?: (.*))?", lines[0]) if lines else None
    return [*filter(None, first.groups()), *lines[1:]] if first else lines


def _is_inside(text: Text) -> bool:
    """Return whether a text is part of a symbol: small letters, or one of these."""
    return text.height_mm == CAPTION_MM or text.text in {"EV", "G", "LOG", "EMS", "M", "WH"}


def flattened(*strokes: Polyline | Circle | Arc | Curve) -> set[tuple[tuple[float, float], ...]]:
    """Return the ink of strokes as the set of its straight pieces, circles and arcs, whichever way they are joined."""
    found = set()
    for stroke in strokes:
        if isinstance(stroke, Polyline):
            corners = (*stroke.points, stroke.points[0]) if stroke.closed else stroke.points
            found |= {tuple(sorted((_round(a), _round(b)))) for a, b in pairwise(corners)}
        elif isinstance(stroke, Curve):
            found.add(tuple(_round(point) for point in stroke.points))
        elif isinstance(stroke, Circle):
            found.add((_round(stroke.centre), (stroke.radius_mm, stroke.radius_mm)))
        else:
            axes = (stroke.radius_x_mm, stroke.radius_y_mm)
            found.add((_round(stroke.centre), axes, (stroke.start_deg, stroke.end_deg)))
    return found


def _round(point: tuple[float, float]) -> tuple[float, float]:
    """Return a point to a hundredth of a millimetre; symbols have corners halfway, which must round alike."""
    return round(point[0] + 0.0013, 2) + 0.0, round(point[1] + 0.0013, 2) + 0.0


@cache
def checked(name: str, *changes: tuple[str, str]) -> run.Checked:
    """Return one of the specs beside this file, checked. changes: words, each there once, and what becomes of them."""
    text = (HERE / f"{name}.yaml").read_text(encoding="utf-8")
    for old, new in changes:
        assert text.count(old) == 1, f"{old} is {text.count(old)} times in {name}.yaml"
        text = text.replace(old, new)
    with TemporaryDirectory() as folder:
        path = Path(folder) / f"{name}.yaml"
        path.write_text(text, encoding="utf-8")
        return run.check(path)


@cache
def drawing(name: str, reader: str = "", *changes: tuple[str, str]) -> Drawing:
    """Return the drawing of a spec, drawn once in a session. reader: for another reader. changes: of `checked`."""
    made = run.draw(checked(name, *changes), reader=reader or None)
    return Drawing(made.sheets, made.about)


@cache
def calculation(name: str) -> dict[str, list[dict[str, str]]]:
    """Return the tables of the calculation of a spec as rows by heading, the sections in their order."""
    made = _calculation(name)
    return {table.name: [dict(zip(table.headings, row, strict=True)) for row in table.cells] for table in made.tables}


def calculation_sheets(name: str) -> Drawing:
    """Return the sheets of the calculation of a spec."""
    made = _calculation(name)
    return Drawing(made.sheets, made.about)


@cache
def _calculation(name: str) -> Composition:
    return run.documents(checked(name), ("calculation",))["calculation"]


@cache
def cells(name: str, document: str, section: str, reader: str = "full", by: str = "") -> dict[tuple[str, str], Cell]:
    """Return the cells of a table or form by the first of their row and their heading. by: instead of the first."""
    seen = checked(name)
    system = replace(seen.system, drawing=seen.system.drawing.model_copy(update={"reader": reader}))
    flags = layout.numbered(system, seen.findings)
    made = KINDS[document].make(system, seen.ratings, seen.findings, flags)
    (found,) = [each for each in made.sections if isinstance(each, Table | Form) and each.name == section]
    say = ENGLISH.say
    if isinstance(found, Form):
        return {(say(caption), ""): cell for caption, cell in found.fields}
    heads = [say(column.heading) for column in found.columns]
    if len(set(heads)) < len(heads):  # quantities with their values, two beside each other
        halves = [row[place : place + 2] for row in found.rows for place in range(0, len(row), 2)]
        return {(say(name), heads[n]): cell for name, value in halves for n, cell in enumerate((name, value))}
    named = heads.index(by) if by else 0
    return {(say(row[named]), head): cell for row in found.rows for head, cell in zip(heads, row, strict=True)}

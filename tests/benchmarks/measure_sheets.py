"""How a drawing is set, read off its finished sheets: `python tests/benchmarks/measure_sheets.py [SPEC ...]`.

Without arguments all of specs/ and three generated plants. Prints a line a drawing: sheets for all readers, for the
operator, paper of sheet 1, sheets of the diagram, share of 10 mm cells of the free area of a diagram sheet with ink
(least and greatest), least distance of two rows, lines whose number has lost its unit, largest body of an inverter, and
of the data lines how often they cross a conductor for each inverter, how long their way is against the direct one round
busbars, and against that through them.
"""

from __future__ import annotations

import re
import sys
import tempfile
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

sys.path += [str(Path(__file__).parents[1] / "layout")]

from bench_draw import HEAD, TYPES, inverter, strings_of
from data_ways import data_lines
from plants import boards

from sld import run
from sld.layout.plan import Plan
from sld.sheet.compose import Composition
from sld.sheet.ink import ink_box
from sld.sheet.paper import Paper, frame_box
from sld.sheet.sheet import Sheet
from sld.symbols.stroke import Text

SPECS = Path(__file__).parents[2] / "specs"
STEP_MM = 10.0
TORN = re.compile(r"^(?:[0-9.]+|[≤≥<>]|[A-Za-z]{1,4} [≤≥]|[0-9]+ ×)$|^(?:V|A|W|kW|kVA|kA|mm²|m|Ω|kΩ|Hz|kWh)$")
"""A line of a label that is a number alone, a sign alone, or a unit alone."""


def plants() -> Iterator[tuple[str, str]]:
    """Yield generated plants: inverters of one length each; boards equal but for lengths, in each way to draw them.

    These are folded, a row an inverter (where neighbours differ in more than lengths), and a row an input.
    """
    yield "8 different", HEAD + "".join(inverter(f"a{n}", 1, 20.0 + n, 6, strings_of(2, 32)) for n in range(8)) + TYPES
    yield "6 boards, 60 x 16", boards(6, 10)
    yield "a row an inverter", boards(6, 10, alike=False)
    yield "a row an input", boards(6, 10, unfold=True)
    yield "1 board, a row an input", boards(1, 10, unfold=True)


def used_share(sheet: Sheet) -> float:
    """Return the share of cells of the frame, without the title block, that hold ink."""
    frame = frame_box(Paper("", sheet.width_mm, sheet.height_mm)).grown(-STEP_MM / 2)
    columns, rows = int(frame.width_mm / STEP_MM), int(frame.height_mm / STEP_MM)
    held: set[tuple[int, int]] = set()
    for group in sheet.groups:
        if group.layer == "frame" or group.key == "title-block":
            continue
        for stroke in group.strokes:
            box = ink_box(stroke)
            across = range(
                int((box.left_mm - frame.left_mm) / STEP_MM), int((box.right_mm - frame.left_mm) / STEP_MM) + 1
            )
            down = range(int((box.top_mm - frame.top_mm) / STEP_MM), int((box.bottom_mm - frame.top_mm) / STEP_MM) + 1)
            held.update((x, y) for x in across for y in down)
    title = next(group for group in sheet.groups if group.key == "title-block")
    block = [ink_box(stroke) for stroke in title.strokes]
    taken = sum(1 for box in block[:1] for _ in range(int(box.width_mm * box.height_mm / STEP_MM**2)))
    return sum(0 <= x < columns and 0 <= y < rows for x, y in held) / (columns * rows - taken)


def pitch_mm(plan: Plan) -> float:
    """Return the least distance of the axes of two rows that begin with strings."""
    axes = sorted({cell.at[1] for cell in plan.cells if cell.symbol.startswith("pv_")})
    return min((below - above for above, below in pairwise(axes)), default=0.0)


def line(name: str, made: Composition, operator: Composition) -> str:
    """Return the line of a drawing."""
    plans = [each.plan for each in made.diagrams]
    diagram = [made.sheets[each.sheet_number - 1] for each in made.diagrams]
    shares = [used_share(sheet) for sheet in diagram]
    labels = [s.text for sheet in diagram for g in sheet.groups if g.layer == "symbol" for s in g.strokes
              if isinstance(s, Text) and s.height_mm >= 2.5]  # fmt: skip
    torn = sum(bool(TORN.match(text)) for text in labels if text not in ("G", "M"))
    bodies = [
        max(c.box.width_mm - 5.0, c.box.height_mm) for p in plans for c in p.cells if c.symbol.startswith("inverter")
    ]
    data = [data_lines(plan) for plan in plans]
    pitches = [pitch for pitch in map(pitch_mm, plans) if pitch]
    return (
        f"{name:24} {len(made.sheets):4} {len(operator.sheets):4} {made.paper:>6} {len(diagram):4} "
        f"{min(shares):5.0%} {max(shares):5.0%} {min(pitches, default=0.0):6.1f} {torn:4} "
        f"{max(bodies, default=0.0):5.1f} {max(each.crossings for each in data):5.1f} "
        f"{max(each.way for each in data):5.2f} {max(each.bare for each in data):5.2f}"
    )


def main(paths: list[str]) -> None:
    """Print the table."""
    print(f"{'':24} all  oper  paper  dia.  used        pitch torn  body  cross  way  bare")
    for path in [Path(each) for each in paths] or sorted(SPECS.glob("*.yaml")):
        checked = run.check(path)
        print(line(path.stem, run.draw(checked), run.draw(checked, reader="operator")), flush=True)
    with tempfile.TemporaryDirectory() as folder:
        for name, text in () if paths else plants():
            path = Path(folder) / "plant.yaml"
            path.write_text(text, encoding="utf-8")
            checked = run.check(path)
            print(line(name, run.draw(checked), run.draw(checked, reader="operator")), flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])

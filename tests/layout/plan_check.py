"""An independent look at a finished Plan: lists everything that lies on something else or off its place.

Reads the Plan and the Diagram only, never what the passes hold in between. Compares all with all, so it is slow and
plain.
"""

from __future__ import annotations

import re
from collections import Counter
from itertools import combinations, pairwise

from sld.layout.diagram.diagram import Cell, Diagram, LineKind
from sld.layout.diagram.line import Line, joined
from sld.layout.plan import Plan, Referring
from sld.symbols.stroke import MODULE_MM, Box, Point
from sld.symbols.typeface import text_box

EPS = 1e-6
Segment = tuple[Point, Point]


def all_cells(diagram: Diagram) -> list[Cell]:
    found, waiting = [], [*diagram.trees, *diagram.free]
    while waiting:
        cell = waiting.pop()
        found.append(cell)
        waiting.extend(cell.children)
    return found


def solid_boxes(plan: Plan) -> list[tuple[str, str, Box]]:
    """(kind, key, box) of all symbols, texts and flags."""
    boxes = [("symbol", c.key, c.box) for c in plan.cells if c.symbol]
    boxes += [("symbol", c.key, c.strip) for c in plan.cells if c.strip]
    boxes += [("text", c.key, text_box(t)) for c in plan.cells for t in c.labels]
    boxes += [("text", f.key, text_box(f.caption)) for f in plan.frames]
    boxes += [("text", "", text_box(t)) for t in plan.texts]
    boxes += [("flag", f.key, f.box) for f in plan.flags]
    return boxes


def segments(plan: Plan) -> list[tuple[int, Segment]]:
    return [(i, pair) for i, wire in enumerate(plan.wires) for pair in pairwise(wire.points)]


def box_of(segment: Segment) -> Box:
    (x1, y1), (x2, y2) = segment
    return Box(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2))


def overlap_mm(a: Box, b: Box) -> tuple[float, float]:
    return (
        min(a.right_mm, b.right_mm) - max(a.left_mm, b.left_mm), min(a.bottom_mm, b.bottom_mm) - max(a.top_mm, b.top_mm)
    )  # fmt: skip


def defects(plan: Plan, diagram: Diagram) -> list[str]:
    return [
        *_overlaps(plan), *_wires_on_things(plan), *_wires_on_wires(plan), *_end_to_end(plan), *_dots(plan),
        *_frames(plan, diagram),
        *_ends(plan), *_outside(plan), *_completeness(plan, diagram),
    ]  # fmt: skip


def _overlaps(plan: Plan) -> list[str]:
    found = []
    boxes = sorted(solid_boxes(plan), key=lambda item: item[2].left_mm)
    for i, (kind, key, box) in enumerate(boxes):
        for other_kind, other_key, other in boxes[i + 1 :]:
            if other.left_mm >= box.right_mm - EPS:
                break
            own_parts = kind == other_kind == "symbol" and key == other_key
            if min(overlap_mm(box, other)) > EPS and not own_parts:
                found.append(f"{kind} of {key} on {other_kind} of {other_key}")
    return found


def _wires_on_things(plan: Plan) -> list[str]:
    found = []
    boxes = solid_boxes(plan)
    for i, segment in segments(plan):
        line = box_of(segment)
        wire = plan.wires[i]
        own = {key for key, _ in wire.ends}
        for kind, key, box in boxes:
            dx, dy = overlap_mm(line, box)
            if dx < -EPS or dy < -EPS:
                continue
            if kind != "symbol":
                found.append(f"wire {wire.ends} through {kind} of {key}")
            elif key not in own or max(dx, dy) > 0.6:  # its own symbol a wire may only touch, at the terminal
                found.append(f"wire {wire.ends} through symbol {key}")
    return found


def _wires_on_wires(plan: Plan) -> list[str]:
    found = []
    lines = sorted(((box_of(s), i, s) for i, s in segments(plan)), key=lambda line: line[0].left_mm)
    near = []
    for number, (box, i, a) in enumerate(lines):
        for other, j, b in lines[number + 1 :]:
            if other.left_mm > box.right_mm + EPS:
                break
            near.append((box, i, a, other, j, b))
    crossings = 0
    for box, i, a, other, j, b in near:
        dx, dy = overlap_mm(box, other)
        if dx < -EPS or dy < -EPS:
            continue
        first, second = plan.wires[i], plan.wires[j]
        if max(dx, dy) > EPS:
            found.append(f"{first.ends} along {second.ends}")
        elif first.net != second.net:
            inner = _inside(a, b) and _inside(b, a)
            crossings += inner
            pin = not inner and {key for key, _ in first.ends} & {key for key, _ in second.ends} - {""}
            if not inner and not pin:
                found.append(f"{first.ends} touches {second.ends}")
            if inner and LineKind.DATA not in (first.kind, second.kind):
                found.append(f"{first.ends} crosses {second.ends}")
    if crossings != plan.crossings_count:
        found.append(f"{crossings} crossings, the plan says {plan.crossings_count}")
    return found


def _end_to_end(plan: Plan) -> list[str]:
    """Dashed lines of two nets that follow one another on one straight line: the gap is read as one between dashes."""
    found = []
    lines = [(box_of(s), plan.wires[i]) for i, s in segments(plan) if plan.wires[i].kind is LineKind.DATA]
    for (box, wire), (other, second) in combinations(lines, 2):
        gaps = sorted(-gap for gap in overlap_mm(box, other))
        across = min(box.width_mm + other.width_mm, box.height_mm + other.height_mm)
        if wire.net != second.net and across < EPS and abs(gaps[0]) < EPS < gaps[1] < 2 * MODULE_MM - EPS:
            found.append(f"{wire.ends} is read on in {second.ends}")
    return found


def _inside(a: Segment, b: Segment) -> bool:
    """Whether b, at right angles to a, meets it between its ends."""
    line, other = box_of(a), box_of(b)
    if line.height_mm < EPS:
        return line.left_mm + EPS < other.left_mm < line.right_mm - EPS
    return line.top_mm + EPS < other.top_mm < line.bottom_mm - EPS


def _dots(plan: Plan) -> list[str]:
    """Where three conductors of one net meet there is a dot, more than three never meet, and no dot lies elsewhere."""
    found = []
    points = {point for wire in plan.wires for point in (wire.points[0], wire.points[-1])} | set(plan.dots)
    pins = {point for cell in plan.cells for name, point in cell.pins if cell.symbol}
    lines = [(box_of(segment), segment) for _, segment in segments(plan)]
    for x, y in sorted(points - pins):
        meeting = 0
        for line, segment in lines:
            if min(overlap_mm(line, Box(x, y, x, y))) > -EPS:
                meeting += 1 if (x, y) in segment else 2
        if (meeting >= 3) != ((x, y) in plan.dots):
            found.append(f"{meeting} conductors at {x, y}, dot: {(x, y) in plan.dots}")
        if meeting > 3:
            found.append(f"{meeting} conductors meet at {x, y}")
    if len(set(plan.dots)) != len(plan.dots):
        found.append("a dot occurs twice")
    return found


def _frames(plan: Plan, diagram: Diagram) -> list[str]:
    found = []
    enclosure = {cell.key: cell.enclosure for cell in all_cells(diagram)}
    homes: Counter[str] = Counter()
    boxes = solid_boxes(plan)
    for frame in plan.frames:
        inside = {
            c.key
            for c in plan.cells
            if c.symbol and min(overlap_mm(c.box.grown(0.01), frame.box)) > EPS and frame.holds(c.box.grown(0.01))
        }
        members = {key for key in inside if enclosure.get(re.sub("/(earth|data\\d*)$", "", key)) == frame.key}
        homes.update(members)
        for kind, key, box in boxes:
            if min(overlap_mm(box, frame.box)) <= EPS or not frame.holds(box):
                continue
            belongs = key in members or (kind == "text" and key in (frame.key, ""))
            if not belongs:
                found.append(f"{kind} of {key} in frame {frame.key}")
            elif not _within(box, frame.box):
                found.append(f"{kind} of {key} sticks out of frame {frame.key}")
        nets = {wire.net for wire in plan.wires if {key for key, _ in wire.ends} & members}
        for i, segment in segments(plan):
            wire = plan.wires[i]
            dx, dy = overlap_mm(box_of(segment), frame.box)
            if dx < -EPS or dy < -EPS or not frame.holds(box_of(segment).grown(0.01)):
                continue
            if max(dx, dy) > EPS and min(_edge_distances(segment, frame.box)) < EPS:
                found.append(f"wire {wire.ends} along frame {frame.key}")
            if wire.net not in nets:
                what = "data wire" if wire.kind is LineKind.DATA else "wire"
                found.append(f"{what} {wire.ends} through frame {frame.key}")
    for a, b in combinations(plan.frames, 2):
        if min(overlap_mm(a.box, b.box)) > -MODULE_MM / 2 and a.holds(b.box.grown(1.2)) and b.holds(a.box.grown(1.2)):
            found.append(f"frames {a.key} and {b.key} meet")
    for key, name in enclosure.items():
        if homes[key] != (1 if name else 0):
            found.append(f"{key} of {name!r} is in {homes[key]} frames")
    return found


def _within(box: Box, outer: Box) -> bool:
    return (
        box.left_mm >= outer.left_mm - EPS and box.right_mm <= outer.right_mm + EPS
        and box.top_mm >= outer.top_mm - EPS and box.bottom_mm <= outer.bottom_mm + EPS
    )  # fmt: skip


def _edge_distances(segment: Segment, box: Box) -> list[float]:
    """Distances to the edges that are parallel to the segment."""
    line = box_of(segment)
    if line.width_mm > EPS:
        return [abs(line.top_mm - box.top_mm), abs(line.top_mm - box.bottom_mm)]
    return [abs(line.left_mm - box.left_mm), abs(line.left_mm - box.right_mm)]


def _ends(plan: Plan) -> list[str]:
    found = []
    pins = {(cell.key, name): point for cell in plan.cells for name, point in cell.pins}
    for wire in plan.wires:
        for end, point in zip(wire.ends, (wire.points[0], wire.points[-1]), strict=True):
            if end != ("", "") and pins.get(end) != point:
                found.append(f"end {end} at {point}, its terminal at {pins.get(end)}")
        for a, b in pairwise(wire.points):
            if (a[0] == b[0]) == (a[1] == b[1]):
                found.append(f"{wire.ends} is not orthogonal between {a} and {b}")
        earthed_edge = [point for end, point in zip(wire.ends, (wire.points[0], wire.points[-1]), strict=True)
                        if end[1] == "earth" or end[1].startswith("data")]  # fmt: skip
        for point in wire.points:
            if point not in earthed_edge and any(abs(v / MODULE_MM - round(v / MODULE_MM)) > EPS for v in point):
                found.append(f"{wire.ends} off the grid at {point}")
    return found


def _outside(plan: Plan) -> list[str]:
    sheet = Box(0.0, 0.0, plan.width_mm, plan.height_mm)
    found = [f"{kind} of {key} outside" for kind, key, box in solid_boxes(plan) if not _within(box, sheet)]
    found += [f"frame {f.key} outside" for f in plan.frames if not _within(f.box, sheet)]
    return found + [f"wire {plan.wires[i].ends} outside" for i, s in segments(plan) if not _within(box_of(s), sheet)]


def _text(line: Line) -> str:
    said = str(line.said)
    return Referring.roomy(said, line.references_count).text if line.references_count else said


def _completeness(plan: Plan, diagram: Diagram) -> list[str]:
    """All that the diagram has is in the plan, once."""
    found = []
    placed = {cell.key: cell for cell in plan.cells}
    flags = Counter((flag.key, flag.number) for flag in plan.flags)
    bar = diagram.earth.key if diagram.earth else ""
    at_foot = [cell for cell in plan.cells if cell.key.endswith("/earth") or cell.key.startswith(f"{bar}/")]
    once = [text.text for cell in at_foot for text in cell.labels]
    for cell in all_cells(diagram):
        if cell.key not in placed:
            found.append(f"{cell.key} is missing")
            continue
        written = [text.text for text in placed[cell.key].labels]
        if f"{cell.key}/earth" in placed:
            written += [text.text for text in placed[f"{cell.key}/earth"].labels]
        elif any(name == "earth" for name, _ in placed[cell.key].pins):  # bonded with others, which is said once
            written += once
        upper = () if cell.enclosure == cell.key else cell.above  # else the caption of the frame names it
        lines = (*joined(upper), *joined(cell.below), *(each for each in (cell.along, cell.earth) if each))
        texts = [_text(line) for line in lines if _text(line)]
        missing = [text for text in texts if not any(text in each for each in written)]
        found += [f"line {text!r} of {cell.key} is missing" for text in missing]
        found += [f"flag {n} of {cell.key} is missing" for n in cell.flags if flags[cell.key, n] != 1]
    return found

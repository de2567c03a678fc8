"""The table of targets in DEVELOPERS.md: `python tests/benchmarks/bench_table.py [ROUNDS]`.

Processor time, paired: each round takes the work and its yardstick one after the other, and the median of the ratios is
printed, which is firm on a machine that others use too. Needs `dot` of Graphviz on the path for its rows.
"""

from __future__ import annotations

import gc
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import partial
from itertools import pairwise
from pathlib import Path

from bench_draw import by_count, unfolded

from sld import layout, run, sheet
from sld.cli import COLLECT_FROM_COUNT
from sld.documents.document import Document
from sld.documents.registry import KINDS
from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import Diagram
from sld.layout.diagram.line import Line

SPECS = Path(__file__).parents[2] / "specs"
DIAGRAM_FONT = "Liberation Sans Narrow"
IMPORTS = {
    "check": "import yaml, pydantic, typer",
    "draw": "import yaml, pydantic, typer, schemdraw, cairocffi",
}
"""The libraries that a command loads, bare."""
ALL_IMPORTS = "import pydantic, schemdraw, typer, cairosvg, yaml"
"""The libraries of the package, bare."""


def again_s(work: Callable[[], object]) -> float:
    """Return the processor time of work in this process, which has done it before."""
    gc.collect()
    before = time.process_time()
    work()
    return time.process_time() - before


def own_s(work: Callable[[], object]) -> float:
    """Return the processor time of work in a copy of this process, so that this one still has not done it."""
    reader, writer = os.pipe()
    if (child := os.fork()) == 0:
        before = resource.getrusage(resource.RUSAGE_SELF)
        work()
        after = resource.getrusage(resource.RUSAGE_SELF)
        os.write(writer, str(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime).encode())
        os._exit(0)
    os.close(writer)
    os.waitpid(child, 0)
    with os.fdopen(reader) as told:
        return float(told.read())


def command_s(compiled: Path, *words: str) -> float:
    """Return the processor time of a command. compiled: a folder for byte code, which an installed package has."""
    known = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    environment = {**known, "PYTHONPYCACHEPREFIX": str(compiled)}
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(words, check=False, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=environment)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def drawn(path: Path) -> None:
    """Check, draw and write a spec as SVG."""
    run.files(run.draw(run.check(path)).sheets, path.stem, ("svg",))


def without_tables(checked: run.Checked) -> Document:
    """Return the drawing of a checked spec with nothing to print but the diagram and the title block."""
    part = checked.parts[0]
    document = KINDS["drawing"].make(part.system, part.ratings, checked.findings, {})
    return replace(document, sections=(), hover={})


def diagram_drawn(checked: run.Checked, document: Document) -> None:
    """Lay out the diagram of a checked spec and write its sheets as SVG."""
    parts = [(part, layout.by_device({}, part.system.root)) for part in checked.parts]
    drawable = layout.Drawable(
        tuple((layout.diagram_of(part.system, part.ratings, flags), part.system) for part, flags in parts)
    )
    made = sheet.sheets(document, drawable)
    run.files(made.sheets, "diagram", ("svg",))


def graph(diagram: Diagram) -> tuple[str, int]:
    """Return a diagram as a graph for `dot`: its cells with their words, what joins them, and how many cells.

    They are those of the power tree and of the data chains. Earths are left out, which is in favour of `dot`: most of
    them are joined to one line, that would be one node with hundreds of edges.
    """
    cells = (*branch(diagram.root), *diagram.free)
    edges = [(cell.key, child.key) for cell in cells for child in cell.children]
    for chain in diagram.chains:
        edges += pairwise(step.key for step in chain.steps)
    nodes = [f'"{cell.key}" [label="{_said((*cell.above, cell.along, *cell.below))}"];' for cell in cells]
    joined = [f'"{one}" -> "{other}";' for one, other in edges]
    look = f'rankdir=LR; node [shape=box, fontname="{DIAGRAM_FONT}", fontsize=7];'
    return f"digraph {{ {look} {' '.join(nodes)} {' '.join(joined)} }}", len(cells)


def _said(lines: Iterable[Line | None]) -> str:
    """Return lines as the label of a node."""
    return "\\n".join(str(line.said) for line in lines if line is not None).replace('"', "'")


def row(title: str, rounds: int, work: Callable[[], float], yardstick: Callable[[], float]) -> None:
    """Print the least time of the work, and how many times that of its yardstick it takes."""
    pairs = [(work(), yardstick()) for _ in range(rounds)]
    ratio = statistics.median(mine / other for mine, other in pairs)
    print(f"{title:<62}{min(mine for mine, _ in pairs):>8.3f} s{ratio:>8.2f}", flush=True)


def main(rounds: int) -> None:
    """Print the table."""
    gc.set_threshold(COLLECT_FROM_COUNT)
    drawn(SPECS / "village-hall.yaml")
    gc.freeze()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        made = {"one": by_count(1), "many": by_count(500), "different": unfolded(3)}
        paths = {stem: folder / f"{stem}.yaml" for stem in made}
        for stem, text in made.items():
            paths[stem].write_text(text, encoding="utf-8")
        several = sorted(SPECS.glob("*.yaml"))
        unseen = [own_s(lambda each=each: drawn(each)) for each in several]  # type: ignore[misc]
        print(f"{'a spec not seen before, mean of specs/':<62}{statistics.mean(unseen):>8.3f} s")
        row("10,000 strings by count, to one such inverter", rounds, lambda: own_s(lambda: drawn(paths["many"])),
            lambda: own_s(lambda: drawn(paths["one"])))  # fmt: skip
        for command, imports in IMPORTS.items():
            said = (command, str(SPECS / "village-hall.yaml"))
            said += ("-o", name, "--overwrite") if command == "draw" else ()
            cold = partial(command_s, folder / "compiled", sys.executable, "-m", "sld", *said)
            for title, each in (("what it loads, bare", imports), ("the package's libraries, bare", ALL_IMPORTS)):
                bare = partial(command_s, folder / "compiled", sys.executable, "-c", each)
                cold(), bare()  # once for the byte code
                row(f"sld {command} cold, to {title}", rounds, cold, bare)
        beside_dot(folder, rounds)


def beside_dot(folder: Path, rounds: int) -> None:
    """Print the rows beside one process of `dot` on the same cells and edges, its start included.

    Warm: in this process, which has drawn the same spec before. Not seen: all sheets, in a copy that has drawn others.
    """
    (folder / "large.yaml").write_text(unfolded(60, different_strings=True), encoding="utf-8")
    for path in (SPECS / "valley-school.yaml", folder / "large.yaml"):
        checked = run.check(path)
        text, cells_count = graph(layout.diagram_of(checked.system, checked.ratings, {}))
        (folder / "graph.dot").write_text(text, encoding="utf-8")
        dot = partial(command_s, folder, "dot", "-Tsvg", str(folder / "graph.dot"), "-o", os.devnull)
        title = f"{path.stem} to `dot` on its {cells_count} cells"
        whole = partial(drawn, path)
        row(f"{title}: all, not seen", rounds, partial(own_s, whole), dot)
        whole()
        row(f"{title}: all, warm", rounds, partial(again_s, whole), dot)
        diagram = partial(diagram_drawn, checked, without_tables(checked))
        diagram()
        row(f"{title}: diagram, warm", rounds, partial(again_s, diagram), dot)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 5)

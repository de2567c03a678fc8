"""Seconds to make the PDF of the same sheets: ours from the strokes, and `rsvg-convert` from our SVG, side by side.

Run: python tests/benchmarks/bench_pdf.py [SPEC ...]. Each way is timed in turn, the best of several rounds counts; for
rsvg-convert (librsvg2-bin) that is the whole process, and beside it what is left without its start, which is the time
of an SVG with nothing in it. Ends with 1 where ours takes more than 1.5 times as long as the whole process.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from sld import run

SPECS = Path(__file__).parents[2] / "specs"
ROUNDS_COUNT = 7
LIMIT_FACTOR = 1.5
NOTHING = '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm"/>'


def seconds(work: Callable[[], object]) -> float:
    """Return the wall time of one call."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def measured(path: Path, program: str, folder: Path) -> tuple[int, float, float, float]:
    """Return the count of sheets and the best seconds of ours, of theirs, and of theirs with nothing to do."""
    drawing = run.draw(run.check(path))
    svgs = []
    for name, content in run.files(drawing.sheets, path.stem, ("svg",)).items():
        (folder / name).write_bytes(content)
        svgs.append(str(folder / name))
    empty = folder / "nothing.svg"
    empty.write_text(NOTHING, encoding="utf-8")

    def ours() -> None:
        made = run.files(drawing.sheets, path.stem, ("pdf",), about=drawing.about)
        (folder / "ours.pdf").write_bytes(made[f"{path.stem}.pdf"])

    def theirs(files: list[str]) -> None:
        subprocess.run([program, "--format=pdf", f"--output={folder / 'theirs.pdf'}", *files], check=True)

    ours()  # cairo and the font are loaded once a process, however many specs it draws
    rounds = [(seconds(ours), seconds(lambda: theirs(svgs)), seconds(lambda: theirs([str(empty)])))
              for _ in range(ROUNDS_COUNT)]  # fmt: skip
    own, other, start = (min(column) for column in zip(*rounds, strict=True))
    return len(drawing.sheets), own, other, start


def main(paths: list[Path]) -> int:
    """Print the table; return 1 where the limit is passed."""
    program = shutil.which("rsvg-convert")
    if program is None:
        print("needs rsvg-convert: sudo apt-get install -y librsvg2-bin")
        return 2
    print(f"{'spec':<22}{'sheets':>8}{'ours':>9}{'rsvg':>9}{'factor':>8}{'rsvg without start':>20}{'factor':>8}")
    worst = 0.0
    with tempfile.TemporaryDirectory() as folder:
        for path in paths:
            count, own, other, start = measured(path, program, Path(folder))
            worst, bare = max(worst, own / other), other - start
            line = (
                f"{path.stem:<22}{count:>8}{own:>9.3f}{other:>9.3f}{own / other:>8.2f}{bare:>20.3f}{own / bare:>8.2f}"
            )
            print(line, flush=True)
    print(f"largest factor {worst:.2f}, limit {LIMIT_FACTOR}")
    return int(worst > LIMIT_FACTOR)


if __name__ == "__main__":
    raise SystemExit(main([Path(word) for word in sys.argv[1:]] or sorted(SPECS.glob("*.yaml"))))

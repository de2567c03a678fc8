"""What a folder of many specs costs: processor time a spec, memory over the run, an unchanged re-run, a million.

    .venv/bin/python tests/benchmarks/bench_folder.py 1000              # generated specs of seed 1, about ten minutes
    .venv/bin/python tests/benchmarks/bench_folder.py 200 --to svg,pdf --jobs 2

The specs are those of `tests/properties/generated.py`. Memory is read from the system while the run goes on, by how
many specs are done (the lines of its summary are not there yet: the records in the folder of its files are counted).
What several processes gain is told by their shares of the processor time, as a machine that others use too has no two
free cores: the run lasts as long as its own work and that of the busiest of them.
"""

from __future__ import annotations

import argparse
import os
import resource
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

sys.path += [str(Path(__file__).parents[1] / "properties")]

from generated import put

ROOT = Path(__file__).parents[2]
_EVERY_S = 0.5
_PAGE_BYTES = os.sysconf("SC_PAGE_SIZE")
_TICKS_PER_S = os.sysconf("SC_CLK_TCK")
_HOUR_S = 3600
_MILLION = 1_000_000


@dataclass(frozen=True)
class Cost:
    """What a run took. cpu_s: processor time of it and its processes; busiest_s: of its own and of the busiest of them.

    memory: (specs done, MB of its largest one).
    """

    cpu_s: float
    busiest_s: float
    wall_s: float
    memory: tuple[tuple[int, float], ...]


def _children(pid: int) -> list[str]:
    return Path(f"/proc/{pid}/task/{pid}/children").read_text().split()


def _resident_mb(pid: int) -> float:
    """Return the memory of the largest of a process and its children."""
    pages = [int(Path(f"/proc/{each}/statm").read_text().split()[1]) for each in (pid, *_children(pid))]
    return max(pages) * _PAGE_BYTES / 1e6


def _taken_s(pid: int) -> dict[str, float]:
    """Return the processor time of a process and of each of its children so far."""
    found = {}
    for each in (str(pid), *_children(pid)):
        user, system = Path(f"/proc/{each}/stat").read_text().rpartition(")")[2].split()[11:13]
        found[each] = (int(user) + int(system)) / _TICKS_PER_S
    return found


def _run(arguments: list[object], out: Path | None = None) -> Cost:
    """Run a command of the tool. out: where its drawings are counted."""
    before, start_s = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    memory: list[tuple[int, float]] = []
    shares_s: dict[str, float] = {}
    with subprocess.Popen(
        [sys.executable, "-m", "sld", *map(str, arguments)], cwd=ROOT, stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    ) as running:  # fmt: skip
        while running.poll() is None:
            time.sleep(_EVERY_S if out else _EVERY_S / 10)
            try:
                memory.append((len(list(out.rglob("*.sld"))) if out else 0, _resident_mb(running.pid)))
                shares_s |= _taken_s(running.pid)
            except (FileNotFoundError, ProcessLookupError):  # it has ended meanwhile
                continue
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu_s = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    own_s = shares_s.pop(str(running.pid), cpu_s)
    return Cost(cpu_s, own_s + max(shares_s.values(), default=0.0), time.perf_counter() - start_s, tuple(memory))


def _memory(cost: Cost, count: int) -> str:
    """Return the most memory in each fifth of a run."""
    fifths: list[float] = [0.0] * 5
    for done, megabytes in cost.memory:
        at = min(done * 5 // count, 4)
        fifths[at] = max(fifths[at], megabytes)
    return ", ".join(f"{each:.0f}" for each in fifths)


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("count", type=int)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--to", default="svg")
    parser.add_argument("--jobs", type=int, default=1)
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as place:
        specs, out = Path(place, "specs"), Path(place, "out")
        count = len(put(specs, asked.count, asked.seed))
        draw = ["draw", specs, "-o", out, "--to", asked.to, "--jobs", asked.jobs]
        check = _run(["check", specs, "--jobs", asked.jobs])
        drawn = _run(draw, out)
        again = _run(draw)
        size = sum(each.stat().st_size for each in out.rglob("*") if each.is_file())
    print(f"{count} specs, {asked.jobs} processes, {asked.to}")
    print(f"{'':<12}{'processor s':>12}{'ms a spec':>12}{'by the clock s':>16}{'million, core hours':>22}")
    for name, cost in (("check", check), ("draw", drawn), ("unchanged", again)):
        each_s = cost.cpu_s / count
        hours = each_s * _MILLION / _HOUR_S
        print(f"{name:<12}{cost.cpu_s:>12.1f}{each_s * 1000:>12.1f}{cost.wall_s:>16.1f}{hours:>22.1f}")
    print(f"on as many free cores as processes {drawn.cpu_s / drawn.busiest_s:.1f} times as fast as on one")
    print(f"an unchanged run takes 1/{drawn.cpu_s / again.cpu_s:.0f} of the first")
    print(f"memory of the largest process in each fifth of the run: {_memory(drawn, count)} MB")
    print(f"files: {size / count / 1e3:.0f} kB a spec, {size / count * _MILLION / 1e9:.0f} GB for a million")


if __name__ == "__main__":
    main()

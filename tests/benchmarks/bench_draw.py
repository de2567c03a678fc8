"""How long a check and a drawing take, by the size of the system: `python tests/benchmarks/bench_draw.py [COUNT ...]`.

Outside the default run: times depend on the machine. Prints a table in seconds of processor time, after one drawing to
load the libraries and the font.
"""

from __future__ import annotations

import gc
import sys
import tempfile
import time
from itertools import pairwise
from pathlib import Path

from sld import run
from sld.cli import COLLECT_FROM_COUNT

SPECS = Path(__file__).parents[2] / "specs"

TYPES = """
types:
  modules:
    M: {rated_power: 410 W, open_circuit_voltage: 37.4 V, short_circuit_current: 13.9 A, mpp_voltage: 31.3 V,
        mpp_current: 13.1 A, voltage_coefficient: -0.26 %/K, current_coefficient: 0.05 %/K}
  inverters:
    I: {rated_power: 100 kW, phases: 3, current_max: 150 A, dc_voltage_max: 1100 V, mpp_voltage_min: 250 V,
        mpp_voltage_max: 950 V,
        inputs: [{count: 12, current_max: 60 A, short_circuit_current_max: 90 A, strings_max: 4}]}
"""

HEAD = """project: {title: Solar field}
site: {temperature_min: -14 °C, temperature_max: 34 °C}
supply: {phases: 3, voltage: 400 V, earthing_system: TN-S, prospective_fault_current: 25 kA, loop_impedance: 0.02 ohm}
inverters:
"""


def inverter(name: str, count: int, length_m: float, inputs_count: int, strings: str) -> str:
    """Return the block of so many equal inverters. strings: those of an input, as `strings_of` makes them."""
    inputs = ", ".join([f"{{strings: [{strings}]}}"] * inputs_count)
    circuit = f"[{{kind: breaker}}, {{kind: cable, length: {length_m:g} m}}, {{kind: isolator}}]"
    return f"  {name}: {{type: I, count: {count}, circuit: {circuit}, inputs: [{inputs}]}}\n"


def strings_of(count: int, *lengths_m: float) -> str:
    """Return so many equal strings, of each of the lengths of cable."""
    string = f"module: M, modules_in_series: 18, count: {count}"
    return ", ".join(f"{{{string}, cable: {{length: {each:g} m}}}}" for each in lengths_m)


def by_count(count: int) -> str:
    """Return a spec of equal inverters with 20 strings each, which are drawn once."""
    return HEAD + inverter("field", count, 14.0, 10, strings_of(2, 32)) + TYPES


def different(count: int) -> str:
    """Return a spec of inverters none of which has the cable length of the one before."""
    return HEAD + "".join(inverter(f"t{n}", 1, 10.0 + n % 7, 1, strings_of(2, 32)) for n in range(1, count + 1)) + TYPES


def unfolded(count: int, *, different_strings: bool = False) -> str:
    """Return a spec of different inverters with 20 strings each, of which every branch is drawn.

    different_strings: the two strings of an input are none of the other's length, so that each of them is drawn.
    """
    strings = strings_of(1, 32, 33) if different_strings else strings_of(2, 32)
    inverters = "".join(inverter(f"t{n}", 1, 10.0 + n % 7, 10, strings) for n in range(1, count + 1))
    return "drawing: {unfold: true}\n" + HEAD + inverters + TYPES


def measured(path: Path) -> tuple[int, int, list[float]]:
    """Return devices, sheets, and the seconds of check, draw, SVG and PDF."""
    times = [time.process_time()]
    checked = run.check(path)
    times.append(time.process_time())
    drawing = run.draw(checked)
    times.append(time.process_time())
    for each in ("svg", "pdf"):
        run.files(drawing.sheets, path.stem, (each,), about=drawing.about)
        times.append(time.process_time())
    return (
        sum(len(part.system.devices) for part in checked.parts),
        len(drawing.sheets),
        [b - a for a, b in pairwise(times)],
    )


def main(counts: list[int]) -> None:
    """Print the table."""
    gc.set_threshold(COLLECT_FROM_COUNT)  # as the command line does
    measured(SPECS / "village-hall.yaml")
    print(f"{'spec':<22}{'devices':>8}{'sheets':>8}{'check':>8}{'draw':>8}{'svg':>8}{'pdf':>8}")
    with tempfile.TemporaryDirectory() as folder:
        rows = [(path.stem, path) for path in sorted(SPECS.glob("*.yaml"))]
        for count in counts:
            texts = {
                f"{count} different": different(count),
                f"{count} by count": by_count(count),
                f"{count} unfolded": unfolded(count),
            }
            for name, text in texts.items():
                path = Path(folder) / f"{name.replace(' ', '-')}.yaml"
                path.write_text(text, encoding="utf-8")
                rows.append((name, path))
        for name, path in rows:
            devices, sheets, seconds = measured(path)
            print(f"{name:<22}{devices:>8}{sheets:>8}" + "".join(f"{each:>8.2f}" for each in seconds), flush=True)


if __name__ == "__main__":
    main([int(word) for word in sys.argv[1:]] or [10, 100, 500])

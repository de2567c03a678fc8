"""A spec with equal inverters: every device of the System is in the drawing, by itself or named where it is folded."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest
from plain_types import TYPES

from sld import layout, run
from sld.layout.plan import Plan

SPEC = """project: {{title: Barn}}
site: {{temperature_min: -10 °C, temperature_max: 32 °C, lightning_density: 0.5 /km2/yr}}
supply: {{phases: 3, voltage: 400 V, earthing_system: TN-S, prospective_fault_current: 10 kA, loop_impedance: 0.1 ohm}}
drawing: {drawing}
inverters:
  barn:
    type: I
    count: {count}
    circuit: [{{kind: breaker, breaking_capacity: 10 kA}}, {{kind: cable, length: 12 m}}, {{kind: isolator}}]
    inputs:
      - strings: [{{module: M, modules_in_series: 12, cable: {{length: 20 m}}}}]
        circuit: [{{kind: isolator, enclosure: box}}]
junction_boxes: {{box: {{name: string box}}}}
loads: {{pump: {{power: 2 kW, circuit: [{{kind: breaker, breaking_capacity: 10 kA}}]}}}}
data:
  devices: {{logger: {{kind: logger}}}}
  chains: {{bus: {{devices: [{{device: logger, terminated: true}}, {{device: barn, address: 5, terminated: true}}]}}}}
"""


def checked(folder: Path, count: int, drawing: str) -> run.Checked:
    path = folder / "barn.yaml"
    path.write_text(SPEC.format(count=count, drawing=drawing) + TYPES, encoding="utf-8")
    return run.check(path)


def plan_of(found: run.Checked) -> Plan:
    flags = layout.by_device(layout.numbered(found.system, found.findings))
    return next(layout.Drawable(((layout.diagram_of(found.system, found.ratings, flags), found.system),)).plans())


@pytest.mark.parametrize(
    ("count", "drawing", "inverters_drawn"),
    [(3, "{}", 3), (4, "{}", 1), (60, "{}", 1), (6, "{unfold: true}", 6), (6, "{draw_once_from: 7}", 6),
     (2, "{draw_once_from: 2}", 1)],
)  # fmt: skip
def test_every_device_is_drawn_or_named(tmp_path: Path, count: int, drawing: str, inverters_drawn: int) -> None:
    found = checked(tmp_path, count, drawing)
    plan = plan_of(found)
    devices = found.system.devices
    stood_for = Counter(key for cell in plan.cells for key in (cell.key, *cell.alike) if key in devices)
    assert stood_for == Counter(list(devices))
    assert sum(cell.symbol.startswith("inverter") for cell in plan.cells) == inverters_drawn
    drawing_made = run.draw(found)
    assert set(devices) <= set(drawing_made.zones)
    titles = "\n".join(group.title for group in drawing_made.sheets[0].groups)
    for device in devices.values():
        assert device.designation in titles
    assert len([frame for frame in plan.frames if "box" in frame.key]) == inverters_drawn


def test_what_is_printed_of_the_folded_ones(tmp_path: Path) -> None:
    plan = plan_of(checked(tmp_path, 60, "{}"))
    words = [text.text for cell in plan.cells for text in cell.labels]
    assert {"60 × -TB1…60-FC1", "-TB1…60", "-TB1…60-GC1", "addr. 5…64,"} <= set(words)
    assert any("at -TB60" in word for word in words)
    (caption,) = (frame.caption.text for frame in plan.frames if "box" in frame.key)
    assert caption.split()[0] == "-XD1…60"

"""What stands below a transformer of the site: its ratings, the supply it makes, and the way to the main board.

Given values stand as they are given; a secondary voltage that is not given is that of the installation.
"""

from __future__ import annotations

import pytest
from lettering import texts
from plain_types import TYPES

from sld import run
from sld.layout.diagram.labels import below
from sld.layout.diagram.line import Role
from sld.model.device import Transformer

SPEC = """project: {{title: Yard}}
site: {{temperature_min: -10 °C, temperature_max: 32 °C, lightning_density: 0.5 /km2/yr}}
supply:
  phases: 3
  voltage: 400 V
  earthing_system: TN-S
  transformer: {{rated_power: 250 kVA, primary_voltage: 20 kV, short_circuit_voltage: 4 %, load_losses: 3.2 kW,
                vector_group: Dyn5, network_fault_power: 200 MVA{given}}}
boards: {{main: {{circuit: [{{kind: breaker, rated_current: 400 A, breaking_capacity: 25 kA}}]}}}}
inverters:
  barn:
    type: I
    circuit: [{{kind: breaker, breaking_capacity: 10 kA}}]
    inputs: [{{strings: [{{module: M, modules_in_series: 12}}]}}]
"""


@pytest.mark.parametrize(
    ("given", "voltages", "way"),
    [
        ("", "20 kV / 400 V", "cable not given"),
        (", secondary_voltage: 410 V", "20 kV / 410 V", "cable not given"),
        (", secondary_length: 3 m", "20 kV / 400 V", "3 m to the first overcurrent device"),
        (", secondary_length: 2.5 m", "20 kV / 400 V", "2.5 m to the first overcurrent device"),
    ],
)
def test_lines_below_a_transformer(given: str, voltages: str, way: str) -> None:
    found = run.check_text(SPEC.format(given=given) + TYPES)
    (transformer,) = found.system.of(Transformer)
    lines = below(transformer, found.system, found.ratings)
    assert texts(lines) == ("250 kVA", "uk 4 %", voltages, "Dyn5", "3N PE ~", "400/230 V", "TN-S", way)
    assert [line.role for line in lines] == [Role.RATED] * 4 + [Role.SUPPLY] * 4  # an overview has those of the supply

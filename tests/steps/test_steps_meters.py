"""What can flow through the current transformers of a meter: worked by hand, sources beside numbers."""

from __future__ import annotations

from typing import Any

import pytest
from rated_specs import changed, rated_data

from sld.ratings.symbol import Symbol
from sld.rules import review

METER = "boards.main.circuit.1"


def metered(kva: float | None, ct_a: float | None, breaker: dict[str, Any], **more: Any) -> dict[str, Any]:
    """Return changes: a meter behind the main circuit-breaker, and behind a transformer where one is given. more: parts
    of the spec."""
    meter = {"kind": "meter", "purpose": "supply", "connection": "ct", **({"ct_primary": ct_a} if ct_a else {})}
    breaker = {"kind": "breaker", "construction": "moulded_case", "breaking_capacity": "36 kA", **breaker}
    source = {"rated_power": f"{kva} kVA", "primary_voltage": "20 kV", "short_circuit_voltage": 4} if kva else None
    return {
        "supply": {"earthing_system": "TN-S", "voltage": "400 V", **({"transformer": source} if source else {})},
        "boards.main.circuit": [breaker, meter],
        **more,
    }


PV_600 = {"types.inverters.t.current_max": "600 A"}
LOAD_620 = {"loads": {"plant": {"current": "620 A"}}}


@pytest.mark.parametrize(
    ("kva", "breaker", "more", "ct_a", "flows_a", "told"),
    [
        # S / (√3 · U), IEC 60076-1: 400 kVA at 400 V 577.4 A, 630 kVA 909.3 A, 250 kVA 360.8 A
        (400, {"rated_current": 630}, {}, 600, 577.35, False),
        (400, {"rated_current": 630}, {}, 500, 577.35, True),
        (630, {"rated_current": 630}, {}, 600, 630, True),
        (630, {"rated_current": 630}, {}, 750, 630, False),
        # Ir counts, not In: IEC 60947-2
        (630, {"rated_current": 630, "overload_setting": 560}, {}, 600, 560, False),
        (400, {"rated_current": 630, "overload_setting": 600}, {}, 600, 577.35, False),
        (250, {"rated_current": 630, "overload_setting": 400}, {}, 300, 360.84, True),
        (None, {"rated_current": 630}, {}, 600, 630, True),
        # generation behind the meter, and loads that take more than the transformer gives
        (400, {"rated_current": 630}, PV_600, 600, 600, False),
        (400, {"rated_current": 630}, PV_600, 500, 600, True),
        (400, {"rated_current": 630}, LOAD_620, 600, 630, True),
        # nothing given: the next of 10-12.5-15-20-25-30-40-50-60-75, IEC 61869-2 (from memory)
        (400, {"rated_current": 630}, {}, None, 577.35, False),
    ],
)
def test_transformers_of_a_meter_carry_what_can_flow(kva, breaker, more, ct_a, flows_a, told) -> None:
    system, ratings = rated_data(changed(metered(kva, ct_a, breaker, **more)))
    assert ratings[METER, Symbol.IM].value == pytest.approx(flows_a, abs=0.01)
    assert ratings[METER, Symbol.IPN].value == (ct_a or 600)
    assert ("ME02" in {each.code for each in review(system, ratings)}) is told


def test_what_is_generated_beside_a_meter_flows_through_it_too() -> None:
    """160 kVA at 400 V gives 230.9 A, an inverter on the main board 16 A: 246.9 A behind a breaker for 250 A."""
    meter = {"kind": "meter", "purpose": "supply", "connection": "ct"}
    circuit = [{"kind": "breaker", "construction": "moulded_case", "rated_current": 250}, meter]
    board, on_main = {"fed_from": "main", "circuit": circuit}, {"inverters.roof.connected_to": "main"}
    _, ratings = rated_data(changed(metered(160, None, {"rated_current": 400}, **{"boards.hall": board}, **on_main)))
    assert ratings["boards.hall.circuit.1", Symbol.IM].value == pytest.approx(246.94, abs=0.01)

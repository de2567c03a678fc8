"""Generated plants for the benchmarks: field boards that are equal but for the lengths of their cables."""

from __future__ import annotations

from bench_draw import TYPES

__all__ = ["boards"]

_SUPPLY = """project: {title: Long Meadow field}
drawing: {paper: A3, largest_paper: A3UNFOLD}
site: {temperature_min: -14 °C, temperature_max: 34 °C}
supply: {phases: 3, voltage: 400 V, earthing_system: TN-S, transformer: {rated_power: 5000 kVA, primary_voltage: 20 kV,
  secondary_voltage: 400 V, short_circuit_voltage: 6 %, load_losses: 40 kW, vector_group: Dyn11,
  network_fault_power: 350 MVA}}
boards:
  main:
    name: main LV board
    rated_current: 6300 A
    circuit:
      - {kind: breaker, construction: moulded_case, rated_current: 6300 A, breaking_capacity: 120 kA}
      - {kind: meter, purpose: supply, connection: ct, ct_primary: 8000 A, ct_secondary: 5 A}
      - {kind: interface_protection, rated_current: 6300 A, settings: voltage and frequency relay}
"""
_BOARD = """  b{n}:
    name: field board {n}
    location: block {n}
    fed_from: main
    rated_current: 1250 A
    circuit:
      - {{kind: breaker, construction: moulded_case, rated_current: 1000 A, breaking_capacity: 120 kA}}
      - {{kind: cable, section: 240 mm2, parallel: 5, method: E, length: {length_m} m}}
      - {{kind: main_switch, rated_current: 1250 A}}
      - {{kind: surge_protection, test_class: "2", continuous_voltage: 275 V, protection_level: 1.5 kV}}
"""
_WAY = """  b{n}w{m}:
    type: I
    connected_to: b{n}
    circuit:
      - {{kind: breaker, construction: moulded_case, rated_current: 125 A, breaking_capacity: 100 kA}}
      - {{kind: cable, section: 95 mm2, method: E, length: {length_m} m}}
      - {{kind: isolator, rated_current: 125 A}}
    inputs: [{inputs}]
"""
_INPUT = (
    "{strings: [{module: M, modules_in_series: SERIES, count: 2, cable: {length: 18 m}}],"
    " circuit: [{kind: surge_protection, protection_level: 4 kV}, {kind: isolator, rated_voltage: 1200 V}]}"
)
_INPUTS_COUNT = 8


def _inputs(series_count: int) -> str:
    return ", ".join([_INPUT.replace("SERIES", str(series_count))] * _INPUTS_COUNT)


def boards(boards_count: int, ways_count: int, *, unfold: bool = False, alike: bool = True) -> str:
    """Return a spec of boards with inverters of 16 strings each, cables of 40 to 90 m and of 8 to 12 m.

    alike: whether an inverter differs from the one before it in lengths alone, not in the modules of its strings.
    """
    of_inverters = TYPES.replace("rated_power: 100 kW", "rated_power: 60 kW").replace("150 A", "96 A")
    numbers = range(1, boards_count + 1)
    return "".join(
        [
            _SUPPLY.replace("UNFOLD", ", unfold: true" if unfold else ""),
            *(_BOARD.format(n=n, length_m=30 + 10 * n) for n in numbers),
            "inverters:\n",
            *(
                _WAY.format(n=n, m=m, length_m=8 + m // 2, inputs=_inputs(20 if alike else 20 - m % 2))
                for n in numbers
                for m in range(ways_count)
            ),
            of_inverters.replace("count: 12", f"count: {_INPUTS_COUNT}"),
        ]
    )

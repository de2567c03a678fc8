"""The smallest conductor size that meets every demand on a run of conductors."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import from_memory
from sld.frozen import dataclass
from sld.quantity import Given, Origin, Rating
from sld.ratings.nec import ampacity
from sld.ratings.nec.conductor import reactance, resistance
from sld.ratings.nec.overcurrent import largest_device, largest_service_of_dwelling
from sld.ratings.symbol import Symbol
from sld.ratings.voltage_change import change_percent, voltage_rise
from sld.tables.table import NoRow
from sld.wire_size import SIZES, area_mm2
from sld.words import Value, listing, phrase

__all__ = [
    "CONDUCTOR_C",
    "Demand",
    "Run",
    "VoltageLimit",
    "capacity",
    "conditions_of",
    "device_allowed",
    "meets_current",
    "sized",
    "smallest_size",
]

CONDUCTOR_C = 75.0
"""The conductor temperature of Chapter 9 Table 8, at which changes of voltage are worked out. [°C]"""

_PARALLEL_FROM = "1/0"
_CLAUSE = from_memory("NEC 2023 690.8(B), 705.28(B), 215.2, 240.4")


@dataclass(frozen=True, slots=True)
class Run:
    """Conductors but for their size. temperature_c: rating of the insulation; terminal: column of the terminals;
    service_of_dwelling: they carry the whole load of one dwelling on a split phase (310.12)."""

    material: str
    temperature_c: float
    terminal: Rating
    factors: tuple[Rating, ...]
    parallel_count: int = 1
    service_of_dwelling: bool = False


@dataclass(frozen=True, slots=True)
class VoltageLimit:
    """A limit on the change of voltage at the current `i_a`, in percent of `u_v` (one phase: of both conductors)."""

    phase_count: int
    i_a: float
    length_m: float
    u_v: float
    limit_percent: float
    power_factor: float = 1.0
    reactive: str = "supplied"


@dataclass(frozen=True, slots=True)
class Demand:
    """What a run must carry: 125 % of the greatest current before corrections, that current after them, and the
    rating of the overcurrent device that protects it, if there is one."""

    continuous_a: float
    current_a: float
    device_a: float | None = None


def capacity(run: Run, size: str) -> tuple[Rating, Rating]:
    """Return the ampacity Iz in A as laid, and that of the terminals' column without factors, which is the conductors'
    own where they bear less. Raises NoRow."""
    terminal = ampacity.tabulated(run.material, size, min(run.terminal.value, run.temperature_c))
    own = ampacity.tabulated(run.material, size, run.temperature_c)
    corrected = ampacity.corrected(own, run.factors, run.parallel_count)
    return ampacity.capacity(corrected, terminal, run.parallel_count), terminal


def device_allowed(run: Run, size: str, capacity_a: float) -> Rating | None:
    """Return the largest overcurrent device in A that an ampacity allows, or None. Source: NEC 2023 240.4, 310.12."""
    allowed = largest_device(capacity_a, run.material, size)
    service = largest_service_of_dwelling(capacity_a) if run.service_of_dwelling else None
    return service if service is not None and (allowed is None or service.value > allowed.value) else allowed


def meets_current(run: Run, size: str, demand: Demand) -> bool:
    """Return whether a size meets the currents of a demand. Raises NoRow for a size that the table lacks."""
    carries, terminal = capacity(run, size)
    if run.parallel_count * terminal.value < demand.continuous_a or carries.value < demand.current_a:
        return False
    allowed = device_allowed(run, size, carries.value)
    return demand.device_a is None or (allowed is not None and demand.device_a <= allowed.value)


def _change_percent(run: Run, size: str, limit: VoltageLimit) -> Rating:
    r, x = resistance(run.material, size, CONDUCTOR_C), reactance(size)
    rise = voltage_rise(
        limit.phase_count,
        limit.i_a / run.parallel_count,
        limit.length_m,
        r.value,
        x.value,
        limit.power_factor,
        limit.reactive,
    )
    return change_percent(rise, limit.u_v)


def smallest_size(
    run: Run, demand: Demand, limits: tuple[VoltageLimit, ...] = (), at_least_mm2: float = 0.0
) -> Rating | None:
    """Return the smallest section S in mm² that meets the currents and every limit of voltage, None where none does.

    Conductors in parallel are 1/0 AWG or larger (310.10(G)). All limits hold at equality.
    Source: NEC 2023 690.8(B), 705.28(B), 240.4, 110.14(C).
    """
    by_current_mm2 = 0.0
    for size in SIZES:
        section_mm2 = area_mm2(size)
        if section_mm2 < at_least_mm2:
            continue
        if run.parallel_count > 1 and section_mm2 < area_mm2(_PARALLEL_FROM):
            continue
        try:
            if not meets_current(run, size, demand):
                continue
            changes = [(_change_percent(run, size, limit), limit) for limit in limits]
        except NoRow:
            continue
        by_current_mm2 = by_current_mm2 or section_mm2
        if any(change.value > limit.limit_percent for change, limit in changes):
            continue
        return sized(run, size, demand, by_current_mm2, changes)
    return None


def conditions_of(demand: Demand) -> list[Value]:
    """Return the conditions that a size for a demand meets, as they are printed."""
    of_device: list[Value] = ["In ≤ In,allowed"] if demand.device_a is not None else []
    return ["I,terminal ≥ 1.25 Imax", "Iz ≥ Imax", *of_device]


def sized(
    run: Run,
    size: str,
    demand: Demand,
    by_current_mm2: float,
    changes: Sequence[tuple[Rating, VoltageLimit]] = (),
) -> Rating:
    """Return a size that was chosen as its section S in mm², with what it meets. Raises NoRow.

    by_current_mm2: what the currents alone ask for; changes: of the voltage with this size, with their limits.
    """
    carries, terminal = capacity(run, size)
    section_mm2 = area_mm2(size)
    given = [
        Given("1.25 Imax", demand.continuous_a, "A"),
        Given("I,terminal", run.parallel_count * terminal.value, "A", terminal.table_row),
        Given("Imax", demand.current_a, "A"),
        Given("Iz", carries.value, "A"),
    ]
    conditions = conditions_of(demand)
    if demand.device_a is not None:
        given.append(Given("In", demand.device_a, "A"))
    for change, limit in changes[:1]:
        given += [Given("Δu", change.value, "%"), Given("Δu,limit", limit.limit_percent, "%")]
        conditions.append("Δu ≤ Δu,limit")
    given.append(Given("S,current", by_current_mm2, "mm²", phrase("what the currents ask for")))
    given.append(Given(phrase("governed by"), phrase("voltage") if section_mm2 > by_current_mm2 else phrase("current")))
    formula = phrase("smallest S with {conditions}", conditions=listing(conditions))
    return Rating(Symbol.S, section_mm2, "mm²", formula, tuple(given), _CLAUSE, carries.table_row, origin=Origin.CHOSEN)

"""Rated currents of AC breakers, fuses, RCDs and switches: as specified, or the smallest standard one that fits."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import takewhile

from sld.citation import citations, cited, from_memory
from sld.frozen import replace
from sld.model.device import Apparatus, Busbar, Device
from sld.model.kinds.ac import BREAKER, MAIN_SWITCH, RCD, SERVICE_FUSE
from sld.model.kinds.role import CARRYING, OVERCURRENT_PROTECTION, RESIDUAL_PROTECTION, TRIPPING
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import board, breaker
from sld.ratings.specified import specified
from sld.ratings.standard_value import smallest_standard
from sld.ratings.symbol import Symbol, Word
from sld.steps.ledger import Ledger
from sld.steps.outgoing import outgoing_a
from sld.steps.releases import release_of
from sld.steps.residual import residual
from sld.steps.unanswered import UNKNOWN_CURRENT, WITHOUT_FUSE
from sld.words import Phrase, amount, phrase, sequence

__all__ = [
    "has_residual_device",
    "load_is_unknown",
    "overcurrent_device",
    "overcurrent_devices",
    "protection",
    "protective_family",
    "residual_devices",
    "series_device",
    "tripping_curve",
]


def protective_family(device: Apparatus) -> str:
    """Return the series that an AC overcurrent device is of: MCB, MCCB or gG; empty for other devices."""
    return "" if device.dc else device.family


def tripping_curve(ledger: Ledger, device: Apparatus) -> str:
    """Return the tripping characteristic of a circuit-breaker, given or chosen; empty where nothing says."""
    given = device.given_as(TRIPPING)
    return (given.curve if given is not None else None) or ledger.stated(device.key, Word.CURVE)


def _of_table(ledger: Ledger, device: Apparatus, family: str) -> str:
    """Return the family by which the conventional currents are tabulated: that of curve E is one of its own."""
    return breaker.SELECTIVE if tripping_curve(ledger, device) == "E" else family


def overcurrent_device(system: System, key: str) -> Apparatus | None:
    """Return the nearest overcurrent protective device from `key` towards the network, across board limits too."""
    for device in system.upstream(key):
        if isinstance(device, Apparatus) and protective_family(device):
            return device
    return None


def residual_devices(system: System, device: Device) -> list[Apparatus]:
    """Return the RCDs that see an earth fault of the circuit that a device protects.

    Each is the device itself, stands upstream, or follows before the first cable or branch of the circuit.
    """
    way = [device, *system.upstream(device.key)]
    key = device.key
    while len(system.children.get(key, ())) == 1:
        key = system.children[key][0]
        following = system.devices[key]
        if not isinstance(following, Apparatus) or following.dc or protective_family(following):
            break
        way.append(following)
    return [each for each in way if isinstance(each, Apparatus) and each.has(RESIDUAL_PROTECTION)]


def has_residual_device(system: System, device: Device) -> bool:
    """Return whether an RCD sees an earth fault of the circuit that a device protects."""
    return bool(residual_devices(system, device))


def load_is_unknown(system: System, ledger: Ledger, device: Device) -> bool:
    """Return whether a device carries the supply of the main board and nothing says how much the loads draw.

    What the inverters feed says nothing of that; a service fuse, an overcurrent device of the circuit or loads do.
    """
    main = system.main_board().key
    if main not in (device.key, device.owner) or ledger.get(device.key, Symbol.IIMPORT) is not None:
        return False
    if system.supply.service_fuse_a is not None:
        return False
    circuit = (each for each in system.of(Apparatus) if each.owner == main and each.key != device.key)
    given = (each.given_as(OVERCURRENT_PROTECTION) for each in circuit)
    return not any(each is not None and each.rated_current_a is not None for each in given)


def overcurrent_devices(system: System) -> Iterator[Apparatus]:
    """Yield the AC breakers, fuses and RCBOs of the installation; the service fuse is the network operator's."""
    for device in system.of(Apparatus):
        if protective_family(device) and device.kind is not SERVICE_FUSE:
            yield device


def protection(system: System, ledger: Ledger) -> None:
    """Rate overcurrent devices first, because switches and RCDs are chosen after them; then the rest."""
    devices = [device for device in system.of(Apparatus) if not device.dc]
    for device in devices:
        if protective_family(device):
            _overcurrent(system, ledger, device)
    for device in devices:
        if (carrying := device.given_as(CARRYING)) is not None:
            series_name = "rccb_a" if device.kind is RCD else "ac_switch_disconnector_a"
            _rated(system, ledger, device, series_name, carrying.rated_current_a)
        if (protects := device.given_as(RESIDUAL_PROTECTION)) is not None:
            residual(system, ledger, device, protects)


def _overcurrent(system: System, ledger: Ledger, device: Apparatus) -> None:
    given = device.given_as(OVERCURRENT_PROTECTION)
    assert given is not None, "only these are rated here"
    family = protective_family(device)
    design, release = ledger.get(device.key, Symbol.IB), release_of(device)
    if release is not None and release.i_r_a is not None:
        ledger.add(device.key, specified(Symbol.IR, release.i_r_a, "A"), symbol=Symbol.IN)
    elif given.rated_current_a is not None:
        ledger.add(device.key, specified(Symbol.IN, given.rated_current_a, "A"))
    elif load_is_unknown(system, ledger, device):
        ledger.unanswered(device.key, Symbol.IN, WITHOUT_FUSE)
    elif design is not None:
        ledger.attempt(
            device.key,
            Symbol.IN,
            lambda: _chosen(system, ledger, device, family, design),
            phrase("no {family} rating reaches {design}", family=family, design=design),
        )
    else:
        ledger.unanswered(device.key, Symbol.IN, UNKNOWN_CURRENT)
    rated = ledger.get(device.key, Symbol.IN)
    if rated is None:
        return
    ledger.attempt(
        device.key,
        Symbol.I2,
        lambda: breaker.conventional_tripping_current(_of_table(ledger, device, family), rated.value),
        phrase("no conventional tripping current is tabulated for {family} of {rated}", family=family, rated=rated),
    )
    if design is not None:
        ledger.add(device.key, breaker.loading(design.value, rated.value))
    diversity = _diversity_factor(system, device)
    if diversity < 1 and ledger.get(device.key, Symbol.IEXPORT) is not None:
        ledger.add(device.key, board.diversity_limit(rated.value, diversity))
    _breaking(ledger, device, given.breaking_capacity_ka)


def _breaking(ledger: Ledger, device: Apparatus, capacity_ka: float | None) -> None:
    """Take over the breaking capacity: of a moulded-case breaker Icu, beside it Ics (IEC 60947-2, from memory)."""
    breaker = device.given_as(BREAKER)
    if breaker is None or breaker.construction == "miniature":
        ledger.specified(device.key, Symbol.ICN, capacity_ka)
        return
    if capacity_ka is not None:
        ledger.add(device.key, specified(Symbol.ICU, capacity_ka, "kA"), symbol=Symbol.ICN)
    ledger.specified(device.key, Symbol.ICS, breaker.service_breaking_capacity_ka)


def _diversity_factor(system: System, device: Apparatus) -> float:
    """Return the rated diversity factor of the board that a device sits in, 1 where none is given."""
    enclosure = system.devices.get(device.enclosure)
    return (enclosure.given.diversity_factor if isinstance(enclosure, Busbar) else None) or 1.0


def _chosen(system: System, ledger: Ledger, device: Apparatus, family: str, design: Rating) -> Rating | None:
    """Return the smallest rated current In ≥ Ib, and what governed it: the design current, where a data sheet states no
    highest one that at low voltage, or the diversity factor of the board for what generates."""
    exported, diversity = ledger.value(device.key, Symbol.IEXPORT), _diversity_factor(system, device)
    low = ledger.get(device.owner, Symbol.IB_LOW)
    governing = design
    if exported is not None and exported >= design.value:
        governing = low if low is not None and low.value > design.value else design
        if diversity < 1:
            governing = breaker.current_by_diversity(governing.value, diversity)
    if governing is design:
        return breaker.smallest_rated_current(family, design.value)
    ledger.add(device.key, governing)
    rating = breaker.smallest_rated_current(family, governing.value)
    given = (governing.as_input(), Given("Ib", design.value, "A"), Given(phrase("device"), family))
    formula = phrase("smallest In ≥ {formula}", formula=governing.symbol)
    return replace(rating, formula=formula, given=given) if rating else None


def _rated(system: System, ledger: Ledger, device: Apparatus, series_name: str, given_a: float | None) -> None:
    """Keep the rated current of a switch or RCD: the design current at least, and that of the overcurrent device in
    series or, for the RCD of a further board, of all devices behind it, where that is less."""
    ledger.specified(device.key, Symbol.IN, given_a)
    ahead = series_device(system, device)
    rated = ledger.get(ahead.key, Symbol.IN) if ahead else None
    limited = rated is not None and device.kind is MAIN_SWITCH  # what loads draw, the device in series limits
    design = ledger.get(device.key, Symbol.IEXPORT if limited else Symbol.IB)
    demands = [Given("Iexport" if limited else "Ib", design.value, "A")] if design else []
    if rated is not None and ahead is not None:
        behind_a = _behind_a(system, ledger, device)
        demands.append(
            Given(phrase("Σ In of loads and sources"), behind_a, "A")
            if behind_a is not None and behind_a < rated.value
            else Given(f"In({ahead.designation})", rated.value, "A")
        )
    if device.kind is MAIN_SWITCH and system.supply.service_fuse_a is not None and not demands:
        demands.append(Given(phrase("In(service fuse)"), system.supply.service_fuse_a, "A"))
    unknown = rated is None and load_is_unknown(system, ledger, device)
    if given_a is None and (unknown or not demands):
        ledger.unanswered(device.key, Symbol.IN, WITHOUT_FUSE if unknown else UNKNOWN_CURRENT)
    if not demands or (unknown and given_a is None):
        return
    governing = max(demands, key=lambda demand: demand.number)
    needed_a = governing.number
    clause = citations(
        cited("IEC 60947-3", "IEC 61008-1"), from_memory("IEC 60364-5-53", remark=phrase("protection against overload"))
    )
    formula = sequence(["max(", sequence(demand.symbol for demand in demands), ")"], "")
    inputs = (*demands, Given(phrase("governed by"), governing.symbol)) if len(demands) > 1 else tuple(demands)
    ledger.add(device.key, Rating(Symbol.IN_MIN, needed_a, "A", formula, inputs, clause))
    if given_a is None:
        least = Given("In,min", needed_a, "A")
        ledger.attempt(
            device.key,
            Symbol.IN,
            lambda: smallest_standard(Symbol.IN, series_name, least, clause, phrase("smallest standard In ≥ In,min")),
            phrase("no standard rating reaches {needed}", needed=amount(needed_a, "A", 6)),
        )


def _behind_a(system: System, ledger: Ledger, device: Apparatus) -> float | None:
    """Return what the circuits of a further board let flow through its RCD together, None if it is not known. [A]

    The main board may have circuits that the spec leaves out. Their rated currents count in full: diversity protects no
    RCD (IEC 60364-5-53:2019 536.4.3.2; BS 7671 536.4.3.202, from memory).
    """
    board = system.devices.get(device.owner)
    if device.kind is not RCD or not isinstance(board, Busbar) or board.key == system.main_board().key:
        return None
    ratings_a = outgoing_a(system, ledger, board)
    return sum(ratings_a) if ratings_a and not isinstance(ratings_a, Phrase) else None


def series_device(system: System, device: Apparatus) -> Apparatus | None:
    """Return the overcurrent device of the same circuit, else the next upstream of it."""

    def in_circuit(other: Device) -> bool:
        return other.owner == device.owner and not other.dc

    before = list(takewhile(in_circuit, system.upstream(device.key)))
    circuit = [*reversed(before), *takewhile(in_circuit, system.downstream(device.key))]
    protecting = (each for each in circuit if isinstance(each, Apparatus) and protective_family(each))
    return next(protecting, None) or overcurrent_device(system, device.key)

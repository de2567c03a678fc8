"""Boards and meters: what the busbar carries, what the meter must stand."""

from __future__ import annotations

from collections.abc import Callable

from sld.citation import Mark, cited, from_memory
from sld.frozen import replace
from sld.model.device import Apparatus, Busbar, Cable, Transformer
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.quantity import Given, Origin, Rating
from sld.ratings import board, meter
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import Meter
from sld.steps.ac_cables import incoming_device, takes_power
from sld.steps.ledger import Ledger
from sld.steps.protection import load_is_unknown, overcurrent_device, protective_family
from sld.steps.unanswered import UNKNOWN_CURRENT, WITHOUT_FUSE, Unanswered, Why
from sld.words import amount, phrase

__all__ = ["meter_ratings", "supply_side"]

_METERS = from_memory("IEC 62053-21", "EN 50470-3")
_USUAL_SECONDARY_A = 5.0
_USUAL_LEAD_MM2 = 2.5


def supply_side(system: System, ledger: Ledger) -> None:
    """Rate every busbar and meter, and how far the first overcurrent device is from the transformer."""
    for transformer in system.of(Transformer):
        ledger.add(transformer.key, _unprotected_length(system, transformer))
    for busbar in system.of(Busbar):
        _busbar(system, ledger, busbar)
    for device, given in system.given_as(METER):
        meter_ratings(system, ledger, device, given)


def _unprotected_length(system: System, transformer: Transformer) -> Rating | None:
    """Return the length of conductors behind a transformer ahead of the first overcurrent device, None if unknown."""
    given = system.supply.transformer
    if given is not None and given.secondary_length_m is not None:
        return specified(Symbol.LSECONDARY, given.secondary_length_m, "m")
    cables = []
    for device in system.downstream(transformer.key):
        if isinstance(device, Apparatus) and protective_family(device):
            break
        if isinstance(device, Cable):
            cables.append(device)
        if isinstance(device, Busbar):
            break
    if not cables:
        return None
    lengths = tuple(Given(cable.designation, cable.given.length_m, "m") for cable in cables)
    return Rating(
        Symbol.LSECONDARY, sum(cable.given.length_m for cable in cables), "m", "Σ L", lengths, cited(phrase("spec"))
    )


def _incomer_a(system: System, ledger: Ledger, key: str) -> float | None:
    """Return the rated current of the overcurrent device that feeds a point, None where there is none. [A]"""
    device = overcurrent_device(system, key)
    return ledger.value(device.key, Symbol.IN) if device else None


def _busbar(system: System, ledger: Ledger, busbar: Busbar) -> None:
    incomer_a = _incomer_a(system, ledger, busbar.key)
    exported_a = ledger.value(busbar.key, Symbol.IEXPORT) or 0.0
    given_a = busbar.given.rated_current_a
    ledger.specified(busbar.key, Symbol.INA, given_a)
    if busbar.given.trunk:
        both = incomer_a and exported_a and takes_power(system, busbar)
        load = board.both_ways_load(incomer_a or 0.0, exported_a) if both else _trunk_load(incomer_a or 0.0, exported_a)
        ledger.add(busbar.key, load, symbol=Symbol.INA_LEAST)
        return
    if exported_a and _feeds_nothing(system, ledger, busbar):
        needed = board.generation_load(exported_a)
    elif incomer_a is not None:
        needed = board.busbar_load(incomer_a, [exported_a] if exported_a else [])
    elif load_is_unknown(system, ledger, busbar):
        ledger.unanswered(busbar.key, Symbol.INA if given_a is None else Symbol.INA_LEAST, WITHOUT_FUSE)
        return
    elif ledger.get(busbar.key, Symbol.IB) is not None:
        needed = _by_currents(ledger, busbar.key, exported_a)
    else:
        if given_a is None:
            ledger.unanswered(busbar.key, Symbol.INA, UNKNOWN_CURRENT)
        return
    ledger.add(busbar.key, needed)
    if given_a is None:
        ledger.attempt(
            busbar.key,
            Symbol.INA,
            lambda: board.standard_assembly_current(needed.value),
            phrase("no common assembly rating reaches {needed}", needed=needed),
        )


def _feeds_nothing(system: System, ledger: Ledger, busbar: Busbar) -> bool:
    """Return whether a board has neither a load nor anything that charges behind it. The first board may have loads
    that nobody told, unless it is that of a field of modules with a transformer of its own."""
    field = system.supply.transformer is not None and system.site.building == "ground_mounted"
    is_main = busbar.key == system.main_board().key
    return (field or not is_main) and not takes_power(system, busbar) and ledger.get(busbar.key, Symbol.IIMPORT) is None


def _trunk_load(incomer_a: float, exported_a: float) -> Rating:
    """Return the least rated current of an AC trunk cable: that of the device that protects it, or the sum. [A]"""
    given = (Given("In", incomer_a, "A"), Given("Iexport", exported_a, "A"))
    clause = from_memory("IEC 60364-4-43:2008 433.1, IB ≤ In ≤ Iz")
    return Rating(Symbol.INA_LEAST, max(incomer_a, exported_a), "A", phrase("larger of In and Iexport"), given, clause)


def _by_currents(ledger: Ledger, key: str, exported_a: float) -> Rating:
    """Return the least rating of a board that no overcurrent device feeds: what it takes and what it gives. [A]"""
    imported_a = ledger.value(key, Symbol.IIMPORT) or 0.0
    given = (Given("Iimport", imported_a, "A"), Given("Iexport", exported_a, "A"))
    clause = cited(
        "IEC 60364-5-55 551.7.2",
        mark=Mark.FORMULA_FROM_MEMORY,
        remark=phrase("by currents: no incoming overcurrent device"),
    )
    return Rating(Symbol.INA_LEAST, imported_a + exported_a, "A", "Iimport + Iexport", given, clause)


def _metered(system: System, ledger: Ledger, device: Apparatus, given: Meter) -> Rating | Unanswered:
    """Return the current that a meter must stand, or why it cannot be told.

    The device ahead limits it, else the one that follows in the circuit of the main board, or what the transformer of
    the site gives, and the generation may be more; a generation meter has the current of its own circuit.
    """
    design = ledger.get(device.key, Symbol.IB)
    exported_a = ledger.value(device.key, Symbol.IEXPORT) or 0.0
    incomer_a = _incomer_a(system, ledger, device.key)
    if incomer_a is None and (main := incoming_device(system, device)) is not None:
        incomer_a = ledger.value(main.key, Symbol.IN)
    if given.purpose == "generation" and design is not None:
        incomer_a = None
    elif incomer_a is None and load_is_unknown(system, ledger, device):
        return WITHOUT_FUSE
    if incomer_a is not None and (behind := _behind_transformer(system, ledger, device, incomer_a)) is not None:
        return behind
    if incomer_a is not None and exported_a:
        return meter.metered_current(incomer_a, exported_a)
    if incomer_a is not None:
        return Rating(Symbol.IM, incomer_a, "A", "In", (Given("In", incomer_a, "A", phrase("device ahead")),), _METERS)
    if design is not None:
        return Rating(Symbol.IM, design.value, "A", "Ib", (Given("Ib", design.value, "A"),), _METERS)
    return UNKNOWN_CURRENT


def _behind_transformer(system: System, ledger: Ledger, device: Apparatus, incomer_a: float) -> Rating | None:
    """Return the current that a meter must stand where the transformer of the site gives less than the device ahead
    lets through, None otherwise; known loads that take more than that are not taken to be limited by it.
    """
    transformer_a = ledger.value("", Symbol.IN_TRANSFORMER)
    if transformer_a is None:
        return None
    exported_a = ledger.value(device.key, Symbol.IEXPORT) or 0.0
    elsewhere_a = max((ledger.value(system.main_board().key, Symbol.IEXPORT) or 0.0) - exported_a, 0.0)
    available_a = transformer_a + elsewhere_a
    if available_a >= incomer_a or (ledger.value(device.key, Symbol.IIMPORT) or 0.0) > available_a:
        return None
    return meter.metered_behind_transformer(incomer_a, transformer_a, elsewhere_a, exported_a)


def meter_ratings(
    system: System,
    ledger: Ledger,
    device: Apparatus,
    given: Meter,
    direct_meter: Callable[[float], Rating | None] = meter.direct_meter_current,
) -> None:
    """Rate a meter. direct_meter: returns the smallest usual direct meter that stands a current in A, or None."""
    needed = _metered(system, ledger, device, given)
    if isinstance(needed, Unanswered):
        _unmetered(ledger, device, given, needed)
        return
    ledger.add(device.key, needed)
    if given.connection == "direct":
        ledger.choose(
            device.key,
            Symbol.IMAX,
            given.current_max_a,
            lambda: direct_meter(needed.value),
            Unanswered(
                phrase("no direct meter stands {needed}: current transformers are needed", needed=needed),
                Why.NEEDS_TRANSFORMERS,
            ),
        )
        return
    ledger.choose(
        device.key,
        Symbol.IPN,
        given.ct_primary_a,
        lambda: meter.transformer_primary(needed.value),
        phrase("no standard current transformer reaches {needed}", needed=needed),
    )
    primary = ledger.get(device.key, Symbol.IPN)
    if primary is not None:
        secondary_a = given.ct_secondary_a or _USUAL_SECONDARY_A
        secondary = specified(Symbol.ISN, secondary_a, "A")
        if given.ct_secondary_a is None:
            text = phrase("current transformers with {secondary} secondary", secondary=amount(secondary_a, "A", 6))
            usual, source = phrase("usual value"), cited(phrase("common practice, no source"))
            secondary = replace(secondary, formula=usual, clause=source, origin=Origin.ASSUMED).assuming(text)
        ledger.add(device.key, secondary, meter.transformer_ratio(primary.value, secondary_a))
        _leads(ledger, device, given, secondary_a)


def _leads(ledger: Ledger, device: Apparatus, given: Meter, secondary_a: float) -> None:
    """Keep what the leads of current transformers burden them with, and what they are rated for."""
    if not given.ct_lead_length_m:
        return
    section_mm2 = given.ct_lead_section_mm2 or _USUAL_LEAD_MM2
    why = phrase("no resistance is tabulated for leads of {section} copper", section=amount(section_mm2, "mm²", 6))
    ledger.attempt(
        device.key,
        Symbol.SLEAD,
        lambda: meter.transformer_lead_burden(secondary_a, given.ct_lead_length_m or 0.0, section_mm2),
        why,
    )
    ledger.specified(device.key, Symbol.SN, given.ct_burden_va)


def _unmetered(ledger: Ledger, device: Apparatus, given: Meter, why: Unanswered) -> None:
    """Keep the rating that a meter states, and why a rating that it leaves out is not chosen."""
    is_direct = given.connection == "direct"
    symbol, stated_a = (Symbol.IMAX, given.current_max_a) if is_direct else (Symbol.IPN, given.ct_primary_a)
    if not ledger.specified(device.key, symbol, stated_a):
        ledger.unanswered(device.key, symbol, why)

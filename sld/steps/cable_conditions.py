"""What surrounds an AC cable: temperature, other cables, soil, and the correction factors for all of it."""

from __future__ import annotations

from sld.frozen import replace
from sld.model.device import Busbar, Cable
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import ac_cable
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import AcCable, DcCable
from sld.steps.cable_design import insulation
from sld.steps.ledger import Ledger
from sld.tables.table import NoRow
from sld.words import Phrase, Sayable, amount, phrase, sequence, verbatim

__all__ = ["GROUND_C", "cables_together_count", "correction_factors", "declared", "spaced_in_ground", "warmest_c"]

_GROUPING = {
    "A1": "bunched_A_to_F",
    "A2": "bunched_A_to_F",
    "B1": "bunched_A_to_F",
    "B2": "bunched_A_to_F",
    "C": "single_layer_wall_floor_unperforated_C",
    "D1": "D1_multicore_touching",
    "D2": "D2_touching",
    "E": "single_layer_perforated_tray_E_F",
    "F": "single_layer_perforated_tray_E_F",
}
_SPACED = {
    "D1": ((1.0, "D1_multicore_1.0m"), (0.5, "D1_multicore_0.5m"), (0.25, "D1_multicore_0.25m")),
    "D2": ((0.5, "D2_0.5m"), (0.25, "D2_0.25m"), (0.125, "D2_0.125m")),
}
"""Clear distances that the tables for the ground have, the largest first. [m]"""

_INDOOR_C = 30.0
_OUTDOOR_C = 40.0
GROUND_C = 20.0
_SOIL_K_M_PER_W = 2.5


def cables_together_count(given: AcCable) -> int:
    """Return how many cables touch: as given, else each circuit of the group with as many in parallel as this one.

    Each of several cables in parallel is a circuit beside the others (IEC 60364-5-52:2009 523.7, from memory).
    """
    return given.grouped_cables or given.grouped_circuits * given.parallel


def correction_factors(
    system: System, ledger: Ledger, cable: Cable, given: AcCable
) -> tuple[tuple[Rating, ...] | None, list[Sayable]]:
    """Return the correction factors of a cable, None where a table has no answer, and what was assumed for them."""
    in_ground = given.method in ("D1", "D2")
    assumed: list[Sayable] = []
    ambient_c = _ambient_c(system, cable, given, assumed)
    together = cables_together_count(given)
    try:
        grouping = ac_cable.grouping_factor(_arrangement(given), together)
        factors = [
            ac_cable.ambient_factor(ambient_c, insulation(cable), "ground" if in_ground else "air"),
            _counted(grouping, given) if given.parallel > 1 else grouping,
        ]
        if in_ground:
            factors += _ground_factors(system, given, assumed)
    except NoRow:
        # without its factor a table value would claim a capacity that the cable does not have
        ledger.unanswered(cable.key, Symbol.IZ, _no_factor(system, given, ambient_c, together, insulation(cable)))
        return None, assumed
    factors += declared(given)
    if together == 1:
        assumed.append(phrase("AC cables not grouped with other circuits"))
    return tuple(factors), assumed


def _ambient_c(system: System, cable: Cable, given: AcCable, assumed: list[Sayable]) -> float:
    """Return the temperature of the air or ground around a cable; keep what was assumed. [°C]"""
    if given.ambient_temperature_c is not None:
        return given.ambient_temperature_c
    in_ground, soil_c = given.method in ("D1", "D2"), system.site.soil_temperature_c
    if in_ground and soil_c is not None and not cable.location:
        return soil_c
    found_c = warmest_c(system, cable, assumed) if cable.location or not in_ground else None
    if found_c is not None:
        return found_c
    ambient_c = GROUND_C if in_ground else _INDOOR_C
    around = amount(ambient_c, "°C")
    assumed.append(
        phrase("{ambient} ground around AC cables", ambient=around)
        if in_ground
        else phrase("{ambient} air around AC cables", ambient=around)
    )
    return ambient_c


def declared(given: AcCable | DcCable) -> list[Rating]:
    """Return the further factor that the spec gives a cable, if it does."""
    if given.capacity_factor is None:
        return []
    stated = given.capacity_factor_reason
    reason = verbatim(stated) if stated else phrase("no reason given")
    return [ac_cable.declared_factor(Symbol.C_DECLARED, given.capacity_factor, reason)]


def _arrangement(given: AcCable) -> str:
    """Return the row of the grouping table: touching, or the largest tabulated distance that is kept."""
    return spaced_in_ground(given.method, given.spacing_m) or _GROUPING[given.method]


def spaced_in_ground(method: str, spacing_m: float | None) -> str:
    """Return the row of the grouping table for the largest distance that is kept, empty where cables touch."""
    kept = (row for distance_m, row in _SPACED.get(method, ()) if spacing_m is not None and spacing_m >= distance_m)
    return next(kept, "")


def _soil_k_m_per_w(system: System, given: AcCable) -> float | None:
    return given.soil_resistivity_k_m_per_w or system.site.soil_resistivity_k_m_per_w


def _ground_factors(system: System, given: AcCable, assumed: list[Sayable]) -> list[Rating]:
    """Return the factors for soil and depth that the spec gives; say what stands for those it leaves out."""
    soil = _soil_k_m_per_w(system, given)
    found = []
    if soil is not None:
        found.append(ac_cable.soil_factor(soil, given.method))
    else:
        assumed.append(
            phrase(
                "soil of {resistivity} around AC cables in the ground",
                resistivity=amount(_SOIL_K_M_PER_W, "K·m/W"),
            )
        )
    if given.depth_m is not None:
        found.append(ac_cable.depth_factor(given.depth_m, given.method))
    else:
        assumed.append(phrase("AC cables in the ground at most 0.8 m deep"))
    return found


def _no_factor(system: System, given: AcCable, ambient_c: float, together: int, insulated: str) -> Phrase:
    """Say for which conditions the tables have no factor."""
    in_ground = given.method in ("D1", "D2")
    ambient = amount(ambient_c, "°C", 6)
    words = [phrase("{ambient} ground", ambient=ambient) if in_ground else phrase("{ambient} air", ambient=ambient)]
    words += [phrase("{count} cables together", count=together)] if together > 1 else []
    if in_ground:
        soil = _soil_k_m_per_w(system, given)
        words += [phrase("soil of {resistivity}", resistivity=amount(soil, "K·m/W"))] if soil is not None else []
        words += [phrase("{depth} deep", depth=amount(given.depth_m, "m"))] if given.depth_m is not None else []
    return phrase(
        "no correction factor for {conditions}, {insulation} insulation",
        conditions=sequence(words),
        insulation=insulated,
    )


def warmest_c(system: System, cable: Cable, assumed: list[Sayable]) -> float | None:
    """Return the warmest air where a cable is laid, None where the spec says nothing; keep what was assumed. [°C]

    The worst part of a way decides (IEC 60364-5-52:2009 523.8, from memory): without a place of its own a cable is in
    those of the boards or units that it joins.
    """
    places = [cable.location] if cable.location else _ends(system, cable)
    found: list[tuple[float, Phrase | None]] = []
    for place in places:
        location = system.site.locations.get(place)
        if location is None:
            continue
        if location.ambient_temperature_c is not None:
            found.append((location.ambient_temperature_c, None))
        elif location.outdoor:
            found.append(
                (
                    _OUTDOOR_C,
                    phrase("{ambient} around outdoor AC cables", ambient=amount(_OUTDOOR_C, "°C")),
                )
            )
    warmest = max(found, key=lambda each: each[0], default=None)
    if warmest is None or (not cable.location and warmest[0] < _INDOOR_C):
        return None
    if warmest[1]:
        assumed.append(warmest[1])
    elif not cable.location:
        assumed.append(
            phrase(
                "{ambient} around AC cables, as in the warmer place they join",
                ambient=amount(warmest[0], "°C", 6),
            )
        )
    return warmest[0]


def _ends(system: System, cable: Cable) -> list[str]:
    """Return the places of the board and the unit that a cable lies between, as far as the spec says."""
    board = next((each for each in system.upstream(cable.key) if isinstance(each, Busbar)), None)
    served = system.devices.get(cable.owner)
    return [each.location for each in (board, served) if each is not None and each.location]


def _counted(grouping: Rating, given: AcCable) -> Rating:
    """Return the grouping factor with the count of cables that it was read for, parallel cables included."""
    if given.grouped_cables is not None:
        count, text = (
            phrase("cables touching, as given"),
            phrase("parallel cables counted among those given as touching"),
        )
    else:
        count = phrase(
            "{grouped_circuits} circuits · {parallel} in parallel",
            grouped_circuits=given.grouped_circuits,
            parallel=given.parallel,
        )
        text = phrase(
            "every circuit of the group has {parallel} cables in parallel, each counted as a circuit",
            parallel=given.parallel,
        )
    said = tuple(replace(each, origin=count) if each.name == "circuits" else each for each in grouping.given)
    return replace(grouping, given=said).assuming(text)

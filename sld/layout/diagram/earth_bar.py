"""System + ratings + flag numbers -> the main earthing terminal with what is connected to it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from sld.layout.diagram.diagram import EarthBar, EarthTap
from sld.layout.diagram.line import Line, Role, designation, line, value_of
from sld.model.device import Apparatus
from sld.model.kinds.role import SURGE_PROTECTION
from sld.model.places import place_words
from sld.model.system import EarthConductor, System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import NOTHING, Sayable, amount, counted, listing, phrase, sequence, unbroken, verbatim

__all__ = ["earth_bar", "earth_conductor_line"]

_SYMBOLS = {
    "lightning": "lightning_protection",
    "array_frame": "equipotential_bonding",
    "main_bonding": "equipotential_bonding",
}


def earth_bar(system: System, ratings: Ratings, flags: Mapping[str, tuple[int, ...]]) -> EarthBar:
    """Return the earth bar of a system. flags: numbers of the warning flags by key."""
    taps = []
    for conductor in (each for each in system.earth_conductors if not each.board):
        lines = (
            designation(conductor.designation),
            Line(Role.NAME, conductor.to, after=" "),
            earth_conductor_line(conductor, ratings),
            *_at_the_end(system, conductor),
        )
        symbol = "earth_electrode" if conductor.to_electrode else _SYMBOLS.get(conductor.purpose, "")
        said = tuple(each for each in lines if each is not None)
        taps.append(EarthTap(conductor.designation, said, symbol, flags.get(conductor.key, ())))
    surge = [device for device in system.of(Apparatus) if device.has(SURGE_PROTECTION)]
    if surge:
        taps.append(EarthTap("PE", (designation("PE"), *_surge_protection(surge, ratings))))
    given = system.earthing
    name = verbatim(given.name) if given.name else phrase("main earthing terminal")
    place = place_words(system.site.locations, given.location or "")
    own = (designation(system.earthing_designation), Line(Role.NAME, sequence([name, place]), after=" "))
    return EarthBar(system.earthing_key, own, tuple(taps), flags.get(system.earthing_key, ()))


def earth_conductor_line(conductor: EarthConductor, ratings: Ratings) -> Line | None:
    """Return section and length, where they are known."""
    section, length_m = ratings.get(conductor.key, Symbol.S), conductor.length_m
    parts: list[Sayable] = [unbroken(value_of(section), "Cu")] if section else []
    return line(Role.RATED, sequence([*parts, *([amount(length_m, "m")] if length_m else [])]))


def _at_the_end(system: System, conductor: EarthConductor) -> Iterator[Line]:
    """Yield what an inspector looks for at the far end: the electrode's resistance, the lightning protection."""
    electrode, lightning = system.earthing.electrode, system.earthing.lightning_protection
    if conductor.to_electrode and electrode and electrode.resistance_ohm is not None:
        yield Line(Role.RATED, unbroken("RA", amount(electrode.resistance_ohm, "Ω")))
    elif conductor.purpose == "lightning" and lightning is not None:
        count = lightning.down_conductors
        downward = counted("{count} down-conductor", "{count} down-conductors", count) if count else NOTHING
        yield Line(Role.RATED, sequence([unbroken(phrase("class {level}", level=lightning.level)), downward]))
        kept, missed = phrase("separation to the array kept"), phrase("separation to the array NOT kept")
        yield Line(Role.SETTING, kept) if lightning.separation_kept else Line(Role.DANGER, missed)


def _surge_protection(surge: Sequence[Apparatus], ratings: Ratings) -> Iterator[Line]:
    """Yield the sides and types of the surge protection, and the least sections of its conductors to earth."""
    sides = listing(side for side, dc in (("DC", True), ("AC", False)) if any(d.dc == dc for d in surge))
    yield Line(Role.NAME, phrase("surge protection, {sides}", sides=sides), after=" ")
    sections: dict[str, Rating] = {}
    for device in surge:
        given, least = device.given_as(SURGE_PROTECTION), ratings.get(device.key, Symbol.SPE)
        assert given is not None, "only these were asked for"
        assert least is not None, "every surge protective device has one, see `sld.steps.surge`"
        known = sections.get(given.test_class)
        if known is None or least.value > known.value:
            sections[given.test_class] = least
    for test_class, section in sorted(sections.items()):
        of_type = unbroken(phrase("type {name}", name=test_class))
        yield Line(Role.RATED, sequence([of_type, unbroken("≥", value_of(section), "Cu")], ": "))

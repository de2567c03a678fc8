"""Schedules of strings, cables and earthing conductors."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence, Set

from sld.citation import with_mark
from sld.documents.alike import Repeated, Row, alike_as_one, of_all
from sld.documents.cell import NOT_GIVEN, Cell, Designations, by_ratings, computed, designated, given, of_rating
from sld.documents.section import Column, Table
from sld.frozen import replace
from sld.layout.diagram.conductors import conductors
from sld.layout.diagram.line import kilo
from sld.model.device import Cable, Device, StringGroup
from sld.model.kinds.ac import AC_CABLE
from sld.model.kinds.dc import DC_CABLE
from sld.model.kinds.units import INPUT
from sld.model.places import facing, passage, place_words
from sld.model.system import EarthConductor, System
from sld.model.wording import STATUSES
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.spec.blocks.cable import ByMethod
from sld.steps import Ratings
from sld.steps.dc_laid import bunched_count
from sld.words import NOTHING, Sayable, Value, amount, counted, phrase, sequence, unbroken, verbatim

__all__ = ["cables", "earthing", "strings"]

_NONE = verbatim("–")


def strings(system: System, ratings: Ratings) -> Table:
    """Return the strings with their inputs, modules, voltages and currents."""
    columns = (
        Column(phrase("Designation")),
        Column(phrase("Input")),
        Column(phrase("Strings × in series, module, power"), 1.4),
        Column(phrase("Uoc STC\n/ max")),
        Column(verbatim("Umpp,min")),
        Column(phrase("Isc STC\n/ design")),
        Column(phrase("Orientation, place"), 1.0),
    )
    rows: list[Row | Repeated] = []
    groups = list(system.one_of_each().of(StringGroup))
    products = {(each.product, each.model) for each in groups}  # the equipment schedule has the makes
    same = {model for model, count in Counter(model for _, model in products).items() if count > 1}
    for group in groups:
        terminal = next(device for device in system.upstream(group.key) if device.kind is INPUT)
        said, module = group.given, group.type
        power_w = said.count * said.modules_in_series * module.rated_power_w
        modules = phrase(
            "{count} × {in_series} × {product}, {power}",
            count=said.count,
            in_series=said.modules_in_series,
            product=group.product if group.model in same else group.model,
            power=kilo(power_w, "Wp"),
        )
        words = (facing(said), place_words(system.site.locations, group.location), group.name, group.note)
        highest, design = ratings.get(group.key, Symbol.UOC_MAX), ratings.get(group.key, Symbol.ISC_D)
        row = (
            designated(group.designation),
            designated(terminal.designation),
            computed(modules),
            _beside(amount(said.modules_in_series * module.open_circuit_voltage_v), highest),
            of_rating(ratings.get(group.key, Symbol.UMPP_MIN)),
            _beside(amount(module.short_circuit_current_a), design),
            given(sequence(words)),
        )
        rows += of_all(system, group, row)
    return Table("strings", phrase("String schedule"), columns, alike_as_one(rows), sparse=True)


def _beside(left: Sayable, right: Rating | None, *behind: Rating | None) -> Cell:
    """Return a value and a rating in the same unit, which is written once. behind: ratings that the value is of."""
    first = with_mark(left, *(rating for rating in behind if rating))
    text = unbroken(first, "/", with_mark(right, right) if right else _NONE)
    return by_ratings(text, *(rating for rating in (*behind, right) if rating))


def cables(system: System, ratings: Ratings) -> Table:
    """Return the cables with their ends, sections, lengths, how they are laid, and what they carry."""
    rows: list[Row | Repeated] = []
    taken = {device.designation for device in system.one_of_each().of(Device)}
    for cable in system.one_of_each().of(Cable):
        fed = system.children.get(cable.key, ())
        ends = [system.devices[cable.parent].designation, *(system.devices[key].designation for key in fed)]
        change = ratings.get(cable.key, Symbol.DU_DC_CABLE) or ratings.get(cable.key, Symbol.DU_RISE)
        least, carries = ratings.get(cable.key, Symbol.IZ_MIN), ratings.get(cable.key, Symbol.IZ)
        section = ratings.get(cable.key, Symbol.S)
        row = (
            designated(cable.designation),
            _between(cable, ends, taken),
            by_ratings(_cable(cable, conductors(cable, system, ratings)), *([section] if section else [])),
            given(amount(cable.given.length_m, "m")),
            _laid(system, ratings, cable),
            _beside(amount(least.value) if least else _NONE, carries, least),
            of_rating(change),
        )
        rows += of_all(system, cable, row)
    columns = (
        Column(phrase("Designation")),
        Column(phrase("From – to"), 1.0, short=phrase("From – to in the circuit")),
        Column(phrase("Cable"), 1.4),
        Column(phrase("Length"), right=True),
        Column(phrase("Laid"), 0.8),
        Column(verbatim("Iz,min\n/ Iz")),
        Column(verbatim("Δu")),
    )
    return Table("cables", phrase("Cable schedule"), columns, alike_as_one(rows), sparse=True)


def _between(cable: Cable, ends: Sequence[str], taken: Set[str]) -> Cell:
    """Return the ends of a cable; short where all are of its owner, and no short one is `taken` by another device."""
    cell = designated(*ends)
    owner = cable.designation[: cable.designation.rindex("-")]
    short = tuple((end.removeprefix(owner),) for end in ends)
    if owner and all(end.startswith(f"{owner}-") for end in ends) and taken.isdisjoint(name for (name,) in short):
        return replace(cell, text=Designations(tuple((end,) for end in ends), short=short))
    return cell


def _cable(cable: Cable, section: Sayable | str) -> Sayable:
    """Return marking and section, conductor material where it is not copper, and the rated DC voltage."""
    volts = cable.type.rated_voltage_v
    made: list[Value] = [cable.marking, section or _NONE, *(["Al"] if cable.type.conductor == "aluminium" else [])]
    rated = [phrase("{voltage} DC", voltage=kilo(volts, "V"))] if volts and cable.dc else []
    return sequence([sequence(made, " "), *rated])


def _in_conduit(system: System, ratings: Ratings, cable: Cable) -> Sayable:
    """Return the conduit of a cable with its size and how far it is filled, nothing without one."""
    name, filled = cable.given.conduit, ratings.get(cable.key, Symbol.FILL)
    if name is None:
        return NOTHING
    conduit = system.site.conduits[name]
    inside = amount(conduit.inside_diameter_mm, "mm", 6) if conduit.inside_diameter_mm is not None else ""
    share = phrase("{share} filled", share=filled) if filled else ""
    return sequence([phrase("conduit {name}", name=name), conduit.trade_size or "", inside, share])


def _laid(system: System, ratings: Ratings, cable: Cable) -> Cell:
    """Return reference method, temperature and grouping as far as the spec gives them, and its remarks."""
    said = cable.given
    place = system.site.locations.get(cable.location)
    ambient_c = said.ambient_temperature_c
    if ambient_c is None and place is not None and not cable.dc:
        ambient_c = place.ambient_temperature_c
    by_method = cable.given_as(AC_CABLE) or cable.given_as(DC_CABLE)
    clearance_m = by_method.roof_clearance_m if by_method is not None else None
    grouped = said.grouped_circuits or (bunched_count(cable) if cable.dc else 1)
    words: list[Value] = [
        said.method or "" if not system.follows_nec else "",
        amount(ambient_c, "°C") if ambient_c is not None else "",
        phrase("{distance} above a roof", distance=amount(clearance_m * 1000, "mm", 6))
        if clearance_m is not None
        else "",
        counted("{count} circuit", "{count} circuits", grouped) if grouped > 1 else "",
        *(_buried(by_method, cable) if by_method is not None else ()),
        _in_conduit(system, ratings, cable),
        passage(system, cable),
        place_words(system.site.locations, cable.location),
        cable.name,
        cable.note,
        "" if cable.status == "new" else STATUSES[cable.status],
    ]
    kept = tuple(word for word in words if word not in ("", NOTHING))
    filled = ratings.get(cable.key, Symbol.FILL)
    if filled is not None:
        return by_ratings(sequence(kept), filled)
    return given(sequence(kept)) if kept else NOT_GIVEN


def _buried(said: ByMethod, cable: Cable) -> list[Sayable]:
    """Return insulation and how many cables touch, how they lie in the ground, and the factor that the spec adds."""
    ac_said = cable.given_as(AC_CABLE)
    factor, reason = said.capacity_factor, said.capacity_factor_reason
    found: list[Sayable] = []
    if ac_said is not None and ac_said.double_insulated:
        found.append(phrase("double insulated"))
    if ac_said is not None and ac_said.grouped_cables:
        found.append(counted("{count} cable", "{count} cables", ac_said.grouped_cables))
    if said.spacing_m:
        found.append(phrase("{spacing} apart", spacing=amount(said.spacing_m, "m")))
    if said.depth_m:
        found.append(phrase("{depth} deep", depth=amount(said.depth_m, "m")))
    if said.soil_resistivity_k_m_per_w:
        found.append(phrase("soil {resistivity}", resistivity=amount(said.soil_resistivity_k_m_per_w, "K·m/W")))
    if factor and reason:
        found.append(phrase("× {factor} for {reason}", factor=amount(factor), reason=reason))
    elif factor:
        found.append(phrase("× {factor}", factor=amount(factor)))
    return found


def earthing(system: System, ratings: Ratings) -> Table:
    """Return the earthing and bonding conductors with their least and actual sections and the clause behind them."""
    columns = (
        Column(phrase("Designation")),
        Column(phrase("From earthing terminal to"), 1.0),
        Column(phrase("Least")),
        Column(phrase("Section")),
        Column(phrase("Length"), right=True),
        Column(phrase("Clause"), 1.0),
    )
    rows = []
    for conductor in system.earth_conductors:
        least, section = ratings.get(conductor.key, Symbol.S_MIN), ratings.get(conductor.key, Symbol.S)
        rows.append(
            (
                designated(conductor.designation),
                given(_far_end(system, conductor)),
                of_rating(least),
                of_rating(section),
                given(amount(conductor.length_m, "m")) if conductor.length_m else NOT_GIVEN,
                by_ratings(sequence([least.clause]), least) if least else _unrated(conductor),
            )
        )
    return Table("earthing", phrase("Earthing conductors"), columns, tuple(rows), sparse=True)


def _unrated(conductor: EarthConductor) -> Cell:
    """Return what the clause of a conductor without a least section says."""
    return given(phrase("as brought by the supply")) if conductor.purpose == "supply" else NOT_GIVEN


def _far_end(system: System, conductor: EarthConductor) -> Sayable:
    """Return what a conductor goes to, and how the earthing conductor lies."""
    if conductor.board:
        return phrase("{part}, at {board}", part=conductor.to, board=system.devices[conductor.board].designation)
    if conductor.purpose != "earthing":
        return sequence([conductor.to])
    said, electrode = system.earthing.conductor, system.earthing.electrode
    words: list[Value] = [conductor.to]
    if electrode is not None and electrode.resistance_ohm is not None:
        words.append(phrase("RA {resistance}", resistance=amount(electrode.resistance_ohm, "Ω")))
    if electrode is not None and electrode.status not in (None, "new"):
        words.append(STATUSES[electrode.status])
    if said.buried is not None:
        words.append(phrase("buried") if said.buried else phrase("not buried"))
    if said.buried is not False and said.corrosion_protected is not None:
        words.append(
            phrase("protected against corrosion")
            if said.corrosion_protected
            else phrase("not protected against corrosion")
        )
    words += [phrase("protected mechanically")] if said.mechanically_protected and said.buried is not False else []
    return sequence(words)

"""Schedules: strings, equipment, cables, earthing conductors, data bus, and every rating with formula and clause."""

from __future__ import annotations

from sld.layout.diagram.labels import conductors, short_product
from sld.layout.diagram.line import kilo
from sld.model.device import Cable, StringGroup
from sld.model.kinds.ac import AC_CABLE
from sld.model.kinds.units import INPUT
from sld.model.places import passage, place_words
from sld.model.system import EarthConductor, System
from sld.quantity import Rating, shown
from sld.ratings.symbol import Symbol
from sld.sheet.content.alike import alike_as_one
from sld.sheet.content.data_schedules import chains, data_bus, links
from sld.sheet.content.equipment import equipment
from sld.sheet.content.rating_list import rating_list
from sld.sheet.content.wiring import wiring
from sld.sheet.listings.table import Column, Table
from sld.spec.blocks.circuit import AcCable
from sld.steps import Ratings
from sld.steps.dc_cables import bunched_count

__all__ = ["schedules"]


def schedules(system: System, ratings: Ratings) -> list[Table]:
    """Return the schedules that have something to say, in the order they are printed."""
    found = (
        _strings(system, ratings),
        _cables(system, ratings),
        equipment(system, ratings),
        wiring(system),
        _earthing(system, ratings),
        chains(system, ratings),
        data_bus(system),
        links(system),
        rating_list(system, ratings),
    )
    return [table for table in found if table.rows]


def _quantity(rating: Rating | None) -> str:
    return rating.quantity() if rating else "–"


def _strings(system: System, ratings: Ratings) -> Table:
    columns = (
        Column("Designation"), Column("Input"), Column("Strings × in series, module, power", 1.4),
        Column("Uoc STC\n/ max"), Column("Umpp,min"), Column("Isc STC\n/ design"), Column("Orientation, place", 1.0),
    )  # fmt: skip
    rows = []
    for group in system.of(StringGroup):
        terminal = next(d for d in system.upstream(group.key) if d.kind is INPUT)
        given, module = group.given, group.type
        power_w = given.count * given.modules_in_series * module.rated_power_w
        words = (given.orientation, str(place_words(system.site.locations, group.location)), group.name, group.note)
        rows.append((
            group.designation, terminal.designation,
            f"{given.count} × {given.modules_in_series} × {short_product(group)}, {kilo(power_w, 'Wp')}",
            f"{shown(given.modules_in_series * module.open_circuit_voltage_v)} / "
            f"{_quantity(ratings.get(group.key, Symbol.UOC_MAX))}",
            _quantity(ratings.get(group.key, Symbol.UMPP_MIN)),
            f"{shown(module.short_circuit_current_a)} / {_quantity(ratings.get(group.key, Symbol.ISC_D))}",
            ", ".join(word for word in words if word),
        ))  # fmt: skip
    return Table("String schedule", columns, alike_as_one(rows, (0, 1)))


def _cables(system: System, ratings: Ratings) -> Table:
    columns = (
        Column("Designation"), Column("From – to", 1.0), Column("Cable", 1.4), Column("Length", align="right"),
        Column("Laid", 0.8), Column("Iz,min\n/ Iz"), Column("Δu"),
    )  # fmt: skip
    rows = []
    for cable in system.of(Cable):
        section = str(conductors(cable, system, ratings)) or "–"
        fed = system.children.get(cable.key, ())
        ends = [system.devices[cable.parent].designation, *(system.devices[key].designation for key in fed)]
        change = ratings.get(cable.key, Symbol.DU_DC_CABLE) or ratings.get(cable.key, Symbol.DU_RISE)
        rows.append((
            cable.designation, " – ".join(ends), _cable(cable, section), f"{shown(cable.given.length_m)} m",
            _laid(system, cable), _pair(ratings.get(cable.key, Symbol.IZ_MIN), ratings.get(cable.key, Symbol.IZ)),
            _quantity(change),
        ))  # fmt: skip
    return Table("Cable schedule", columns, alike_as_one(rows, (0, 1)))


def _pair(least: Rating | None, actual: Rating | None) -> str:
    """Write what is needed and what there is, in one unit."""
    return f"{shown(least.value)} / {_quantity(actual)}" if least else f"– / {_quantity(actual)}"


def _cable(cable: Cable, section: str) -> str:
    """Return marking and section, conductor material where it is not copper, and the rated DC voltage."""
    metal = " Al" if cable.type.conductor == "aluminium" else ""
    volts = cable.type.rated_voltage_v
    rated = f"{kilo(volts, 'V')} DC" if volts and cable.dc else ""
    return ", ".join(word for word in (f"{cable.marking} {section}{metal}", rated) if word)


def _laid(system: System, cable: Cable) -> str:
    """Return reference method, temperature and grouping as far as the spec gives them, and its remarks."""
    given, ac_given = cable.given, cable.given_as(AC_CABLE)
    place = system.site.locations.get(cable.location)
    ambient_c = given.ambient_temperature_c
    if ambient_c is None and place is not None and not cable.dc:
        ambient_c = place.ambient_temperature_c
    grouped = given.grouped_circuits or (bunched_count(cable) if cable.dc else 1)
    words = (
        ac_given.method if ac_given is not None and not system.follows_nec else "",
        f"{shown(ambient_c)} °C" if ambient_c is not None else "",
        f"{grouped} circuits" if grouped > 1 else "",
        *(_buried(ac_given) if ac_given is not None else ()),
        str(passage(system, cable)), str(place_words(system.site.locations, cable.location)), cable.name, cable.note,
        "" if cable.status == "new" else cable.status,
    )  # fmt: skip
    return ", ".join(word for word in words if word) or "–"


def _buried(given: AcCable) -> tuple[str, ...]:
    """Return how many cables touch, how they lie in the ground, and the factor that the spec adds."""
    reason = f" for {given.capacity_factor_reason}" if given.capacity_factor_reason else ""
    return (
        f"{given.grouped_cables} cables" if given.grouped_cables else "",
        f"{shown(given.spacing_m)} m apart" if given.spacing_m else "",
        f"{shown(given.depth_m)} m deep" if given.depth_m else "",
        f"soil {shown(given.soil_resistivity_k_m_per_w)} K·m/W" if given.soil_resistivity_k_m_per_w else "",
        f"× {shown(given.capacity_factor)}{reason}" if given.capacity_factor else "",
    )


def _earthing(system: System, ratings: Ratings) -> Table:
    columns = (Column("Designation"), Column("From main earthing terminal to", 1.0), Column("Least"), Column("Section"),
               Column("Length", align="right"), Column("Clause", 1.0))  # fmt: skip
    rows = []
    for conductor in system.earth_conductors:
        least, section = ratings.get(conductor.key, Symbol.S_MIN), ratings.get(conductor.key, Symbol.S)
        length = f"{shown(conductor.length_m)} m" if conductor.length_m else "–"
        rows.append((
            conductor.designation, _far_end(system, conductor), _quantity(least), _quantity(section), length,
            str(least.clause) if least else _unrated(conductor),
        ))  # fmt: skip
    return Table("Earthing conductors", columns, tuple(rows))


def _unrated(conductor: EarthConductor) -> str:
    """Return what the clause of a conductor without a least section says."""
    return "as brought by the supply" if conductor.purpose == "supply" else "–"


def _far_end(system: System, conductor: EarthConductor) -> str:
    """Return what a conductor goes to, and how the earthing conductor lies."""
    if conductor.purpose != "earthing":
        return str(conductor.to)
    given, electrode = system.earthing.conductor, system.earthing.electrode
    words = [str(conductor.to)]
    if electrode is not None and electrode.resistance_ohm is not None:
        words.append(f"RA {shown(electrode.resistance_ohm)} Ω")
    if electrode is not None and electrode.status != "new":
        words.append(electrode.status)
    if "buried" in given.model_fields_set or given.buried:
        words.append("buried" if given.buried else "not buried")
    if given.buried:
        words.append("protected against corrosion" if given.corrosion_protected else "not protected against corrosion")
        words.append("protected mechanically" if given.mechanically_protected else "")
    return ", ".join(word for word in words if word)

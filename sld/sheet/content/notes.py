"""General notes: the cautions that belong on every such drawing, and what this one is based on."""

from __future__ import annotations

from sld.layout.diagram.ranges import joined
from sld.model.device import BatteryUnit, GeneratorUnit, InverterUnit
from sld.model.system import System
from sld.model.wording import protects_at_interface
from sld.quantity import shown
from sld.sheet.content.reader import left_out
from sld.sheet.listings.text import TextList
from sld.spec.blocks.project import Project
from sld.spec.blocks.site import Location, Site
from sld.symbols.catalogue import symbol
from sld.tables.country import notes_of
from sld.tables.table import table

__all__ = ["basis", "notes"]


def notes(system: System) -> TextList:
    """Return the cautions; the first one names the kinds of sources that the system has."""
    kinds = ((BatteryUnit, "every battery"), (GeneratorUnit, "every generator"))
    further = [words for kind, words in kinds if any(True for _ in system.of(kind))]
    sources = ["the public supply", "every inverter", *further]
    texts = (
        f"WARNING: {'several' if further else 'two'} sources of supply. Isolate {', '.join(sources[:-1])} and "
        f"{sources[-1]} before work; DC conductors stay live in daylight, and capacitors keep their charge after "
        "isolation for the time that the maker states.",
        "DC plug connectors and fuse holders are not switches: do not open them under load.",
        "Design aid. All values are to be checked by a person licensed for such work, against the local rules, the "
        "network operator's conditions and the makers' manuals, which take precedence over this drawing. Tables "
        "marked from memory await comparison with the standard.",
    )
    sign = symbol("warning_triangle")
    return TextList("Cautions", texts, numbered=True, sign=(sign.strokes, sign.box))


def basis(system: System, paper: str = "") -> TextList:
    """Return what the drawing is based on and how it is read. paper: why another size than asked was taken, if so."""
    texts = [
        f"Rule profile: {system.profile}. {_site(system.site)} Earthing system {system.supply.earthing_system}.",
        "AC conductors are drawn for all poles; the strokes count the conductors of a cable. Protective conductors run "
        "in the cables. PE at a device is its protective conductor, a designation the conductor to the main earthing "
        "terminal.",
    ]
    left_open = [row["text"] for row in table("profile_scope").where(profile=system.profile)]
    if left_open:
        texts.append(f"Profile {system.profile}: {'; '.join(left_open)}.")
    texts += _people(system.project)
    if system.project.reference and system.project.drawing_number:
        texts.append(f"Project reference: {system.project.reference}.")
    if system.supply.operator:
        texts.append(f"Network operator: {system.supply.operator}.")
    if system.earthing.note:
        texts.append(f"Earthing: {system.earthing.note}.")
    if system.supply.country:
        texts.append(f"Country: {system.supply.country}.")
        texts += _national(system)
    texts += _protecting(system)
    batteries = [unit.designation for unit in system.of(BatteryUnit)]
    if batteries:
        texts.append(
            f"Battery side of {joined(batteries)}: isolation and protection of its direct current are not in this "
            "drawing and were not checked; see the maker's manual."
        )
    codes = sorted({unit.given.grid_code for unit in system.of(InverterUnit) if unit.given.grid_code})
    if codes:
        texts.append(f"Network setting of the inverters: {', '.join(codes)}.")
    texts += [
        f"Wireless: {system.devices[system.names[link.from_device][0]].designation} to "
        f"{system.devices[system.names[link.to_device][0]].designation}."
        for link in system.links
        if link.medium == "wireless"
    ]
    if left_out(system.drawing.reader):
        texts.append(left_out(system.drawing.reader))
    if paper:
        texts.append(f"Paper: {paper}.")
    return TextList("Notes", tuple(texts), numbered=True)


def _protecting(system: System) -> list[str]:
    """Return which inverters have interface protection built in, apart by whether the spec says so."""
    protecting = [unit for unit in system.of(InverterUnit) if protects_at_interface(system, unit.type)]
    stated = [u.designation for u in protecting if "interface_protection" in u.type.model_fields_set]
    taken = [u.designation for u in protecting if "interface_protection" not in u.type.model_fields_set]
    return [
        *([f"Interface protection is built into {joined(stated)}."] if stated else []),
        *([f"Interface protection is taken to be built into {joined(taken)}; not stated."] if taken else []),
    ]


def _national(system: System) -> list[str]:
    """Return what the country asks for on the DC side, each with its clause; what is for buildings only, on those."""
    return [
        f"{note['text']} ({note['clause']}{', from memory' if note.status == 'from memory' else ''})."
        for note in notes_of(system.supply.country)
        if note["building"] == "any" or system.site.building != "ground_mounted"
    ]


def _site(site: Site) -> str:
    """Return climate, surroundings and places of the site."""
    density, rear = site.lightning_density_per_km2_year, site.rear_irradiance_percent
    places = [
        " ".join(word for word in (name, _where(place), _degrees(place)) if word)
        for name, place in site.locations.items()
        if place.outdoor or place.building or place.ambient_temperature_c is not None
    ]
    soil_c, soil = site.soil_temperature_c, site.soil_resistivity_k_m_per_w
    words = [
        f"Air {shown(site.temperature_min_c)} to {shown(site.temperature_max_c)} °C",
        f"mounting {site.mounting.replace('_', ' ')}",
        site.building.replace("_", " "),
        f"{shown(density)} lightning flashes to ground a km² and year" if density is not None else "",
        f"ground {shown(soil_c)} °C" if soil_c is not None else "",
        f"soil {shown(soil)} K·m/W" if soil is not None else "",
        f"irradiance on the rear {shown(rear)} %" if rear is not None else "",
    ]
    text = ", ".join(word for word in words if word)
    return f"{text}. Places: {'; '.join(places)}." if places else f"{text}."


def _where(place: Location) -> str:
    building = f"in {place.building}" if place.building else ""
    return " ".join(word for word in (building, "outdoors" if place.outdoor else "") if word)


def _degrees(place: Location) -> str:
    return f"{shown(place.ambient_temperature_c)} °C" if place.ambient_temperature_c is not None else ""


def _people(project: Project) -> list[str]:
    """Return who designs and who installs, and the dates of installation and commissioning, where they are given."""
    found = []
    for role, party in (("Designer", project.designer), ("Installer", project.installer)):
        if party is not None:
            words = [party.company, party.contact, party.address, party.phone, party.email]
            found.append(f"{role}: {', '.join(word for word in words if word)}.")
    dates = [("installed", project.installed), ("commissioned", project.commissioned)]
    told = [f"{what} {date}" for what, date in dates if date]
    return [*found, *([f"System {', '.join(told)}."] if told else [])]

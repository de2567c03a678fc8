"""General notes: the cautions that belong on every such drawing, and what this one is based on."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.section import Paragraphs
from sld.layout.diagram.ranges import joined
from sld.model.battery_side import is_battery_checked
from sld.model.device import BatteryUnit, Busbar, GeneratorUnit, InverterUnit
from sld.model.island import islands
from sld.model.kinds.ac import MAIN_SWITCH
from sld.model.kinds.units import BOARD
from sld.model.system import System
from sld.model.wording import profile_word, protects_at_interface
from sld.readers import READERS
from sld.spec.blocks.project import Party, Project
from sld.spec.blocks.site import Location, Site
from sld.spec.blocks.supply import Supply
from sld.tables.country import notes_of
from sld.tables.table import table
from sld.words import Day, Phrase, Sayable, amount, listing, phrase, sequence, verbatim

__all__ = ["basis", "cautions"]


def cautions(system: System) -> Paragraphs:
    """Return the cautions; the first one names the kinds of sources that the system has."""
    sources: list[Phrase] = [phrase("the public supply"), phrase("every inverter")]
    behind = (system, *system.others)
    if system.others:
        sources[0] = phrase("every public supply")
    if any(True for each in behind for _ in each.of(BatteryUnit)):
        sources.append(phrase("every battery"))
    if any(True for each in behind for _ in each.of(GeneratorUnit)):
        sources.append(phrase("every generator"))
    first = (
        phrase(
            "WARNING: several sources of supply. Isolate {sources} before work; DC conductors stay live in daylight, "
            "and capacitors keep their charge after isolation for the time that the maker states.",
            sources=listing(sources),
        )
        if len(sources) > 2 or system.others
        else phrase(
            "WARNING: two sources of supply. Isolate {sources} before work; DC conductors stay live in daylight, "
            "and capacitors keep their charge after isolation for the time that the maker states.",
            sources=listing(sources),
        )
    )
    others = system.supply.other_supply_points
    further = (
        *([_on_this_drawing(behind)] if system.others else []),
        *([_others(others)] if others else []),
        phrase("DC plug connectors and fuse holders are not switches: do not open them under load."),
        phrase(
            "Design aid. All values are to be checked by a person licensed for such work, against the local rules, the "
            "network operator's conditions and the makers' manuals, which take precedence over this drawing. Tables "
            "marked from memory await comparison with the standard."
        ),
    )
    return Paragraphs("cautions", phrase("Cautions"), (first, *further), numbered=True, sign="warning_triangle")


def _on_this_drawing(behind: Sequence[System]) -> Phrase:
    """Return the caution about the supply points of this drawing, and where each of them is isolated."""
    return phrase(
        "{count} supply points: {supplies}. What is behind one stays live when another is isolated; a notice at each "
        "main switch names the others ({clause}).",
        count=len(behind),
        supplies=sequence((_isolated(each) for each in sorted(behind, key=_designation)), "; "),
        clause=verbatim("NEC 230.2(E)") if behind[0].follows_nec else phrase("IEC 60364-4-46 462, from memory"),
    )


def _designation(system: System) -> str:
    return system.devices[system.root].designation


def _isolated(system: System) -> Sayable:
    """Return what a supply point is called, its number, and the devices that isolate it."""
    number = system.supply.supply_point
    called = sequence([_designation(system), system.point.called, *([f"({number})"] if number else ())], " ")
    main = system.main_board().key
    switches = joined(device.designation for device in system.apparatus(MAIN_SWITCH) if device.owner == main)
    return phrase("{supply}, isolated at {switches}", supply=called, switches=switches) if switches else called


def _others(names: list[str]) -> Phrase:
    """Return the caution about further connections of the site to the network."""
    return phrase(
        "The site has other connections to the public network: {names}. They stay live when the one in this drawing is "
        "isolated, and have drawings of their own.",
        names=listing(verbatim(name) for name in names),
    )


def _earthing(system: System) -> list[Phrase]:
    """Return what is noted of the earthing, and for each building with its own electrode how its feeder ends."""
    given = system.earthing
    return [
        *([phrase("Earthing: {note}.", note=given.note)] if given.note else ()),
        *(
            [phrase("Main bonding: no extraneous conductive parts, as given.")]
            if given.extraneous_parts is False
            else ()
        ),
        *(
            phrase("Main bonding at {board}: no extraneous conductive parts, as given.", board=board.designation)
            for board in system.of(Busbar)
            if board.given.extraneous_parts is False
        ),
        *(
            phrase(
                "{board} is in a TT system of its own: the protective conductor of its feeder is not connected to its "
                "earth.",
                board=board.designation,
            )
            for board in system.of(Busbar)
            if board.given.earthing_system == "TT"
        ),
    ]


def basis(system: System) -> Paragraphs:
    """Return what the drawing is based on and how it is read."""
    project, supply = system.project, system.supply
    texts: list[Sayable] = [
        phrase(
            "Rule profile: {profile}. {site} Earthing system {earthing_system}.",
            profile=profile_word(system.profile),
            site=_site(system.site),
            earthing_system=supply.earthing_system,
        ),
        phrase(
            "AC conductors are drawn for all poles; the strokes count the conductors of a cable. Protective conductors "
            "run in the cables. PE at a device is its protective conductor, a designation the conductor to the main "
            "earthing terminal."
        ),
    ]
    left_open = [row.said("text") for row in table("profile_scope").where(profile=system.profile)]
    if left_open:
        scope = sequence(left_open, "; ")
        texts.append(phrase("Profile {profile}: {scope}.", profile=profile_word(system.profile), scope=scope))
    texts += _people(project)
    if project.reference and project.drawing_number:
        texts.append(phrase("Project reference: {reference}.", reference=project.reference))
    if supply.operator:
        texts.append(phrase("Network operator: {operator}.", operator=supply.operator))
    texts += _earthing(system)
    texts += _overhead(supply)
    if supply.country:
        texts.append(phrase("Country: {country}.", country=supply.country))
        texts += _national(system)
    texts += _protecting(system)
    texts += _batteries(system)
    texts += _islands(system)
    codes = sorted({unit.given.named_settings for unit in system.of(InverterUnit)} - {""})
    if codes:
        texts.append(phrase("Network setting of the inverters: {codes}.", codes=", ".join(codes)))
    texts += _wireless(system)
    texts += READERS[system.drawing.reader].notes
    return Paragraphs("notes", phrase("Notes"), tuple(texts), numbered=True)


def _wireless(system: System) -> list[Phrase]:
    """Return between which devices data go without a cable."""
    return [
        phrase(
            "Wireless: {sender} to {receiver}.",
            sender=system.devices[system.names[link.from_device][0]].designation,
            receiver=system.devices[system.names[link.to_device][0]].designation,
        )
        for link in system.links
        if link.medium == "wireless"
    ]


def _batteries(system: System) -> list[Phrase]:
    """Return the note that says which batteries have a DC side that was not checked."""
    batteries = [unit.designation for unit in system.of(BatteryUnit) if not is_battery_checked(unit)]
    if not batteries:
        return []
    return [
        phrase(
            "Battery side of {batteries}: isolation and protection of its direct current are not in this drawing "
            "and were not checked; see the maker's manual.",
            batteries=joined(batteries),
        )
    ]


def _islands(system: System) -> list[Phrase]:
    """Return what stays live while the network is away, and by what it is fed then."""
    found = []
    for island in islands(system):
        boards = [each.designation for each in system.downstream(island.root) if isinstance(each, Busbar)]
        if system.devices[island.root].has(BOARD):
            boards.insert(0, system.devices[island.root].designation)
        fed = {"boards": joined(boards), "sources": joined(each.designation for each in island.sources)}
        if boards and island.switch in island.sources:
            found.append(phrase("While the network is away {boards} can be live from {sources}.", **fed))
        elif boards and island.sources:
            found.append(
                phrase(
                    "While the network is away {boards} can be live from {sources}, behind {switch}.",
                    switch=island.switch.designation,
                    **fed,
                )
            )
    return found


def _overhead(supply: Supply) -> list[Phrase]:
    """Return that the supply arrives by an overhead line, and whether strokes to it are reckoned with."""
    if not supply.overhead:
        return []
    return [
        phrase("Overhead supply, exposed to direct strokes.") if supply.direct_strokes else phrase("Overhead supply.")
    ]


def _protecting(system: System) -> list[Phrase]:
    """Return which inverters have interface protection built in, apart by whether the spec says so."""
    protecting = [unit for unit in system.of(InverterUnit) if protects_at_interface(system, unit.type)]
    stated = [u.designation for u in protecting if "interface_protection" in u.type.model_fields_set]
    taken = [u.designation for u in protecting if "interface_protection" not in u.type.model_fields_set]
    told = phrase("Interface protection is built into {units}.", units=joined(stated))
    assumed = phrase("Interface protection is taken to be built into {units}; not stated.", units=joined(taken))
    return [*([told] if stated else []), *([assumed] if taken else [])]


def _national(system: System) -> list[Phrase]:
    """Return what the country asks for on the DC side, each with its clause; what is for buildings only, on those.

    Each is said to be a rule: whether this installation meets it is another matter.
    """
    found = []
    for note in notes_of(system.supply.country, system.follows_nec):
        if note["building"] == "any" or system.site.building != "ground_mounted":
            where, text, clause = note["country"], note.said("text"), note.said("clause")
            found.append(
                phrase("Rule in {country}: {note} ({clause}, from memory).", country=where, note=text, clause=clause)
                if note.status == "from memory"
                else phrase("Rule in {country}: {note} ({clause}).", country=where, note=text, clause=clause)
            )
    return found


_MOUNTINGS = {
    "roof_parallel": phrase("mounting roof parallel"),
    "roof_tilted": phrase("mounting roof tilted"),
    "free_standing": phrase("mounting free standing"),
}
_SURROUNDINGS = {"rural": phrase("rural"), "suburban": phrase("suburban"), "urban": phrase("urban")}
_BUILDINGS = {
    "dwelling": phrase("dwelling"),
    "other_building": phrase("other building"),
    "ground_mounted": phrase("ground mounted"),
}


def _site(site: Site) -> Phrase:
    """Return climate, surroundings and places of the site."""
    density, rear = site.lightning_density_per_km2_year, site.rear_irradiance_percent
    soil_c, soil = site.soil_temperature_c, site.soil_resistivity_k_m_per_w
    words: list[Sayable] = [
        phrase("Air {cold} to {hot}", cold=amount(site.temperature_min_c), hot=amount(site.temperature_max_c, "°C")),
        _MOUNTINGS[site.mounting] if "mounting" in site.model_fields_set else phrase("mounting not stated"),
        _BUILDINGS[site.building] if "building" in site.model_fields_set else phrase("kind of building not stated"),
    ]
    if density is not None:
        words.append(phrase("{density} lightning flashes to ground a km² and year", density=amount(density)))
    if site.surroundings is not None:
        words.append(_SURROUNDINGS[site.surroundings])
    if site.surge_protection_declined is not None:
        words.append(phrase("AC surge protection declined: {by}", by=site.surge_protection_declined))
    if soil_c is not None:
        words.append(phrase("ground {temperature}", temperature=amount(soil_c, "°C")))
    if soil is not None:
        words.append(phrase("soil {resistivity}", resistivity=amount(soil, "K·m/W")))
    if rear is not None:
        words.append(phrase("irradiance on the rear {rear}", rear=amount(rear, "%")))
    places = [
        sequence([name, *_where(place)], " ")
        for name, place in site.locations.items()
        if place.outdoor or place.building or place.ambient_temperature_c is not None
    ]
    if places:
        return phrase("{site}. Places: {places}.", site=sequence(words), places=sequence(places, "; "))
    return phrase("{site}.", site=sequence(words))


def _where(place: Location) -> list[Sayable]:
    return [
        *([phrase("in {building}", building=place.building)] if place.building else ()),
        *([phrase("outdoors")] if place.outdoor else ()),
        *([amount(place.ambient_temperature_c, "°C")] if place.ambient_temperature_c is not None else ()),
    ]


def _people(project: Project) -> list[Phrase]:
    """Return who designs and who installs, and the dates of installation and commissioning, where they are given."""
    found = []
    if project.designer is not None:
        found.append(phrase("Designer: {party}.", party=_party(project.designer)))
    if project.installer is not None:
        found.append(phrase("Installer: {party}.", party=_party(project.installer)))
    dates: list[Phrase] = []
    if project.installed:
        dates.append(phrase("installed {date}", date=Day(project.installed)))
    if project.commissioned:
        dates.append(phrase("commissioned {date}", date=Day(project.commissioned)))
    if dates:
        found.append(phrase("System {dates}.", dates=sequence(dates)))
    return found


def _party(party: Party) -> str:
    words = [party.company, party.contact, party.address, party.phone, party.email]
    return ", ".join(word for word in words if word)

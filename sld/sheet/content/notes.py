"""General notes: the cautions that belong on every such drawing, and what this one is based on."""

from __future__ import annotations

from sld.model.device import InverterUnit
from sld.model.system import System
from sld.quantity import shown
from sld.sheet.blocks.text import TextBlock
from sld.spec.blocks.project import Project

__all__ = ["basis", "notes"]


def notes() -> TextBlock:
    """Return the cautions."""
    texts = (
        "WARNING: two sources of supply. Isolate the public supply and every inverter before work; DC conductors stay "
        "live in daylight, and capacitors keep their charge after isolation for the time that the maker states.",
        "DC plug connectors and fuse holders are not switches: do not open them under load.",
        "Design aid. All values are to be checked by a person licensed for such work, against the local rules, the "
        "network operator's conditions and the makers' manuals, which take precedence over this drawing. Tables "
        "marked from memory await comparison with the standard.",
    )
    return TextBlock("Cautions", texts, numbered=True)


def basis(system: System) -> TextBlock:
    """Return what the drawing is based on and how it is read."""
    site = system.site
    texts = [
        f"Rule profile: {system.profile}. "
        f"Air {shown(site.temperature_min_c)} to {shown(site.temperature_max_c)} °C, "
        f"mounting {site.mounting.replace('_', ' ')}. Earthing system {system.supply.earthing_system}.",
        "AC conductors are drawn for all poles; the strokes count the conductors of a cable. Protective conductors run "
        "in the cables. PE at a device is its protective conductor, a designation the conductor to the main earthing "
        "terminal.",
    ]
    texts += _people(system.project)
    if system.supply.country:
        texts.append(f"Country: {system.supply.country}.")
    codes = sorted({unit.given.grid_code for unit in system.of(InverterUnit) if unit.given.grid_code})
    if codes:
        texts.append(f"Network setting of the inverters: {', '.join(codes)}.")
    texts += [
        f"Wireless: {system.devices[system.names[link.from_device][0]].designation} to "
        f"{system.devices[system.names[link.to_device][0]].designation}."
        for link in system.links
        if link.medium == "wireless"
    ]
    return TextBlock("Notes", tuple(texts), numbered=True)


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

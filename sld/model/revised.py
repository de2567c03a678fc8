"""What the newest revision of a drawing changed, as the spec says it."""

from __future__ import annotations

from sld.model.system import System
from sld.spec.unusable_value import dotted

__all__ = ["revised", "revised_at"]


def revised(system: System) -> tuple[str, ...]:
    """Return the keys of what the newest revision changed."""
    newest = system.project.revisions[-1] if system.project.revisions else None
    places = newest.places if newest else ()
    return tuple(dict.fromkeys(key for place in places for key in revised_at(system, place)))


def revised_at(system: System, place: str) -> tuple[str, ...]:
    """Return the keys of what stands at a place: a path of the spec, or a designation.

    At a place that is no device itself these are the outermost devices within it; nowhere: none.
    """
    named = {system.earthing_key: system.earthing_designation}
    named |= {chain.key: chain.designation for chain in system.chains}
    named |= {conductor.key: conductor.designation for conductor in system.earth_conductors}
    paths = {key: (dotted(device.at), device.designation) for key, device in system.devices.items()}
    found = [key for key, said in paths.items() if place in said]
    found += [key for key, designation in named.items() if place in (key, designation)]
    if found:
        return tuple(found)
    within = [key for key, (path, _) in paths.items() if path.startswith((f"{place}.", f"{place}["))]
    depth = min((len(system.devices[key].at) for key in within), default=0)
    return tuple(key for key in within if len(system.devices[key].at) == depth)

"""The conductors at the earthing terminals: those of the spec and those that every installation has."""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import SpecPath
from sld.frozen import replace
from sld.model.assumed import Assumption
from sld.model.designation import Designator
from sld.model.kinds.units import EARTH_CONDUCTOR
from sld.model.system import EarthConductor
from sld.spec.blocks.earthing import Earthing
from sld.spec.document import Spec, follows_nec
from sld.spec.supply_points import SupplyPoint
from sld.words import Sayable, phrase, verbatim

__all__ = ["ELECTRODES", "earth_conductors"]

ELECTRODES = {
    None: phrase("earth electrode, kind not stated"),
    "foundation": phrase("foundation electrode"),
    "ring": phrase("ring electrode"),
    "rod": phrase("rod electrode"),
    "mesh": phrase("mesh electrode"),
}


def earth_conductors(
    point: SupplyPoint, earthing: Earthing, designator: Designator
) -> tuple[tuple[EarthConductor, ...], list[Assumption]]:
    """Return the conductors in the order they are drawn, and what had to be assumed.

    A TN supply brings a protective conductor, TT and IT need an electrode of the installation's own; module frames are
    always bonded here where there are any, because an inverter without galvanic separation needs it (IEC 62548-1,
    clause from memory).
    """
    spec, at = point.spec, point.place(("earthing",))
    found = [
        *_to_electrode(spec, earthing, at),
        *_from_supply(spec, earthing, at),
        *_bonding(spec, earthing, at),
        *_to_lightning_protection(earthing, at),
        *_of_buildings(spec),
    ]
    designated = tuple(
        replace(
            each,
            key=f"{point.prefix}{each.key}",
            designation=designator.next("", EARTH_CONDUCTOR),
            at=point.place(each.at),
        )
        for each in found
    )
    return designated, _said(spec, earthing, at)


def _frames_are_given(earthing: Earthing) -> bool:
    return any(bonding.purpose == "array_frame" for bonding in earthing.bonding)


def _to_electrode(spec: Spec, earthing: Earthing, at: SpecPath) -> Iterator[EarthConductor]:
    electrode, conductor = earthing.electrode, earthing.conductor
    if electrode is None and spec.earthing is not None and spec.supply.earthing_system not in ("TT", "IT"):
        return
    given = _conductor_is_given(earthing)
    yield EarthConductor(
        key="earth.electrode",
        designation="",
        at=(*at, "conductor") if given else at,
        to=ELECTRODES[electrode.kind if electrode else None],
        purpose="earthing",
        section_mm2=conductor.section_mm2,
        length_m=conductor.length_m,
        assumed=electrode is None,
    )


def _from_supply(spec: Spec, earthing: Earthing, at: SpecPath) -> Iterator[EarthConductor]:
    """Yield the conductor that a TN supply brings.

    Without an electrode of the installation's own, the `conductor` of the spec is the one to the supply's earthing
    point.
    """
    if spec.supply.earthing_system not in ("TN-S", "TN-C-S"):
        return
    brought: Sayable = verbatim("PE")
    if spec.supply.earthing_system == "TN-C-S":
        brought = phrase("grounded conductor") if follows_nec(spec.profile) else verbatim("PEN")
    if _conductor_is_given(earthing) and earthing.electrode is None:
        to, conductor = phrase("earthing point of the supply ({conductor})", conductor=brought), earthing.conductor
        place = (*at, "conductor")
        yield EarthConductor("earth.supply", "", place, to, "earthing", conductor.section_mm2, conductor.length_m)
        return
    of_supply = phrase("{conductor} of the supply", conductor=brought)
    yield EarthConductor("earth.supply", "", ("supply", "earthing_system"), of_supply, "supply", None, None)


def _conductor_is_given(earthing: Earthing) -> bool:
    return "conductor" in earthing.model_fields_set


def _has_array(spec: Spec) -> bool:
    return any(given.strings for inverter in spec.inverters.values() for given in inverter.inputs)


def _bonding(spec: Spec, earthing: Earthing, at: SpecPath) -> Iterator[EarthConductor]:
    for index, bonding in enumerate(earthing.bonding):
        yield EarthConductor(
            key=f"earth.bonding.{index}",
            designation="",
            at=(*at, "bonding", index),
            to=verbatim(bonding.to),
            purpose=bonding.purpose,
            section_mm2=bonding.section_mm2,
            length_m=bonding.length_m,
        )
    if _has_array(spec) and not _frames_are_given(earthing):
        yield EarthConductor(
            "earth.array_frame", "", at, phrase("module frames"), "array_frame", None, None, assumed=True
        )


def _to_lightning_protection(earthing: Earthing, at: SpecPath) -> Iterator[EarthConductor]:
    if earthing.lightning_protection is not None:
        where = (*at, "lightning_protection")
        yield EarthConductor(
            "earth.lightning", "", where, phrase("lightning protection system"), "lightning", None, None
        )


def _of_buildings(spec: Spec) -> Iterator[EarthConductor]:
    """Yield the main bonding of the other buildings, at the earthing terminal of each."""
    for name, board in spec.boards.items():
        for index, given in enumerate(board.bonding):
            yield EarthConductor(
                key=f"earth.boards.{name}.bonding.{index}",
                designation="",
                at=("boards", name, "bonding", index),
                to=verbatim(given.to),
                purpose="main_bonding",
                section_mm2=given.section_mm2,
                length_m=given.length_m,
                board=f"boards.{name}",
            )


def _said(spec: Spec, earthing: Earthing, at: SpecPath) -> list[Assumption]:
    if spec.earthing is None:
        what = (
            phrase("a main earthing terminal with an earth electrode and bonded module frames")
            if _has_array(spec)
            else phrase("a main earthing terminal with an earth electrode")
        )
        return [Assumption(what, phrase("give `earthing`"), at)]
    found = []
    if earthing.electrode is None and spec.supply.earthing_system in ("TT", "IT"):
        what, remedy = phrase("an earth electrode"), phrase("give `electrode` under `earthing`")
        found.append(Assumption(what, remedy, at))
    if _has_array(spec) and not _frames_are_given(earthing):
        what = phrase("bonding of the module frames to the main earthing terminal")
        found.append(Assumption(what, phrase("add a `bonding` entry with `purpose: array_frame`"), at))
    return found

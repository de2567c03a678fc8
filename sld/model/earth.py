"""The conductors at the main earthing terminal: those of the spec and those that every installation has."""

from __future__ import annotations

from sld.finding import Finding, SpecPath
from sld.model.assumed import assumption
from sld.model.designation import Designator
from sld.model.system import EarthConductor
from sld.spec.blocks.earthing import Earthing
from sld.spec.document import Spec

__all__ = ["earth_conductors"]


def earth_conductors(
    spec: Spec, earthing: Earthing, designator: Designator
) -> tuple[tuple[EarthConductor, ...], list[Finding]]:
    """Return the conductors in the order they are drawn, and what had to be assumed.

    A TN supply brings a protective conductor, TT and IT need an electrode of the installation's own; module frames are
    always bonded here, because an inverter without galvanic separation needs it (IEC 62548-1, clause from memory).
    """
    found: list[EarthConductor] = []
    said: list[Finding] = []
    at: SpecPath = ("earthing",) if spec.earthing else ()

    def add(
        key: str,
        where: SpecPath,
        to: str,
        purpose: str,
        section_mm2: float | None,
        length_m: float | None,
        assumed: bool = False,
    ) -> None:
        designation = designator.next("", "earth_conductor")
        found.append(EarthConductor(f"earth.{key}", designation, where, to, purpose, section_mm2, length_m, assumed))

    system = spec.supply.earthing_system
    if spec.earthing is None:
        said.append(
            assumption(
                "AS01",
                at,
                "",
                "a main earthing terminal with a foundation electrode and bonded module frames",
                "give `earthing`",
            )
        )
    electrode = earthing.electrode
    if electrode is not None or system in ("TT", "IT") or spec.earthing is None:
        kind = electrode.kind if electrode else "foundation"
        where = (*at, "conductor") if spec.earthing and "conductor" in spec.earthing.model_fields_set else at
        conductor = earthing.conductor
        add(
            "electrode",
            where,
            f"{kind} electrode",
            "earthing",
            conductor.section_mm2,
            conductor.length_m,
            electrode is None,
        )
    if system in ("TN-S", "TN-C-S"):
        add(
            "supply",
            ("supply", "earthing_system"),
            "PE of the supply" if system == "TN-S" else "PEN of the supply",
            "supply",
            None,
            None,
        )
    for index, bonding in enumerate(earthing.bonding):
        add(
            f"bonding.{index}",
            (*at, "bonding", index),
            bonding.to,
            bonding.purpose,
            bonding.section_mm2,
            bonding.length_m,
        )
    if not any(bonding.purpose == "array_frame" for bonding in earthing.bonding):
        add("array_frame", at, "module frames", "array_frame", None, None, True)
        if spec.earthing is not None:
            said.append(
                assumption(
                    "AS01",
                    at,
                    "",
                    "bonding of the module frames to the main earthing terminal",
                    "add a `bonding` entry with `purpose: array_frame`",
                )
            )
    if earthing.lightning_protection is not None:
        add("lightning", (*at, "lightning_protection"), "lightning protection system", "lightning", None, None)
    return tuple(found), said

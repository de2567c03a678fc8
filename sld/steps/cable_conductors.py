"""The conductors that an AC cable must hold, and whether its cores hold a protective conductor."""

from __future__ import annotations

from sld.citation import from_memory
from sld.model.conductors import has_neutral, lines_count
from sld.model.device import Apparatus, Busbar, Cable, InverterUnit
from sld.model.kinds.ac import AC_CABLE
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import AcCable
from sld.steps.ledger import Ledger
from sld.words import phrase

__all__ = [
    "CONDUCTORS_SOURCE",
    "brings_protective",
    "conductors_needed",
    "holds_protective",
    "is_combined",
    "keep_cores",
    "neutral_is_known",
]

CONDUCTORS_SOURCE = from_memory("IEC 60364-1 312.2", "IEC 60364-5-54 543.1")

_LINES = ("L1", "L2", "L3")


def brings_protective(system: System, cable: Cable) -> bool:
    """Return whether a protective conductor has to run with a cable.

    The cable between network and main board brings none in TT and IT, and in TN-C-S its PEN is neutral and protective
    conductor in one. Source: IEC 60364-1 312.2 (from memory).
    """
    main = system.main_board().key
    return cable.owner != main or system.supply.earthing_system == "TN-S"


def neutral_is_known(system: System, cable: Cable) -> bool:
    """Return whether a circuit is sure to need a neutral: one phase, a board, an inverter that asks for it, or a device
    with a pole for it."""
    if not has_neutral(system, cable.owner):
        return False
    owner = system.devices.get(cable.owner)
    asks = isinstance(owner, Busbar) or (isinstance(owner, InverterUnit) and owner.type.needs_neutral)
    if lines_count(system, cable.owner) == 1 or asks:
        return True
    circuit = (device for device in system.of(Apparatus) if device.owner == cable.owner and not device.dc)
    return any(getattr(device.given, "poles", None) == 4 for device in circuit)


def is_combined(system: System, cable: Cable) -> bool:
    """Return whether neutral and protective conductor of a cable are one (PEN): in TN-C-S that from the network, where
    its cores leave none for the other.
    """
    given = cable.given_as(AC_CABLE)
    if given is None or given.cores is None or given.protective_is_no_core:
        return False
    return conductors_needed(system, cable)[-1] == "PEN" and given.cores <= len(conductors_needed(system, cable))


def _lines(system: System, owner_key: str) -> tuple[str, ...]:
    count = lines_count(system, owner_key)
    return _LINES[:count] if count > 1 else ("L",)


def conductors_needed(system: System, cable: Cable) -> tuple[str, ...]:
    """Return the conductors that the cores of a cable must hold, the protective one last.

    A protective conductor around or beside the cores is not counted among them.
    """
    lines = _lines(system, cable.owner)
    neutral = ("N",) if neutral_is_known(system, cable) else ()
    given = cable.given_as(AC_CABLE)
    own = given is not None and given.protective_is_no_core
    if not brings_protective(system, cable):
        return (*lines, "PEN") if system.supply.earthing_system == "TN-C-S" else (*lines, *neutral)
    return (*lines, *neutral) if own else (*lines, *neutral, "PE")


def holds_protective(system: System, cable: Cable) -> bool:
    """Return whether a cable has a protective conductor: as stated, or a core that the live conductors leave."""
    given = cable.given_as(AC_CABLE)
    if given is None or given.cores is None or given.protective_is_no_core:
        return True
    if not brings_protective(system, cable):
        spare = given.cores - len(conductors_needed(system, cable))
        return spare >= (0 if system.supply.earthing_system == "TN-C-S" else 1)
    # a core that is there is a protective conductor before it is the neutral of a three-phase circuit
    lines = _lines(system, cable.owner)
    return given.cores > max(2, len(lines))


def keep_cores(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    """Keep the cores that a cable has, where the spec says, and those that its conductors need."""
    if given.cores is None:
        return
    names = conductors_needed(system, cable)
    ledger.add(cable.key, specified(Symbol.CORES, given.cores, ""))
    needed = (Given(phrase("conductors"), " ".join(names)),)
    ledger.add(
        cable.key, Rating(Symbol.CORES_MIN, len(names), "", phrase("one for each conductor"), needed, CONDUCTORS_SOURCE)
    )

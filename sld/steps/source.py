"""The supply as an impedance: of one phase for the greatest current, as an earth-fault loop for the least."""

from __future__ import annotations

from sld.citation import from_memory
from sld.frozen import dataclass
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import fault, source_impedance, transformer
from sld.ratings.impedance import Impedance, in_series
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.supply import SupplyTransformer
from sld.steps.ledger import Ledger
from sld.words import Sayable, phrase

__all__ = ["C_MAX", "Source", "between_lines_v", "source"]

C_MAX = 1.10
"""The voltage factor of a network held within ±10 % (IEC 60909-0:2016 Table 1): the cautious one of the two."""


_LEAST_OHM = 1e-6
"""Below this no loop was measured, and a stated one counts as not stated."""


@dataclass(frozen=True, slots=True)
class Source:
    """The supply as impedances: of one phase and line to neutral (greatest currents), as an earth-fault loop (least).

    The loop is without the electrodes of the installation.
    said: where the impedance of the phase comes from, for the trace; assumptions: what had to be assumed for it.
    """

    phase: Impedance
    line_to_neutral: Impedance
    loop: Impedance
    said: Sayable
    assumptions: tuple[Sayable, ...]


def between_lines_v(system: System) -> float:
    """Return the voltage between lines; that of a single-phase supply is √3 times its own. [V]"""
    return system.voltage_v if system.supply.phases == 3 else system.voltage_v * 3**0.5


def source(system: System, ledger: Ledger) -> Source:
    """Return the supply as impedances, and keep what was stated or assumed about it.

    With a stated current the impedance is c · Un / (√3 · Ik), with the same c as in the current behind it, so that the
    stated current comes back at the supply point. Source: IEC 60909-0:2016 6.2 (from memory).
    """
    supply = system.supply
    if supply.transformer is not None:
        return _transformer_source(system, ledger, supply.transformer)
    said: list[Sayable] = []
    current_ka = supply.prospective_fault_current_ka
    if current_ka is not None:
        ledger.add("", specified(Symbol.IPF, current_ka, "kA"))
    else:
        rating = source_impedance.assumed_fault_current(_known_default(supply.earthing_system))
        current_ka = rating.value
        said += rating.assumptions
        ledger.add("", rating)
    phase = source_impedance.impedance_from_fault_current(current_ka, between_lines_v(system), C_MAX)
    ledger.add("", _supply_impedance(system, phase, current_ka))
    if supply.loop_impedance_ohm is not None and supply.loop_impedance_ohm >= _LEAST_OHM:
        loop_ohm = supply.loop_impedance_ohm
        ledger.add("", specified(Symbol.ZE, loop_ohm, "Ω"))
    else:
        assumed = source_impedance.assumed_loop_impedance(_known_default(supply.earthing_system))
        loop_ohm = assumed.value
        said += assumed.assumptions
        ledger.add("", assumed)
    return Source(
        phase, phase, Impedance(loop_ohm, 0.0), phrase("by the fault current at the supply point"), tuple(said)
    )


def _supply_impedance(system: System, phase: Impedance, current_ka: float) -> Rating:
    """Return the impedance of the supply behind a stated or assumed fault current, as a rating. [Ω]"""
    three = system.supply.phases == 3
    given = (
        Given("cmax", C_MAX, "", phrase("network within ±10 %")),
        Given("Un", system.voltage_v, "V"),
        Given("Ipf", current_ka, "kA"),
    )
    formula = "cmax · Un / (√3 · Ipf)" if three else "cmax · Un / Ipf"
    return Rating(Symbol.ZK, phase.magnitude_ohm, "Ω", formula, given, from_memory("IEC 60909-0:2016 6.2"))


def _known_default(earthing_system: str) -> str:
    """Return the system whose default is used: IT has no default of its own and takes that of TT."""
    return "TT" if earthing_system == "IT" else earthing_system


def _transformer_source(system: System, ledger: Ledger, given: SupplyTransformer) -> Source:
    kva = given.rated_power_va / 1000
    voltage_v = given.secondary_voltage_v or between_lines_v(system)
    said: list[Sayable] = []
    uk_percent = given.short_circuit_voltage_percent
    resistive_percent = 100 * (given.load_losses_w or 0.0) / given.rated_power_va
    if resistive_percent > uk_percent:
        resistive_percent = uk_percent
        said.append(
            phrase("load losses of the transformer do not fit its short-circuit voltage, taken as all resistance")
        )
    correction = transformer.correction_factor(uk_percent, resistive_percent, C_MAX).value
    impedance = transformer.transformer_impedance(kva, voltage_v, uk_percent, resistive_percent)
    network = Impedance(0.0, 0.0)
    if given.network_fault_power_va is not None:
        s_k_mva = given.network_fault_power_va / 1e6
        network = source_impedance.impedance_from_short_circuit_power(s_k_mva, voltage_v, C_MAX)
    else:
        said.append(phrase("network behind the transformer without impedance"))
    ledger.add("", transformer.rated_current(kva, voltage_v), symbol=Symbol.IN_TRANSFORMER)
    # The correction factor belongs to the greatest current alone. In a Dyn transformer the zero-sequence impedance is
    # about its own, so the earth-fault loop is about the impedance of one phase.
    greatest = in_series([network, impedance * correction])
    loop = in_series([network, impedance])
    to_neutral = _line_to_neutral(given, network, impedance * correction)
    return Source(greatest, to_neutral, loop, phrase("network and transformer, KT · ZT"), tuple(said))


def _line_to_neutral(given: SupplyTransformer, network: Impedance, transformer_part: Impedance) -> Impedance:
    """Return what a fault from line to neutral sees of network and transformer: (2 · Z1 + Z0) / 3.

    A delta winding keeps the zero-sequence current out of the network, so that Z0 is that of the transformer alone, and
    at the terminals this fault is greater than the three-phase one. A star winding does not help so, and Z0 is taken as
    Z1. Source: IEC 60909-0:2016, single line-to-earth short circuit; agrees with an independent network library.
    """
    if given.vector_group is not None and not given.vector_group.upper().startswith("D"):
        return network + transformer_part
    return fault.sequence_loop(network + transformer_part, transformer_part)

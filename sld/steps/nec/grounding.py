"""Equipment grounding conductors of the AC cables, and the conductors at the main grounding terminal."""

from __future__ import annotations

from math import ceil

from sld.citation import citations, from_memory
from sld.frozen import replace
from sld.model.device import Apparatus, Cable, InputTerminal
from sld.model.kinds.ac import AC_CABLE
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import EarthConductor, System
from sld.quantity import Origin, Rating
from sld.ratings.nec import ampacity, grounding
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import AcCable
from sld.steps.cable_conductors import brings_protective, holds_protective, keep_cores
from sld.steps.cable_design import conductor_material
from sld.steps.inputs import groups_behind, largest_isc_a, strings_count
from sld.steps.ledger import Ledger
from sld.steps.protection import overcurrent_device, protective_family
from sld.steps.unanswered import NO_CORE, WITHOUT_FUSE, Unanswered, Why
from sld.tables.profiles import profile
from sld.tables.table import NoRow
from sld.wire_size import KCMIL_MM2, SIZES, area_mm2, name_of
from sld.words import NOTHING, Sayable, amount, phrase

__all__ = ["equipment_grounding", "grounding_conductors"]

_SILENT_DEVICE = Unanswered(phrase("nothing says which overcurrent device protects it"), Why.SILENT_SPEC)
_EXPOSED = "6"
_NFPA_780_MM2 = 57.4 * KCMIL_MM2
_LARGEST_SET = "500"


def equipment_grounding(system: System, ledger: Ledger) -> None:
    """Rate the equipment grounding conductor of every AC cable by the device ahead of it."""
    for cable, given in system.ac_cables():
        keep_cores(system, ledger, cable, given)
        _equipment(system, ledger, cable, given)


def _equipment(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    section = ledger.get(cable.key, Symbol.S)
    if section is None or not brings_protective(system, cable):
        return
    device = overcurrent_device(system, cable.key)
    rated = ledger.get(device.key, Symbol.IN) if device else None
    if rated is not None:
        ledger.attempt(
            cable.key,
            Symbol.SPE_MIN,
            lambda: _least(ledger, cable, section, rated),
            phrase("no size is tabulated for its device"),
        )
    if given.protective_section_mm2 is not None:
        ledger.add(cable.key, specified(Symbol.SPE, given.protective_section_mm2, "mm²"))
    elif not holds_protective(system, cable):
        ledger.unanswered(cable.key, Symbol.SPE, NO_CORE)
    elif (least := ledger.get(cable.key, Symbol.SPE_MIN)) is not None:
        ledger.add(cable.key, replace(least, symbol=Symbol.SPE, formula="SPE,min", origin=Origin.CHOSEN))
    else:
        ledger.unanswered(cable.key, Symbol.SPE, _SILENT_DEVICE)


def _least(ledger: Ledger, cable: Cable, section: Rating, rated: Rating) -> Rating:
    """Return the least grounding conductor, increased where the conductors are larger than their currents ask for."""
    by_table = grounding.equipment_grounding(rated.value, conductor_material(cable))
    needed = ledger.get(cable.key, Symbol.S_CURRENT)
    return grounding.increased(by_table, section.value, needed.value) if needed is not None else by_table


def grounding_conductors(system: System, ledger: Ledger) -> None:
    """Rate every conductor at the main grounding terminal."""
    service = _service(system, ledger)
    for conductor in system.earth_conductors:
        ledger.specified(conductor.key, Symbol.S, conductor.section_mm2)
        try:
            least = _least_of(system, ledger, conductor, service)
        except NoRow:
            least = None
        if least is None:
            if conductor.section_mm2 is None and conductor.purpose in ("earthing", "main_bonding"):
                ledger.unanswered(conductor.key, Symbol.S, WITHOUT_FUSE)
            continue
        ledger.add(conductor.key, least, symbol=Symbol.S_MIN)
        if conductor.section_mm2 is None:
            ledger.add(conductor.key, _chosen(conductor, least))


def _chosen(conductor: EarthConductor, least: Rating) -> Rating:
    """Return the next size; to the frames 6 AWG, as a smaller one must be protected from damage (250.120(C))."""
    sizes = [area for area in map(area_mm2, SIZES) if area >= least.value * (1 - 1e-6)]
    value = sizes[0] if sizes else least.value
    given = (least.as_input(),)
    if conductor.purpose == "array_frame" and value < area_mm2(_EXPOSED):
        text = phrase("conductor to the module frames exposed, so {size}", size=name_of(area_mm2(_EXPOSED)))
        clause = citations(least.clause, from_memory("250.120(C)"))
        return Rating(
            Symbol.S,
            area_mm2(_EXPOSED),
            "mm²",
            phrase("6 AWG where exposed"),
            given,
            clause,
            NOTHING,
            (text,),
            origin=Origin.CHOSEN,
        )
    return replace(
        least, symbol=Symbol.S, value=value, formula=phrase("smallest size ≥ S,min"), given=given, origin=Origin.CHOSEN
    )


def _service(system: System, ledger: Ledger) -> tuple[str, float, tuple[Sayable, ...]] | None:
    """Return material and section of the service conductors and what was assumed, None where nothing says."""
    main = system.main_board().key
    cables = [each for each in system.upstream(main) if isinstance(each, Cable)]
    sections = [(ledger.value(each.key, Symbol.S) or 0.0, each) for each in cables]
    if sections and max(sections, key=lambda pair: pair[0])[0] > 0:
        section_mm2, cable = max(sections, key=lambda pair: pair[0])
        given = cable.given_as(AC_CABLE)
        parallel = given.parallel if given is not None else 1
        return conductor_material(cable), section_mm2 * parallel, ()
    devices = [each for each in system.upstream(main) if isinstance(each, Apparatus) and protective_family(each)]
    ratings = [value for each in devices if (value := ledger.value(each.key, Symbol.IN)) is not None]
    if not ratings:
        return None
    said = phrase(
        "service conductors of copper for {current} at 75 °C, none given", current=amount(max(ratings), "A", 6)
    )
    return "Cu", _copper_mm2(max(ratings)), (said,)


def _copper_mm2(current_a: float) -> float:
    """Return the area of copper conductors for a current, in as few sets of at most 500 kcmil as carry it. [mm²]"""
    sizes = SIZES[: SIZES.index(_LARGEST_SET) + 1]
    sets = ceil(current_a / ampacity.tabulated("Cu", _LARGEST_SET, 75.0).value)
    size = next(each for each in sizes if sets * ampacity.tabulated("Cu", each, 75.0).value >= current_a)
    return sets * area_mm2(size)


def _least_of(
    system: System, ledger: Ledger, conductor: EarthConductor, service: tuple[str, float, tuple[Sayable, ...]] | None
) -> Rating | None:
    if conductor.purpose == "array_frame":
        return _array(system, ledger)
    if conductor.purpose == "lightning":
        text = from_memory(phrase("{standard} main conductor of class I, 57.4 kcmil of copper", standard="NFPA 780"))
        return Rating(Symbol.SB, _NFPA_780_MM2, "mm²", phrase("bonding to lightning protection, copper"), (), text)
    if service is None or conductor.purpose not in ("earthing", "main_bonding"):
        return None
    material, section_mm2, said = service
    if conductor.purpose == "main_bonding" or conductor.to_supply:
        return grounding.bonding_jumper(material, section_mm2).assuming(*said)
    electrode = system.earthing.electrode
    kind = (electrode.kind if electrode else None) or ""
    return grounding.grounding_electrode(material, section_mm2, kind).assuming(*said)


def _array(system: System, ledger: Ledger) -> Rating:
    """Return the least equipment grounding conductor of the array: by its largest fuse, or 156 % of Isc (690.45)."""
    factor = profile(system.profile).fuse_lower_factor.value
    assumed_a = [
        factor * strings_count(groups) * largest_isc_a(ledger, groups)
        for terminal in system.of(InputTerminal)
        if (groups := groups_behind(system, terminal.key))
    ]
    fuses = list(system.apparatus(DC_FUSE))
    rated_a = [value for each in fuses if (value := ledger.value(each.key, Symbol.IN)) is not None]
    least = grounding.equipment_grounding(max([*assumed_a, *rated_a]))
    return replace(least, clause=from_memory("NEC 2023 690.45, 250.122"))

"""Each group of equal strings: voltages at the temperature extremes, the number of modules that fits, the power."""

from __future__ import annotations

from sld.frozen import replace
from sld.model.device import StringGroup
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import module, single_diode, string
from sld.ratings.single_diode import SingleDiodeData
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.module import ModuleType
from sld.spec.units import Quantity
from sld.steps.ledger import Ledger
from sld.steps.optimisers import optimised, optimiser_of
from sld.tables.profiles import Profile, profile
from sld.words import Sayable, amount, phrase
from sld.words.cell import of_cell

__all__ = ["hottest_cell", "strings", "uoc_max"]

_MOUNTING = {"roof_parallel": "flush", "roof_tilted": "rack", "free_standing": "free"}
_CURRENT_COEFFICIENT = 0.05  # %/K, usual for crystalline silicon
_BAND_GAP_PERCENT_PER_K = -0.02677  # crystalline silicon (De Soto, Klein, Beckman 2006)
_POWER_COEFFICIENT = -0.5  # %/K, a large one for crystalline silicon: gives the lower MPP voltage


def strings(system: System, ledger: Ledger) -> None:
    """Rate every group of strings."""
    rules = profile(system.profile)
    site = system.site
    for group in system.of(StringGroup):
        type_ = group.type
        hottest = hottest_cell(system, type_)
        count = group.given.modules_in_series
        beta, kappa, alpha = _beta(type_), _kappa(type_), _alpha(type_)
        one = uoc_max(1, type_, site.temperature_min_c, rules)
        ledger.add(group.key, hottest, kappa)
        ledger.add(group.key, beta)
        highest = uoc_max(count, type_, site.temperature_min_c, rules)
        umpp_one = string.umpp_min(1, type_.mpp_voltage_v, kappa.value, hottest.value)
        ledger.add(group.key, highest, string.umpp_min(count, type_.mpp_voltage_v, kappa.value, hottest.value))
        ledger.add(group.key, string.umpp_max(count, type_.mpp_voltage_v, kappa.value, site.temperature_min_c))
        if beta is not None:
            ledger.add(group.key, string.uoc_hot(count, type_.open_circuit_voltage_v, beta.value, hottest.value))
        else:
            ledger.add(group.key, _by_model(count, type_, hottest.value, Symbol.UOC_HOT, "Tc,max"))
        bifacial = (type_.bifaciality_percent or 0.0) / 100
        rear = (
            (site.rear_irradiance_percent if site.rear_irradiance_percent is not None else 10.0) / 100
            if bifacial
            else 0.0
        )
        ledger.add(group.key, module.design_short_circuit_current(type_.short_circuit_current_a, bifacial, rear))
        ledger.add(group.key, string.rated_power(count, type_.rated_power_w))
        if alpha is not None:
            ledger.add(group.key, alpha)
        inverter = system.inverter_of(group)
        ledger.add(inverter.key, specified(Symbol.UDC_MAX, inverter.type.dc_voltage_max_v, "V"))
        if (given := optimiser_of(system, group)) is not None:
            of_input = uoc_max(given.modules_per_unit, type_, site.temperature_min_c, rules)
            optimised(ledger, group, given, of_input)
        else:
            _second_look(ledger, group.key, highest, count, type_, site.temperature_min_c)
            _counts(system, ledger, group, one, umpp_one)


def _counts(system: System, ledger: Ledger, group: StringGroup, uoc_one: Rating, umpp_one: Rating) -> None:
    """Keep the largest and smallest number of modules in series that the inverter and the module allow."""
    inverter = system.inverter_of(group)
    limit_v = min(inverter.type.dc_voltage_max_v, group.type.system_voltage_max_v)
    name = "Udc,max" if limit_v == inverter.type.dc_voltage_max_v else "Usystem,max"
    ledger.add(group.key, string.modules_count_max(uoc_one, limit_v, name))
    if umpp_one.value > 0:
        ledger.add(group.key, string.modules_count_min(umpp_one, inverter.type.mpp_voltage_min_v))
    else:
        ledger.unanswered(group.key, Symbol.NMIN, phrase("the coefficients leave no MPP voltage at the hottest cell"))


def _second_look(ledger: Ledger, key: str, highest: Rating, count: int, type_: ModuleType, t_min_c: float) -> None:
    """Keep the highest voltage with the maker's tolerance, and by the single-diode data, cold and at STC."""
    if type_.voltage_tolerance_percent is not None:
        ledger.add(key, string.uoc_max_with_tolerance(highest, type_.voltage_tolerance_percent))
    if single_diode_data(type_) is None:
        return
    for symbol, t_cell_c, temperature in ((Symbol.UOC_MODEL, t_min_c, "Tmin"), (Symbol.UOC_MODEL_STC, 25.0, "TSTC")):
        modelled = _by_model(count, type_, t_cell_c, symbol, temperature)
        ledger.add(key, modelled)
        if modelled is None:
            ledger.unanswered(
                key, symbol, phrase("the single-diode data give no current at {t_cell}", t_cell=amount(t_cell_c, "°C"))
            )


def _by_model(count: int, type_: ModuleType, t_cell_c: float, symbol: Symbol, temperature: str) -> Rating | None:
    """Return the open-circuit voltage by the single-diode data; None without them and where they give no current."""
    data = single_diode_data(type_)
    if data is None:
        return None
    alpha_a_per_k, said = _alpha_a_per_k(type_)
    try:
        modelled = single_diode.uoc_by_single_diode(count, data, alpha_a_per_k, t_cell_c, symbol, temperature)
    except ValueError:
        return None
    return modelled.assuming(*said)


def single_diode_data(type_: ModuleType) -> SingleDiodeData | None:
    """Return the single-diode data of a module type, or None where it has none."""
    given = type_.single_diode
    if given is None:
        return None
    ideality_v = given.modified_ideality_v
    if ideality_v is None:
        assert given.cells_in_series is not None
        assert given.ideality_factor is not None
        ideality_v = single_diode.modified_ideality(given.cells_in_series, given.ideality_factor).value
    per_k = _BAND_GAP_PERCENT_PER_K if given.band_gap_coefficient is None else given.band_gap_coefficient.value
    return SingleDiodeData(
        given.photocurrent_a,
        given.saturation_current_a,
        given.series_resistance_ohm,
        given.shunt_resistance_ohm,
        ideality_v,
        given.band_gap_ev,
        per_k / 100,
    )


def _alpha_a_per_k(type_: ModuleType) -> tuple[float, tuple[Sayable, ...]]:
    """Return the coefficient of the short-circuit current in A/K, and what was assumed for it."""
    alpha = _alpha(type_)
    percent_per_k = alpha.value if alpha else _CURRENT_COEFFICIENT
    said = (
        ()
        if alpha
        else (phrase("current coefficient {coefficient}, none given", coefficient=amount(_CURRENT_COEFFICIENT, "%/K")),)
    )
    return percent_per_k / 100 * type_.short_circuit_current_a, said


def hottest_cell(system: System, type_: ModuleType) -> Rating:
    """Return the hottest cell in °C: the hotter one by mounting and by NOCT, where the type gives it."""
    site = system.site
    by_mounting = module.hottest_cell_by_mounting(site.temperature_max_c, _MOUNTING[site.mounting])
    if type_.nominal_cell_temperature_c is None:
        return by_mounting
    by_noct = module.hottest_cell_by_noct(site.temperature_max_c, type_.nominal_cell_temperature_c)
    return by_noct if by_noct.value > by_mounting.value else by_mounting


def _value(rating: Rating) -> float:
    return rating.value


def _percent(quantity: Quantity | None, stc_value: float, symbol: Symbol, unit: str) -> Rating | None:
    if quantity is None:
        return None
    if quantity.unit == "%/K":
        return specified(symbol, quantity.value, "%/K")
    return module.coefficient_percent_per_k(quantity.value, stc_value, symbol, unit)


def _beta(type_: ModuleType) -> Rating | None:
    return _percent(type_.voltage_coefficient, type_.open_circuit_voltage_v, Symbol.BETA, "V")


def _alpha(type_: ModuleType) -> Rating | None:
    return _percent(type_.current_coefficient, type_.short_circuit_current_a, Symbol.ALPHA, "A")


def _kappa(type_: ModuleType) -> Rating:
    """Return the coefficient of the MPP voltage; without a power coefficient a large one is assumed and said."""
    own = _percent(type_.mpp_voltage_coefficient, type_.mpp_voltage_v, Symbol.KAPPA, "V")
    alpha = _alpha(type_)
    power = type_.power_coefficient
    rating = module.umpp_coefficient(
        power.value if power else _POWER_COEFFICIENT,
        alpha.value if alpha else _CURRENT_COEFFICIENT,
        own.value if own else None,
    )
    if rating.value > 0:
        # a voltage that rises with temperature is not counted on where the lowest one is looked for
        rating = replace(rating, value=0.0).assuming(phrase("MPP voltage taken not to rise with temperature"))
    if own is None and power is None:
        rating = rating.assuming(
            phrase("power coefficient {coefficient}, none given", coefficient=amount(_POWER_COEFFICIENT, "%/K"))
        )
    if own is None and alpha is None:
        rating = rating.assuming(
            phrase("current coefficient {coefficient}, none given", coefficient=amount(_CURRENT_COEFFICIENT, "%/K"))
        )
    return rating


def uoc_max(count: int, type_: ModuleType, t_min_c: float, rules: Profile) -> Rating:
    """Return Uoc,max by the maker's coefficient, else by single-diode data, factor table or the profile's factor.

    Where the profile lays the factor table down for modules without a coefficient, the larger of table and single-diode
    data counts.
    """
    beta = _beta(type_)
    if beta is not None:
        return string.uoc_max_by_coefficient(count, type_.open_circuit_voltage_v, beta.value, t_min_c)
    has_table = type_.technology == "crystalline_silicon" and t_min_c >= -40
    modelled = _by_model(count, type_, t_min_c, Symbol.UOC_MAX, "Tmin")
    if modelled is not None:
        if not (has_table and rules.factor_table_needs_no_coefficient.holds):
            return modelled
        return max(modelled, string.uoc_max_by_table(count, type_.open_circuit_voltage_v, t_min_c), key=_value)
    if has_table:
        return string.uoc_max_by_table(count, type_.open_circuit_voltage_v, t_min_c)
    if rules.uoc_default_factor.is_set:
        return string.uoc_max_by_default(count, type_.open_circuit_voltage_v, rules)
    widest = string.uoc_max_by_default(count, type_.open_circuit_voltage_v, profile("cautious"))
    return widest.assuming(
        phrase(
            "{profile} has no voltage factor for this module, that of the cautious profile taken",
            profile=of_cell(rules.name),
        )
    )

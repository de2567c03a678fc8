"""Each group of equal strings: voltages at the temperature extremes, the number of modules that fits, the power."""

from __future__ import annotations

from dataclasses import replace

from sld.model.device import StringGroup
from sld.model.system import System
from sld.quantity import Rating
from sld.rate.ledger import Ledger, specified
from sld.ratings import module, string
from sld.spec.blocks.module import ModuleType
from sld.spec.units import Quantity
from sld.tables.profiles import Profile, profile

__all__ = ["strings"]

_MOUNTING = {"roof_parallel": "flush", "roof_tilted": "rack", "free_standing": "free"}
_POWER_COEFFICIENT = -0.5  # %/K, a large one for crystalline silicon: gives the lower MPP voltage


def strings(system: System, ledger: Ledger) -> None:
    """Rate every group of strings."""
    rules = profile(system.profile)
    site = system.site
    for group in system.of(StringGroup):
        type_ = group.type
        hottest = _hottest_cell(system, type_)
        count = group.given.modules_in_series
        beta, kappa, alpha = _beta(type_), _kappa(type_), _alpha(type_)
        one = _uoc_max(1, type_, beta, site.temperature_min_c, rules)
        ledger.add(group.key, hottest, kappa)
        ledger.add(group.key, beta)
        uoc_max = _uoc_max(count, type_, beta, site.temperature_min_c, rules)
        umpp_one = string.umpp_min(1, type_.mpp_voltage_v, kappa.value, hottest.value)
        ledger.add(group.key, uoc_max, string.umpp_min(count, type_.mpp_voltage_v, kappa.value, hottest.value))
        ledger.add(group.key, string.umpp_max(count, type_.mpp_voltage_v, kappa.value, site.temperature_min_c))
        if beta is not None:
            ledger.add(group.key, string.uoc_hot(count, type_.open_circuit_voltage_v, beta.value, hottest.value))
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
        ledger.unanswered(group.key, "Nmin", "the coefficients leave no MPP voltage at the hottest cell")
    ledger.add(inverter.key, specified("Udc,max", inverter.type.dc_voltage_max_v, "V"))


def _hottest_cell(system: System, type_: ModuleType) -> Rating:
    site = system.site
    return module.hottest_cell_by_mounting(site.temperature_max_c, _MOUNTING[site.mounting])


def _percent(quantity: Quantity | None, stc_value: float, symbol: str, unit: str) -> Rating | None:
    if quantity is None:
        return None
    if quantity.unit == "%/K":
        return specified(symbol, quantity.value, "%/K")
    return module.coefficient_percent_per_k(quantity.value, stc_value, symbol, unit)


def _beta(type_: ModuleType) -> Rating | None:
    return _percent(type_.voltage_coefficient, type_.open_circuit_voltage_v, "β", "V")


def _alpha(type_: ModuleType) -> Rating | None:
    return _percent(type_.current_coefficient, type_.short_circuit_current_a, "α", "A")


def _kappa(type_: ModuleType) -> Rating:
    """Return the coefficient of the MPP voltage; without a power coefficient a large one is assumed and said."""
    own = _percent(type_.mpp_voltage_coefficient, type_.mpp_voltage_v, "κ", "V")
    alpha = _alpha(type_)
    power = type_.power_coefficient
    rating = module.umpp_coefficient(
        power.value if power else _POWER_COEFFICIENT, alpha.value if alpha else 0.05, own.value if own else None
    )
    if rating.value > 0:
        # a voltage that rises with temperature is not counted on where the lowest one is looked for
        rating = replace(rating, value=0.0).assuming("MPP voltage taken not to rise with temperature")
    if own is None and power is None:
        rating = rating.assuming(f"power coefficient {_POWER_COEFFICIENT} %/K, none given")
    if own is None and alpha is None:
        rating = rating.assuming("current coefficient 0.05 %/K, none given")
    return rating


def _uoc_max(count: int, type_: ModuleType, beta: Rating | None, t_min_c: float, rules: Profile) -> Rating:
    """Return Uoc,max by the maker's coefficient, else by the factor table, else by the profile's default factor."""
    if beta is not None:
        return string.uoc_max_by_coefficient(count, type_.open_circuit_voltage_v, beta.value, t_min_c)
    if type_.technology == "crystalline_silicon" and t_min_c >= -40:
        return string.uoc_max_by_table(count, type_.open_circuit_voltage_v, t_min_c)
    if rules.uoc_default_factor.is_set:
        return string.uoc_max_by_default(count, type_.open_circuit_voltage_v, rules)
    widest = string.uoc_max_by_default(count, type_.open_circuit_voltage_v, profile("cautious"))
    return widest.assuming(f"{rules.name} has no voltage factor for this module, that of the cautious profile taken")

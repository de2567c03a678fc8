"""Power optimisers that do not fit their string or their modules.

What it checks
    Strings with power optimisers against the string rules of their type: least and most units, highest power of the
    string, and what the modules put into each unit.

Why
    With too few units a string does not reach its voltage and does not start; with too many, or with modules of too
    high a voltage or current, units or inverter are destroyed.

How
    Danger: units above units_max, Uoc of the modules of a unit, cold, above input_voltage_max, Isc of the module above
    input_current_max. KI · Isc is compared unless short_circuit_limit_for says standard_conditions; left out, a limit
    that KI alone exceeds is a non-compliance. Non-compliance too: units below units_min, power of the modules of a
    string above
    string_power_max, or output_current_max, or both output_voltage_max and string_voltage_max, not given, without which
    the string is rated like one of modules alone. Advice: power of the modules of a unit above its rated_power.

Remedy
    Another number of modules, or units that fit them, after the rules of the maker.

Clause
    IEC 62548-1:2023, DC conditioning units; NEC 2023 690.7(B) (from memory); data sheet of the optimiser.

Not covered
    Whether inverter and optimisers are made for each other.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.spec.blocks.optimiser import Optimiser
from sld.steps.ledger import Ratings
from sld.steps.optimisers import optimiser_of
from sld.tables.profiles import profile
from sld.words import Phrase, Sayable, phrase

NC, ADVICE = Severity.NON_COMPLIANCE, Severity.ADVICE
_FEWER, _MORE = phrase("use fewer modules in the string"), phrase("use more modules in the string")
_OTHER = phrase("use optimisers for these modules")


@rule("DC54", "power optimisers that do not fit", Severity.DANGER, "IEC 62548-1:2023; data of the optimiser")
def optimisers_do_not_fit(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for group in system.of(StringGroup):
        given = optimiser_of(system, group)
        if given is None:
            continue
        yield from _by_number(group, given, ratings)
        yield from _by_module(system, group, given, ratings)
        if given.output_current_max_a is None or not (given.output_voltage_max_v or given.string_voltage_max_v):
            yield _told(
                group,
                phrase("the optimisers of {group} have no limits of their output", group=named(group)),
                phrase("give `output_current_max` and `output_voltage_max` or `string_voltage_max`"),
                NC,
            )


def _by_number(group: StringGroup, given: Optimiser, ratings: Ratings) -> Iterator[Breach]:
    units = int(ratings[group.key, Symbol.NUNITS].value)
    power_w = ratings[group.key, Symbol.PSTRING].value
    said: dict[str, Sayable | int] = {"group": named(group), "units": units}
    if given.units_max is not None and units > given.units_max:
        message = phrase("{group} has {units} optimisers, above the {most} of its type", most=given.units_max, **said)
        yield _told(group, message, _FEWER)
    if given.units_min is not None and units < given.units_min:
        message = phrase("{group} has {units} optimisers, below the {least} of its type", least=given.units_min, **said)
        yield _told(group, message, _MORE, NC)
    if given.string_power_max_w is not None and above(power_w, given.string_power_max_w):
        has, most = two(power_w, given.string_power_max_w, "W")
        message = phrase("{group} has modules of {has}, above the {most} of a string of its optimisers",
                         group=named(group), has=has, most=most)  # fmt: skip
        yield _told(group, message, _FEWER, NC)


def _by_module(system: System, group: StringGroup, given: Optimiser, ratings: Ratings) -> Iterator[Breach]:
    module = group.type
    yield from _by_current(system, group, given)
    voltage_v = ratings[group.key, Symbol.UOC_UNIT].value
    facing: tuple[tuple[float, float | None, str, Severity | None], ...] = (
        (voltage_v, given.input_voltage_max_v, "V", None),
        (given.modules_per_unit * module.rated_power_w, given.rated_power_w, "W", ADVICE),
    )
    for value, most, unit, severity in facing:
        if most is not None and above(value, most):
            has, allowed = two(value, most, unit)
            message = phrase("the modules of {group} give up to {has} to an optimiser for {allowed}",
                             group=named(group), has=has, allowed=allowed)  # fmt: skip
            yield _told(group, message, _OTHER, severity)


def _by_current(system: System, group: StringGroup, given: Optimiser) -> Iterator[Breach]:
    """Yield a finding for modules of too high a short-circuit current, by what the data sheet compares with."""
    plain_a, most_a = group.type.short_circuit_current_a, given.input_current_max_a
    at_stc, basis = given.short_circuit_limit_for == "standard_conditions", given.short_circuit_limit_for
    current_a = plain_a if at_stc else profile(system.profile).isc_factor.value * plain_a
    if most_a is None or not above(current_a, most_a):
        return
    by_factor_alone = basis is None and not above(plain_a, most_a)
    has, allowed = two(current_a, most_a, "A")
    message = phrase("the modules of {group} give up to {has} to an optimiser for {allowed}",
                     group=named(group), has=has, allowed=allowed)  # fmt: skip
    asked = phrase(
        "give `short_circuit_limit_for` after the data sheet: the limit is kept if it holds for standard test "
        "conditions; else use optimisers for these modules"
    )
    yield _told(group, message, asked if by_factor_alone else _OTHER, NC if by_factor_alone else None)


def _told(group: StringGroup, message: Phrase, remedy: Phrase, severity: Severity | None = None) -> Breach:
    also = (((*group.at, "circuit", 0), phrase("the optimisers")),)
    return Breach(message, remedy, (*group.at, "modules_in_series"), group.key, also, severity=severity)

"""String voltage above the limit on buildings.

What it checks
    The open-circuit voltage Uoc,max of each string against the largest array voltage that the rule profile allows
    on a building.

Why
    On a building people come near the array, and a fault burns something that is lived or worked in.

How
    Uoc,max > the profile's limit: 1000 V with IEC 62548-1, AS/NZS 5033 and the cautious profile, under NEC 690 1000 V
    and 600 V on dwellings. IEC 60364-7-712 and BS 7671 set none, nor does any where the array is ground-mounted.

Remedy
    Fewer modules in series. A plant on the ground with restricted access is written as building: ground_mounted.

Clause
    IEC 62548:2016, arrays on buildings; NEC 2023 690.7(A) (both from memory).

Not covered
    Stricter local limits.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.model.wording import profile_word
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.tables.profiles import profile
from sld.words import Sayable, phrase


@rule(
    "DC03", "string voltage above the limit on buildings", Severity.NON_COMPLIANCE, "IEC 62548-1, arrays on buildings"
)
def string_voltage_above_building_limit(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    rules = profile(system.profile)
    limit, dwelling = rules.building_voltage_max_v, False
    if system.site.building == "dwelling" and rules.dwelling_voltage_max_v.text != limit.text:
        limit, dwelling = rules.dwelling_voltage_max_v, True
    if system.site.building == "ground_mounted" or not limit.is_set:
        return
    for group in system.of(StringGroup):
        voltage = ratings[group.key, Symbol.UOC_MAX]
        if not above(voltage.value, limit.value):
            continue
        reached, allowed = two(voltage.value, limit.value, "V")
        said: dict[str, Sayable] = {
            "group": named(group),
            "reached": reached,
            "allowed": allowed,
            "profile": profile_word(system.profile),
        }
        remedy = phrase("use fewer modules in series, so that Uoc,max is at most {allowed}", allowed=allowed)
        also = ((("site", "building"), phrase("kind of installation")),)
        yield Breach(
            phrase("{group} reaches {reached}, above the {allowed} that profile {profile} allows on a dwelling", **said)
            if dwelling
            else phrase(
                "{group} reaches {reached}, above the {allowed} that profile {profile} allows on a building", **said
            ),
            remedy,
            (*group.at, "modules_in_series"),
            group.key,
            also,
            (voltage,),
        )

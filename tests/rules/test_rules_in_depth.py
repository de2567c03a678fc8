"""What holds for every rule, tried on every failing case: order of what is told, neighbours, missing ratings.

The source of each property is the contract of `Finding` in `sld/finding.py`, and `Ratings.get`, which may be None.
"""

from __future__ import annotations

from collections.abc import Iterable

import battery_cases
import island_cases
import nec_cases
import paperwork_cases
import pytest
import rule_cases
from _pytest.mark.structures import ParameterSet
from rule_cases import Case
from systems import findings_of, neighboured, rated

from sld.finding import RULES
from sld.quantity import Rating
from sld.rules import review
from sld.spec.document import Spec
from sld.steps import Ratings

FAILING = (
    *rule_cases.FAILING,
    *battery_cases.FAILING,
    *island_cases.FAILING,
    *nec_cases.FAILING,
    *paperwork_cases.FAILING,
)
IDS = [f"{case.code}-{place}" for place, case in enumerate(FAILING)]


@pytest.mark.parametrize("case", FAILING, ids=IDS)
def test_message_tells_its_parts_in_their_order_and_places_lead_into_the_spec(case: Case) -> None:
    """What a thing has comes before what it needs: `16 A, below the 17.3 A` must not be told the other way round."""
    findings = findings_of(case.changes)
    told = next(
        each for each in findings if each.code == case.code and all(part in str(each.message) for part in case.message)
    )
    start = 0
    for part in case.message:
        assert part in str(told.message)[start:], str(told.message)
        start = str(told.message).index(part, start)
    for finding in findings:
        for place in (finding.at, *(path for path, _ in finding.also)):
            assert isinstance(place, tuple)
            assert all(isinstance(part, str | int) for part in place)
            assert not place or place[0] in Spec.model_fields, place
        assert all(str(word) for _, word in finding.also)
        assert all(isinstance(each, Rating) for each in finding.compared)
        assert isinstance(finding.device, str)


ELSEWHERE = {
    "DC26": "told once, at the first string of the module type",
    "DC31": "told once, at the first string of the module type",
    "PW06": "told once a type, at its first device",
    "AC08": "the RCD ahead needs type B for the spare inverters, which AC06 says instead of AC08",
}
"""Rules that tell it at another device where there are neighbours."""


AT_ONE_POINT = [case for case in FAILING if "further_supplies" not in case.changes]
"""Cases of one supply point: behind several each rule looks at the parts in turn."""


def first_of_each(cases: Iterable[Case]) -> list[ParameterSet]:
    """Return the cases, of which the default run takes the first of every third rule."""
    cases = list(cases)
    firsts = {case.code: case for case in reversed(cases)}
    sampled = [firsts[code] for code in sorted(firsts)[::3]]
    return [pytest.param(case, marks=[] if case in sampled else [pytest.mark.whole]) for case in cases]


@pytest.mark.parametrize("case", first_of_each(AT_ONE_POINT), ids=lambda case: case.code)
def test_what_is_wrong_is_found_among_neighbours(case: Case) -> None:
    """A rule looks at every device: neither a healthy one, nor one without the rating, nor a flagged one ends it."""
    found = {(finding.code, finding.device) for finding in review(*rated(case.changes, neighboured()))}
    if case.code in ELSEWHERE:
        assert {told for told, _ in found} & {case.code, "AC06"}
    else:
        assert (case.code, case.device) in found


class Reading(Ratings):
    """Ratings that remember what was asked for, and lack one of them."""

    def __init__(self, ratings: Ratings, lacking: tuple[str, str] | None = None) -> None:
        super().__init__(ratings.values, ratings.words, ratings.unanswered, ratings.copied)
        object.__setattr__(self, "asked", {})
        object.__setattr__(self, "lacking", lacking)

    def __getitem__(self, place: tuple[str, str]) -> Rating:
        """Return what the steps always make, which is never lacking."""
        rating = Ratings.get(self, *place)
        assert rating is not None, place
        return rating

    def get(self, key: str, symbol: str) -> Rating | None:
        rating = Ratings.get(self, key, symbol)
        if rating is not None:
            self.asked[key, symbol] = rating
        return None if (key, symbol) == self.lacking else rating


@pytest.mark.parametrize("case", [case for case in AT_ONE_POINT if RULES[case.code].check], ids=lambda case: case.code)
def test_a_missing_rating_is_no_crash_and_no_other_finding(case: Case) -> None:
    system, ratings = rated(case.changes)
    check = RULES[case.code].check
    whole = Reading(ratings)
    devices = {finding.device for finding in check(system, whole)}
    for asked in whole.asked:
        assert {finding.device for finding in check(system, Reading(ratings, asked))} <= devices, asked


CHECKED = [case for case in AT_ONE_POINT if RULES[case.code].check]


NEAR = [case for case in CHECKED if case.code not in ELSEWHERE]


@pytest.mark.parametrize("case", first_of_each(NEAR), ids=lambda case: case.code)
def test_a_rating_that_a_neighbour_lacks_does_not_end_the_search(case: Case) -> None:
    system, ratings = rated(case.changes, neighboured())
    check = RULES[case.code].check
    whole = Reading(ratings)
    list(check(system, whole))
    for key, symbol in whole.asked:
        if "fore" in key or "data.chains.first" in key:
            told = {finding.device for finding in check(system, Reading(ratings, (key, symbol)))}
            assert case.device in told, (key, symbol)

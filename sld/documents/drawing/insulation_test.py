"""The insulation test of the DC side: what is tested together, at which voltage, and what is taken off before."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from sld.citation import clause_from_memory
from sld.documents.alike import names_of_all
from sld.documents.section import Paragraphs
from sld.model.device import Apparatus, Device, InputTerminal, InverterUnit, StringGroup
from sld.model.kinds.dc import INSULATION_MONITOR, OPTIMISER, RAPID_SHUTDOWN
from sld.model.kinds.role import SURGE_PROTECTION
from sld.model.planned import without_planned
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import Phrase, Sayable, amount, listing, phrase, sequence, verbatim

__all__ = ["insulation_test"]

_SEPARATION = clause_from_memory("IEC 62446-1:2016 6.7")
"""What is taken off before the test: the inverter, surge protection, a functional earth.

Seen in the manual of a maker of insulation testers, which cites IEC 62446-1 for the test
(https://www.easymanua.ls/ht/pvchecks-pro/manual?p=25); surge protective devices also in BS 7671 643.3.3, as quoted in
http://blog.pirform.co.uk/post/2010/08/18/Surge-Protection-Socket-Outlet-Testing.aspx (there Table 61 of the 17th
edition). Insulation monitoring and shutdown devices: common practice, no source.
"""


def insulation_test(system: System, ratings: Ratings) -> Paragraphs:
    """Return how the strings are tested: what is taken off first, what is one test object, and its values."""
    inputs = without_planned(system, system.one_of_each().of(InputTerminal))
    tested = [each for each in inputs if ratings.get(each.key, Symbol.UTEST)]
    texts = (
        [
            _separated(system, ratings, tested),
            *_by_their_maker(system, tested),
            _object(system, ratings),
            *_values(system, ratings, tested),
        ]
        if tested
        else []
    )
    return Paragraphs("insulation_test", phrase("Insulation test of the DC side"), tuple(texts), numbered=True)


def _separated(system: System, ratings: Ratings, tested: list[InputTerminal]) -> Sayable:
    """Return what is taken off before: what the test would destroy, or what would spoil its result."""
    owners = dict.fromkeys(each.owner for each in tested)
    parts: list[Sayable] = [_named(system, phrase("inverters"), [system.devices[key] for key in owners])]
    devices = list(_behind(system, tested))
    surge = [device for device in devices if device.has(SURGE_PROTECTION)]
    electronic = [device for device in devices if device.has(INSULATION_MONITOR, RAPID_SHUTDOWN)]
    earthed = [each for each in tested if each.given.functional_earth]
    below = [device for device in devices if _is_below(system, ratings, device)]
    named: tuple[tuple[Phrase, Sequence[Device]], ...] = (
        (phrase("surge protective devices"), surge),
        (phrase("monitoring and shutdown devices"), electronic),
        (phrase("functional earth"), earthed),
        (phrase("devices with a lower rated voltage than the test voltage"), below),
    )
    parts += [_named(system, what, found) for what, found in named if found]
    return phrase("Take off first: {parts}. Source: {source}.", parts=listing(parts), source=_SEPARATION)


def _by_their_maker(system: System, tested: list[InputTerminal]) -> Iterator[Sayable]:
    """Yield that optimisers do not pass a test voltage on, and need the procedure of their maker."""
    units = [device for device in _behind(system, tested) if device.has(OPTIMISER)]
    if units:
        names = names_of_all(system, units)
        yield phrase("Strings with power optimisers are tested as their maker says: {names}.", names=names)


def _named(system: System, what: Phrase, devices: Iterable[Device]) -> Sayable:
    return sequence([what, names_of_all(system, devices)], " ")


def _behind(system: System, tested: list[InputTerminal]) -> Iterator[Apparatus]:
    for terminal in tested:
        yield from (each for each in system.downstream(terminal.key) if isinstance(each, Apparatus))


def _is_below(system: System, ratings: Ratings, device: Apparatus) -> bool:
    """Return whether a device that could stay connected is rated for less than the test voltage of its input."""
    if device.has(SURGE_PROTECTION, INSULATION_MONITOR, RAPID_SHUTDOWN):
        return False
    terminal = next(each for each in system.upstream(device.key) if isinstance(each, InputTerminal))
    test = ratings.get(terminal.key, Symbol.UTEST)
    rated = ratings.get(device.key, Symbol.UE) or ratings.get(device.key, Symbol.UN)
    return test is not None and rated is not None and rated.value < test.value


def _object(system: System, ratings: Ratings) -> Sayable:
    """Return what is tested as one: the strings of a large array are not tested all together."""
    powers = [
        power
        for unit in without_planned(system, system.one_of_each().of(InverterUnit))
        if (power := ratings.get(unit.key, Symbol.PDC))
    ]
    limit = ratings["", Symbol.PGROUP]
    if any(power.value / 1000 > limit.value for power in powers):
        return phrase(
            "Test object: each string by itself, or strings of one inverter together up to {limit}. Source: {source}.",
            limit=limit,
            source=limit.clause,
        )
    return phrase(
        "Test object: each string by itself, or the array of one inverter, which is not above {limit}. "
        "Source: {source}.",
        limit=limit,
        source=limit.clause,
    )


def _values(system: System, ratings: Ratings, tested: list[InputTerminal]) -> Iterator[Sayable]:
    """Yield test voltage and least value, each pair once with its strings."""
    alike: dict[tuple[float, float, float], list[InputTerminal]] = {}
    for each in tested:
        test, least = ratings[each.key, Symbol.UTEST], ratings[each.key, Symbol.RISO_MIN]
        asked = next((given.number for given in test.given if given.name == "asked for"), test.value)
        alike.setdefault((test.value, least.value, asked), []).append(each)
    for (test_v, _, asked_v), terminals in alike.items():
        test, least = ratings[terminals[0].key, Symbol.UTEST], ratings[terminals[0].key, Symbol.RISO_MIN]
        names = names_of_all(system, (group for each in terminals for group in _strings(system, each)))
        told: dict[str, Sayable] = {"names": verbatim(names), "test": test, "least": least, "source": test.table_row}
        if asked_v > test_v:
            yield phrase(
                "{names}: {test}, ≥ {least}, by {source}; the table asks for {asked}, above the rated voltage of "
                "module or cable.",
                asked=amount(asked_v, "V"),
                **told,
            )
        else:
            yield phrase("{names}: {test}, ≥ {least}, by {source}.", **told)


def _strings(system: System, terminal: InputTerminal) -> Iterator[StringGroup]:
    return (each for each in system.downstream(terminal.key) if isinstance(each, StringGroup))

"""Rules asked about what no spec of the tests has: a whole chain of addresses, ratings that are missing of anything."""

from __future__ import annotations

from dataclasses import replace

import pytest
from systems import rated

from sld.finding import RULES, SpecPath
from sld.model.system import ChainNode
from sld.ratings.symbol import Symbol
from sld.steps.unanswered import Unanswered
from sld.words import phrase

SYSTEM, RATINGS = rated({})


@pytest.mark.parametrize(
    ("addresses", "remedy"),
    [
        (range(1, 6), "use a free address, for example 6"),
        (range(1, 247), "use a free address, for example 247"),  # Modbus over serial line V1.02 2.2: 1 to 247
        (range(1, 248), "split the chain"),
    ],
)
def test_a_free_address_is_one_that_there_is(addresses: range, remedy: str) -> None:
    (chain,) = SYSTEM.chains
    node = next(each for each in chain.nodes if each.address is not None)
    nodes: tuple[ChainNode, ...] = tuple(replace(node, address=each) for each in (*addresses, 1))
    system = replace(SYSTEM, chains=(replace(chain, nodes=nodes),))
    (breach,) = RULES["DB02"].check(system, RATINGS)
    assert str(breach.remedy) == remedy


@pytest.mark.parametrize(
    ("key", "symbol", "message", "at"),
    [
        ("", Symbol.SAC, "the system has no Sac: no table has it", ("site",)),
        ("earth.bonding.1", Symbol.S, "-WE4 has no S: no table has it", ("earthing", "bonding", 1)),
        ("inverters.roof", Symbol.IB, "inverter -TB1 has no Ib: no table has it", ("inverters", "roof")),
    ],
)
def test_what_has_no_rating_is_named_and_shown(key: str, symbol: Symbol, message: str, at: SpecPath) -> None:
    missing = replace(RATINGS, unanswered={(key, symbol): Unanswered(phrase("no table has it"))})
    (breach,) = RULES["RT01"].check(SYSTEM, missing)
    assert (str(breach.message), breach.at) == (message, at)

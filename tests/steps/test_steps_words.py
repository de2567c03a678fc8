"""What the steps hand on in words is a phrase, and each value says how it came about. No source: our own rules."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from example_specs import SPECS, checked

from sld.citation import Citation, Citations
from sld.quantity import Origin, Rating
from sld.ratings.symbol import Symbol

WORD = re.compile(r"(?<![A-Za-z,_])[a-z]{3,}")
FUNCTIONS = {"ceil", "cos", "sin", "cmax", "cmin", "cosφ", "exp", "floor", "kgroup", "max", "min", "sinφ"}


def frozen(text: object) -> set[str]:
    """Return the words of a text that is given as it is, in every language."""
    return set(WORD.findall(text)) - FUNCTIONS if isinstance(text, str) else set()


def parts(rating: Rating) -> list[object]:
    return [rating.formula, *(part for given in rating.given for part in (given.symbol, given.value, given.origin))]


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_no_text_of_a_rating_holds_english_words(path: Path) -> None:
    for ratings in (part.ratings for part in checked(path).parts):
        assert not {word for _, rating in ratings for part in parts(rating) for word in frozen(part)}
        assert not {word for given in ratings.words.values() for word in frozen(given.value)}


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_every_rating_is_cited(path: Path) -> None:
    ratings = [rating for part in checked(path).parts for _, rating in part.ratings]
    assert not [rating for rating in ratings if not isinstance(rating.clause, Citation | Citations)]


@pytest.mark.parametrize(
    ("key", "symbol", "origin"),
    [
        ("inverters.hall.inputs.0.strings.0", Symbol.UOC_MAX, Origin.COMPUTED),
        ("inverters.hall.inputs.0.strings.0.cable", Symbol.S, Origin.CHOSEN),
        ("inverters.hall.circuit.2", Symbol.SPE, Origin.CHOSEN),
        ("boards.main", Symbol.INA, Origin.CHOSEN),
        ("", Symbol.IPF, Origin.GIVEN),
    ],
)
def test_how_a_value_came_about(key: str, symbol: Symbol, origin: Origin) -> None:
    ratings = checked(Path(__file__).parents[2] / "specs" / "village-hall.yaml").ratings
    assert ratings[key, symbol].origin is origin

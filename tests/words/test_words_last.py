"""No text is made before the page: while specs are checked and drawn nothing asks for the English of a phrase.

A phrase in an f-string, in `str()` or in a join would be English in every language. No source: our own rule.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from unittest import mock

import pytest
from spoken import MARKED, SPECS, drawn

from sld.words import amount, counted, phrase, sequence, verbatim


class SaidTooEarlyError(AssertionError):
    """Somebody asked for the English of what is still to be said."""


@pytest.fixture
def no_english() -> Iterator[None]:
    def refuse(said: object) -> str:
        raise SaidTooEarlyError(repr(said))

    spoken = {base for said in (phrase("x"), amount(1, "A")) for base in type(said).__mro__ if "__str__" in vars(base)}
    (base,) = spoken - {object}
    with mock.patch.object(base, "__str__", refuse):
        yield


@pytest.mark.usefixtures("no_english")
@pytest.mark.parametrize(
    "said", [phrase("string"), counted("{count} string", "{count} strings", 2), sequence(["a"]), verbatim("a")],
    ids=lambda said: type(said).__name__,
)  # fmt: skip
def test_too_early_is_seen(said: object) -> None:
    for make in (str, "{}".format, lambda what: f"{what}", lambda what: "%s" % what):  # noqa: UP031
        with pytest.raises(SaidTooEarlyError):
            make(said)


@pytest.mark.usefixtures("no_english")
@pytest.mark.parametrize("reader", ["full", "operator", "crew"])
@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_words_are_chosen_on_the_page(path: Path, reader: str) -> None:
    assert drawn(path, MARKED, reader)

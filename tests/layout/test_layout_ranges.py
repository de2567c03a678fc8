"""Designations of equal devices written as a range (common practice, no source): no range names what was not there."""

from __future__ import annotations

import re
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sld.layout.diagram.ranges import advance, between, counts_up, joined, listed


def spelt_out(text: str) -> list[str]:
    """What a reader takes a list with ranges to mean."""
    found = []
    for part in text.split(", "):
        pieces = re.split(r"(\d+(?:…\d+)?)", part)
        choices = [
            [str(n) for n in range(int(piece.split("…")[0]), int(piece.split("…")[1]) + 1)] if "…" in piece else [piece]
            for piece in pieces
        ]
        found += ["".join(each) for each in product(*choices)]
    return found


@pytest.mark.parametrize(
    ("text", "after", "expected"),
    [
        ("-TB1-FC1", "-TB2-FC1", 1),
        ("-TB1-FC1", "-TB1-FC2", 2),
        ("-TB9", "-TB10", 1),
        ("-TB1", "-TB1", 0),
        ("-TB1-FC1", "-TB2-FC2", None),
        ("-TB1", "-TB3", None),
        ("-TB2", "-TB1", None),
        ("-TB1", "-TA2", None),
        ("-TB1", "-TB1-FC1", None),
        ("north", "south", None),
        ("-TB1-GC1…2", "-TB2-GC1…2", 1),
        ("-TB1-GC1…2", "-TB1-GC3…4", 2),
        ("-TB1-GC1…2", "-TB1-GC2…3", None),
        ("-TB1-GC1…2", "-TB1-GC3…5", None),
        ("8 ×", "8 ×", 0),
    ],
)
def test_what_goes_on(text: str, after: str, expected: int | None) -> None:
    assert advance(text, after) == expected


@pytest.mark.parametrize(
    ("first", "last", "expected"),
    [
        ("-TB1-FC1", "-TB60-FC1", "-TB1…60-FC1"),
        ("-TB1-GC1…2", "-TB9-GC1…2", "-TB1…9-GC1…2"),
        ("-TB1-GC1…2", "-TB1-GC19…20", "-TB1-GC1…20"),
        ("input 1", "input 12", "input 1…12"),
        ("-XD1 string box", "-XD8 string box", "-XD1…8 string box"),
        ("-TB1", "-TB1", "-TB1"),
    ],
)
def test_a_range_as_one_text(first: str, last: str, expected: str) -> None:
    assert between(first, last) == expected


@pytest.mark.parametrize(
    ("texts", "expected"),
    [
        (["addr. 1", "addr. 2", "addr. 3"], "addr. 1…3"),
        (["addr. 3", "addr. 2", "addr. 1"], "addr. 1…3"),
        (["120 Ω", "120 Ω"], "120 Ω"),
        (["addr. 3", "addr. 7", "addr. 8"], "addr. 3, 7, 8"),
        (["addr. 3", "addr. 7", "addr. 8", "addr. 1"], None),
        (["addr. 3", "120 Ω"], None),
        (["-FC1", "-FC1-QB2", "-FC3"], None),
    ],
)
def test_texts_beside_equal_devices(texts: list[str], expected: str | None) -> None:
    assert listed(texts, 3) == expected


@pytest.mark.parametrize(
    ("texts", "expected"),
    [
        (["-TB1", "-TB2"], "-TB1, -TB2"),
        (["-TB1", "-TB2", "-TB3"], "-TB1…3"),
        (["-TB3", "-TB1", "-TB2", "-TB1"], "-TB1…3"),
        (["-TB1-FC1", "-TB1-FC2", "-TB2-FC1", "-TB2-FC2", "-TB3-FC1", "-TB3-FC2"], "-TB1…3-FC1, -TB1…3-FC2"),
        (["-TB1", "-TB2", "-TB4", "-UC1", "-TB3", "-TB9"], "-TB1…4, -UC1, -TB9"),
        (["-TB1-GC1…3", "-TB1-GC4…6", "-TB1-GC7…9", "-TB1-GC10…11"], "-TB1-GC1…9, -TB1-GC10…11"),
        (["RCD type", "In"], "RCD type, In"),
        ([], ""),
    ],
)
def test_a_list_with_ranges(texts: list[str], expected: str) -> None:
    assert joined(texts) == expected


@given(st.lists(st.builds("-T{}-F{}".format, st.integers(1, 9), st.integers(1, 9)), min_size=1, max_size=40))
def test_a_list_with_ranges_names_each_once_and_no_other(texts: list[str]) -> None:
    assert sorted(spelt_out(joined(texts))) == sorted(set(texts))


@pytest.mark.parametrize(
    ("texts", "told"),
    [
        (["-TB1", "-TB2"], True), (["-TB1-FC1", "-TB2-FC1", "-TB3-FC1"], True), (["-TB1-FC1", "-TB1-FC2"], True),
        (["-TB2", "-TB1"], False), (["-TB1", "-TB3"], False), (["-TB1", "-TB2", "-TB4"], False),
        (["-TB1", "-TB1"], False), (["-TB1-FC1", "-TB2-FC2"], False), (["-TB1", "-GB2"], False),
    ],
)  # fmt: skip
def test_texts_that_count_up(texts: list[str], told: bool) -> None:
    assert counts_up(texts) is told

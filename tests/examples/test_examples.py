"""Published worked examples, right ones and such as are wrong in print, against our functions."""

from __future__ import annotations

import pytest
from published import Example, examples

EXAMPLES = examples()
RIGHT = [example for example in EXAMPLES if not example.right]
WRONG_IN_PRINT = [example for example in EXAMPLES if example.right]


def name(example: Example) -> str:
    return f"{example.title}: {example.shows}"


@pytest.mark.parametrize("example", RIGHT, ids=name)
def test_ours_is_as_printed(example: Example) -> None:
    assert example.ours() == pytest.approx(example.printed_value, abs=example.within), example.url


@pytest.mark.parametrize("example", WRONG_IN_PRINT, ids=name)
def test_ours_is_right_where_the_print_is_wrong(example: Example) -> None:
    assert example.ours() == pytest.approx(example.right_value), example.url
    assert example.ours() != pytest.approx(example.printed_value, abs=example.within), example.url
    assert example.remark, "say what is wrong"


def test_there_are_enough_examples_of_enough_sources() -> None:
    rows = {(example.url, example.function, str(example.inputs), example.take) for example in EXAMPLES}
    assert len(rows) == len(EXAMPLES), "a row stands twice"
    assert len(EXAMPLES) >= 60
    assert len({example.title for example in EXAMPLES}) >= 15
    assert len(WRONG_IN_PRINT) >= 10

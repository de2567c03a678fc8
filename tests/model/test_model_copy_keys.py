"""What a copy of an inverter calls its own: keys under the first one change, those of others stay."""

import pytest

from sld.model.copies import Copy


@pytest.mark.parametrize(
    ("key", "of_copy"),
    [
        ("inverters.roof", "inverters.south"),
        ("inverters.roof.cable", "inverters.south.cable"),
        ("inverters.roof2", "inverters.roof2"),  # another one, whose name begins alike
        ("supply", "supply"),  # shorter than the key of the first
        ("inverters.wall.cable", "inverters.wall.cable"),  # another one, as long a name
    ],
)
def test_only_keys_of_the_first_become_keys_of_the_copy(key: str, of_copy: str) -> None:
    copy = Copy.of("inverters.roof", "inverters.south", 2, {"T1": "T2"}, {})
    assert copy.key_of(key) == of_copy

"""The data bus: load, length, time of one round."""

from __future__ import annotations

import pytest

from sld.ratings.data_bus import UNIT_LOAD_LIMIT_COUNT, bus_length, longest_segment, poll_time, unit_loads


@pytest.mark.parametrize(
    ("baud", "length_m"),
    [(9600, 1200), (100_000, 1200), (83_000, 1200), (100_001, 999.99), (200_000, 500), (1_000_000, 100)],
)
def test_longest_segment(baud: float, length_m: float) -> None:
    # 1200 m up to 100 kbit/s: http://www.capron.com/node/76; length · rate <= 10⁸ above (from memory)
    assert longest_segment(baud).value == pytest.approx(length_m, rel=1e-6)


def test_unit_loads() -> None:
    # 32 unit loads, parts of 1/4 and 1/8: https://help.campbellsci.com/md485/md485/wiring-specs/rs485-line-length.htm
    assert unit_loads([1] * 32).value == UNIT_LOAD_LIMIT_COUNT
    assert unit_loads([0.125] * 256).value == UNIT_LOAD_LIMIT_COUNT
    assert unit_loads([1] * 32 + [0.125]).value > UNIT_LOAD_LIMIT_COUNT


@pytest.mark.parametrize("loads", [[], [0.0], [1, -1]])
def test_refused_loads(loads: list[float]) -> None:
    with pytest.raises(ValueError, match=r"at least one|above zero"):
        unit_loads(loads)


def test_poll_time() -> None:
    # 8-byte request, 100-byte reply, 9600 8N1 (10 bits a character): 0.12 s a device, 32 devices about 4 s (arithmetic)
    assert poll_time(1, 9600, bits_per_character_count=10).value == pytest.approx(0.12, abs=0.001)
    assert poll_time(32, 9600, bits_per_character_count=10).value == pytest.approx(4, abs=0.25)


def test_length_is_the_sum_of_the_parts() -> None:
    assert bus_length([10, 20.5]).value == 30.5
    assert bus_length([]).value == 0
    with pytest.raises(ValueError, match="segment_m"):
        bus_length([10, -1])

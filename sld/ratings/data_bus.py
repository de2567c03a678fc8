"""A two-wire data bus (TIA-485): load, length, time of one round."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import cited
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = ["ADDRESS_RANGE", "UNIT_LOAD_LIMIT_COUNT", "bus_length", "longest_segment", "poll_time", "unit_loads"]

UNIT_LOAD_LIMIT_COUNT = 32
"""Unit loads (about 12 kΩ each) that a driver carries (TIA-485-A)."""
ADDRESS_RANGE = (1, 247)
"""First and last address of a Modbus RTU device; 0 is broadcast, 248 to 255 are reserved."""

_LONGEST_M = 1200.0
_FULL_LENGTH_BAUD = 100_000
_PRODUCT_M_BAUD = 1e8
_SILENT_CHARACTERS = 3.5


def unit_loads(loads: Sequence[float]) -> Rating:
    """Return the sum of the unit loads of all nodes, to compare with `UNIT_LOAD_LIMIT_COUNT`.

    Raises ValueError for an empty bus or a load of zero or less. Source: TIA-485-A.
    """
    if not loads:
        raise ValueError("a bus has at least one node")
    for load in loads:
        require_positive(load=load)
    given = (Given(phrase("nodes"), len(loads)), Given(phrase("limit"), UNIT_LOAD_LIMIT_COUNT))
    return Rating(Symbol.UNIT_LOADS, sum(loads), "UL", phrase("Σ unit loads"), given, cited("TIA-485-A"))


def longest_segment(baud: float) -> Rating:
    """Return the longest segment in m for a bit rate in bit/s: 1200 m up to 100 kbit/s, 10⁸ / rate above.

    Raises ValueError for a rate of zero or less. Source: TIA-485-A (length); the product is a rule of thumb (from
    memory).
    """
    require_positive(baud=baud)
    value = _LONGEST_M if baud <= _FULL_LENGTH_BAUD else min(_LONGEST_M, _PRODUCT_M_BAUD / baud)
    clause = cited("TIA-485-A", phrase("product rule common practice"))
    return Rating(
        Symbol.LMAX_BUS,
        value,
        "m",
        phrase("1200 m, above 100 kbit/s 10⁸ / rate"),
        (Given(phrase("rate"), baud, "bit/s"),),
        clause,
    )


def bus_length(segments_m: Sequence[float]) -> Rating:
    """Return the length in m of the whole line, the sum of its parts. Raises ValueError for a part of zero or less.

    Source: TIA-485-A (one line from end to end).
    """
    for segment_m in segments_m:
        require_positive(segment_m=segment_m)
    given = (Given(phrase("parts"), len(segments_m)),)
    return Rating(Symbol.L_BUS, float(sum(segments_m)), "m", phrase("Σ parts"), given, cited("TIA-485-A"))


def poll_time(
    devices_count: int,
    baud: float,
    request_byte_count: int = 8,
    reply_byte_count: int = 100,
    bits_per_character_count: int = 11,
) -> Rating:
    """Return an estimate in s of one round over all devices: request, reply and two silences of 3.5 characters each.

    Device response times come on top. Raises ValueError for an input of zero or less.
    Source: Modbus over serial line, RTU framing (silence of 3.5 characters).
    """
    require_positive(devices_count=devices_count, baud=baud, request_byte_count=request_byte_count)
    require_positive(reply_byte_count=reply_byte_count, bits_per_character_count=bits_per_character_count)
    characters = request_byte_count + reply_byte_count + 2 * _SILENT_CHARACTERS
    given = (
        Given("n", devices_count),
        Given(phrase("characters"), characters, "", phrase("per device, with silences")),
        Given(phrase("bits per character"), bits_per_character_count),
        Given(phrase("rate"), baud, "bit/s"),
    )
    value = devices_count * characters * bits_per_character_count / baud
    clause = cited(phrase("Modbus over serial line, RTU framing"))
    return Rating(Symbol.T_POLL, value, "s", phrase("n · characters · bits per character / rate"), given, clause)

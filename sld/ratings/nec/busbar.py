"""What the busbar of a board must stand when sources feed it besides the network: the ways of 705.12(B)."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import cited, from_memory
from sld.quantity import Given, Rating
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = [
    "least_at_any_position",
    "least_at_opposite_end",
    "least_for_sum_of_devices",
    "least_for_trunk",
    "least_under_power_control",
    "protected",
]

_SHARE = 1.2


def _of(main_a: float, sources_a: Sequence[float]) -> tuple[float, tuple[Given, ...]]:
    require_positive(main_a=main_a)
    for source_a in sources_a:
        require_not_negative(source_a=source_a)
    given = [Given("Imain", main_a, "A", phrase("device that protects the busbar"))]
    given += [Given(f"Ig{place}", source_a, "A") for place, source_a in enumerate(sources_a, start=1)]
    return main_a + 1.25 * sum(sources_a), tuple(given)


def least_at_any_position(main_a: float, sources_a: Sequence[float]) -> Rating:
    """Return the least busbar rating in A with sources at any place: Imain + 1.25 · Σ Ig.

    sources_a: greatest continuous output currents. Raises ValueError for a main device of zero or less or a negative
    source. Source: NEC 2023 705.12(B)(1), 2020 705.12(B)(3)(1).
    """
    value, given = _of(main_a, sources_a)
    clause = cited("NEC 2023 705.12(B)(1) (2020: 705.12(B)(3)(1))")
    return Rating(Symbol.INA_LEAST, value, "A", "Imain + 1.25 · Σ Ig", given, clause)


def least_at_opposite_end(main_a: float, sources_a: Sequence[float]) -> Rating:
    """Return the least busbar rating in A with the source at the end opposite the main: (Imain + 1.25 · Σ Ig) / 1.2.

    Errors as above. Source: NEC 2023 705.12(B)(2).
    """
    value, given = _of(main_a, sources_a)
    clause = cited("NEC 2023 705.12(B)(2) (2020: 705.12(B)(3)(2))")
    return Rating(Symbol.INA_LEAST, value / _SHARE, "A", "(Imain + 1.25 · Σ Ig) / 1.2", given, clause)


def least_for_sum_of_devices(devices_a: Sequence[float]) -> Rating:
    """Return the least busbar rating in A by the sum of all overcurrent devices on it but the main.

    Raises ValueError for none or one of zero or less. Source: NEC 2023 705.12(B)(3) (from memory).
    """
    if not devices_a:
        raise ValueError("a busbar has at least one device")
    for device_a in devices_a:
        require_positive(device_a=device_a)
    given = tuple(Given(f"In{place}", device_a, "A") for place, device_a in enumerate(devices_a, start=1))
    clause = from_memory("NEC 2023 705.12(B)(3)")
    return Rating(Symbol.INA_LEAST, sum(devices_a), "A", phrase("Σ In of loads and sources"), given, clause)


def least_under_power_control(setting_a: float) -> Rating:
    """Return the least busbar rating in A under a power control system: its setting, which it never lets exceed.

    Raises ValueError for a setting of zero or less. Source: NEC 2020 705.13 (2023: Article 750), from memory; that the
    setting takes the place of the 120 % as https://legalclarity.org/nec-705-13-power-control-systems-requirements-and-limits/.
    """
    require_positive(setting_a=setting_a)
    given = (Given(phrase("setting"), setting_a, "A", phrase("power control system")),)
    return Rating(
        Symbol.INA_LEAST,
        setting_a,
        "A",
        phrase("setting of the power control system"),
        given,
        from_memory("NEC 2020 705.13"),
    )


def least_for_trunk(main_a: float, exported_a: float) -> Rating:
    """Return the least rating in A of an AC trunk cable, which has sources alone: its device, and 125 % of the sources.

    705.12(B) is about busbars with loads. Raises ValueError for a device of zero or less or a negative current.
    Source: NEC 2023 705.28(A), 705.30(B), 240.4 (from memory).
    """
    require_positive(main_a=main_a)
    require_not_negative(exported_a=exported_a)
    given = (Given("Imain", main_a, "A"), Given("Ig", exported_a, "A"))
    formula, clause = phrase("larger of Imain and 1.25 · Ig"), from_memory("NEC 2023 705.28(A), 705.30(B), 240.4")
    return Rating(Symbol.INA_LEAST, max(main_a, 1.25 * exported_a), "A", formula, given, clause)


def protected(main_a: float, least: Rating | None = None) -> Rating:
    """Return the least busbar rating in A of a busbar behind a device: what its sources ask for, at least that device.

    Raises ValueError for a device of zero or less. Source: NEC 2023 408.36 (from memory); 705.12(B)(3) (2020:
    705.12(B)(3)(3)) says so once more, as https://forums.mikeholt.com/threads/2020-705-12-b-3-3.2576650/ quotes it.
    """
    require_positive(main_a=main_a)
    if least is not None and least.value >= main_a:
        return least
    given = (Given("Imain", main_a, "A", phrase("device that protects the busbar")),)
    return Rating(Symbol.INA_LEAST, main_a, "A", "Imain", given, from_memory("NEC 2023 408.36"))

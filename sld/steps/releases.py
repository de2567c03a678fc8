"""The settings of a moulded-case circuit-breaker, as the formulas take them."""

from __future__ import annotations

from sld.model.device import Device
from sld.model.kinds.ac import BREAKER
from sld.ratings.release import Release

__all__ = ["release_of"]


def release_of(device: Device) -> Release | None:
    """Return the settings of a circuit-breaker, None where the spec gives none."""
    given = device.given_as(BREAKER)
    if given is None:
        return None
    release = Release(
        given.overload_setting_a,
        given.short_time_setting_a,
        given.short_time_delay_s or 0.0,
        given.instantaneous_setting_a,
        given.earth_fault_setting_a,
        given.earth_fault_delay_s or 0.0,
    )
    return None if release == Release() else release

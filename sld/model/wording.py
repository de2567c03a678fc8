"""The words for kinds, media and statuses, in the one place that schedules, messages and labels read them from."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from sld.model.device import Device
from sld.model.kinds.ac import INTERFACE_PROTECTION, INTERFACE_RELAY
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.spec.blocks.inverter import Inverter, InverterType
from sld.words import Phrase, Sayable, Sequence, amount, counted, of_count, phrase, phrase_in, sequence, verbatim

__all__ = [
    "MEDIA",
    "STATUSES",
    "built_in",
    "charging_words",
    "device_counts",
    "device_word",
    "profile_word",
    "protects_at_interface",
    "status_word",
    "supply_words",
    "titled",
]

MEDIA: dict[str, Sayable] = {
    "ethernet": verbatim("Ethernet"),
    "wireless": phrase_in("medium of a data link", "wireless"),
    "pulse": phrase("pulse output"),
    "trip": phrase("trip line"),
}
"""Words for the media of data links."""

STATUSES = {
    "new": phrase_in("status of a device", "new"),
    "existing": phrase_in("status of a device", "existing"),
    "future": phrase_in("status of a device", "future"),
}
"""Words for the statuses of devices."""

_ASSUMED = phrase_in("status of a device", "assumed")


def status_word(device: Device) -> Phrase:
    """Return the word for the status of a device: that it is assumed where the spec does not mention it."""
    return _ASSUMED if device.assumed else STATUSES[device.status]


def supply_words(system: System) -> Sequence:
    """Return what the supply point of a system is called: the word, its designation and its name."""
    return sequence([phrase("supply"), system.devices[system.root].designation, system.point.called], " ")


def titled(title: Phrase, system: System) -> Sayable:
    """Return the title of a table that tells of one supply point: with what that is called where there are several."""
    return sequence([title, supply_words(system)], ": ") if system.others else title


def profile_word(profile: str) -> Sayable:
    """Return the name of a rule profile: that of its standard, or our word for the strict one."""
    return phrase_in("name of a rule profile", "cautious") if profile == "cautious" else verbatim(profile)


def device_word(device: Device) -> Phrase:
    """Return the word for a device: `circuit-breaker`, `DC isolator`, `RCD`."""
    return phrase("array fuse") if _is_array_fuse(device) else device.kind.word_of(device.given)


def device_counts(devices: Iterable[Device]) -> list[Phrase]:
    """Return how many there are of each kind: `1 RCD`, `2 main switches`. Kinds that are not counted are left out."""
    counts = Counter(several for device in devices if (several := _several(device)) is not None)
    return [of_count(several, counts[several]) for several in sorted(counts, key=lambda each: each.text)]


def _several(device: Device) -> Phrase | None:
    if _is_array_fuse(device):
        return counted("{count} array fuse", "{count} array fuses", 0)
    return device.kind.several_of(device.given)


def _is_array_fuse(device: Device) -> bool:
    return device.kind is DC_FUSE and ".circuit." in device.key


def built_in(type_: InverterType) -> tuple[Phrase, ...]:
    """Return what is built into an inverter besides interface protection."""
    switch = (phrase("DC switch"),) if type_.dc_switch else ()
    plugs = (phrase("DC plug connectors to disconnect it"),) if type_.plugs_disconnect else ()
    dc, ac = type_.dc_surge_protection, type_.ac_surge_protection
    return (
        *switch,
        *plugs,
        *((phrase("DC surge protection type {test_class}", test_class=dc),) if dc != "none" else ()),
        *((phrase("AC surge protection type {test_class}", test_class=ac),) if ac != "none" else ()),
    )


def charging_words(given: Inverter) -> Phrase | None:
    """Return what an inverter draws from the network to charge a battery, None where the spec does not say."""
    most_a = given.charging_current_max_a
    if most_a is None:
        return None
    if most_a == 0:
        return phrase("charges from its modules alone")
    return phrase("charges with at most {limit} from the network", limit=amount(most_a, "A"))


def protects_at_interface(system: System, type_: InverterType) -> bool:
    """Return whether interface protection is built into an inverter.

    Where the type does not say, it is taken as built in unless the system has it elsewhere.
    """
    elsewhere = not system.kinds.isdisjoint({INTERFACE_PROTECTION, INTERFACE_RELAY})
    return type_.interface_protection and ("interface_protection" in type_.model_fields_set or not elsewhere)

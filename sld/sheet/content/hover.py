"""What a pointer resting on a device says, and the drawing in a few sentences for readers who cannot see it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sld.layout.diagram.flags import Flag
from sld.layout.plan import Plan
from sld.model.device import Apparatus, Device, InverterUnit, StringGroup
from sld.model.system import System
from sld.model.wording import device_counts, device_word
from sld.quantity import shown
from sld.ratings.symbol import Symbol
from sld.sheet.content.findings import on_paper
from sld.steps import Ratings

__all__ = ["description", "hover_texts"]


def hover_texts(system: System, ratings: Ratings, flags: Sequence[Flag], plan: Plan) -> dict[str, str]:
    """Return for each device drawn its designation and the trace of each rating, one a line; for each flag its finding.

    A symbol that stands for several devices names the others.
    """
    drawn = {key: system.devices[key] for key in _keys(plan) if key in system.devices}
    found = {key: _text(device, ratings) for key, device in drawn.items()}
    for flag in flags:
        first = flag.findings[0]
        found[f"flag-{flag.number}"] = (
            f"{first.code} {first.severity.word}: {on_paper(str(first.message))}\n{on_paper(str(first.remedy))}"
        )
    for cell in plan.cells:
        if cell.alike:
            others = ", ".join(system.devices[key].designation for key in cell.alike)
            found[cell.key] += f"\ndrawn once for {1 + len(cell.alike)}, likewise: {others}"
    return found


def _keys(plan: Plan) -> Iterator[str]:
    """Yield the keys of all that a pointer can rest on."""
    yield from (cell.key for cell in plan.cells)
    yield from (frame.key for frame in plan.frames)
    yield from (key for wire in plan.wires for key, _ in wire.ends)


def _text(device: Device, ratings: Ratings) -> str:
    words = [device.designation, str(device_word(device)), device.name, device.make, device.model]
    head = " ".join(part for part in words if part)
    return "\n".join([head, *(str(rating.trace()) for rating in ratings.of(device.key))])


def description(system: System, ratings: Ratings) -> str:
    """Return the topology in a few sentences: counts, powers, protection."""
    groups = list(system.of(StringGroup))
    units = list(system.of(InverterUnit))
    strings_count = sum(group.given.count for group in groups)
    modules_count = sum(group.given.count * group.given.modules_in_series for group in groups)
    power = ratings.get("", Symbol.PDC)
    phases = "three-phase" if system.supply.phases == 3 else "single-phase"
    sentences = [
        f"Single-line diagram of {system.project.title}.",
        f"{modules_count} PV modules in {strings_count} strings"
        + (f", {shown(power.value / 1000)} kWp," if power else "")
        + f" feed {len(units)} inverter{'s' if len(units) != 1 else ''}"
        f" on a {phases} {shown(system.voltage_v)} V supply, earthing system {system.supply.earthing_system}.",
        "On the way: " + ", ".join(map(str, device_counts(system.of(Apparatus)))) + ".",
    ]
    return " ".join(sentences)

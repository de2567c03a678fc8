"""The names of a spec: what stands for several, every block that can be named, and what is said of a wrong one."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from itertools import islice

from sld.finding import Finding, Severity, SpecPath
from sld.spec.blocks.block import Named, Placed
from sld.spec.blocks.circuit import Installed
from sld.spec.document import Spec
from sld.spec.unusable_value import nearest

__all__ = ["counted_boxes", "counted_names", "few", "installed", "named_blocks", "told", "unknown"]

_FEW = 8
_SORTED = 1000
"""Names beyond which some are shown as they stand, so that many mistakes among many names take no longer each."""


def counted_names(spec: Spec) -> dict[str, list[str]]:
    """Return, for each inverter of the spec, the names it stands for: NAME, or NAME-1, NAME-2, ... with a count."""
    return {
        name: [name] if inverter.count == 1 else [f"{name}-{number}" for number in range(1, inverter.count + 1)]
        for name, inverter in spec.inverters.items()
    }


def counted_boxes(spec: Spec) -> dict[str, list[str]]:
    """Return, for each junction box of the spec, the names it stands for: one for each of several equal inverters.

    One that a single inverter uses too stands for itself besides.
    """
    counts: dict[str, set[int]] = {name: set() for name in spec.junction_boxes}
    for inverter in spec.inverters.values():
        for given in inverter.inputs:
            devices = [device for device in given.circuit or [] if isinstance(device, Installed)]
            used = [*(device.enclosure for device in devices), given.junction_box]
            for name in [name for name in used if name in counts]:
                counts[name].add(inverter.count)
    found = {}
    for name, used_by in counts.items():
        most = max(used_by, default=1)
        numbered = [f"{name}-{number}" for number in range(1, most + 1)] if most > 1 else []
        found[name] = [name, *numbered] if 1 in used_by or not numbered else numbered
    return found


def named_blocks(spec: Spec) -> Iterator[tuple[SpecPath, Named]]:
    """Yield every block that can have a designation with its path, circuits and strings included."""
    for group in ("boards", "junction_boxes", "inverters", "batteries", "loads", "generators"):
        blocks: Mapping[str, Placed] = getattr(spec, group)
        for name, block in blocks.items():
            yield (group, name), block
            for key in ("circuit", "dc_circuit"):
                for index, device in enumerate(getattr(block, key, None) or []):
                    yield (group, name, key, index), device
    for name, inverter in spec.inverters.items():
        for number, given in enumerate(inverter.inputs):
            here: SpecPath = ("inverters", name, "inputs", number)
            for index, string in enumerate(given.strings):
                yield (*here, "strings", index), string
                for place, each in enumerate(string.circuit):
                    yield (*here, "strings", index, "circuit", place), each
                if string.cable:
                    yield (*here, "strings", index, "cable"), string.cable
            if given.string_fuses:
                yield (*here, "string_fuses"), given.string_fuses
            for index, dc_device in enumerate(given.circuit or []):
                yield (*here, "circuit", index), dc_device
    if spec.earthing:
        yield ("earthing",), spec.earthing
    for name, further in spec.further_supplies.items():
        if further.earthing:
            yield ("further_supplies", name, "earthing"), further.earthing
    if spec.data:
        for name, node in spec.data.devices.items():
            yield ("data", "devices", name), node
        for name, chain in spec.data.chains.items():
            yield ("data", "chains", name), chain


def installed(spec: Spec) -> Iterator[tuple[SpecPath, Installed]]:
    """Yield every device of a circuit with its path; these can have an `id`."""
    return ((path, block) for path, block in named_blocks(spec) if isinstance(block, Installed))


def told(code: str, at: SpecPath, message: str, remedy: str, **more: object) -> Finding:
    """Return a finding about names; like all of a spec that cannot be used it is a danger."""
    return Finding(code, Severity.DANGER, message, remedy, at, **more)  # type: ignore[arg-type]


def few(names: Collection[str]) -> str:
    """Write the first few of some names."""
    return ", ".join(islice(names, _FEW)) + (", ..." if len(names) > _FEW else "")


def unknown(at: SpecPath, what: str, name: str, valid: Collection[str], where: str) -> Finding:
    """Return the finding for a name that is not among the valid ones, with the nearest or some of these."""
    near = nearest(name, valid, 0.5)
    if near:
        remedy = f"did you mean `{near}`? It is defined under `{where}`"
    elif valid:
        remedy = f"`{where}` has: {few(sorted(valid) if len(valid) <= _SORTED else valid)}"
    else:
        remedy = f"define `{name}` under `{where}`"
    return told("SP51", at, f"there is no {what} `{name}`", remedy)

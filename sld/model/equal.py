"""All inverters of a block: one by one, or the first with its copies where nothing of the spec tells them apart."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import islice

from sld.model.copies import Copy, Original, said_again
from sld.model.draft import Draft

__all__ = ["add_all"]

_BOXES = "junction_boxes."


def add_all(draft: Draft, names: Sequence[str], add: Callable[[str, int], None]) -> None:
    """Add the inverters of a block. names: of each. add: adds one by its name and number, from 1."""
    if not _are_equal(draft, names):
        for number, name in enumerate(names, start=1):
            add(name, number)
        return
    devices_count, assumptions_count = len(draft.devices), len(draft.assumptions)
    add(names[0], 1)
    made = list(islice(draft.devices.values(), devices_count, None))
    said = draft.assumptions[assumptions_count:]
    first, designation = f"inverters.{names[0]}", draft.owners["inverters", names[0]]
    originals = [Original(each, first, designation) for each in made]
    boxes = [each for each in dict.fromkeys(each.enclosure for each in made) if each.startswith(_BOXES)]
    copies = [_copy(draft, boxes, names[0], name, number) for number, name in enumerate(names[1:], start=2)]
    for copy in copies:
        own = copy.designations[designation]
        for each in originals:
            draft.add(each.copied(copy, own))
    for of_one in zip(*(said_again(each, copies) for each in said), strict=True):
        draft.assumptions += of_one
    draft.copies[first] = tuple(copies)


def _are_equal(draft: Draft, names: Sequence[str]) -> bool:
    """Return whether there are several, and nothing of the spec is about one of them."""
    if draft.told_apart is None or len(names) == 1 or not draft.told_apart.isdisjoint(names):
        return False
    inside = tuple(f"{draft.owners['inverters', name]}-" for name in names)
    return not any(each.startswith(inside) for each in draft.told_apart)


def _copy(draft: Draft, boxes: Sequence[str], first: str, name: str, number: int) -> Copy:
    """Return what one of the inverters is to the first. boxes: keys of the junction boxes of the first."""
    designations = {draft.owners["inverters", first]: draft.owners["inverters", name]}
    enclosures = {}
    for enclosure in boxes:
        box = enclosure.removeprefix(_BOXES)
        own = f"{box.removesuffix('-1')}-{number}"
        enclosures[enclosure] = f"{_BOXES}{own}"
        designations[draft.owners["junction_boxes", box]] = draft.owners["junction_boxes", own]
    return Copy.of(f"inverters.{first}", f"inverters.{name}", number, designations, enclosures)

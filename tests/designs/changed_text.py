"""One change in the text of a spec, as a hand makes it: a value set, a key added, a key or an entry of a list removed.

The rest of the text stays as it is, so that what is told can be looked for at its line.
"""

from __future__ import annotations

from typing import Any

import yaml

__all__ = ["REMOVED", "changed", "way"]

REMOVED = "-"


def way(data: Any, path: str) -> tuple[str | int, ...]:
    """Return the keys and places of a path such as `boards.main.circuit[1].poles`; names may hold dots and spaces."""
    steps: list[str | int] = []
    rest = path
    while rest:
        if rest[0] == "[":
            number, rest = rest[1:].split("]", 1)
            steps.append(int(number))
        else:
            known = [key for key in data if rest == key or rest.startswith((f"{key}.", f"{key}["))]
            steps.append(max(known, key=len) if known else rest)
            rest = rest[len(str(steps[-1])) :]
        rest = rest.removeprefix(".")
        try:
            data = data[steps[-1]]
        except (KeyError, IndexError, TypeError):
            assert not rest, f"{path}: no {steps[-1]}"
    return tuple(steps)


def changed(text: str, path: str, value: str) -> str:
    """Return the text with the value at the path set, or what is there taken out where the value is `-`."""
    *around, last = way(yaml.load(text, Loader=yaml.CSafeLoader), path)
    block = yaml.compose(text, Loader=yaml.CSafeLoader)
    for step in around:
        block = _inside(block)[step]
    inside = _inside(block)
    if value == REMOVED:
        return _without(text, block, list(inside).index(last))
    if last in inside:
        start, end = _extent(text, inside[last])
        return text[:start] + value + text[end:]
    if block.flow_style:
        start = block.start_mark.index + 1
        return f"{text[:start]}{last}: {value}, {text[start:]}"
    start = block.start_mark.index
    return f"{text[:start]}{last}: {value}\n{' ' * block.start_mark.column}{text[start:]}"


def _inside(block: yaml.Node) -> dict[str | int, yaml.Node]:
    if isinstance(block, yaml.MappingNode):
        return {key.value: inner for key, inner in block.value}
    return dict(enumerate(block.value))


def _extent(text: str, node: yaml.Node) -> tuple[int, int]:
    """Return where a value begins and ends; a block is taken to end with its last character."""
    start, end = node.start_mark.index, node.end_mark.index
    return start, start + len(text[start:end].rstrip())


def _without(text: str, block: yaml.Node, place: int) -> str:
    """Take out one entry: of a block its lines, between brackets its text and one comma."""
    entries = [entry[0] if isinstance(entry, tuple) else entry for entry in block.value]
    last = entries[place] if not isinstance(block.value[place], tuple) else block.value[place][1]
    if len(entries) == 1:
        start, end = _extent(text, block)
        return text[:start] + ("[]" if isinstance(block, yaml.SequenceNode) else "{}") + text[end:]
    if block.flow_style:
        start, end = entries[place].start_mark.index, last.end_mark.index
        if place + 1 < len(entries):
            end = entries[place + 1].start_mark.index
        elif place:
            start = text.rindex(",", 0, start)
        return text[:start] + text[end:]
    lines = text.splitlines(keepends=True)
    first = entries[place].start_mark.line
    after = entries[place + 1].start_mark.line if place + 1 < len(entries) else block.end_mark.line
    return "".join(lines[:first] + lines[after:])

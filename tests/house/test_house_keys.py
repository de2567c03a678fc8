"""Keys of the spec language: none is accepted and then forgotten."""

from __future__ import annotations

import pkgutil
import re
from collections.abc import Iterator
from functools import cache
from importlib import import_module
from pathlib import Path

import pytest

import sld.spec
from sld.spec.blocks.block import Block

PACKAGE = Path(sld.spec.__file__).parents[1]
READ_WHILE_LOADING = {"Spec.include"}


@cache
def after_the_spec() -> str:
    """The text of all modules that come after the spec was read."""
    return "\n".join(
        path.read_text(encoding="utf-8")
        for path in sorted(PACKAGE.rglob("*.py"))
        if "spec" not in path.relative_to(PACKAGE).parts
    )


def blocks() -> Iterator[type[Block]]:
    for module in pkgutil.walk_packages(sld.spec.__path__, "sld.spec."):
        import_module(module.name)
    waiting: list[type[Block]] = [Block]
    while waiting:
        block = waiting.pop()
        yield block
        waiting.extend(block.__subclasses__())


FIELDS = sorted({f"{block.__name__}.{field}" for block in blocks() for field in block.model_fields})


@pytest.mark.parametrize("field", [each for each in FIELDS if each not in READ_WHILE_LOADING])
def test_every_key_is_read_after_the_spec(field: str) -> None:
    """A key that nobody reads is a promise that nobody keeps: compute with it, print it, or drop it."""
    name = field.partition(".")[2]
    assert re.search(rf"\.{name}\b|[\"']{name}[\"']", after_the_spec())

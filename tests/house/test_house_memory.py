"""What a run over many specs keeps: nothing of a spec that was drawn, and caches that are bounded."""

from __future__ import annotations

import gc
import sys
from functools import _lru_cache_wrapper
from pathlib import Path

from sld import run

SPEC = Path(__file__).parents[2] / "specs" / "cedar-house.yaml"

OF_THE_PACKAGE = {
    "sld.spec.blocks.block", "sld.spec.language.blocks", "sld.spec.synonyms", "sld.tables.versions",
    "sld.words.language", "sld.words.extraction", "sld.gallery.fragments", "sld.sheet.listings.column_widths",
}  # fmt: skip
"""Whose caches without a bound are of what the package has (blocks, keys, tables, languages, shares), not of specs."""


def objects_count() -> int:
    """Return how many objects there are that may hold others."""
    gc.collect()
    return len(gc.get_objects())


def drawn() -> None:
    checked = run.check(SPEC)
    run.files(run.draw(checked).sheets, SPEC.stem, ("svg",))


def test_of_a_spec_that_was_drawn_nothing_is_kept() -> None:
    """One that is drawn again fills no cache: whatever is more was kept. Checked alone, this one is 2,100 objects."""
    drawn()
    drawn()
    before_count = objects_count()
    for _ in range(3):
        drawn()
    assert objects_count() - before_count < 100


def test_caches_of_what_specs_say_are_bounded() -> None:
    """A cache without a bound grows with the specs of a run."""
    caches = {
        f"{module.__name__}.{name}": found
        for module in list(sys.modules.values())
        if getattr(module, "__name__", "").startswith("sld.")
        for name, found in vars(module).items()
        if isinstance(found, _lru_cache_wrapper) and found.__module__ not in OF_THE_PACKAGE
    }
    assert len(caches) > 20  # it does find them
    assert [name for name, found in caches.items() if found.cache_info().maxsize is None] == []

"""For all tests: what the interpreter need not do."""

from __future__ import annotations

import gc

import pytest


def pytest_configure() -> None:
    """Look for cycles seldom: thousands of collected tests stay alive, and each look goes over all of them."""
    gc.set_threshold(100_000, 50, 100)


@pytest.hookimpl(trylast=True)
def pytest_collection_finish() -> None:
    gc.collect()
    gc.freeze()

"""For all tests: what the interpreter need not do, and generated examples that are the same in every run."""

from __future__ import annotations

import gc
import os
import sys
from pathlib import Path

import pytest
from hypothesis import settings


def pytest_configure() -> None:
    """Look for cycles seldom: thousands of collected tests stay alive, and each look goes over all of them.

    And where modules are not compiled beside their sources, let this process and those that tests start find them, and
    the rewritten tests, compiled in a cache: compiling takes half of what a short command takes. And no threads for the
    small matrices of the reference networks: waiting for one another takes them most of their time.
    """
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    gc.set_threshold(100_000, 50, 100)
    if os.environ.pop("PYTHONDONTWRITEBYTECODE", None):
        os.environ["PYTHONPYCACHEPREFIX"] = str(Path(__file__).parents[1] / ".pytest_cache" / "bytecode")
        sys.pycache_prefix, sys.dont_write_bytecode = os.environ["PYTHONPYCACHEPREFIX"], False
    settings.register_profile("same in every run", derandomize=True, database=None, deadline=None, max_examples=30)
    settings.load_profile("same in every run")


@pytest.hookimpl(trylast=True)
def pytest_collection_finish() -> None:
    gc.collect()
    gc.freeze()


@pytest.hookimpl(trylast=True)
def pytest_sessionfinish() -> None:
    """Look for cycles once at the end, for errors in what is thrown away; pytest and the interpreter need not again."""
    gc.collect()
    gc.freeze()

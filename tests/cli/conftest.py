"""What is the same for all commands of a test run."""

from __future__ import annotations

import pytest

from sld.cli.again import program


@pytest.fixture(scope="session")
def digest() -> str:
    return program()


@pytest.fixture(autouse=True)
def _the_program_does_not_change(digest: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A command reads every file of the program for its digest; here they are read once."""
    monkeypatch.setattr("sld.cli.draw.program", lambda: digest)

"""The page of commands has every command and option, and the example of each does what it says."""

from __future__ import annotations

import os
import re
import shlex
from pathlib import Path

import pytest
from typer.testing import CliRunner

from sld.cli.app import app
from sld.gallery.commands import commands, commands_page

ROOT = Path(__file__).parents[2]
FOUND = dict(commands())
ENDLESS = {"sld watch"}
"""Commands that run until they are stopped; tests/webpage has them."""


def example(name: str) -> list[str]:
    text = " ".join((FOUND[name].help or "").split())
    match = re.search(r"Example: sld (.+)$", text)
    assert match, f"{name} has no example"
    return shlex.split(match[1].split(" > ")[0])


def test_every_command_has_a_section_with_its_options() -> None:
    page = commands_page()
    assert set(re.findall(r"^## (.+)$", page, re.MULTILINE)) == set(FOUND)
    for name, command in FOUND.items():
        section = page[page.index(f"\n## {name}\n") :]
        for parameter in command.params:
            for option in parameter.opts if parameter.param_type_name == "option" else ():
                assert option in section, (name, option)


@pytest.mark.parametrize("name", FOUND)
def test_the_example_of_a_command_runs(name: str, tmp_path: Path) -> None:
    words = example(name)
    assert words[: len(name.split()) - 1] == name.split()[1:]
    if name in ENDLESS:
        assert (ROOT / words[1]).exists()
        return
    (tmp_path / "specs").symlink_to(ROOT / "specs")
    before = os.getcwd()
    os.chdir(tmp_path)
    try:
        result = CliRunner().invoke(app, words, catch_exceptions=False)
    finally:
        os.chdir(before)
    assert result.exit_code == 0, result.output
    assert result.stdout

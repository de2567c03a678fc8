"""One count of findings: the terminal, the JSON, the title block and the gallery say the same of every spec."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from example_specs import SAMPLED, checked
from typer.testing import CliRunner

from sld.cli.app import app
from sld.documents.title import title
from sld.finding import Tally, tally
from sld.spec.quote import counted
from sld.words import ENGLISH


@pytest.mark.parametrize("path", SAMPLED)
def test_one_count(path: Path) -> None:
    found = checked(path)
    block = title(found.parts[0].system, found.findings).findings
    assert block is not None
    said = ENGLISH.say(block)
    last = CliRunner().invoke(app, ["check", str(path)]).stdout.rstrip().splitlines()[-1]
    told = json.loads(CliRunner().invoke(app, ["check", "--format", "json", str(path)]).stdout)["specs"][0]
    in_lines = said if found.findings else "nothing found"
    assert last == f"{path}: {in_lines}"
    assert counted(found.findings) == in_lines, "the gallery"
    assert Tally(**told["counts"]) == tally(found.findings)
    assert sum(told["counts"].values()) == len(told["findings"]) == len(found.findings)

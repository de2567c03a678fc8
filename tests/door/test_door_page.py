"""The page of examples in Python: each block runs, in the order of the page, and prints what its comments say."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).parents[2]
BLOCKS = re.findall(r"```python\n(.*?)```", (ROOT / "gallery" / "python.md").read_text(encoding="utf-8"), re.DOTALL)


def test_every_example_of_the_page_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "specs").symlink_to(ROOT / "specs")
    monkeypatch.chdir(tmp_path)
    known: dict[str, Any] = {}
    for block in BLOCKS:
        exec(block, known)
    told = capsys.readouterr().out
    assert "Iz = 24 A" in told
    assert "unknown key `titel`" in told
    assert "there is no device -TB1-WD9; the nearest: -TB1-WD" in told
    assert (tmp_path / "out" / "village-hall.pdf").exists()
    lengths = dict(re.findall(r"(\d+ m) S = \S+ mm² Δu rise = (\S+) %", told))
    assert float(lengths["40 m"]) > float(lengths["8 m"])

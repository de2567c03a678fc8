"""One module writes to the terminal, so that nothing of a spec or a file name gets there unseen."""

from __future__ import annotations

import ast

import pytest
from package import Module, modules

WRITER = "sld.cli.terminal"
NOT_OF_THE_PROGRAM = {"sld.gallery"}
"""The command of the developers prints by itself."""

WORDS = {"print", "sys.stdout", "sys.stderr", "sys.__stdout__", "sys.__stderr__", "os.write", "typer.echo",
         "typer.secho", "logging", "warnings.warn", "traceback.print_exception", "traceback.print_exc"}  # fmt: skip


def _writing(module: Module) -> list[str]:
    return [
        f"{module.where}:{node.lineno}: {ast.unparse(node)}"
        for node in ast.walk(module.tree)
        if isinstance(node, ast.Name | ast.Attribute) and ast.unparse(node) in WORDS
    ]


@pytest.mark.parametrize("module", modules(), ids=lambda module: module.name)
def test_nothing_but_the_terminal_writes(module: Module) -> None:
    if module.name != WRITER and not any(module.name.startswith(name) for name in NOT_OF_THE_PROGRAM):
        assert not _writing(module)


def test_the_terminal_does_write() -> None:
    assert [module.name for module in modules() if module.name == WRITER and _writing(module)] == [WRITER]

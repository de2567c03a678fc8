"""One module writes to the terminal, so that nothing of a spec or a file name gets there unseen."""

from __future__ import annotations

import ast

from package import Module, modules

WRITER = "sld.cli.terminal"
FOR_DEVELOPERS = {"sld.gallery.__main__", "sld.words.__main__"}
"""Commands that are no part of the program print by themselves."""

WORDS = {"print", "sys.stdout", "sys.stderr", "sys.__stdout__", "sys.__stderr__", "os.write", "typer.echo",
         "typer.secho", "logging", "warnings.warn", "traceback.print_exception", "traceback.print_exc"}  # fmt: skip


def _writing(module: Module) -> list[str]:
    return [
        f"{module.where}:{node.lineno}: {ast.unparse(node)}"
        for node in ast.walk(module.tree)
        if isinstance(node, ast.Name | ast.Attribute) and ast.unparse(node) in WORDS
    ]


def test_nothing_but_the_terminal_writes() -> None:
    bound = [each for each in modules() if each.name != WRITER and each.name not in FOR_DEVELOPERS]
    assert not [place for module in bound for place in _writing(module)]


def test_the_terminal_does_write() -> None:
    assert [module.name for module in modules() if module.name == WRITER and _writing(module)] == [WRITER]

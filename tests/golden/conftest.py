"""The option that accepts a drawing as the golden one."""

from __future__ import annotations

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--accept",
        metavar="NAME",
        action="append",
        default=[],
        help="write the golden drawing NAME from what is drawn now, to be read in the diff before it is committed",
    )

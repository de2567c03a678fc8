"""What a format needs and this machine lacks, told with the line to type."""

from __future__ import annotations

import sys

__all__ = ["MissingCairo", "MissingEzdxf", "MissingLibrary", "MissingOpenpyxl"]


class MissingLibrary(RuntimeError):  # noqa: N818 - it says what is the matter
    """A library that a format needs is not installed; SVG needs nothing of the kind."""


class MissingCairo(MissingLibrary):
    """The library that writes PDF and PNG is not installed."""

    def __init__(self) -> None:
        super().__init__("PDF and PNG need the cairo library; on Debian and Ubuntu: sudo apt-get install -y libcairo2")


class MissingEzdxf(MissingLibrary):
    """The library that writes DXF is not installed."""

    def __init__(self) -> None:
        super().__init__(f"DXF needs the library ezdxf: {sys.executable} -m pip install 'ezdxf>=1.3,<2'")


class MissingOpenpyxl(MissingLibrary):
    """The library that writes XLSX is not installed."""

    def __init__(self) -> None:
        super().__init__(f"XLSX needs the library openpyxl: {sys.executable} -m pip install 'openpyxl>=3.1,<4'")

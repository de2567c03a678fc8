"""The commands as a person types them: in this process where that is enough, else in one of their own."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import typer
from click.testing import CliRunner, Result
from ready_process import run_in_copy

from sld.cli.app import app

ROOT = Path(__file__).parents[2]
SPECS = ROOT / "specs"
HALL, SCHOOL, FARM = (SPECS / f"{name}.yaml" for name in ("village-hall", "valley-school", "upper-farm-faulty"))
COMMAND = typer.main.get_command(app)  # which takes as long as a short command

SMALL = """\
project: {title: House on Mill Lane}
site: {temperature_min: -12 °C, temperature_max: 35 °C, building: dwelling, surge_protection_declined: by the owner}
supply: {phases: 1, voltage: 230 V, earthing_system: TN-C-S}
types:
  modules:
    Plain 400:
      rated_power: 400 W
      open_circuit_voltage: 37.0 V
      short_circuit_current: 13.7 A
      mpp_voltage: 31.0 V
      mpp_current: 12.9 A
  inverters:
    Small 3:
      rated_power: 3 kW
      phases: 1
      dc_voltage_max: 600 V
      mpp_voltage_min: 100 V
      mpp_voltage_max: 520 V
      inputs: [{current_max: 16 A, short_circuit_current_max: 22 A}]
inverters:
  roof:
    type: Small 3
    inputs:
      - strings: [{module: Plain 400, modules_in_series: 8}]
"""
"""A whole spec in which each line can be spoilt."""


def sld(*arguments: object, listed: bytes = b"") -> Result:
    """Run a command in this process. listed: what stands on its standard input."""
    return CliRunner().invoke(COMMAND, [str(each) for each in arguments], catch_exceptions=False, input=listed)


def environment(**changes: str) -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(ROOT), **changes}


def process(
    *arguments: object, before: str = "", cwd: Path = ROOT, stdout: str = "", stderr: str = "", **changes: str
) -> subprocess.CompletedProcess[str]:
    """Run a command in a process of its own, the copy of one that is ready.

    before: Python that runs first, to break something. stdout, stderr: devices in the place of what is returned.
    """
    return run_in_copy([str(each) for each in arguments], before, cwd, changes, stdout, stderr)


def new_process(*arguments: object, cwd: Path = ROOT, **changes: str) -> subprocess.CompletedProcess[str]:
    """Run a command in a process that starts anew, which takes most of a second."""
    return subprocess.run(
        [sys.executable, "-m", "sld", *map(str, arguments)], cwd=cwd, env=environment(**changes), capture_output=True,
        text=True, timeout=60, check=False,
    )  # fmt: skip

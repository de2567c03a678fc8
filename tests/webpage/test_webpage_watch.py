"""`sld watch` in a real browser: a save is seen, errors stand over the last good drawing, nobody else is let in."""

from __future__ import annotations

import http.client
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from real_browser import CHROMIUM, Browser
from typer.testing import CliRunner

from sld.cli.app import app

ROOT = Path(__file__).parents[2]
SMALL = """\
project: {title: House on Mill Lane}
site: {temperature_min: -12 °C, temperature_max: 35 °C, building: dwelling}
supply: {phases: 1, voltage: 230 V, earthing_system: TN-C-S}
types:
  modules:
    Plain 400:
      {rated_power: 400 W, open_circuit_voltage: 37.0 V, short_circuit_current: 13.7 A, mpp_voltage: 31.0 V,
       mpp_current: 12.9 A}
  inverters:
    Small 3:
      {rated_power: 3 kW, phases: 1, dc_voltage_max: 600 V, mpp_voltage_min: 100 V, mpp_voltage_max: 520 V,
       inputs: [{current_max: 16 A, short_circuit_current_max: 22 A}]}
inverters:
  roof: {type: Small 3, inputs: [{strings: [{module: Plain 400, modules_in_series: 8}]}]}
"""


WATCH = "import signal; signal.signal(signal.SIGINT, signal.default_int_handler); from sld.cli import main; main()"
"""The command, where whoever started the tests ignores interrupts too."""


def watching(*arguments: object) -> subprocess.Popen[str]:
    command = [sys.executable, "-c", WATCH, "watch", *map(str, arguments)]
    return subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)


@pytest.fixture
def spec(tmp_path: Path) -> Path:
    path = tmp_path / "house.yaml"
    path.write_text(SMALL, encoding="utf-8")
    return path


@pytest.fixture
def address(spec: Path) -> Iterator[str]:
    with watching(spec) as process:
        assert process.stdout
        try:
            yield process.stdout.readline().strip()
        finally:
            process.send_signal(signal.SIGINT)
            process.wait(20)
    assert process.returncode == 0


def got(address: str, path: str | None = None, host: str | None = None) -> tuple[int, str]:
    place, own = address.removeprefix("http://").split("/", 1)
    connection = http.client.HTTPConnection(place, timeout=20)
    connection.request("GET", path if path is not None else f"/{own}", headers={"Host": host or place})
    answer = connection.getresponse()
    told = answer.status, answer.read().decode()
    connection.close()
    return told


def test_only_this_machine_by_its_own_name_and_word_is_let_in(address: str) -> None:
    """The name of a host is asked for, so that a page from elsewhere cannot lead its own name here (DNS rebinding)."""
    port = address.split(":")[2].split("/")[0]
    assert got(address)[0] == 200
    assert got(address, "/")[0] == 404
    assert got(address, "/guessed/")[0] == 404
    assert got(address, address.split(port)[1] + "../../etc/passwd")[0] == 404
    assert got(address, host=f"elsewhere.example:{port}")[0] == 404
    assert len(address.split("/")[3]) >= 20


@pytest.mark.skipif(not CHROMIUM.exists(), reason="needs /usr/bin/chromium")
def test_a_save_is_seen_and_an_error_leaves_the_last_good_drawing(address: str, spec: Path) -> None:
    title, errors = "document.querySelector('h1').innerText", "document.getElementById('errors').innerText"
    with Browser() as page:
        page.open(address)
        assert page.complaints() == []
        assert page.run(title) == "House on Mill Lane"
        assert page.run(errors) == ""
        place = page.run("document.querySelector('#findings pre').innerText")
        assert str(spec) in place  # the line of the spec
        page.run("document.querySelector('.sheet.shown .symbol[tabindex]').focus()")
        page.key("Enter")
        page.key("+")
        view = page.run("document.querySelector('.sheet.shown svg').getAttribute('viewBox')")
        spec.write_text(SMALL.replace("Mill Lane", "Hill Lane"), encoding="utf-8")
        page.wait(f"document.querySelector('h1') && {title} === 'House on Hill Lane'")
        page.wait("document.querySelector('.sheet.shown') !== null")
        assert page.run("document.querySelector('.sheet.shown svg').getAttribute('viewBox')") == view
        spec.write_text(SMALL.replace("modules_in_series", "modules_in_serie"), encoding="utf-8")
        page.wait(f"document.getElementById('errors') && {errors}.includes('modules_in_serie')")
        assert page.run(title) == "House on Hill Lane"
        assert page.run("document.querySelectorAll('.sheet svg').length") >= 1
        spec.write_text(SMALL, encoding="utf-8")
        page.wait(f"document.querySelector('h1') && {title} === 'House on Mill Lane'")
        assert page.run(errors) == ""


@pytest.mark.skipif(not CHROMIUM.exists(), reason="needs /usr/bin/chromium")
def test_a_spec_that_was_never_good_shows_why_until_it_is(spec: Path) -> None:
    spec.write_text("project: {titel: House}\n", encoding="utf-8")
    with watching(spec) as process:
        assert process.stdout
        address = process.stdout.readline().strip()
        with Browser() as page:
            page.open(address)
            assert "unknown key `titel`" in page.run("document.getElementById('errors').innerText")
            spec.write_text(SMALL, encoding="utf-8")
            page.wait("document.querySelectorAll('.sheet svg').length > 0")
        process.send_signal(signal.SIGINT)


def test_what_is_not_there_or_taken_is_told(spec: Path) -> None:
    gone = CliRunner().invoke(app, ["watch", "nix.yaml"])
    assert (gone.exit_code, gone.stdout) == (2, "")
    assert gone.stderr == "nix.yaml: there is no such file\n"
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        refused = CliRunner().invoke(app, ["watch", str(spec), "--port", port])
    assert refused.exit_code == 2
    assert f"port {port}: " in refused.stderr

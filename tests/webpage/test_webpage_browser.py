"""The page in a real browser: read, clicked and typed into as somebody does who has nothing but the file."""

from __future__ import annotations

import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from real_browser import CHROMIUM, Browser

import sld

ROOT = Path(__file__).parents[2]
FARM = ROOT / "specs" / "upper-farm-faulty.yaml"
pytestmark = pytest.mark.skipif(not CHROMIUM.exists(), reason="needs /usr/bin/chromium")


@pytest.fixture(scope="module")
def farm() -> sld.Design:
    return sld.load(FARM)


@pytest.fixture(scope="module")
def file(farm: sld.Design, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("page")
    return farm.draw().save(folder, "html").files[0]


@pytest.fixture(scope="module")
def window() -> Iterator[Browser]:
    with Browser() as browser:
        yield browser


@pytest.fixture
def page(window: Browser, file: Path) -> Browser:
    window.open("about:blank")
    window.open(file.as_uri())
    return window


TOLD = "document.getElementById('device').innerText"
SHOWN = "document.querySelector('.sheet.shown').id"
SEEN = "document.querySelector('.sheet.shown svg').getAttribute('viewBox')"
MARKED = "document.querySelector('.mark + g').getAttribute('aria-label')"


def searched(page: Browser, text: str) -> None:
    page.run("document.getElementById('search').focus()")
    page.write(text)
    page.key("Enter")


def test_it_opens_without_a_complaint_and_asks_nobody(page: Browser, file: Path) -> None:
    assert page.complaints() == []
    assert page.requests() == [file.as_uri()]
    assert page.run(SHOWN) == "sheet-1"


def test_its_policy_keeps_it_from_asking(page: Browser) -> None:
    assert page.run("fetch('http://127.0.0.1:9/').then(() => 'asked', () => 'refused')") == "refused"
    assert any("Content Security Policy" in each for each in page.complaints())


def test_search_leads_to_the_device_and_its_ratings(page: Browser, farm: sld.Design) -> None:
    searched(page, "-tb2-wd1")
    assert page.run(MARKED).startswith("-TB2-WD1 ")
    told = page.run(TOLD)
    rating = farm.rating("-TB2-WD1", "Iz")
    assert f"{rating.quantity()} (computed)" in told
    assert str(rating.formula) in told
    assert page.run(SEEN) != "0 0 594 420"
    assert page.run("location.hash") == f"#s1-{farm.key('-TB2-WD1')}"


def test_search_for_what_is_not_there_says_so(page: Browser) -> None:
    searched(page, "-ZZ9")
    assert page.run("document.getElementById('matches').innerText") == "Nothing of that name"


def test_a_finding_leads_to_its_device(page: Browser) -> None:
    page.click("#findings a")
    name = page.run("document.querySelector('#findings a').textContent")
    assert page.run(MARKED).startswith(f"{name} ")
    first = page.run("document.querySelector('#findings li p').innerText")
    assert first in page.run(TOLD)


def test_a_click_on_a_symbol_tells_its_ratings(page: Browser, farm: sld.Design) -> None:
    page.click(f"[id='s1-{farm.key('-TB1-FC1')}']")
    assert page.run(TOLD).startswith("-TB1-FC1 circuit-breaker")
    assert f"{farm.rating('-TB1-FC1', 'In').quantity()} (given)" in page.run(TOLD)


def test_keys_and_buttons_bring_the_sheet_closer(page: Browser) -> None:
    whole = page.run(SEEN)
    page.run("document.querySelector('main').focus()")
    page.key("+")
    closer = [float(each) for each in page.run(SEEN).split()]
    assert closer[2] == pytest.approx(float(whole.split()[2]) / 1.5, rel=1e-3)
    page.key("0")
    assert [float(each) for each in page.run(SEEN).split()] == [float(each) for each in whole.split()]
    page.click("#tools button:nth-of-type(2)")
    assert float(page.run(SEEN).split()[2]) > float(whole.split()[2])


def test_the_sheet_follows_the_pointer(page: Browser) -> None:
    before = [float(each) for each in page.run(SEEN).split()]
    page.mouse("mousePressed", 400, 400)
    for x in (420, 440, 460):
        page.mouse("mouseMoved", x, 400, buttons=1)
    page.mouse("mouseReleased", 460, 400)
    after = [float(each) for each in page.run(SEEN).split()]
    assert after[0] < before[0]
    assert after[1:] == pytest.approx(before[1:])


def test_a_symbol_is_reached_and_chosen_by_keys(page: Browser) -> None:
    page.run("document.querySelector('.sheet.shown .symbol[tabindex]').focus()")
    page.key("Enter")
    name = page.run("document.activeElement.getAttribute('aria-label').split(' ')[0]")
    assert page.run(TOLD).startswith(f"{name} ")


def test_an_address_with_a_device_opens_at_it(page: Browser, file: Path, farm: sld.Design) -> None:
    page.open("about:blank")
    page.open(f"{file.as_uri()}#s1-{farm.key('-TB2')}")
    assert page.run(MARKED).startswith("-TB2 ")


def test_without_its_program_and_on_paper_the_sheets_stand_below_each_other(file: Path, farm: sld.Design) -> None:
    with Browser(scripts=False) as plain:
        plain.open(file.as_uri())
        printed = plain.pdf()
    paper = file.with_suffix(".pdf")
    paper.write_bytes(printed)
    told = subprocess.run(["pdfinfo", paper], capture_output=True, text=True, check=True).stdout
    sheets = farm.draw().sheets
    assert f"Pages:           {len(sheets)}\n" in told
    text = " ".join(
        subprocess.run(["pdftotext", paper, "-"], capture_output=True, text=True, check=True).stdout.split()
    )
    assert "-TB2-WD1" in text
    assert "Search for a designation" not in text

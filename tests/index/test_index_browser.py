"""The index in a real browser, opened from a disk: pictures, search and filter as a reader uses them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from command import SMALL, sld
from real_browser import CHROMIUM, Browser

from sld.index.page import Entry, item, page

pytestmark = pytest.mark.skipif(not CHROMIUM.exists(), reason="needs /usr/bin/chromium")

SHOWN = (
    "[...document.querySelectorAll('#specs > li')].filter(e => e.offsetParent)"
    ".map(e => e.querySelector('h2').innerText)"
)
COUNT = "document.getElementById('shown').innerText"


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The index of three specs in a folder with a name that addresses have to be careful with."""
    folder = tmp_path_factory.mktemp("index #1 %41 ü")
    for name, text in {
        "hall": SMALL,
        "barn": SMALL.replace("Mill Lane", "<b>Upper</b> Farm").replace(
            "modules_in_series: 8", "modules_in_series: 30"
        ),
        "wrong": SMALL.replace("phases: 1, voltage", "phase: 1, voltage"),
    }.items():
        (folder / "specs" / "a#b").mkdir(parents=True, exist_ok=True)
        (folder / "specs" / "a#b" / f"{name}.yaml").write_text(text, encoding="utf-8")
    sld(
        "draw",
        folder / "specs",
        "-o",
        folder / "out",
        "--to",
        "svg",
        "--jobs",
        1,
        "--index",
        folder / "out" / "all.html",
    )
    return folder / "out" / "all.html"


@pytest.fixture(scope="module")
def window() -> Iterator[Browser]:
    with Browser() as browser:
        yield browser


@pytest.fixture
def index(window: Browser, file: Path) -> Browser:
    window.open("about:blank")
    window.open(file.as_uri())
    return window


def test_it_opens_from_a_disk_with_its_pictures(index: Browser, file: Path) -> None:
    index.wait("[...document.images].every(e => e.complete)")
    assert index.complaints() == []
    assert index.run("[...document.images].map(e => e.naturalWidth > 100)") == [True, True]
    assert index.run(SHOWN) == [
        "House on <b>Upper</b> Farm",
        "House on Mill Lane",
        f"{file.parents[1]}/specs/a#b/wrong.yaml",
    ]
    assert all(each.startswith(file.parent.as_uri()) for each in index.requests())


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("mill", ["House on Mill Lane"]),
        ("upper HOUSE", ["House on <b>Upper</b> Farm"]),
        ("dc01", ["House on <b>Upper</b> Farm"]),
        ("sp30", ["wrong.yaml"]),
        ("nothing of that name", []),
    ],
)
def test_search(index: Browser, text: str, shown: list[str]) -> None:
    """A search is for all of its words: titles, files, codes of findings, and why a spec is not drawn."""
    index.run("document.getElementById('search').focus()")
    index.write(text)
    assert [each.rpartition("/")[2] if "yaml" in each else each for each in index.run(SHOWN)] == shown
    assert index.run(COUNT) == f"{len(shown)} of 3"


def test_filter_by_state(index: Browser) -> None:
    index.click("input[value='with findings']")
    assert len(index.run(SHOWN)) == 2
    index.click("input[value=unusable]")
    assert index.run(SHOWN) == ["House on Mill Lane"]
    index.click("input[value='with findings']")
    assert index.run(COUNT) == "2 of 3"


def test_a_picture_leads_to_the_sheet(index: Browser, file: Path) -> None:
    index.click("#specs li a")
    index.wait("document.querySelector('svg') !== null")
    assert index.run("location.href") == (file.parent / "a#b" / "barn.svg").as_uri()


def test_a_long_run_is_shown_by_and_by(window: Browser, tmp_path: Path) -> None:
    items = [item(Entry(f"s{number}.yaml", "clean", f"House {number}")) for number in range(300)]
    (tmp_path / "all.html").write_text("".join(page(items, {"clean": 300}, "300 checked")), encoding="utf-8")
    window.open((tmp_path / "all.html").as_uri())
    assert (len(window.run(SHOWN)), window.run(COUNT)) == (120, "300 of 300")
    window.click("#more")
    assert len(window.run(SHOWN)) == 240
    window.run("document.getElementById('search').focus()")
    window.write("299")
    assert window.run(SHOWN) == ["House 299"]
    assert window.run("document.getElementById('more').hidden")


def test_without_its_program_all_specs_are_there(file: Path) -> None:
    with Browser(scripts=False) as browser:
        browser.open(file.as_uri())
        assert len(browser.run(SHOWN)) == 3
        assert not browser.run("document.getElementById('choice').offsetParent")

"""`import sld` is light, and what it offers is documented, typed and there."""

from __future__ import annotations

import doctest
import inspect
import re
import subprocess
import sys
import time
from pathlib import Path

import pytest

import sld

ROOT = Path(__file__).resolve().parents[2]
LIBRARIES = {"pydantic", "yaml", "fontTools", "cairocffi", "cairosvg", "schemdraw", "ezdxf", "babel", "PIL", "typer"}
MOST_MS = 60.0
"""What importing may take, as the plan of the house has it. Nothing is loaded, so that about 1 ms is usual."""


def _python(code: str) -> tuple[str, float]:
    """Return what a fresh interpreter prints, and how long it takes [ms]."""
    start = time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-W", "error", "-c", code], capture_output=True, text=True, cwd=ROOT, check=True
    )
    return done.stdout, (time.perf_counter() - start) * 1000


def test_importing_loads_nothing_else() -> None:
    """The judge that no busy machine disturbs: neither a library nor another module of the package is loaded."""
    bare = set(_python("import sys; print(*sys.modules)")[0].split())
    loaded = set(_python("import sys, sld; print(*sys.modules)")[0].split()) - bare
    assert not {name.split(".")[0] for name in loaded} & LIBRARIES
    assert {name for name in loaded if name.split(".")[0] == "sld"} == {"sld"}
    assert {name.split(".")[0] for name in loaded} <= {"sld", *sys.stdlib_module_names}


def test_importing_takes_no_time() -> None:
    """The best of seven fresh interpreters beside the best of seven without the import, taken in turns."""
    bare, with_it = [], []
    for _ in range(7):
        bare.append(_python("pass")[1])
        with_it.append(_python("import sld")[1])
    assert min(with_it) - min(bare) < MOST_MS


def test_a_text_is_checked_without_a_drawing_library() -> None:
    code = "import sys, sld\ntry: sld.load(text='a: 1')\nexcept sld.Unusable: print(*sys.modules)"
    loaded = {name.split(".")[0] for name in _python(code)[0].split()}
    assert {"yaml", "pydantic"} <= loaded
    assert not loaded & {"schemdraw", "cairocffi", "cairosvg", "fontTools", "ezdxf", "PIL"}


@pytest.mark.parametrize("name", [name for name in sld.__all__ if not name.startswith("__")])
def test_every_public_name_is_there_and_says_what_it_is(name: str) -> None:
    found = getattr(sld, name)
    assert found.__name__ == name
    assert inspect.getdoc(found)
    if found.__module__.startswith("sld.door") and inspect.isclass(found):
        public = [value for each, value in vars(found).items() if not each.startswith("_")]
        asked = [value for value in public if inspect.isfunction(value) or isinstance(value, property)]
        assert asked or found is sld.Saved
        assert all(inspect.getdoc(value) for value in asked)


def test_the_names_are_listed() -> None:
    assert sorted(sld.__all__) == sorted({*sld._HOMES, "__version__"})  # type: ignore[attr-defined]
    assert set(sld.__all__) <= set(dir(sld))
    with pytest.raises(AttributeError, match="laod"):
        sld.laod  # type: ignore[attr-defined] # noqa: B018


def test_type_checkers_see_the_same_homes() -> None:
    """What is imported for type checking alone is what is imported when a name is used."""
    text = (ROOT / "sld" / "__init__.py").read_text(encoding="utf-8")
    typed = re.findall(r"^    from (sld\S+) import (.+)$", text, re.MULTILINE)
    assert {name: home for home, names in typed for name in names.split(", ")} == sld._HOMES  # type: ignore[attr-defined]


def test_the_examples_of_the_docstring_run(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    result = doctest.testmod(sld)
    assert result.failed == 0
    assert result.attempted >= 4


@pytest.mark.parametrize("page", ["README.md", "DEVELOPERS.md"])
def test_the_examples_of_the_pages_run(page: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As a reader would type them, in a folder beside `specs/`."""
    (tmp_path / "specs").symlink_to(ROOT / "specs")
    monkeypatch.chdir(tmp_path)
    examples = re.findall(r"```python\n(.*?)```", (ROOT / page).read_text(encoding="utf-8"), re.DOTALL)
    assert examples
    for example in examples:
        exec(compile(example, page, "exec"), {})

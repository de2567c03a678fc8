"""Types from open tables against the library that carries them."""

from __future__ import annotations

from pathlib import Path

import pvlib
from typer.testing import CliRunner, Result

from sld.cli.app import app
from sld.datasheets.open_tables import found
from sld.datasheets.record import faults


def typed(*arguments: object) -> Result:
    return CliRunner().invoke(app, ["types", *map(str, arguments)], catch_exceptions=False)


def test_open_tables_give_the_values_that_the_library_gives() -> None:
    """The tables of the System Advisor Model as `pvlib.pvsystem.retrieve_sam` reads them, columns by their names."""
    modules = pvlib.pvsystem.retrieve_sam("CECMod")
    records = [each for _, each in zip(range(40), found(["72", "300"], ["modules"]), strict=False)]
    assert len(records) > 10
    for record in records[:10]:
        line = int(record.source.rsplit(" ", 1)[1])
        of_library = modules.iloc[:, line - 4]  # three lines of headings, lines counted from 1
        assert record.values["open_circuit_voltage"] == f"{of_library['V_oc_ref']:.7g} V"
        assert record.values["mpp_current"] == f"{of_library['I_mp_ref']:.7g} A"
        assert record.values["single_diode"]["modified_ideality"] == f"{of_library['a_ref']:.7g} V"
        assert faults(record) == []


def test_open_inverters_lack_what_the_table_lacks(tmp_path: Path) -> None:
    words = ["3000", "240V"]
    name = next(found(words, ["inverters"])).name
    result = typed("find", *name.split(), "--kind", "inverters", "-o", tmp_path / "t.yaml")
    assert result.exit_code == 0
    assert "lacks phases, inputs.short_circuit_current_max" in result.stderr
    text = (tmp_path / "t.yaml").read_text(encoding="utf-8")
    assert "# pvlib " in text
    assert "# phases:  # needed, not in the table" in text

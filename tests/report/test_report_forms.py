"""The forms for machines, held against published schemas by a general validator, and against each other."""

from __future__ import annotations

import json
import sys
from functools import cache
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as Xml

import jsonschema
import pytest

sys.path.append(str(Path(__file__).parents[1] / "cli"))

from command import FARM, HALL, SMALL, sld

from sld.report.schema import schema

PUBLISHED = json.loads((Path(__file__).parent / "published" / "sarif-schema-2.1.0.json").read_text(encoding="utf-8"))
BAD = SMALL.replace("phases: 1, voltage", "phase: 1, voltage")


@cache
def checked(form: str, *more: str) -> str:
    return sld("check", FARM, HALL, "--jobs", 1, "--format", form, *more).stdout


@pytest.fixture
def odd(tmp_path: Path) -> Path:
    """A spec that cannot be used, with a name that addresses and XML have to be careful with."""
    path = tmp_path / "a b#%41 <ü>\x07.yaml"
    path.write_text(BAD.replace("Plain 400", "Pl\u0001ain & < 400"), encoding="utf-8")
    return path


def closed(part: Any) -> Any:
    """The schema with no key allowed that it does not name: a key of the output that nobody described is found."""
    if isinstance(part, list):
        return [closed(each) for each in part]
    if not isinstance(part, dict):
        return part
    more = {"additionalProperties": False} if "properties" in part and "required" in part else {}
    return {key: closed(each) for key, each in part.items()} | more


def of_ours(data: Any) -> None:
    jsonschema.Draft202012Validator(closed(schema())).validate(data)


def test_the_json_is_what_its_schema_says() -> None:
    jsonschema.Draft202012Validator.check_schema(schema())
    data = json.loads(checked("json"))
    of_ours(data)
    data["specs"][0]["findings"][0]["odd"] = 1
    with pytest.raises(jsonschema.ValidationError, match="odd"):
        of_ours(data)


def test_a_key_that_is_described_is_written() -> None:
    """In one run over specs with every kind of outcome."""
    written = {key for spec in json.loads(checked("json"))["specs"] for key in spec}
    assert written == set(schema()["$defs"]["spec"]["properties"]) - {"fault"}


def test_lines_of_json_are_the_specs_of_the_whole() -> None:
    assert [json.loads(line) for line in checked("jsonl").splitlines()] == json.loads(checked("json"))["specs"]
    assert checked("jsonl").isascii()


def test_sarif_is_what_the_published_schema_says(odd: Path) -> None:
    """OASIS, SARIF 2.1.0 with errata 01; draft 4 of JSON Schema, as it says itself."""
    validator = jsonschema.Draft4Validator(PUBLISHED, format_checker=jsonschema.FormatChecker())
    logs = [json.loads(checked("sarif")), json.loads(sld("check", odd, "--format", "sarif").stdout)]
    for log in logs:
        validator.validate(log)
    del logs[0]["runs"][0]["results"][0]["message"]
    with pytest.raises(jsonschema.ValidationError, match="message"):
        validator.validate(logs[0])


def test_sarif_tells_each_finding_at_its_place() -> None:
    (run,) = json.loads(checked("sarif"))["runs"]
    findings = [each for spec in json.loads(checked("json"))["specs"] for each in spec["findings"]]
    assert len(run["results"]) == len(findings) > 50
    levels = set()
    for result, finding in zip(run["results"], findings, strict=True):
        assert run["tool"]["driver"]["rules"][result["ruleIndex"]]["id"] == result["ruleId"] == finding["code"]
        place = result["locations"][0]["physicalLocation"]
        assert place["artifactLocation"]["uri"] == Path(finding["file"]).as_uri()
        assert place["region"] == {
            "startLine": finding["line"], "startColumn": finding["column"], "endColumn": finding["end_column"],
        }  # fmt: skip
        assert finding["message"] in result["message"]["text"]
        assert finding["remedy"] in result["message"]["text"]
        assert bool(finding["accepted"]) == ("suppressions" in result)
        levels.add((finding["severity"], result["kind"], result["level"]))
    assert levels == {
        ("danger", "fail", "error"), ("non-compliance", "fail", "error"), ("advice", "fail", "note"),
        ("assumption", "informational", "none"),
    }  # fmt: skip
    assert run["invocations"][0]["executionSuccessful"]


def test_sarif_knows_a_finding_again_when_lines_are_added(tmp_path: Path) -> None:
    known = []
    for text in (SMALL, "# a line more\n" + SMALL):
        (tmp_path / "s.yaml").write_text(
            text.replace("modules_in_series: 8", "modules_in_series: 30"), encoding="utf-8"
        )
        (run,) = json.loads(sld("check", tmp_path / "s.yaml", "--format", "sarif").stdout)["runs"]
        known.append([each["partialFingerprints"] for each in run["results"]])
    assert known[0] == known[1]
    assert len({json.dumps(each) for each in known[0]}) == len(known[0]) > 2


@pytest.mark.parametrize(("fail_on", "failing"), [("danger", 1), ("non-compliance", 2), ("advice", 3), ("never", 0)])
def test_junit_counts_what_makes_the_exit_code(fail_on: str, failing: int) -> None:
    """failing: how many of the severities, the worst first, are failures."""
    suites = Xml.fromstring(checked("junit", "--fail-on", fail_on))
    specs = json.loads(checked("json"))["specs"]
    assert [each.get("name") for each in suites] == [str(FARM), str(HALL)]
    for suite, spec in zip(suites, specs, strict=True):
        counts = [spec["counts"][word] for word in ("danger", "non_compliance", "advice")]
        assert int(suite.get("failures", "")) == len(suite.findall("testcase/failure")) == sum(counts[:failing])
        assert int(suite.get("skipped", "")) == len(suite.findall("testcase/skipped")) == spec["counts"]["accepted"]
        assert int(suite.get("tests", "")) == len(suite) == 1 + len(spec["findings"])
        assert len({each.get("classname") for each in suite}) == 1
    assert suites.get("failures") == str(sum(int(each.get("failures", "")) for each in suites))


def test_junit_of_a_spec_that_cannot_be_used(odd: Path) -> None:
    result = sld("check", odd, "--format", "junit")
    assert result.exit_code == 2
    (suite,) = Xml.fromstring(result.stdout)
    assert int(suite.get("errors", "")) == len(suite.findall("testcase/error")) == len(suite) > 0
    assert "\\x07" in suite.get("name", "")


def test_a_spec_whose_check_was_ended_is_in_every_form(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from sld import run

    def broken(path: Path, **_: object) -> None:
        raise ZeroDivisionError("by nothing")

    monkeypatch.setattr(run, "check", broken)
    told = {form: sld("check", HALL, "--format", form).stdout for form in ("json", "jsonl", "sarif", "junit")}
    of_ours(json.loads(told["json"]))
    assert json.loads(told["jsonl"])["fault"].startswith("ZeroDivisionError: by nothing")
    (sarif_run,) = json.loads(told["sarif"])["runs"]
    jsonschema.Draft4Validator(PUBLISHED).validate(json.loads(told["sarif"]))
    assert not sarif_run["invocations"][0]["executionSuccessful"]
    assert "by nothing" in sarif_run["invocations"][0]["toolExecutionNotifications"][0]["message"]["text"]
    assert "by nothing" in Xml.fromstring(told["junit"]).findall("testsuite/testcase/error")[0].get("message", "")

"""JUnit XML, which build servers list as tests: a suite a spec, a case a finding.

The form is no standard; this is what its readers have in common. A finding that makes the exit code 1 is a failure,
input that cannot be used an error, an accepted one is skipped with its reason; others have passed.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any
from xml.etree import ElementTree as Xml

from sld.spec.visible import visible

__all__ = ["junit"]

_USABLE = "can be used"


def junit(specs: Sequence[Mapping[str, Any]], fails: Callable[[str], bool]) -> str:
    """Return the report of a check, in ASCII, so that it is UTF-8 too. specs: what came of each, in the JSON form.

    fails: by the word of a severity.
    """
    suites = Xml.Element("testsuites", name="sld check")
    for spec in specs:
        _suite(suites, spec, fails)
    for count in ("tests", "failures", "errors"):
        suites.set(count, str(sum(int(each.get(count, 0)) for each in suites)))
    Xml.indent(suites)
    text: bytes = Xml.tostring(suites, encoding="us-ascii", xml_declaration=False)
    return f"{text.decode('ascii')}\n"


def _suite(suites: Xml.Element, spec: Mapping[str, Any], fails: Callable[[str], bool]) -> None:
    name = _shown(spec["spec"])
    suite = Xml.SubElement(suites, "testsuite", name=name)
    if spec["usable"]:
        Xml.SubElement(suite, "testcase", classname=name, name=_USABLE)
    if "fault" in spec:
        case = Xml.SubElement(suite, "testcase", classname=name, name=_USABLE)
        Xml.SubElement(case, "error", type="fault", message=_shown(spec["fault"])).text = _shown(spec["fault"])
    for finding in spec["findings"]:
        _case(suite, name, finding, fails)
    for count, element in (("tests", "testcase"), ("failures", "failure"), ("errors", "error"), ("skipped", "skipped")):
        suite.set(count, str(len(list(suite.iter(element)))))


def _case(suite: Xml.Element, spec: str, finding: Mapping[str, Any], fails: Callable[[str], bool]) -> None:
    where = finding["device"] or ".".join(map(str, finding["path"]))
    case = Xml.SubElement(suite, "testcase", classname=spec, name=_shown(f"{finding['code']} {where}".strip()))
    place = f"{finding['file']}:{finding['line']}:{finding['column']}"
    text = f"{place}: {finding['severity']} {finding['code']} {finding['message']}\nto do: {finding['remedy']}"
    told = {"type": finding["code"], "message": _shown(finding["message"])}
    if finding["accepted"]:
        Xml.SubElement(case, "skipped", message=_shown(finding["accepted"]["reason"]))
    elif finding["severity"] == "error":
        Xml.SubElement(case, "error", told).text = _shown(text)
    elif fails(finding["severity"]):
        Xml.SubElement(case, "failure", told).text = _shown(text)
    else:
        Xml.SubElement(case, "system-out").text = _shown(text)


def _shown(text: str) -> str:
    """Return a text without the characters that XML has no way to say."""
    return visible(text, keep="\t\n")

"""The file of grid rules that a spec names: found like an included file, read, or refused at its place."""

from __future__ import annotations

from pathlib import Path

from sld.finding import Finding, Severity, SpecPath
from sld.frozen import replace
from sld.grid import GENERIC, BadGridFile, overridden, rules_of
from sld.grid.settings import same_set
from sld.spec.blocks.supply import Supply
from sld.spec.document import Spec
from sld.spec.include import find
from sld.spec.source import Source, Unusable, unusable_file
from sld.spec.span import Span, UnusableText
from sld.spec.text import decode, load

__all__ = ["unknown_sets", "with_grid_rules"]

_AT: SpecPath = ("supply", "grid_rules")


def unknown_sets(spec: Spec) -> list[Finding]:
    """Return a finding for each set of settings that is not among those of the country."""
    supply = spec.supply
    if supply.country is None or supply.grid_rules == GENERIC:
        return []
    known = [each.called for each in rules_of(supply.country).sets]
    found = []
    for name, inverter in spec.inverters.items():
        said = inverter.network_settings
        if said is None or any(same_set(each, said.set) for each in (*known, GENERIC)):
            continue
        message = f"there is no settings set `{said.set}` in the grid rules of {supply.country}"
        remedy = f"write one of {', '.join(known)}, or {GENERIC}"
        at: SpecPath = ("inverters", name, "network_settings", "set")
        found.append(Finding("SP28", Severity.DANGER, message, remedy, at))
    return found


def with_grid_rules(source: Source, supply: Supply, folder: Path | None, allow_outside: bool) -> Source:
    """Return the source with the rules of the country, replaced as the file that it names says. Raises Unusable."""
    name = supply.grid_rules or ""
    shown, text = str((folder or Path()) / name), ""
    try:
        found = find(name, source.locate(_AT), folder, allow_outside)
        text = decode(load(found, shown), shown)
        rules = overridden(rules_of(supply.country), text, shown)
    except UnusableText as unusable:
        finding = Finding(unusable.code, Severity.DANGER, unusable.message, unusable.remedy, _AT)
        raise Unusable(source, [finding]) from None
    except BadGridFile as bad:
        line = text.splitlines()[bad.line - 1] if text else ""
        span = Span(bad.file, bad.line, len(line) - len(line.lstrip()) + 1, max(len(line.strip()), 1))
        raise unusable_file(source, UnusableText("SP27", bad.reason, bad.remedy, span), text) from None
    return replace(source, grid_rules=rules, texts={**source.texts, shown: text})

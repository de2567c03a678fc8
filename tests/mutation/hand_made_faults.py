"""The faults that `hand_made.py` tries: in a module one piece of text for another, each as somebody could write it."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["FAULTS", "Fault"]

_LABELS, _NOTES = "sld/layout/diagram/labels.py", "sld/documents/drawing/notes.py"
_SYMBOL, _TALLY = "sld/layout/diagram/symbol_of.py", "sld/finding.py"
_APPARATUS, _CORES = "sld/layout/diagram/apparatus.py", "sld/layout/diagram/conductors.py"
_SCHEDULES, _LINKS = "sld/documents/drawing/schedules.py", "sld/documents/drawing/data_bus.py"
_TITLE, _TITLE_BLOCK = "sld/documents/title.py", "sld/sheet/title_block.py"
_INVERTERS, _SUMMARY = "sld/documents/drawing/inverters.py", "sld/documents/drawing/summary.py"
_FOLD, _EQUALS, _SVG = "sld/layout/diagram/fold.py", "sld/layout/diagram/equals.py", "sld/render/svg.py"
_INK, _LINES = "sld/sheet/ink.py", "sld/sheet/conductor.py"


@dataclass(frozen=True, slots=True)
class Fault:
    """What is done: in a module one piece of text for another."""

    name: str
    path: str
    right: str
    wrong: str


FAULTS = (
    Fault("power of one string for a group", _LABELS, "Symbol.PSTRING].value * given.count", "Symbol.PSTRING].value"),
    Fault("number of strings left out", _LABELS, 'amount(given.count, "×")] if given.count > 1 else []', "][:0]"),
    Fault("number of modules", _LABELS, "amount(given.modules_in_series", "amount(given.modules_in_series + 1"),
    Fault("≤ whatever the comparison", _LABELS, '">" if exceeded else "≤"', '"≤"'),
    Fault("no danger where a limit is exceeded", _LABELS, "Role.DANGER if exceeded else Role.LIMIT", "Role.LIMIT"),
    Fault("one core too many in the label", _CORES,
          "count, unit = cores(system, device),", "count, unit = cores(system, device) + 1,"),
    Fault("one core too few in the symbol", _SYMBOL,
          "cable_{cores(system, device)}", "cable_{cores(system, device) - 1}"),
    Fault("what is needed for what the device has, surge protection", _APPARATUS,
          'stated = rated(ratings.get(device.key, Symbol.UC), "Uc")', "stated = None"),
    Fault("what is needed for what the device has, protection level", _APPARATUS,
          "ratings.get(device.key, Symbol.UP) or ratings", "ratings"),
    Fault("meter symbols swapped", _SYMBOL, "device.kind.symbol_of(device.given)",
          '{"meter": "meter_bidirectional"}.get(name := device.kind.symbol_of(device.given), name)'),
    Fault("meter symbols swapped, the other", _SYMBOL, "device.kind.symbol_of(device.given)",
          '{"meter_bidirectional": "meter"}.get(name := device.kind.symbol_of(device.given), name)'),
    Fault("three-phase drawn as single-phase", _SYMBOL,
          'phases = "3ph" if device.type.phases == 3', 'phases = "1ph" if device.type.phases == 3'),
    Fault("storage: three-phase drawn as single-phase", _SYMBOL,
          '"reversible_converter_3ph" if', '"reversible_converter_1ph" if'),
    Fault("dangers left out of the count", _TALLY, "if self.danger else ()", "if not self.danger else ()"),
    Fault("accepted left out of the count", _TALLY, "if self.accepted else ()", "if not self.accepted else ()"),
    Fault("from and to swapped, data links", _LINKS,
          "(link.from_device, link.to_device)", "(link.to_device, link.from_device)"),
    Fault("from and to swapped, cables", _SCHEDULES, "designated(*ends)", "designated(*reversed(ends))"),
    Fault("drawn and checked swapped", _TITLE,
          'each.drawn or "", each.checked or ""', 'each.checked or "", each.drawn or ""'),
    Fault("drawn and checked swapped on the sheet", _TITLE_BLOCK, "r.drawn, r.checked)", "r.checked, r.drawn)"),
    Fault("creator and approval person swapped", _TITLE,
          'creator=project.drawn_by or ""', 'creator=project.approved_by or ""'),
    Fault("building notes on ground-mounted arrays", _NOTES, 'system.site.building != "ground_mounted"', "True"),
    Fault("length in the wrong unit", _SCHEDULES,
          'amount(cable.given.length_m, "m")', 'amount(cable.given.length_m / 1000, "m")'),
    Fault("dashes unscaled, SVG", "sld/render/svg.py", "_number(part * stroke.width_mm)", "_number(part)"),
    Fault("dashes unscaled, page", "sld/render/page.py", "part * stroke.width_mm for part", "part for part"),
    Fault("dashes unscaled, DXF", "sld/render/dxf.py", "part * width_mm for part", "part for part"),
    Fault("arcs swept the wrong way, SVG", "sld/render/svg.py", "1 if turn >= 0 else 0", "0 if turn >= 0 else 1"),
    Fault("arcs swept the wrong way, page", "sld/render/page.py",
          "stroke.end_deg >= stroke.start_deg", "stroke.end_deg < stroke.start_deg"),
    Fault("arcs swept the wrong way, DXF", "sld/render/dxf.py", "sorted((-stroke.start_deg, -stroke.end_deg))",
          "sorted((stroke.start_deg, stroke.end_deg))"),
    Fault("least test voltage for the alarm", _APPARATUS,
          "alarm, least = ratings.get(device.key, Symbol.RALARM), ratings.get(device.key, Symbol.RISO_START)",
          "least, alarm = ratings.get(device.key, Symbol.RALARM), ratings.get(device.key, Symbol.RISO_START)"),
    Fault("neutral left out of the conductors of the supply", _LABELS,
          'f"{supply.phases}N" if supply.has_neutral', 'f"{supply.phases}N" if not supply.has_neutral'),
    Fault("short-circuit current of a board for its peak", _LABELS,
          "following(ratings.get(device.key, Symbol.IP), ", "following(ratings.get(device.key, Symbol.IK_MAX), "),
    Fault("voltages of a transformer turned round", _LABELS,
          'sequence([kilo(given.primary_voltage_v, "V"), low], " / ")',
          'sequence([low, kilo(given.primary_voltage_v, "V")], " / ")'),
    Fault("fuses of one string counted for a group", _APPARATUS,
          "device.count * fused_poles_count(system, device)", "fused_poles_count(system, device)"),
    Fault("neutral left out of the poles", _APPARATUS,
          "lines + has_neutral(system, device.owner)", "lines"),
    Fault("a micro-inverter in the symbol of three phases", _SYMBOL,
          '"microinverter_3ph" if device.type.phases == 3', '"microinverter_3ph" if device.type.phases != 3'),
    Fault("separation drawn where there is none", _SYMBOL,
          'if device.type.galvanic_separation', 'if not device.type.galvanic_separation'),
    Fault("a string in the symbol of an array", _SYMBOL, "device.given.count > 1", "device.given.count > 0"),
    Fault("one branch too few told", _FOLD, 'amount(len(run), "×")', 'amount(len(run) - 1, "×")'),
    Fault("one inverter too few told", _EQUALS, 'amount(len(copies) + 1, "×")', 'amount(len(copies), "×")'),
    Fault("flags of the branches that are not drawn left out", _FOLD,
          "for cell in alike for number in cell.flags", "for cell in alike[:1] for number in cell.flags"),
    Fault("voltages of the MPP tracking turned round", _INVERTERS,
          "lowest=amount(type_.mpp_voltage_min_v)", "lowest=amount(type_.mpp_voltage_max_v)"),
    Fault("voltage of one module for a string", _SCHEDULES,
          "amount(said.modules_in_series * module.open_circuit_voltage_v)", "amount(module.open_circuit_voltage_v)"),
    Fault("current carried for the least current", _SCHEDULES,
          "amount(least.value) if least else _NONE", "amount(carries.value) if carries else _NONE"),
    Fault("far end of a cable left out", _SCHEDULES,
          "designation for key in fed)]", "designation for key in fed[1:])]"),
    Fault("copper told as aluminium", _SCHEDULES,
          'cable.type.conductor == "aluminium"', 'cable.type.conductor == "copper"'),
    Fault("section of an earthing conductor for the least", _SCHEDULES, "of_rating(least),", "of_rating(section),"),
    Fault("first revision for the newest", _TITLE,
          "newest = project.revisions[-1]", "newest = project.revisions[0]"),
    Fault("day of the first revision for the newest", _TITLE,
          "(project.revisions[-1].date", "(project.revisions[0].date"),
    Fault("site and customer swapped", _TITLE, 'site=project.address or ""', 'site=project.customer or ""'),
    Fault("number and count of sheets swapped", _TITLE_BLOCK,
          'Cell(22, say(phrase("Sheet")), say(phrase("{number} of {count}", number=number, count=count)))',
          'Cell(22, say(phrase("Sheet")), say(phrase("{number} of {count}", number=count, count=number)))'),
    Fault("number and count of further sheets swapped", _TITLE_BLOCK,
          'Cell(23, say(phrase("Sheet")), say(phrase("{number} of {count}", number=number, count=count)))',
          'Cell(23, say(phrase("Sheet")), say(phrase("{number} of {count}", number=count, count=number)))'),
    Fault("three sources told as two", _NOTES, "len(sources) > 2 or", "len(sources) > 3 or"),
    Fault("memory told where there is a source", _NOTES,
          'note.status == "from memory"', 'note.status != "from memory"'),
    Fault("direct strokes left out", _NOTES, "if supply.direct_strokes else", "if not supply.direct_strokes else"),
    Fault("protection that is stated told as taken", _NOTES,
          '"interface_protection" in u.type.model_fields_set', '"interface_protection" not in u.type.model_fields_set'),
    Fault("modules of one string counted for a group", _SUMMARY,
          "group.given.count * group.given.modules_in_series", "group.given.modules_in_series"),
    Fault("terminated where it is not", _LINKS, "if not node.terminated", "if node.terminated"),
    Fault("what is future drawn as existing", _INK, 'if status == "existing":', 'if status != "existing":'),
    Fault("dashes of data lines exchanged", _LINES, "Medium.RS485: Dash.LONG_SHORT", "Medium.RS485: Dash.DOUBLE_DASH"),
    Fault("circles of future devices left open", _INK,
          "Dash.DASHED, closed=True, fill=s.fill", "Dash.DASHED, closed=False, fill=s.fill"),
    Fault("arcs about another middle", _SVG,
          "middle = (arc.start_deg + arc.end_deg) / 2", "middle = (arc.start_deg - arc.end_deg) / 2"),
)  # fmt: skip

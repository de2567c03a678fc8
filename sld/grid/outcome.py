"""What a limit leads to. Countries share the kinds; the name of the form or paper stands in the country's file."""

from __future__ import annotations

from enum import Enum

from sld.words import Phrase, counted, phrase

__all__ = ["Outcome", "Timing", "timing", "told"]


class Outcome(Enum):
    """What follows where the conditions of an entry hold."""

    NONE = "none"
    NOTIFY_AFTER = "notify_after"
    NOTIFY_BEFORE = "notify_before"
    REGISTER_ONLY = "register_only"
    SIMPLIFIED = "simplified"
    APPLY = "apply"
    ASK = "ask"
    """Procedures."""

    REGISTER = "register"
    SEVERAL_PREMISES = "several_premises"
    PLAN_APPROVAL = "plan_approval"
    FEED_IN_COMMITMENT = "feed_in_commitment"
    COUPLED_PHASES = "coupled_phases"
    EXPORT_CAP = "export_cap"
    CERTIFICATE_OF_CONFORMITY = "certificate_of_conformity"
    INSPECTION = "inspection"
    ACCESS_PERMIT = "access_permit"
    TECHNICAL_MEMO = "technical_memo"
    ENGINEERED_PROJECT = "engineered_project"
    SIGNED_DIAGRAM = "signed_diagram"
    LISTED_UNIT = "listed_unit"
    HARDWARE_POWER = "hardware_power"
    FIRE_AGREEMENT = "fire_agreement"
    FIRE_CUT_OFF = "fire_cut_off"
    THREE_LINE_DIAGRAM = "three_line_diagram"
    PROFESSIONAL_SIGN_OFF = "professional_sign_off"
    EXPORT_LIMIT_RECORD = "export_limit_record"
    COMMISSIONING_PROGRAMME = "commissioning_programme"
    REPORT_AFTER = "report_after"
    """Duties besides the procedure."""

    EXTERNAL_PROTECTION = "external_protection"
    BUILT_IN_PROTECTION = "built_in_protection"
    THREE_PHASES = "three_phases"
    BALANCE = "balance"
    """Of interface protection and imbalance."""


_SAID: dict[Outcome, Phrase] = {
    Outcome.NONE: phrase("no notice to the network operator is known to be asked for"),
    Outcome.NOTIFY_AFTER: phrase("connect, then notify the network operator"),
    Outcome.NOTIFY_BEFORE: phrase("notify the network operator"),
    Outcome.REGISTER_ONLY: phrase("register the plant; no application to the network operator"),
    Outcome.SIMPLIFIED: phrase("simplified application to the network operator"),
    Outcome.APPLY: phrase("apply to the network operator; connect only after its consent"),
    Outcome.ASK: phrase("no procedure is known here: ask the network operator"),
    Outcome.REGISTER: phrase("enter the plant in the national register"),
    Outcome.SEVERAL_PREMISES: phrase(
        "where the same installer has others within 500 m and 28 days: apply first, as for several premises"
    ),
    Outcome.PLAN_APPROVAL: phrase("approval of the plans by the inspectorate"),
    Outcome.FEED_IN_COMMITMENT: phrase(
        "an explicit commitment of the network operator to take the feed-in, with documents on protection and circuits"
    ),
    Outcome.COUPLED_PHASES: phrase("single-phase units coupled by communication, so that the lines stay balanced"),
    Outcome.EXPORT_CAP: phrase("feed-in held to a share of the module power until it can be controlled remotely"),
    Outcome.CERTIFICATE_OF_CONFORMITY: phrase("certificate of conformity of the installation"),
    Outcome.INSPECTION: phrase("inspection by a recognised body before it is put into service"),
    Outcome.ACCESS_PERMIT: phrase("permit of access and connection where a surplus is fed in"),
    Outcome.TECHNICAL_MEMO: phrase("technical memorandum by the installer"),
    Outcome.ENGINEERED_PROJECT: phrase("project by an engineer"),
    Outcome.SIGNED_DIAGRAM: phrase("single-line diagram, signed"),
    Outcome.LISTED_UNIT: phrase("each unit on the operators' list of accepted types before the procedure begins"),
    Outcome.HARDWARE_POWER: phrase("the rated power of the hardware counts; a limit by setting is not accepted for it"),
    Outcome.FIRE_AGREEMENT: phrase("project agreed with a fire expert, and notice to the fire service afterwards"),
    Outcome.FIRE_CUT_OFF: phrase("cut-off for the fire service where the service asks for it"),
    Outcome.THREE_LINE_DIAGRAM: phrase("three-line diagram besides this one; it is not made here"),
    Outcome.PROFESSIONAL_SIGN_OFF: phrase("signed off by a registered professional"),
    Outcome.EXPORT_LIMIT_RECORD: phrase("design and commissioning record of the export limitation"),
    Outcome.COMMISSIONING_PROGRAMME: phrase("commissioning programme to the network operator"),
    Outcome.REPORT_AFTER: phrase("commissioning record to the network operator"),
    Outcome.EXTERNAL_PROTECTION: phrase("interface protection by an external relay that opens a separate switch"),
    Outcome.BUILT_IN_PROTECTION: phrase("interface protection may be the one built into the inverters"),
    Outcome.THREE_PHASES: phrase("connection to three phases"),
    Outcome.BALANCE: phrase("lines to be balanced"),
}


def told(outcome: Outcome) -> Phrase:
    """Return what an outcome says."""
    return _SAID[outcome]


class Timing(Enum):
    """When something is to be done. The value: what is printed, without a number of days and with one."""

    BEFORE_WORK = "before work"
    BEFORE_COMMISSIONING = "before commissioning"
    AFTER_COMMISSIONING = "after commissioning"
    DESIGN = "design"

    def said(self, days: int | None) -> Phrase:
        """Return the words. days: the number of them, None where the rule names none."""
        match self:
            case Timing.BEFORE_WORK if days is None:
                return phrase("before work begins")
            case Timing.BEFORE_WORK:
                return counted("{count} day before work begins", "{count} days before work begins", days or 0)
            case Timing.BEFORE_COMMISSIONING if days is None:
                return phrase("before commissioning")
            case Timing.BEFORE_COMMISSIONING:
                return counted("{count} day before commissioning", "{count} days before commissioning", days or 0)
            case Timing.AFTER_COMMISSIONING if days is None:
                return phrase("after commissioning")
            case Timing.AFTER_COMMISSIONING:
                return counted(
                    "within {count} day after commissioning", "within {count} days after commissioning", days or 0
                )
        return phrase("with the design")


_TIMES: dict[Outcome, Timing] = {
    Outcome.NOTIFY_AFTER: Timing.AFTER_COMMISSIONING,
    Outcome.NOTIFY_BEFORE: Timing.BEFORE_WORK,
    Outcome.REGISTER_ONLY: Timing.BEFORE_COMMISSIONING,
    Outcome.SIMPLIFIED: Timing.BEFORE_WORK,
    Outcome.APPLY: Timing.BEFORE_WORK,
    Outcome.ASK: Timing.BEFORE_WORK,
    Outcome.REGISTER: Timing.AFTER_COMMISSIONING,
    Outcome.SEVERAL_PREMISES: Timing.BEFORE_WORK,
    Outcome.PLAN_APPROVAL: Timing.BEFORE_WORK,
    Outcome.FEED_IN_COMMITMENT: Timing.BEFORE_WORK,
    Outcome.CERTIFICATE_OF_CONFORMITY: Timing.BEFORE_COMMISSIONING,
    Outcome.INSPECTION: Timing.BEFORE_COMMISSIONING,
    Outcome.ACCESS_PERMIT: Timing.BEFORE_WORK,
    Outcome.TECHNICAL_MEMO: Timing.BEFORE_WORK,
    Outcome.ENGINEERED_PROJECT: Timing.BEFORE_WORK,
    Outcome.SIGNED_DIAGRAM: Timing.BEFORE_WORK,
    Outcome.LISTED_UNIT: Timing.BEFORE_WORK,
    Outcome.FIRE_AGREEMENT: Timing.BEFORE_WORK,
    Outcome.PROFESSIONAL_SIGN_OFF: Timing.BEFORE_WORK,
    Outcome.EXPORT_LIMIT_RECORD: Timing.BEFORE_COMMISSIONING,
    Outcome.COMMISSIONING_PROGRAMME: Timing.BEFORE_COMMISSIONING,
    Outcome.REPORT_AFTER: Timing.AFTER_COMMISSIONING,
}
"""When what an outcome asks for is to be done; the others are a matter of the design."""


def timing(outcome: Outcome) -> Timing:
    """Return when what an outcome asks for is to be done."""
    return _TIMES.get(outcome, Timing.DESIGN)

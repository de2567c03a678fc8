"""What a German reader sees of the same devices: words by what they stand beside, so that no two can be exchanged.

Terms of DIN VDE 0100-200 and of the titles of DIN EN standards as in the glossary of the catalogue; the other words are
common practice, no source.
"""

from __future__ import annotations

import re

import pytest
from printed_sheet import Drawing, drawing

TITLES = {
    "workshop": "title: Weir workshop",
    "cottage": "title: Moor cottage",
    "ranch": "title: Bend ranch",
    "yard": "title: Quarry yard",
}


def german(name: str, reader: str = "") -> Drawing:
    if name in ("ranch", "yard"):
        return drawing(name, reader, (TITLES[name], f"{TITLES[name]}, language: de"))
    return drawing(name, reader, (TITLES[name], f"{TITLES[name]}\n  language: de"))


LABELS = [
    ("workshop", "-GA1",
     "Lowmere network 3N PE ~ 50 Hz 400/230 V TN-S Ipf 8 kA, Ze 0,2 Ω "
     "Kabel nicht angegeben Nr. LM 5501 Einspeisung ≤ 25 kW vorhanden"),
    ("workshop", "-FC1", "100 A gG vorhanden"),
    ("cottage", "-TB4-FC1", "B 16 A 2P geplant"),
    ("workshop", "-TB1-FB1", "40 A 4P Typ B S 300 mA"),
    ("workshop", "-UC1-PG1", "Übergabezähler CT 100/5 A Nr. 77 31 yard (im Freien) vorhanden"),
    ("workshop", "-TB1-PG1", "Erzeugungszähler 60 A direkt"),
    ("workshop", "-TB1-QB1", "gable switch 32 A 4P nicht abschließbar"),
    ("workshop", "-TB2", "Orrin S3 3 kW, Ib 14 A an L2 yard (im Freien)"),
    ("workshop", "-TB2-XD1", "Uoc 396 ≤ 600 V Isc 13,4 ≤ 20 A"),
    ("workshop", "-TB2-QB1", "500 V 16 A DC-PV1 2P angenommen"),
    ("workshop", "-TB1-BU2", "900 V Alarm < 50 kΩ"),
    ("workshop", "-TB1-FC5", "C 16 A 4P 800 V Icn 6 kA nicht polarisiert zum Trennen geeignet"),
    ("cottage", "-TB1-FC5", "In ≥ 15 A 2P Un ≥ 264 V polarisiert"),
    ("workshop", "-TF1", "vorhanden"),
    ("workshop", "-WE1", "Staberder 25 mm² Cu, 6 m RA 12 Ω"),
    ("workshop", "-WE5",
     "Blitzschutzsystem 16 mm² Cu Klasse II, 4 Ableitungen Trennungsabstand NICHT eingehalten"),
]  # fmt: skip


@pytest.mark.parametrize(("spec", "designation", "text"), LABELS)
def test_beside_the_device_stands(spec: str, designation: str, text: str) -> None:
    assert german(spec).label(designation) == text


EQUIPMENT = [
    ("-FC1", "Hausanschlusssicherung", "vorhanden"),
    ("-UC1-PG1", "Zähler", "vorhanden"),
    ("-UC1-QB1", "Hauptschalter", "neu"),
    ("-UC1-FA1", "Überspannungsschutzgerät", "neu"),
    ("-UC1", "Verteiler", "neu"),
    ("-UC2-FC1", "Sicherungslasttrennschalter", "neu"),
    ("-TB1", "Wechselrichter", "neu"),
    ("-TB1-FC1", "Kompaktleistungsschalter", "neu"),
    ("-GB1-FC1", "Leitungsschutzschalter", "neu"),
    ("-EZ2-FC1", "Sicherung", "neu"),
    ("-TB1-BU1", "NA-Schutz", "neu"),
    ("-TB1-QA1", "Schütz", "neu"),
    ("-TB1-QB1", "Lasttrennschalter", "neu"),
    ("-TB1-QB2", "DC-Trennschalter", "neu"),
    ("-TB1-QB3", "DC-Lasttrennschalter", "neu"),
    ("-TB2-QB1", "DC-Lasttrennschalter", "angenommen"),
    ("-TB1-FC2…4", "Strangsicherung", "neu"),
    ("-TB1-BU2", "Isolationsüberwachungsgerät", "neu"),
    ("-TB1-XD3", "Steckverbinder", "neu"),
    ("-GB1", "Batterie", "neu"),
    ("-GA2", "Generator", "neu"),
    ("-EZ1", "Verbraucher", "vorhanden"),
    ("-EZ2", "Ladepunkt", "neu"),
    ("-XD1", "Anschlusskasten", "neu"),
    ("47 ×", "PV-Modul", "neu"),
]


@pytest.mark.parametrize(("designation", "device", "status"), EQUIPMENT)
def test_equipment(designation: str, device: str, status: str) -> None:
    row = german("workshop").row("Betriebsmittelliste", designation)
    told = row["Ort; Status, wenn nicht neu"]
    assert row["Gerät"] == device
    assert told.endswith(status) if status != "neu" else "neu" not in told


HEADINGS = [
    ("Strangliste", ["Kennzeichen", "Eingang", "Stränge × in Reihe, Modul, Leistung", "Uoc STC / max.", "Umpp,min",
                     "Isc STC / Bem.", "Ausrichtung, Ort"]),
    ("Leitungsliste", ["Kennzeichen", "Von – nach", "Leitung", "Länge", "Verlegt", "Iz,min / Iz", "Δu"]),
    ("Betriebsmittelliste", ["Kennzeichen", "Gerät", "Hersteller, Typ; Bemessungswerte",
                            "Ort; Status, wenn nicht neu"]),
    ("Klemmen und Leitungswege", ["Kennzeichen", "Gerät", "Klemmen", "Drehmoment", "Abisolieren", "Weg"]),
    ("Datenbus und Datenverbindungen",
     ["Linie", "Nr.", "Gerät, von – nach", "Adresse", "Protokoll, Medium; Baudrate; Leitung; Abschluss",
      "Schirm geerdet an", "Abfrage von", "Leitung vom Gerät davor", "Länge"]),
]  # fmt: skip


@pytest.mark.parametrize(("title", "headings"), HEADINGS)
def test_headings(title: str, headings: list[str]) -> None:
    assert german("workshop").table(title)[0] == headings


SUMMARY = [
    ("Stränge, DC-Leistung bei STC", "5, 14,57 kWp"),
    ("Höchste Uoc bei -15 °C", "440 V ≤ 900 V"),
    ("AC-Leistung; Scheinleistung mit Batterieumrichtern", "13 kW, 19 kVA"),
    ("Batterien, nutzbare Energie und Umrichter", "8 kWh, 5 kVA"),
    ("Einspeisebegrenzung", "25 kW"),
    ("Fehlerstrom und Schleife der Versorgung", "8 kA, 0,2 Ω"),
    ("Höchste Anhebung am Wechselrichter", "1,57 %, Ziel 1 %"),
    ("Zähler -UC1-PG1", "Nr. 77 31, yard (im Freien)"),
]


@pytest.mark.parametrize(("quantity", "value"), SUMMARY)
def test_summary(quantity: str, value: str) -> None:
    assert german("workshop").pairs("Zusammenfassung")[quantity] == value


FIELDS = [
    ("workshop", "Standort", "4 Weir Lane, Lowmere"),
    ("workshop", "Kunde", "Weir joinery"),
    ("workshop", "Regelprofil", "vorsichtig; GB: EREC G98, G99, Issue 1"),
    ("workshop", "Titel", "Weir workshop"),
    ("workshop", "Zusätzlicher Titel", "South and west roof"),
    ("workshop", "Identifikationsnummer", "WW-E-12"),
    ("workshop", "Dokumentenart", "Übersichtsschaltplan"),
    ("workshop", "Gesetzlicher Eigentümer", "Lowmere works office"),
    ("workshop", "Ersteller", "drawing desk"),
    ("workshop", "Genehmigt von", "chief engineer"),
    ("workshop", "Status", "for tender"),
    ("workshop", "Ausgabedatum", "09.03.2026"),
    ("workshop", "Rev.", "B"),
    ("workshop", "Sprache", "de"),
    ("workshop", "Papierformat", "A1"),
]


@pytest.mark.parametrize(("spec", "caption", "value"), FIELDS)
def test_field_of_the_title_block(spec: str, caption: str, value: str) -> None:
    assert german(spec).field(caption) == value


def test_who_drew_and_who_checked() -> None:
    assert german("workshop").revisions()[0] == {
        "Rev.": "A", "Änderung": "First issue", "Datum": "03.02.2026", "Gezeichnet": "KL", "Geprüft": "MN",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("word", "severity"),
    [("Gefahr", "danger"), ("Abweichung", "non-compliance"), ("Hinweis", "advice"), ("Annahme", "assumption")],
)
def test_findings_are_counted_under_the_same_severity_as_in_english(word: str, severity: str) -> None:
    counts = [re.search(rf"(\d+) {each}", sheet.field(caption))
              for each, sheet, caption in ((word, german("workshop"), "Befunde"),
                                           (severity, drawing("workshop"), "Findings"))]  # fmt: skip
    assert [each and each[1] for each in counts] == [counts[0] and counts[0][1]] * 2


# a contactor of 25 A behind a breaker of 32 A, a board of 125 A with 137 A: as in English
FINDINGS = [
    ("AC19*", "Gefahr"),
    ("DC14*", "Gefahr"),
    ("AC43*", "Abweichung"),
    ("AC30*", "Abweichung"),
    ("AC15", "Hinweis"),
    ("DC24", "Hinweis"),
]


@pytest.mark.parametrize(("code", "severity"), FINDINGS)
def test_severity_of_a_finding(code: str, severity: str) -> None:
    said = [text for text in german("workshop").flagged("Befunde").values() if text.startswith(f"{code} ")]
    assert said
    assert {text.split()[1] for text in said} == {f"{severity}:"}


def test_where_a_cable_is_laid_and_an_electrode() -> None:
    sheet = german("workshop")
    assert sheet.row("Leitungsliste", "-UC2-WD1")["Verlegt"] == (
        "D1, 2 Stromkreise, Abstand 0,25 m, 0,7 m tief, yard (im Freien)"
    )
    assert sheet.row("Erdungsleiter", "-WE1")["Von Erdungsschiene nach"] == (
        "Staberder, RA 12 Ω, im Erdreich, gegen Korrosion geschützt"
    )


def test_dates_and_numbers_are_written_as_in_german() -> None:
    """DIN 5008 lets a date be 04.05.2026; the decimal sign is a comma (DIN 1333)."""
    assert "Anlage errichtet am 04.05.2026, in Betrieb genommen am 11.05.2026." in " ".join(german("workshop").texts())
    assert "13,4 ≤ 20 A" in german("workshop").label("-TB2-XD1")


LEGEND = [
    ("workshop", "AC power", "AC-Leiter"),
    ("workshop", "DC power", "DC-Leiter"),
    ("workshop", "Data: wireless", "Daten: Funk"),
    ("workshop", "Earthing and bonding", "Erdung und Potentialausgleich"),
    ("workshop", "Enclosure", "Gehäuse"),
    ("workshop", "Connected", "Verbunden"),
    ("workshop", "New device", "Neues Gerät"),
    ("cottage", "Existing device or conductor (thinner line)", "Gerät oder Leiter, vorhanden (dünnere Linie)"),
    ("cottage", "Future device or conductor (dashed)", "Gerät oder Leiter, geplant (gestrichelt)"),
    ("workshop", "Switch-disconnector", "Lasttrennschalter"),
    ("workshop", "Disconnector", "Trennschalter"),
    ("workshop", "Fuse-switch-disconnector", "Sicherungslasttrennschalter"),
    ("workshop", "Miniature circuit-breaker", "Leitungsschutzschalter"),
    ("workshop", "Moulded-case circuit-breaker", "Kompaktleistungsschalter"),
    ("workshop", "Residual current device", "Fehlerstrom-Schutzeinrichtung (RCD)"),
    ("workshop", "Residual current circuit-breaker with overcurrent protection",
     "Fehlerstrom-/Leitungsschutzschalter (RCBO)"),
    ("workshop", "Energy meter", "Elektrizitätszähler"),
    ("workshop", "Energy meter for both directions", "Zweirichtungszähler"),
    ("workshop", "Energy meter with current transformers", "Elektrizitätszähler mit Stromwandlern"),
    ("workshop", "Inverter, three-phase", "Wechselrichter, dreiphasig"),
    ("workshop", "Inverter, single-phase, galvanically separated", "Wechselrichter, einphasig, galvanisch getrennt"),
    ("workshop", "Surge protective device, types 1 and 2", "Überspannungsschutzgerät, Typen 1 und 2"),
    ("workshop", "Surge protective device, type 2", "Überspannungsschutzgerät, Typ 2"),
    ("workshop", "PV string", "PV-Strang"),
    ("workshop", "PV array of several strings", "PV-Generator aus mehreren Strängen"),
    ("workshop", "Earth electrode", "Erder"),
    ("workshop", "Equipotential bonding", "Potentialausgleich"),
]  # fmt: skip


@pytest.mark.parametrize(("spec", "english", "text"), LEGEND)
def test_legend_has_the_same_meaning_at_the_same_place(spec: str, english: str, text: str) -> None:
    """The samples stand in the same order in every language: by lines, marks, and the height of symbols."""
    assert [*german(spec).legend("Legende")].index(text) == [*drawing(spec).legend()].index(english)

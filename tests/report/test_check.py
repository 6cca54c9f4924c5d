"""`check` as text: verdict, refusals first, findings by level, figures; for any terminal."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from guidegen.report.check import check_text
from guidegen.report.terminal import for_terminal
from guidegen.safety.findings import Finding
from guidegen.safety.judge import ALL
from guidegen.safety.keys import key_of, place_of
from tests.safety.projects import Changes, study_of


def lines_of(folder: Path, changes: Changes, encoding: str = "utf-8") -> list[str]:
    return check_text(study_of(folder, changes), encoding).splitlines()


def test_title_and_verdict_come_first(tmp_path: Path) -> None:
    lines = lines_of(tmp_path, {})
    assert lines[0] == "Shelf lights"
    assert lines[1].startswith("No rule refuses this project; ")


def test_refused_project_says_so_and_gives_reason_and_alternative(tmp_path: Path) -> None:
    lines = lines_of(tmp_path, {"supply.case": "opened"})
    assert lines[1].startswith("Refused: no guide is written")
    first = lines.index("STOP: Supply with an opened case [supply-case-opened]")
    assert lines[first + 2] == "  The case of this supply has been opened."
    assert lines[first + 3].startswith("  Why: ")
    assert any(line.startswith("  Instead: Take an approved supply, keep it closed") for line in lines)


@pytest.mark.parametrize(
    ("changes", "key"),
    [
        ({"supply.case": "opened"}, "supply.case"),
        ({"supply.insulation": "basic"}, "supply.insulation"),
        ({"strings.drop.runs_on": "mains"}, "strings.drop.runs_on"),
        ({"strings.drop.label": "230 V AC"}, "strings.drop.label"),
        ({"supply.voltage": "80 V"}, "supply.voltage"),
        ({"strings.drop.max_led_current": "1 mA"}, "runs[1].resistor"),
        ({"supply.rated_current": "5 mA"}, "supply.rated_current"),
        ({"place.near_water": "sauna"}, "place.near_water"),
    ],
)
def test_refusal_names_the_place_in_the_file(tmp_path: Path, changes: Changes, key: str) -> None:
    study = study_of(tmp_path, changes)
    line, column = study.file.places[key]
    place = f"  {study.file.name}:{line}:{column}: {key}"
    assert place in check_text(study, "utf-8").splitlines()


def test_place_of_a_refusal_stands_right_below_its_head(tmp_path: Path) -> None:
    lines = lines_of(tmp_path, {"supply.case": "opened"})
    first = lines.index("STOP: Supply with an opened case [supply-case-opened]")
    assert lines[first + 1].endswith(": supply.case")


@pytest.mark.parametrize("rule", [rule.id for rule in ALL if rule.level == "refusal"])
def test_every_refusal_has_a_key(tmp_path: Path, rule: str) -> None:
    file = study_of(tmp_path, {}).file
    subject = "drop" if rule in ("mains-string", "box-kept") else "shelf"
    assert key_of(Finding(rule, "refusal", subject), file) != ""


def test_what_no_key_can_be_named_for_has_no_place(tmp_path: Path) -> None:
    file = study_of(tmp_path, {}).file
    assert place_of(Finding("led-over-maximum", "refusal", "a run that was proposed"), file) == ""
    assert place_of(Finding("sharp-tools", "caution"), file) == ""


@pytest.mark.parametrize(
    ("wire", "key"),
    [
        ("the supply lead", "supply.lead"),
        ("the feeder", "runs[1].feeder"),
        ("the extra wire", "runs[1].extra_wire"),
        ("the string's own wire", "strings.drop.wire"),
    ],
)
def test_wire_over_its_limit_is_named_by_its_section(tmp_path: Path, wire: str, key: str) -> None:
    finding = Finding("wire-over-limit", "refusal", "shelf", {"wire": wire})
    assert key_of(finding, study_of(tmp_path, {}).file) == key


def test_verdict_of_a_refusal_is_the_last_line_too(tmp_path: Path) -> None:
    lines = lines_of(tmp_path, {"strings.drop.max_led_current": "1 mA"})
    assert lines[-1] == lines[1]
    assert lines[-1] == "Refused: no guide is written for this project until the point under STOP is mended."


def test_points_are_counted_as_they_are_listed(tmp_path: Path) -> None:
    """One head in the list for each rule, whatever its level and however many runs it is about."""
    study = study_of(tmp_path, {})
    lines = check_text(study, "utf-8").splitlines()
    heads = [line for line in lines if line.startswith("  ") and line.endswith("]")]
    assert lines[1] == f"No rule refuses this project; {len(heads)} points to mind."
    assert any(finding.level == "notice" for finding in study.findings)


def test_taken_for_granted_names_the_keys_to_state(tmp_path: Path) -> None:
    told = "\n".join(lines_of(tmp_path, {"supply.tolerance": None, "strings.drop.wires": None}))
    assert re.search(r"The keys: [^\n]*supply\.tolerance[^\n]*strings\.drop\.wires", told)


def test_hazard_refusal_shows_no_figures(tmp_path: Path) -> None:
    assert "Figures" not in lines_of(tmp_path, {"strings.drop.runs_on": "mains"})


def test_design_refusal_shows_the_figures(tmp_path: Path) -> None:
    lines = lines_of(tmp_path, {"strings.drop.max_led_current": "1 mA"})
    assert lines[1].startswith("Refused")
    assert "Figures" in lines


def test_levels_come_most_severe_first(tmp_path: Path) -> None:
    lines = lines_of(tmp_path, {"place.mains": "new fixed wiring", "strings.drop.max_led_current": "1 mA"})
    heads = [
        "STOP: Too much current in the LEDs [led-over-maximum]",
        "DANGER",
        "WARNING",
        "CAUTION",
        "NOTICE",
    ]
    places = [lines.index(head) for head in (*heads, "Figures")]
    assert places == sorted(places)


def test_level_without_findings_has_no_heading(tmp_path: Path) -> None:
    assert "DANGER" not in lines_of(tmp_path, {})


def test_figures_tell_runs_supply_fuse_and_evenness(tmp_path: Path) -> None:
    lines = lines_of(tmp_path, {})
    run, supply, fuse, evenness = lines[lines.index("Figures") + 1 :][:4]
    assert run.startswith("  shelf: 68 Ω, ")
    assert "of its rating" in supply
    # 2.1 times the rating of an IEC fuse: IEC 60127-2.
    assert fuse == "  fuse: 200 mA, sure to open at 420 mA"
    assert evenness.startswith("  all bulbs: evenness ")


def test_run_without_resistor_says_so(tmp_path: Path) -> None:
    lines = lines_of(tmp_path, {"runs.0.resistor": "none", "supply.voltage": "2.9 V"} | NO_RATING)
    assert any(line.startswith("  shelf: no resistor, ") for line in lines)


NO_RATING: Changes = {"runs.0.resistor_rating": None, "runs.0.resistor_kind": None}


def test_ascii_terminal_gets_plain_letters(tmp_path: Path) -> None:
    text = check_text(study_of(tmp_path, {"title": "Lüster é – 10 Ω"}), "ascii")
    assert text.isascii()
    assert "68 ohm" in text
    assert text.startswith("Luester ? - 10 ohm\n")


def test_terminal_that_knows_every_letter_gets_the_text_unchanged() -> None:
    assert for_terminal("10 Ω, 0.5 mm²", "utf-8") == "10 Ω, 0.5 mm²"


def test_terminal_of_unknown_encoding_counts_as_ascii() -> None:
    assert for_terminal("10 Ω", "no-such-codec") == "10 ohm"
    assert for_terminal("10 Ω", None) == "10 ohm"


def test_german_letters_and_quotes_are_written_plainly_where_there_are_none() -> None:
    assert (
        for_terminal("„Lämpchen“ über ‚Öse‘ groß, 3 €", "ascii") == "\"Laempchen\" ueber 'Oese' gross, 3 EUR"
    )
    assert for_terminal("Lämpchen", "utf-8") == "Lämpchen"


def test_control_characters_never_reach_the_terminal() -> None:
    assert for_terminal("a\x1b[2Jb\nc", "utf-8") == "a[2Jb\nc"

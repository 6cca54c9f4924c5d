"""Readings that cannot be true are called out, with the numbers that tell why; sound ones are not."""

from __future__ import annotations

import pytest

from guidegen.bench.fit import fit_string
from guidegen.bench.notes import BenchNote
from guidegen.project.schema import CameWith, Led, LightString, StringWire
from tests.bench.making import kind_of, row_of, true_string
from tests.bench.shooting import state

TRUE = true_string()
GOOD = row_of(TRUE, 4.7, 15.0, 1.5)


def notes_of(kind: LightString, kind_of_note: str, label_v: float | None = None) -> list[BenchNote]:
    return [note for note in fit_string(kind, label_v).notes if note.kind == kind_of_note]


def test_sound_readings_bring_no_note() -> None:
    kind = kind_of(TRUE, [GOOD, row_of(TRUE, 3.9, 22.0, 1.5)], came_with=CameWith(cells=3))
    assert fit_string(kind).notes == ()


def test_a_burden_explains_a_current_lower_than_the_resistors_own() -> None:
    # A burden of 1.5 ohm beside 15 ohm takes 7 % off the current: no disagreement.
    assert GOOD["current"] < 0.95 * (4.7 - GOOD["after_resistor"]) / 15
    assert notes_of(kind_of(TRUE, [GOOD]), "current disagrees") == []


def test_a_current_that_the_stated_burden_cannot_explain_names_the_burden_that_could() -> None:
    row = GOOD | {"current": state(TRUE, 4.7, 15.0 + 8.0).current_a}
    (note,) = notes_of(kind_of(TRUE, [row]), "current disagrees")
    assert note.row == 1
    assert note.values["needed_burden_ohm"] == pytest.approx(8.0, rel=0.2)  # carried on in a straight line


def test_red_leds_in_a_string_said_to_be_white_are_impossible_volts() -> None:
    red = true_string(curve=(1.75, 0.055, 5.0))
    kind = kind_of(red, [row_of(red, 4.7, 15.0)], led=Led(typical="white"))
    (note,) = notes_of(kind, "led volts")
    assert note.values["led_v"] < note.values["least_v"]


def test_red_leds_are_possible_where_no_colour_is_stated() -> None:
    red = true_string(curve=(1.75, 0.055, 5.0))
    assert notes_of(kind_of(red, [row_of(red, 4.7, 15.0)]), "led volts") == []


def test_three_leds_in_series_entered_as_one_are_impossible_volts() -> None:
    three = true_string(series=3)
    row = row_of(three, 12.0, 47.0)
    (note,) = notes_of(kind_of(TRUE, [row]), "led volts")
    assert note.values["led_v"] > note.values["most_v"]


def test_a_wire_reading_that_is_mostly_leads_is_called_out() -> None:
    kind = kind_of(TRUE, []).model_copy(
        update={"wire": StringWire.model_construct(one_conductor=0.5, meter_leads=0.2)}
    )
    (note,) = notes_of(kind, "wire near leads")
    assert note.values["result_ohm"] == pytest.approx(0.3)  # 0.5 - 0.2, under twice 0.2


def test_a_wire_reading_of_three_times_the_leads_is_sound() -> None:
    kind = kind_of(TRUE, []).model_copy(
        update={"wire": StringWire.model_construct(one_conductor=0.61, meter_leads=0.2)}
    )
    assert notes_of(kind, "wire near leads") == []


def test_a_source_far_above_its_label_is_not_regulated() -> None:
    row = row_of(TRUE, 7.0, 33.0)
    (note,) = notes_of(kind_of(TRUE, [row]), "not regulated", label_v=5.0)
    assert (note.values["supply_v"], note.values["label_v"]) == (7.0, 5.0)


def test_fresh_cells_are_not_far_above_their_label() -> None:
    row = row_of(TRUE, 4.83, 15.0)  # three fresh alkaline cells at 1.61 V, typical, from memory
    assert notes_of(kind_of(TRUE, [row], came_with=CameWith(cells=3)), "not regulated") == []


def test_volts_that_do_not_fall_over_the_resistor_leave_the_typical_curve() -> None:
    fit = fit_string(kind_of(TRUE, [{"supply": 4.5, "resistor": 15.0, "after_resistor": 4.5}]))
    assert [note.kind for note in fit.notes] == ["no current"]
    assert fit.estimate.source == "typical"


def test_a_row_that_cannot_be_used_leaves_the_others_in_use() -> None:
    bad = {"supply": 4.5, "resistor": 15.0, "after_resistor": 4.6}
    fit = fit_string(kind_of(TRUE, [bad, GOOD]))
    assert fit.estimate.source == "bench"
    assert {reading.row for reading in fit.readings} == {2}


def test_volts_without_a_resistor_tell_nothing_of_the_leds() -> None:
    row = {"supply": 3.0, "resistor": 0.0, "after_resistor": 3.0}
    assert [note.kind for note in fit_string(kind_of(TRUE, [row])).notes] == ["tells nothing"]


def test_one_reading_far_off_among_sound_ones_is_unexplained() -> None:
    rows = [row_of(TRUE, supply_v, 15.0) for supply_v in (4.7, 4.5, 4.3)]
    rows[1]["after_resistor"] -= 0.4
    assert 2 in {note.row for note in notes_of(kind_of(TRUE, rows), "reading unexplained")}

"""The keys `meter` and `readings`, as people write them."""

from __future__ import annotations

from pathlib import Path

import pytest

from guidegen.circuit.meter import Meter, meter_of
from guidegen.project.metering import Accuracy, ReadAt, Shown
from guidegen.project.read import read_project
from guidegen.project.schema import Project

SMALL = Path(__file__).with_name("small.yaml").read_text("utf-8")


def project(folder: Path, more: str, small: str = SMALL) -> Project:
    path = folder / "lights.yaml"
    path.write_text(small + more, "utf-8")
    return read_project(path).project


@pytest.mark.parametrize(
    "written",
    [
        "0.5 % + 3 digits",
        "0.5% + 3",
        "±(0.5 % + 3 digits)",
        "+/- 0.5 % + 3 dgt",
        "0.5 % + 3 counts",
        ".5%+3d",
    ],
)
def test_an_accuracy_is_read_as_booklets_write_it(tmp_path: Path, written: str) -> None:
    found = project(tmp_path, f'meter: {{accuracy: "{written}"}}\n')
    assert found.meter.accuracy == Accuracy(0.005, 3)


@pytest.mark.parametrize(
    ("written", "at"),
    [
        ("bulb 12", ReadAt("bulb", 12)),
        ("Bulb  1", ReadAt("bulb", 1)),
        ("after resistor", ReadAt("after resistor")),
        ("RESISTOR VOLTS", ReadAt("resistor volts")),
    ],
)
def test_a_place_is_read_whatever_its_letters(tmp_path: Path, written: str, at: ReadAt) -> None:
    found = project(tmp_path, f"readings:\n  - {{run: back, at: {written}, value: 2.9 V}}\n")
    assert found.readings[0].at == at


@pytest.mark.parametrize(
    ("at", "written", "value"),
    [
        ("current", "205 mA", Shown(0.205, "A")),
        ("current", "0.205 A", Shown(0.205, "A")),
        ("bulb 3", "2930 mV", Shown(2.93, "V")),
        ("bulb 3", "0 V", Shown(0.0, "V")),
    ],
)
def test_a_value_keeps_its_kind(tmp_path: Path, at: str, written: str, value: Shown) -> None:
    found = project(tmp_path, f"readings:\n  - {{run: back, at: {at}, value: {written}}}\n")
    assert found.readings[0].value == value


def test_the_only_run_may_be_left_out(tmp_path: Path) -> None:
    one = SMALL.replace("  - bulbs: 12\n", "")
    found = project(
        tmp_path, "readings:\n  - {at: bulb 3, value: 2.9 V}\n  - {at: supply, value: 5 V}\n", one
    )
    assert [reading.run for reading in found.readings] == ["back", None]


def test_a_current_without_a_run_is_that_of_all_runs(tmp_path: Path) -> None:
    found = project(tmp_path, "readings:\n  - {at: current, value: 400 mA}\n")
    assert found.readings[0].run is None


def test_the_meter_s_leads_are_taken_off_measured_wire(tmp_path: Path) -> None:
    measured = SMALL.replace("{area: 0.08 mm2}", "{one_conductor: 1.2 ohm}")
    assert project(tmp_path, "meter: {leads: 0.2 ohm}\n", measured).strings["drop"].wire.meter_leads == 0.2
    stated = measured.replace("1.2 ohm}", "1.2 ohm, meter_leads: 0.3 ohm}")
    assert project(tmp_path, "meter: {leads: 0.2 ohm}\n", stated).strings["drop"].wire.meter_leads == 0.3
    assert project(tmp_path, "meter: {leads: 0.2 ohm}\n").strings["drop"].wire.meter_leads is None


def test_what_is_left_out_is_a_usual_meter_s(tmp_path: Path) -> None:
    assert meter_of(project(tmp_path, "").meter) == Meter()
    found = meter_of(project(tmp_path, "meter: {accuracy: 1 % + 5 digits, burden: 3 ohm}\n").meter)
    assert (found.volts.share, found.volts.digits, found.volts.step) == (0.01, 5, Meter().volts.step)
    assert found.amperes == Meter().amperes
    assert (found.burden_ohm, found.burden_stated) == (3.0, True)


def test_resolutions_are_steps_of_the_digits(tmp_path: Path) -> None:
    found = meter_of(
        project(
            tmp_path, "meter: {resolution: 1 mV, current_accuracy: 2 % + 4, current_resolution: 10 uA}\n"
        ).meter
    )
    assert found.volts.step == 0.001
    assert (found.amperes.share, found.amperes.digits, found.amperes.step) == (0.02, 4, 1e-5)

"""The numbers about shorts and heat: where, how much, does the fuse open, what survives, what burns."""

from __future__ import annotations

from guidegen.guide.blocks import Calculation, Table
from tests.guide.projects import EXTRA, FEEDER, Made, changed, make


def table(made: Made) -> Table:
    groups = made.page("numbers.html").groups
    return next(each for group in groups for each in group.tables if each.caption == "What a short brings")


def rows(made: Made) -> dict[str, tuple[str, ...]]:
    """Current, must-open current, sure, resistor, wires, by the place of the short."""
    return {row[0]: tuple(cell.replace("\u00a0", " ") for cell in row[1:]) for row in table(made).rows}


def surfaces(made: Made) -> list[Calculation]:
    groups = made.page("numbers.html").groups
    return [each for group in groups for each in group.calculations if each.title.startswith("Surface of")]


def test_every_run_is_shorted_behind_its_resistor_and_at_its_far_end(bench: Made) -> None:
    assert list(rows(bench)) == [
        "right behind the fuse",
        "behind the resistor of “back rail”",
        "at the far end of “back rail”",
        "behind the resistor of “front rail”",
        "at the far end of “front rail”",
    ]


def test_table_asks_for_fuse_resistor_and_wires(plain: Made) -> None:
    assert [column.title for column in table(plain).columns] == [
        "Short", "Current", "Must open the fuse", "Must it open?",
        "Does the resistor survive?", "Do the wires survive?",
    ]  # fmt: skip


def test_currents_are_those_of_hand_calculation(plain: Made) -> None:
    # By hand: 5 V - 5 % = 4.75 V; 15 ohm + 5 % = 15.75 ohm gives 302 mA.  The fuse 2.1 x 630 mA = 1.32 A.
    told = rows(plain)
    assert told["right behind the fuse"][:3] == ("2 A", "1.32 A", "yes")
    assert told["behind the resistor of “shelf”"][:3] == ("302 mA", "1.32 A", "no")


def test_current_is_never_more_than_the_supply_gives() -> None:
    made = make(changed(supply__current_limit="0.2 A", supply__rated_current="0.2 A"))
    assert {row[0] for row in rows(made).values()} == {"200 mA"}


def test_far_short_drives_less_than_one_behind_the_resistor(bench: Made) -> None:
    made = bench.matter.solved.protection
    pairs = zip(made.fault_far_end_a, made.fault_after_resistor_a, strict=True)
    assert all(far < near for far, near in pairs)


def test_resistor_is_told_to_bear_a_lasting_short_with_its_watts(plain: Made) -> None:
    # By hand: (5 V + 5 %)^2 / (15 ohm - 5 %) = 27.5625 / 14.25 = 1.93 W.
    assert rows(plain)["behind the resistor of “shelf”"][3].startswith("yes: 1.93 W of ")


def test_run_without_a_resistor_has_none_to_survive(without_resistor: Made) -> None:
    told = rows(without_resistor)
    assert told["where “shelf” branches off"][3] == "none fitted"
    assert told["at the far end of “shelf”"][3] == "none fitted"


def test_ul_fuse_is_sure_at_twice_its_rating() -> None:
    # UL 248-14 (R): 2 x 630 mA = 1.26 A.
    told = rows(make(changed(fuse_type="UL")))
    assert told["right behind the fuse"][1] == "1.26 A"


def test_fuse_ends_a_short_that_drives_enough() -> None:
    # By hand: 4.75 V / 1.05 ohm = 4.5 A, over 2.1 x 630 mA; the supply gives 6 A.
    run = {"name": "shelf", "bulbs": 12, "resistor": "1 ohm", "resistor_rating": "5 W", "feeder": FEEDER}
    made = make(
        changed(
            runs=[{**run, "feed": "both ends", "extra_wire": EXTRA}],
            supply__rated_current="6 A",
            supply__voltage="3 V",
            strings__drop__wire={"area": "0.5 mm2"},
        )
    )
    told = rows(made)
    assert told["behind the resistor of “shelf”"][2:4] == ("yes", "the fuse ends it")


def test_surface_hot_enough_to_burn_is_called_so_with_its_source(bench: Made) -> None:
    shorted = [each for each in surfaces(bench) if "shorted" in each.title]
    assert shorted
    for each in shorted:
        assert "bare metal burns from 65\u00a0°C" in each.note
        assert "EN ISO 13732-1" in each.note


def test_cool_surface_gets_no_remark(bench: Made) -> None:
    # By hand from the sample: 10 ohm at 0.2 A is 0.4 W of 5 W, 16 K over 35 degC.
    running = [each for each in surfaces(bench) if "running" in each.title]
    assert [each.note for each in running] == [""] * len(running)

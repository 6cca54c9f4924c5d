"""Parts and tools: what the steps use, in the numbers the arrangement asks for."""

from __future__ import annotations

import re

from guidegen.guide.blocks import PartLine
from guidegen.parts.bill import bill
from tests.guide.projects import Made, changed, make


def line(made: Made, name: str) -> PartLine:
    """The line of the list whose name begins so."""
    return next(each for each in made.page("parts-and-tools.html").buy if each.name.startswith(name))


def test_the_resistor_says_its_rating_its_marks_and_why(bench: Made) -> None:
    """10 ohm 5 % 5 W is printed 5W10RJ: IEC 60062."""
    found = line(bench, "Resistor for")
    assert found.quantity == "2"
    assert "5\u00a0W" in found.rating and "5W10RJ" in found.marking
    assert "if its run is shorted" in found.why


def test_the_supply_says_what_to_look_for(bench: Made) -> None:
    assert "double square" in line(bench, "Plug-in supply").marking


def test_strings_are_counted(cut_and_joined: Made) -> None:
    """18 + 6 bulbs of strings of 12 take two strings, by hand."""
    found = line(cut_and_joined, "Light string")
    assert (found.quantity, found.why) == ("2", "24 of their bulbs are used.")


def test_sleeves_of_the_steps_are_those_of_the_bill(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        used: dict[str, int] = {}
        for step in made.steps:
            for part in step.parts:
                match = re.match(r"(\d+) (inner|outer|cap) sleeve", part)
                if match:
                    used[match[2]] = used.get(match[2], 0) + int(match[1])
        assert used == {each.use: each.count for each in bill(made.matter.arrangement).sleeves}


def counted(made: Made, pattern: str) -> int:
    """Sum of the numbers in front of a part over all steps."""
    found = [re.match(pattern, part) for step in made.steps for part in step.parts]
    return sum(int(match[1]) for match in found if match)


def test_ties_labels_and_strips_of_the_steps_are_those_of_the_bill(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        needed = bill(made.matter.arrangement)
        assert counted(made, r"(\d+) cable tie") == needed.ties
        assert counted(made, r"(\d+) label") == needed.labels
        strips = needed.forks if made.matter.outdoors else 0
        assert counted(made, r"(\d+) strips? of hot-melt") == strips


def test_soldered_places_of_the_first_page_are_those_that_the_steps_make(
    all_guides: tuple[Made, ...],
) -> None:
    for made in all_guides:
        steps = [step for step in made.steps if any("inner sleeve" in part for part in step.parts)]
        facts = {fact.label: fact.note for fact in made.page("index.html").facts}
        assert facts["Difficulty"].startswith(f"{len(steps)} soldered place")
        assert len(steps) == bill(made.matter.arrangement).soldered


def test_every_wire_has_a_label_at_both_ends_and_so_have_plug_and_socket(
    all_guides: tuple[Made, ...],
) -> None:
    for made in all_guides:
        labels = made.page("parts-and-tools.html").labels
        assert 2 * len(labels) == bill(made.matter.arrangement).labels


def test_wires_behind_a_resistor_are_never_labelled_with_the_supplys_volts(bench: Made) -> None:
    labels = bench.page("parts-and-tools.html").labels
    behind = [label for label in labels if label.startswith(("W", "X"))]
    assert len(behind) == 4
    assert all("never straight to the supply" in label and " V " not in label for label in behind)
    assert all("DC only · fuse" in label for label in labels if label not in behind)


def test_socket_and_connectors_bear_what_the_fuse_lets_flow_for_good(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        must_open_a = made.matter.solved.protection.must_open_a
        for name in ("Socket", "Common connector"):
            rated = re.search(r"([\d.]+)\u00a0A or more", line(made, name).rating)
            assert rated is not None
            assert float(rated[1]) >= must_open_a


def test_a_fuse_can_be_ordered(bench: Made) -> None:
    rating = line(bench, "Fuse").rating.replace("\u00a0", " ")
    assert rating == "1 A, 5 × 20 mm, F (quick), IEC 60127-2, 32 V or more"
    assert "5 × 20 mm" in line(bench, "Fuse holder").rating


def test_a_supply_end_outdoors_gets_an_enclosure(plain: Made) -> None:
    supply = {"stands": "outdoors", "ip": "IP44"}
    project = changed(place__exposure="open outdoors")
    project["supply"].update(supply)
    assert "IPX4" in line(make(project), "Enclosure").rating
    assert not any(each.name.startswith("Enclosure") for each in plain.page("parts-and-tools.html").buy)


def test_without_a_shared_lead_a_short_wire_joins_minus(plain: Made, bench: Made) -> None:
    assert line(plain, "Short wire").quantity == "1"
    assert not any(each.name.startswith("Short wire") for each in bench.page("parts-and-tools.html").buy)


def test_the_cut_list_states_its_allowances(bench: Made) -> None:
    cuts = {cut.label: cut for cut in bench.page("parts-and-tools.html").cuts}
    assert cuts["W1 feeder “back rail”"].length == "1.9\u00a0m"
    assert "20\u00a0cm at each end" in cuts["W1 feeder “back rail”"].ends
    assert "drip loop" in cuts["W1 feeder “back rail”"].ends


def test_indoors_no_drip_loop_is_cut(plain: Made) -> None:
    (feeder,) = [cut for cut in plain.page("parts-and-tools.html").cuts if cut.label.startswith("W1")]
    assert feeder.length == "2.2\u00a0m"
    assert "drip" not in feeder.ends


def test_test_resistors_bear_the_whole_supply(bench: Made) -> None:
    """5.355 V squared over 95 % of 56 ohm is 0.539 W; twice that is 1.08 W, so 2 W, by hand."""
    found = [each for each in bench.page("parts-and-tools.html").buy if each.name == "Test resistor"]
    assert any(each.rating.replace("\u00a0", " ") == "56 Ω ±5 %, 2 W or more" for each in found)


def test_without_resistors_no_box_for_them_is_bought(without_resistor: Made) -> None:
    names = [each.name for each in without_resistor.page("parts-and-tools.html").buy]
    assert not any("Ventilated" in name or name.startswith("Resistor") for name in names)


def test_a_single_core_is_labelled_with_its_sign(by_feed: dict[str, Made]) -> None:
    """At opposite ends the extra wire is minus alone: DESIGN, section 4."""
    label = next(
        each for each in by_feed["opposite ends"].page("parts-and-tools.html").labels if "X1" in each
    )
    assert "carries −" in label and "+" not in label.replace("R1", "")


def test_sleeves_to_buy_are_as_many_as_the_hanging_plan_tells_to_have(all_guides: tuple[Made, ...]) -> None:
    hung = [made for made in all_guides if made.matter.project.hanging is not None]
    assert hung
    for made in hung:
        to_have = [row[2] for row in made.page("hanging.html").totals.rows if row[0].startswith("sleeve")]
        lines = [
            line.quantity.split(" ×")[0]
            for line in made.page("parts-and-tools.html").buy
            if "sleeve, over" in line.name
        ]
        assert lines == to_have

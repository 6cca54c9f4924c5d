"""Step pictures: which there are for an arrangement, and the drawing of those that its steps name."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from functools import partial

from guidegen.circuit.arrangement import Arrangement, RunPlan
from guidegen.circuit.points import TestPoint
from guidegen.drawings import (
    steps_box,
    steps_circuit,
    steps_ends,
    steps_joints,
    steps_pieces,
    steps_strings,
    steps_supply,
    steps_wires,
)
from guidegen.drawings.bought import Bought
from guidegen.drawings.picture import Picture
from guidegen.guide.steps import picture_ids as ids
from guidegen.parts.joints import dead_ends
from guidegen.parts.opened import first_bared

Maker = Callable[[], Picture]


def draw_steps(
    named: Collection[str], bought: Bought, arrangement: Arrangement, points: tuple[TestPoint, ...]
) -> tuple[Picture, ...]:
    """The pictures that steps name, each once, in the order of work; an id that is not of a step is left."""
    makers = step_makers(bought, arrangement, points)
    return tuple(make() for picture_id, make in makers.items() if picture_id in named)


def step_makers(bought: Bought, arrangement: Arrangement, points: tuple[TestPoint, ...]) -> dict[str, Maker]:
    """What draws each picture there can be for this arrangement, by the picture's id."""
    return dict([*_bought(bought, arrangement), *_supply_end(arrangement),
                 *_runs(bought, arrangement, points), *_finish(bought, arrangement, points)])  # fmt: skip


def _bought(bought: Bought, arrangement: Arrangement) -> Iterator[tuple[str, Maker]]:
    """Supply and strings as they come from the shop."""
    yield ids.SUPPLY_MARKS, partial(steps_supply.supply_marks, bought.supply)
    yield ids.SUPPLY_VOLTS, steps_supply.supply_volts
    yield ids.LOW_VOLTAGE, steps_strings.low_voltage
    for number, name in enumerate(dict.fromkeys(run.string for run in arrangement.runs)):
        yield ids.wires_picture(number), partial(steps_strings.wires, bought.strings[name], number)
        bared = first_bared(arrangement.runs, name)
        last = bought.strings[name].bulbs if bared is None else bared.bulb
        read = bared is not None
        yield ids.bench_picture(number), partial(steps_circuit.bench, number, last, read=read)
    yield ids.FEED_VOLTS, steps_strings.feed_volts
    yield ids.CUT_BOX, steps_strings.cut_box
    yield ids.TEST_PIECE, steps_pieces.one_way
    yield ids.EITHER_WAY_PIECE, steps_pieces.either_way


def _supply_end(arrangement: Arrangement) -> Iterator[tuple[str, Maker]]:
    """Between the supply's plug and the feeders."""
    yield ids.CUT_WIRES, partial(steps_wires.cut_wires, arrangement)
    yield ids.LABELS, partial(steps_wires.labels, arrangement)
    yield ids.FUSE_HOLDER, partial(steps_supply.fuse_holder, arrangement)
    yield ids.FUSE_IN, partial(steps_supply.fuse_holder, arrangement, meter=True)
    if any(run.resistor.fitted for run in arrangement.runs):
        yield ids.MEASURE_RESISTOR, partial(steps_supply.measure_resistor, arrangement)
        yield ids.MOUNT_RESISTORS, partial(steps_supply.mount_resistors, arrangement)


def _runs(
    bought: Bought, arrangement: Arrangement, points: tuple[TestPoint, ...]
) -> Iterator[tuple[str, Maker]]:
    for index, run in enumerate(arrangement.runs):
        own = tuple(point for point in points if point.run == index)
        yield from _run(run, index, own, bought.strings[run.string].lit_on_dc)


def _run(
    run: RunPlan, index: int, points: tuple[TestPoint, ...], lit_on_dc: str
) -> Iterator[tuple[str, Maker]]:
    """One run, from its pieces to its test points."""
    yield ids.pieces_picture(index), partial(steps_strings.pieces, run, index)
    if lit_on_dc == "half":
        yield ids.half_piece_picture(index), partial(steps_pieces.half, run, index)
    for bulb in run.joins:
        yield ids.join_picture(bulb), partial(steps_joints.join, bulb)
    yield ids.feed_picture(index), partial(steps_joints.feed, run, index)
    yield ids.tap_picture(index), partial(steps_joints.tap, run, index)
    yield ids.far_end_picture(index), partial(steps_joints.far_end, run, index)
    yield ids.cold_picture(index), partial(steps_circuit.cold, run, index, two_way=lit_on_dc != "all")
    yield ids.first_power_picture(index), partial(steps_circuit.first_power, run, index)
    yield ids.points_picture(index), partial(steps_circuit.test_points, run, index, points)


def _finish(
    bought: Bought, arrangement: Arrangement, points: tuple[TestPoint, ...]
) -> Iterator[tuple[str, Maker]]:
    """All runs together, closing, watching and hanging."""
    fitted = any(run.resistor.fitted for run in arrangement.runs)
    yield ids.ALL_RUNS, partial(steps_box.all_runs, arrangement, points)
    yield ids.CLOSE_BOX, partial(steps_box.close_box, resistors=fitted)
    yield ids.FIRST_HOUR, partial(steps_box.first_hour, arrangement, points)
    yield ids.BOX_POINTS, partial(steps_box.box_points, arrangement, points)
    yield ids.STRAIN_LOOP, steps_ends.strain_loop
    caps = any(not end.made for end in dead_ends(arrangement))
    yield ids.SLEEVES, partial(steps_ends.sleeves, lined=bought.rain_reaches, caps=caps)
    yield ids.HANG, partial(steps_ends.hang, outdoors=bought.rain_reaches)

"""Drawing in a second process, at the same time as everything else.

Half the time of a build goes into loading the libraries of drawing and into
drawing.  So a second Python is started first of all; it loads those libraries
and draws what is ordered while this process studies the project and makes the
pages.  Where no second processor may be used, or the second process does not
start or ends before its time, this one draws: the pictures are the same.

Orders go over by pipe, pickled, and an empty one behind the last; the pictures
come back likewise.  No other process has hold of these pipes.  The second
process ends when its orders do, however that comes about, so that none is left
when this one is killed.
"""

from __future__ import annotations

import os
import pickle
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from typing import TYPE_CHECKING

from guidegen.locale import language, speaking_language

if TYPE_CHECKING:
    from guidegen.drawings.picture import Picture

#: What the second process runs: it finds modules where this one does, and not in the folder it stands in.
_PROGRAM = "import sys; sys.path[:] = sys.argv[1:]; from guidegen.drawings.apart import main; main()"


@dataclass(frozen=True)
class Order:
    """Pictures to draw: the function that draws them, what of, and in which language."""

    maker: Callable[..., tuple[Picture, ...]]
    of: tuple[object, ...]
    language: str

    def draw(self) -> tuple[Picture, ...]:
        """Draw them, in this process."""
        with speaking_language(self.language):
            return self.maker(*self.of)


class Drawings:
    """The pictures of one guide, ordered as soon as what they show is known."""

    def __init__(self, process: subprocess.Popen[bytes] | None = None) -> None:
        """`process` draws them; None: this one does, when they are asked for."""
        self._orders: list[Order] = []
        self._process = process

    def order(self, maker: Callable[..., tuple[Picture, ...]], *of: object) -> None:
        """Have these pictures drawn, in the language in force."""
        order = Order(maker, of, language())
        self._orders.append(order)
        self._send(order)

    def pictures(self) -> tuple[Picture, ...]:
        """All that was ordered, in that order; waits for it."""
        self._send(None)
        drawn = self._receive()
        return draw_all(self._orders) if drawn is None else drawn

    def _send(self, order: Order | None) -> None:
        if self._process is None or self._process.stdin is None:
            return
        try:
            self._process.stdin.write(pickle.dumps(order))
            self._process.stdin.flush()
        except OSError:  # it has ended before its time
            self.drop()

    def _receive(self) -> tuple[Picture, ...] | None:
        """What the second process has drawn; None if there is none, or it has failed."""
        if self._process is None or self._process.stdout is None:
            return None
        try:
            drawn: tuple[Picture, ...] = pickle.load(self._process.stdout)
        except (OSError, EOFError, pickle.UnpicklingError):
            return None
        finally:
            self.drop()
        return drawn

    def drop(self) -> None:
        """End the second process, if there still is one."""
        process, self._process = self._process, None
        if process is None:
            return
        # As Ctrl-C would, so that it tidies up; where that cannot be sent it ends for want of orders.
        with suppress(OSError, ValueError):
            process.send_signal(signal.SIGINT)
        with suppress(OSError), process:
            pass


def draw_all(orders: Sequence[Order]) -> tuple[Picture, ...]:
    """The pictures of all orders."""
    return tuple(picture for order in orders for picture in order.draw())


@contextmanager
def drawing_apart() -> Iterator[Drawings]:
    """Take orders, in a second process if there can be one; it is gone behind the block."""
    drawings = Drawings(_second_process() if processors() > 1 else None)
    try:
        yield drawings
    finally:
        drawings.drop()


def processors() -> int:
    """How many processors this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _second_process() -> subprocess.Popen[bytes] | None:
    """A Python that waits for orders; None where none can be started."""
    if not sys.executable:
        return None
    pipe, nowhere = subprocess.PIPE, subprocess.DEVNULL
    command = [sys.executable, "-P", "-c", _PROGRAM, *sys.path]
    try:
        # What it says of its failures is of no use: this process draws then, and meets them itself.
        return subprocess.Popen(command, stdin=pipe, stdout=pipe, stderr=nowhere)
    except OSError:
        return None


def main() -> None:
    """The second process; it ends when its orders do, at Ctrl-C, or at a fault."""
    try:
        _serve()
    finally:
        # Nothing is left to tidy up, nobody listens, and the other process may be waiting for the end.
        os._exit(0)


def _serve() -> None:
    """Load what drawing needs, draw up to the empty order, hand the pictures over."""
    answers = os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)  # whatever a library prints is no picture
    _load()
    pictures: list[Picture] = []
    while (order := pickle.load(sys.stdin.buffer)) is not None:
        pictures.extend(order.draw())
    with answers:
        pickle.dump(tuple(pictures), answers)


def _load() -> None:
    """Load the libraries before there is anything to draw."""
    import gc  # noqa: PLC0415

    gc.disable()  # for the same reason as in __main__.py
    from guidegen.drawings import charts, plan, schematic, steps  # noqa: F401, PLC0415
    from guidegen.drawings.pen import library  # noqa: PLC0415
    from guidegen.drawings.sheet import load_plotting  # noqa: PLC0415

    load_plotting()
    library()

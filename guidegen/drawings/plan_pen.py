"""The pen of the hanging plan: what a top view and a side view need besides a sketch."""

from __future__ import annotations

import math

from guidegen.drawings.picture import text_width
from guidegen.drawings.sketch import Place, Sketch

#: Dashes of the runs in order, begun anew when there are more runs.
DASHES = ("", "9 4", "2 3", "12 3 2 3", "5 2", "14 4 2 3 2 3")


def feed_words(place: Place, normal: Place, poles: str, off: float = 0.0) -> Place:
    """Where the words at a feed's arrow have their middle, `off` pixels farther out than usual."""
    off += 23.0 if abs(normal[1]) > abs(normal[0]) else 17.0 + text_width(poles, 11) / 2
    return place[0] + off * normal[0], place[1] + off * normal[1]


def dimension_words(first: Place, second: Place, normal: Place, off: float) -> Place:
    """Where the words of a dimension have their middle: beyond its line."""
    (nx, ny), (x, y) = normal, ((first[0] + second[0]) / 2, (first[1] + second[1]) / 2)
    away = off + 22.0 * abs(nx) + 10.0 * abs(ny)
    return x + away * nx, y + away * ny


class PlanPen(Sketch):
    """A sketch that draws runs, hooks, feeds and dimensions."""

    def run(self, places: list[Place], index: int) -> None:
        """Wire of the run with this index, in its own style."""
        points = " ".join(f"{x:.2f},{y:.2f}" for x, y in places)
        dash = DASHES[index % len(DASHES)]
        style = f' stroke-dasharray="{dash}"' if dash else ""
        self._parts.append(f'<polyline points="{points}" stroke="black" stroke-width="1.8"{style}/>')

    def faint(self, *places: Place) -> None:
        """A thin line in grey, under all others."""
        points = " ".join(f"{x:.2f},{y:.2f}" for x, y in places)
        self._parts.append(f'<polyline points="{points}" stroke="#777" stroke-width="0.8"/>')

    def lamp(self, place: Place, radius: float, *, lit: bool) -> None:
        """A bulb: black if it lights, a ring if it stays dark."""
        x, y = place
        fill = "black" if lit else "white"
        self._parts.append(
            f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{radius:g}" fill="{fill}" '
            'stroke="black" stroke-width="0.8"/>'
        )

    def hook(self, place: Place) -> None:
        """A hook: a square with a cross in it."""
        x, y = place
        self.box(x - 5, y - 5, 10, 10, fill="white", r=0)
        self.line((x - 5, y - 5), (x + 5, y + 5), kind="thin")
        self.line((x - 5, y + 5), (x + 5, y - 5), kind="thin")

    def feed(self, place: Place, normal: Place, poles: str, start: float = 7.0, stem: float = 0.0) -> None:
        """An arrow that points at the wire from the side `normal`, with its poles at `feed_words`.

        Its tip is `start` pixels from the wire, and the words are `stem`
        pixels behind it.
        """
        (x, y), (nx, ny) = place, normal
        tip = (x + start * nx, y + start * ny)
        left = (tip[0] + 8 * nx - 4.5 * ny, tip[1] + 8 * ny + 4.5 * nx)
        right = (tip[0] + 8 * nx + 4.5 * ny, tip[1] + 8 * ny - 4.5 * nx)
        points = " ".join(f"{a:.2f},{b:.2f}" for a, b in (tip, left, right))
        self._parts.append(f'<polygon points="{points}" fill="black"/>')
        if stem:
            far = 8 + stem
            self.line((tip[0] + 8 * nx, tip[1] + 8 * ny), (tip[0] + far * nx, tip[1] + far * ny), kind="thin")
        self.centred(feed_words(place, normal, poles, start - 7.0 + stem), poles, bold=True)

    def feeder(self, places: list[Place], *, extra: bool = False) -> None:
        """The way of a feeder, or of an extra wire, beside the lights."""
        dash = "6 2 1.5 2" if extra else "1.5 2.5"
        points = " ".join(f"{x:.2f},{y:.2f}" for x, y in places)
        self._parts.append(
            f'<polyline points="{points}" fill="none" stroke="black" stroke-width="1" '
            f'stroke-dasharray="{dash}"/>'
        )

    def centred(self, place: Place, words: str, size: float = 11.0, *, bold: bool = False) -> None:
        """Words with their middle at a place, on white."""
        half = text_width(words, size) / 2
        self._parts.append(
            f'<rect x="{place[0] - half:.2f}" y="{place[1] - size / 2:.2f}" width="{2 * half:.2f}" '
            f'height="{size:g}" fill="white" stroke="none"/>'
        )
        self.text(place[0], place[1] + 0.36 * size, words, "middle", size, bold=bold)

    def dimension(self, first: Place, second: Place, normal: Place, off: float, words: str) -> None:
        """The distance of two places, drawn `off` to the side `normal` of them."""
        nx, ny = normal
        ends = [(x + off * nx, y + off * ny) for x, y in (first, second)]
        for ex, ey in ends:
            self.faint((ex - 7 * nx, ey - 7 * ny), (ex + 4 * nx, ey + 4 * ny))
        self.faint(*ends)
        way = math.atan2(ends[1][1] - ends[0][1], ends[1][0] - ends[0][0])
        for (x, y), turn in zip(ends, (way, way + math.pi), strict=True):
            for spread in (-0.4, 0.4):
                self.faint((x, y), (x + 6 * math.cos(turn + spread), y + 6 * math.sin(turn + spread)))
        self.centred(dimension_words(first, second, normal, off), words)

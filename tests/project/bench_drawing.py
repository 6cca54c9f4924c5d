"""Draws the pictures that `every-key.yaml` refers to: `python -m tests.project.bench_drawing`.

A potting bench under two rows of bulbs, lit and unlit: drawings of our own, no photographs.
"""

from __future__ import annotations

from pathlib import Path

from PIL import Image, ImageDraw

FOLDER = Path(__file__).parents[2] / "sample_project"
WIDTH, HEIGHT = 480, 320
COLOURS = {
    "lit": {
        "wall": "#2b3440",
        "wood": "#7b5a3c",
        "edge": "#513a26",
        "pot": "#b4643c",
        "leaf": "#5b8f52",
        "bulb": "#ffd98a",
    },
    "unlit": {
        "wall": "#dfe6e4",
        "wood": "#b08a62",
        "edge": "#7c5f41",
        "pot": "#c9774c",
        "leaf": "#6fa565",
        "bulb": "#ffffff",
    },
}


def bench(state: str) -> Image.Image:
    """The bench with its lights `lit` or `unlit`."""
    colour = COLOURS[state]
    image = Image.new("RGB", (WIDTH, HEIGHT), colour["wall"])
    draw = ImageDraw.Draw(image)
    draw.rectangle((30, 215, 450, 235), fill=colour["wood"], outline=colour["edge"], width=3)
    for left in (50, 410):
        draw.rectangle((left, 235, left + 18, 310), fill=colour["wood"], outline=colour["edge"], width=3)
    for left in (90, 200, 330):
        draw.polygon(
            [(left, 175), (left + 50, 175), (left + 42, 215), (left + 8, 215)],
            fill=colour["pot"],
            outline=colour["edge"],
        )
        for lean in (-18, 0, 18):
            draw.ellipse((left + 18 + lean, 130 + abs(lean), left + 32 + lean, 176), fill=colour["leaf"])
    for height, count in ((40, 12), (85, 9)):
        _row(draw, height, count, colour, state)
    return image.quantize(24)


def _row(draw: ImageDraw.ImageDraw, height: int, count: int, colour: dict[str, str], state: str) -> None:
    step = WIDTH / count
    places = [
        (step * (number + 0.5), height + 12 - abs(number - (count - 1) / 2) * 2) for number in range(count)
    ]
    draw.line([(0, height - 4), *places, (WIDTH, height - 4)], fill=colour["edge"], width=2)
    for x, y in places:
        if state == "lit":
            draw.ellipse((x - 13, y - 9, x + 13, y + 17), fill="#6b5a33")
        draw.ellipse((x - 5, y, x + 5, y + 12), fill=colour["bulb"], outline=colour["edge"], width=2)


def main() -> None:
    """Write both pictures."""
    for state in COLOURS:
        bench(state).save(FOLDER / f"bench-{state}.png", optimize=True)


if __name__ == "__main__":
    main()

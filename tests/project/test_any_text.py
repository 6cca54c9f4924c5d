"""Whatever a file holds, the outcome is a project or a ProjectError."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import given, settings
from hypothesis import strategies as st

from guidegen.errors import ProjectError
from guidegen.project.read import ProjectFile, read_project

SMALL = Path(__file__).with_name("small.yaml").read_text("utf-8")
YAML_SIGNS = st.text("{}[]:,-?&*!|>'\"%@`# \n\tab1~<\\“”\u00a0", max_size=60)
WORDS = st.sampled_from(
    [
        "3,5 V",
        "nan ohm",
        "5 A",
        "12:30",
        "on",
        "NO",
        "~",
        "-1 m",
        "none",
        "{}",
        "[]",
        "one end",
        "middle",
        "both ends",
        "28 AWG",
        "0",
        "1e999 V",
        "drop",
        "half",
        "50 %",
        "\n    half of each bulb",
        "{area: 0.5 mm2}",
        "{length: 1 m, wire: {gauge: 22 AWG}}",
        "999999",
        "[{bulbs: 3}]",
        "{a: {b: c}}",
    ]
)
KEYS = st.sampled_from(
    [
        "bench",
        "led",
        "wire",
        "supply",
        "feed",
        "extra_wire",
        "runs",
        "coldest",
        "warmest",
        "lit_on_dc",
        "leds_in_series",
        "string",
        "near_water",
        "distance_to_water",
        "resistor",
        "meter_leads",
        "material",
        "current",
        "after_resistor",
        "glow",
    ]
)


def outcome(content: bytes) -> ProjectFile | ProjectError:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "lights.yaml"
        path.write_bytes(content)
        try:
            return read_project(path)
        except ProjectError as error:
            assert error.format_message()
            return error


@given(st.binary(max_size=200))
def test_any_bytes(content: bytes) -> None:
    assert outcome(content)


@given(st.one_of(st.text(max_size=200), YAML_SIGNS))
def test_any_text(text: str) -> None:
    assert outcome(text.encode("utf-8", "surrogatepass"))


@given(st.integers(0, len(SMALL)), st.integers(0, 12), YAML_SIGNS)
def test_any_text_written_over_a_piece_of_a_sound_project(start: int, length: int, text: str) -> None:
    assert outcome((SMALL[:start] + text + SMALL[start + length :]).encode())


@settings(max_examples=200)
@given(st.lists(st.tuples(st.integers(0, SMALL.count("\n") - 1), WORDS), min_size=1, max_size=4))
def test_any_values_exchanged_in_a_sound_project(changes: list[tuple[int, str]]) -> None:
    lines = SMALL.splitlines()
    for number, value in changes:
        lines[number] = lines[number].split(":")[0] + f": {value}"
    assert outcome("\n".join(lines).encode())


@settings(max_examples=200)
@given(
    st.lists(
        st.tuples(
            st.sampled_from(["  ", "    ", "      - ", ""]),
            KEYS,
            WORDS,
        ),
        min_size=1,
        max_size=3,
    ),
    st.integers(0, SMALL.count("\n")),
)
def test_any_keys_put_into_a_sound_project(keys: list[tuple[str, str, str]], where: int) -> None:
    lines = SMALL.splitlines()
    lines[where:where] = [f"{indent}{key}: {value}" for indent, key, value in keys]
    assert outcome("\n".join(lines).encode())

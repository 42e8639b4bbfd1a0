"""A stove comes back from its file as it was, and each mistake in one is told with its line and key."""

import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook.stove_file import read_stove, stove_from_text, stove_text, write_stove
from cookstove_gui.stove.stove import (
    Chimney,
    Firebox,
    FluePlace,
    Instrument,
    Spot,
    SpotKind,
    Stove,
    TankPlace,
    default_spots,
    unchecked,
)

from .strategies import texts

shares = st.floats(min_value=0.0, max_value=1.0)
names = st.text(st.characters(exclude_categories=("Cs", "Cc", "Z")), min_size=1, max_size=12)
lengths = st.none() | st.floats(min_value=0.03, max_value=2.0)
spots = st.builds(
    Spot,
    name=names,
    label=texts,
    kind=st.sampled_from(SpotKind),
    x=shares,
    y=shares,
    width=lengths,
    depth=lengths,
    surface=texts,
    instrument=texts,
)
instruments = st.builds(
    Instrument,
    name=texts,
    kind=st.sampled_from(["infrared", "oven thermometer", "probe", "flue thermometer"]),
    emissivity=st.floats(min_value=0.01, max_value=1.0),
    offset=st.floats(min_value=-50, max_value=50),
    offset_doubt=st.floats(min_value=0.0, max_value=20.0),
    gain=st.floats(min_value=-0.1, max_value=0.1),
    gain_doubt=st.floats(min_value=0.0, max_value=0.1),
    correlation=st.floats(min_value=-1.0, max_value=1.0),
    checked_on=st.sampled_from(["", "2026-01-05"]),
)
stoves = st.builds(
    Stove,
    name=names,
    firebox=st.sampled_from(Firebox),
    cooktop_width=st.floats(min_value=0.1, max_value=5.0),
    cooktop_depth=st.floats(min_value=0.1, max_value=5.0),
    cooktop_surface=texts,
    spots=st.one_of(
        st.just(default_spots()),
        st.lists(spots, min_size=1, max_size=4, unique_by=lambda spot: spot.name).map(tuple),
    ),
    instruments=st.lists(instruments, max_size=2).map(tuple),
    is_new=st.booleans(),
    first_fires_waived=st.booleans(),
    flue_place=st.sampled_from(FluePlace),
    water_tank=st.sampled_from(TankPlace),
    has_warming_closet=st.booleans(),
    has_lids=st.booleans(),
    cooktop_rows=st.integers(0, 4),
    cooktop_columns=st.integers(0, 4),
    altitude=st.floats(min_value=-500, max_value=6000),
    chimney=st.none()
    | st.builds(
        Chimney,
        height=st.floats(min_value=1.0, max_value=30.0),
        diameter=st.floats(min_value=0.08, max_value=0.4),
        loss=st.floats(min_value=0.0, max_value=50.0),
    ),
    sides=texts,
    note=texts,
    left_out=st.lists(texts, max_size=2).map(tuple),
)


@given(stove=stoves)
@settings(max_examples=60)
def test_any_stove_comes_back_from_its_file(stove: Stove) -> None:
    assert stove_from_text(stove_text(stove), "x") == stove


def test_file_has_the_agreed_keys(tmp_path: Path) -> None:
    instrument = replace(unchecked("gun", "infrared"), offset=1.5)
    spot = Spot(name="warmer", label="warmer", kind=SpotKind.TOP)
    path = tmp_path / "stove.toml"
    write_stove(path, Stove(name="Kitchen", spots=(spot,), instruments=(instrument,), chimney=Chimney(height=6.0)))
    table = tomllib.loads(path.read_text("utf-8"))
    assert list(table) == [
        "name",
        "firebox",
        "cooktop_width_m",
        "cooktop_depth_m",
        "cooktop_surface",
        "sides",
        "is_new",
        "first_fires_waived",
        "flue_reading",
        "flue_place",
        "water_tank",
        "has_warming_closet",
        "has_lids",
        "cooktop_rows",
        "cooktop_columns",
        "has_water_back",
        "altitude_m",
        "note",
        "left_out_of_walk",
        "chimney",
        "spot",
        "instrument",
    ]
    assert table["chimney"] == {"height_m": 6.0, "inside_width_m": 0.15, "wall_loss_w_m2_k": 4.0}
    assert list(table["spot"][0]) == ["name", "label", "kind", "x", "y"]
    assert list(table["instrument"][0]) == [
        "name",
        "kind",
        "emissivity",
        "offset_k",
        "offset_doubt_k",
        "gain",
        "gain_doubt",
        "offset_gain_correlation",
        "checked_on",
    ]
    assert read_stove(path).instruments == (instrument,)


def test_missing_keys_take_their_usual_value_and_unknown_ones_are_left_alone(tmp_path: Path) -> None:
    path = tmp_path / "cabin" / "stove.toml"
    path.parent.mkdir()
    path.write_text('\ufefffirebox = "right"\ncolour = "black"\n[shed]\ndry = true\n', encoding="utf-8")
    assert read_stove(path) == Stove(name="cabin", firebox=Firebox.RIGHT, spots=default_spots())


def test_chimney_without_keys_is_a_usual_one_and_none_is_none() -> None:
    assert stove_from_text("[chimney]\n", "x").chimney == Chimney()
    assert stove_from_text("", "x").chimney is None


def test_spot_takes_its_kind_and_label_from_its_name() -> None:
    stove = stove_from_text('[[spot]]\nname = "oven_top_shelf"\n', "x")
    assert stove.spots == (Spot(name="oven_top_shelf", label="oven top shelf", kind=SpotKind.OVEN),)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('name = "x"\nfirebox = "middle"', "stove.toml line 2: firebox = 'middle' .* left, right, above"),
        ("name = 7", "line 1: name = 7 .* text"),
        ("\n\naltitude_m = 9000", "line 3: altitude_m = 9000 .* -500 to 6000"),
        ("altitude_m = nan", "altitude_m"),
        ("is_new = 1", "true or false"),
        ("cooktop_width_m = true", "a number"),
        ("spot = 3", r"\[\[spot\]\]"),
        ("[[spot]]\nx = 0.5", "spot 1: the name is missing"),
        ('[[spot]]\nname = "a"\nx = 1.5', "spot 1 line 3: x = 1.5"),
        ('[[spot]]\nname = "a"\n[[spot]]\nname = "a"', "two spots are named “a”"),
        ('[[spot]]\nname = "a"\nkind = "roof"', "kind = 'roof'"),
        ("chimney = 5", r"a \[chimney\] table"),
        ("[chimney]\nheight_m = 100", "stove.toml, chimney line 2: height_m = 100 .* 1 to 30"),
        ("[chimney]\ninside_width_m = 6", "inside_width_m = 6 .* 0.08 to 0.4"),
        ("[[instrument]]\nemissivity = 95", "instrument 1 line 2: emissivity = 95"),
        ("is_new = false\nname = = 1", "not TOML .*line 2"),
    ],
)
def test_mistake_is_told_with_its_place(text: str, words: str) -> None:
    with pytest.raises(InputProblem, match=words) as told:
        stove_from_text(text, "stove.toml")
    assert "\n" not in told.value.sentence


def test_file_that_is_not_utf_8_is_told_with_its_line(tmp_path: Path) -> None:
    (tmp_path / "stove.toml").write_bytes('firebox = "left"\nname = "crême"\n'.encode("latin-1"))
    with pytest.raises(InputProblem, match="line 2: the text is not UTF-8"):
        read_stove(tmp_path / "stove.toml")


def test_file_too_large_or_not_there_is_told(tmp_path: Path) -> None:
    (tmp_path / "stove.toml").write_bytes(b"#" * 1_000_001)
    with pytest.raises(InputProblem, match="too large"):
        read_stove(tmp_path / "stove.toml")
    with pytest.raises(SurroundingsProblem, match="cannot be read"):
        read_stove(tmp_path / "none.toml")


def test_place_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    with pytest.raises(SurroundingsProblem, match="cannot be written"):
        write_stove(tmp_path / "none" / "stove.toml", Stove(name="x", spots=default_spots()))

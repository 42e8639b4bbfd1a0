"""Nothing lies in the package that the program cannot reach, but for what is listed here, each with its reason."""

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

import cookstove_gui
from tests.reach import Source

_BAKES = "closed solutions that the bakes' numbers are checked against"
_POTS = "simmer bands and boil-dry times of the pots to come"
_SKIN = "what skin meets on each material, which the order of the burn tables is checked against"
_SEEN = "how tests see what is on the screen"
LISTED = {
    "physics.conduction": _BAKES,
    "physics.superposition": _BAKES,
    "physics.bricks.product_ratio": _BAKES,
    "physics.boiling.boil_away_time": _POTS,
    "physics.boiling.holding_temperature": _POTS,
    "cooking.pans.boiling_time.simmer_range": _POTS,
    "physics.firewood.split_mass": "how the forecast's usual split was worked out",
    "physics.convection.surface_heat_loss": "bare iron, to compare the forecast's loss of heat with",
    "physics.lumped.lumped_temperature": "the closed form that cooling pans are checked against",
    "physics.touch.effusivity": _SKIN,
    "physics.touch.contact_temperature": _SKIN,
    "gui.widgets.theme.TEXT_PAIRS": "which colours meet, for the test of contrast",
    "gui.widgets.theme.EDGE_PAIRS": "the same for lines",
    "desk.heading.shown_detail": _SEEN,
    "gui.time_axis.free_room.FreeRoom.taken": _SEEN,
    "gui.time_axis.trend_plot.TrendPlot.spot_of": _SEEN,
    "gui.widgets.look.Look.mode": _SEEN,
    "gui.widgets.one_line.OneLine.rungs": _SEEN,
    "gui.widgets.one_line.OneLine.shown_width": _SEEN,
    "gui.widgets.one_line.OneLine.is_squeezed": _SEEN,
    "phrases.ladder.SHORTEST": "the least length that every ladder of sentences is held to",
    "gui.drawn_stove.stove_drawing.StoveDrawing.patch": "how tests find a spot of the drawing",
}


@pytest.fixture(scope="module")
def source() -> Source:
    return Source(Path(cookstove_gui.__file__).parent)


def test_the_program_reaches_all_but_what_is_listed(source: Source) -> None:
    listed = [part for name in LISTED for part in source.within(f"cookstove_gui.{name}")]
    assert source.unreached("cookstove_gui.__main__", *listed) == [], "delete it, or list it with a reason"


def test_nothing_is_listed_that_is_reached(source: Source) -> None:
    unreached = source.unreached("cookstove_gui.__main__")
    known = [f"cookstove_gui.{name}" for name in LISTED if f"cookstove_gui.{name}" in source.parts]
    assert [name for name in known if name not in unreached] == []


@pytest.fixture
def made(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Source]:
    """A small package that is reached in every way that counts, and has one of everything left over."""
    package = tmp_path / "kettle"
    package.mkdir()
    for name, text in {
        "__init__": "from kettle.parts import Lid as Lid",
        "start": "import kettle\nfrom kettle import spout\ndef main(): kettle.Lid().lift(); spout.pour(); late()\n"
        "def late():\n    from kettle.late import whistle\n    return whistle",
        "parts": "WIDE = 1\nUNUSED = 2\nclass Lid(list):\n    def lift(self): return WIDE\n"
        "    def append(self, x): ...\n    def polish(self): return self.polish",
        "spout": "def pour(): drip()\ndef drip(): ...",
        "late": "def whistle(): ...",
        "forgotten": "def rust(): ...",
    }.items():
        (package / f"{name}.py").write_text(text, encoding="utf-8")
    monkeypatch.syspath_prepend(tmp_path)
    yield Source(package)
    for name in [name for name in sys.modules if name.split(".")[0] == "kettle"]:
        del sys.modules[name]


def test_what_is_left_over_is_found(made: Source) -> None:
    left = ["kettle.forgotten", "kettle.parts.UNUSED", "kettle.parts.Lid.polish"]
    assert made.unreached("kettle.start.main") == left


def test_what_is_listed_reaches_on(made: Source) -> None:
    assert "kettle.forgotten" not in made.unreached("kettle.start.main", *made.within("kettle.forgotten"))

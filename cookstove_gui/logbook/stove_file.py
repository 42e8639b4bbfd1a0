"""The stove's own file, `stove.toml`: read with a sentence for each mistake, written so that a person can edit it.

Unknown keys are ignored, missing ones take their usual value. What cannot be read raises InputProblem.
"""

import tomllib
from collections.abc import Callable, Mapping
from enum import StrEnum
from functools import lru_cache
from pathlib import Path
from typing import Any, TypeVar

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook.whole_file import write_whole
from cookstove_gui.stove.stove import (
    ALTITUDES,
    CHIMNEY_HEIGHTS,
    COOKTOP_LENGTHS,
    COOKTOP_PLATES,
    FLUE_WIDTHS,
    INFRARED,
    MOST_SPOTS,
    PLATE_LENGTHS,
    Chimney,
    Firebox,
    FluePlace,
    FlueReading,
    Instrument,
    Spot,
    SpotKind,
    Stove,
    TankPlace,
    default_spots,
    spot_kind_from_name,
    unchecked,
)

FILE_NAME = "stove.toml"
_DEEPEST = 500  # dots in one key, which the parser takes ever longer over
_LARGEST_FILE = 200_000  # bytes; a stove takes a few hundred
Word = TypeVar("Word", bound=StrEnum)


def read_stove(path: Path) -> Stove:
    """The stove that a file describes; a file without a name takes its folder's."""
    try:
        with path.open("rb") as stream:
            content = stream.read(_LARGEST_FILE + 1)
    except OSError as error:
        raise SurroundingsProblem(f"{path} cannot be read ({error.strerror}).") from error
    if len(content) > _LARGEST_FILE:
        raise InputProblem(f"{path} is too large for a stove's description; is it the right file?")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        raise InputProblem(f"{path} line {line}: the text is not UTF-8; save the file as UTF-8.") from None
    return stove_from_text(text, str(path), name=path.resolve().parent.name)


def write_stove(path: Path, stove: Stove) -> None:
    """Write a stove's description, whole or not at all."""
    write_whole(path, stove_text(stove).encode("utf-8"))


@lru_cache(maxsize=32)  # a stove is kept again with each check, reading of the weather and restart
def stove_text(stove: Stove) -> str:
    """The text of a stove's file; what has its usual value is written as well, so that it can be seen and changed.

    Raises InputProblem for a stove that could not be read back.
    """
    import tomlkit

    table: dict[str, Any] = {
        "name": stove.name,
        "firebox": str(stove.firebox),
        "cooktop_width_m": stove.cooktop_width,
        "cooktop_depth_m": stove.cooktop_depth,
        "cooktop_surface": stove.cooktop_surface,
        "sides": stove.sides,
        "is_new": stove.is_new,
        "first_fires_waived": stove.first_fires_waived,
        "flue_reading": str(stove.flue_reading),
        "flue_place": str(stove.flue_place),
        "water_tank": str(stove.water_tank),
        "has_warming_closet": stove.has_warming_closet,
        "has_lids": stove.has_lids,
        "cooktop_rows": stove.cooktop_rows,
        "cooktop_columns": stove.cooktop_columns,
        "has_water_back": stove.has_water_back,
        "altitude_m": stove.altitude,
        "note": stove.note,
        "left_out_of_walk": list(stove.left_out),
    }
    if stove.chimney is not None:
        table["chimney"] = {
            "height_m": stove.chimney.height,
            "inside_width_m": stove.chimney.diameter,
            "wall_loss_w_m2_k": stove.chimney.loss,
        }
    if stove.spots != default_spots():
        table["spot"] = [_spot_table(spot) for spot in stove.spots]
    if stove.instruments:
        table["instrument"] = [
            {
                "name": instrument.name,
                "kind": instrument.kind,
                "emissivity": instrument.emissivity,
                "offset_k": instrument.offset,
                "offset_doubt_k": instrument.offset_doubt,
                "gain": instrument.gain,
                "gain_doubt": instrument.gain_doubt,
                "offset_gain_correlation": instrument.correlation,
                "checked_on": instrument.checked_on,
            }
            for instrument in stove.instruments
        ]
    text = tomlkit.dumps(table)
    stove_from_text(text, f"stove “{stove.name}”")
    return text


@lru_cache(maxsize=32)
def stove_from_text(text: str, where: str, name: str = "stove") -> Stove:
    """The stove that a text describes; `where` names the text in a sentence, `name` is used when it has none."""
    if any(line.partition("=")[0].count(".") > _DEEPEST for line in text.splitlines()):
        raise InputProblem(f"{where}: a key has more than {_DEEPEST} parts; is it the right file?")
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise InputProblem(f"{where}: the text is not TOML ({error}); correct that line.") from None
    except ValueError:
        raise InputProblem(f"{where}: a number has thousands of digits; correct it.") from None
    except RecursionError:
        raise InputProblem(f"{where}: tables stand inside one another without end; is it the right file?") from None
    field = _Fields(table, where, text)
    usual = Stove(name=name)
    spots = tuple(_spot(_Fields(row, f"{where}, spot {place}", text)) for place, row in field.tables("spot"))
    _expect_unlike([spot.name for spot in spots], f"{where}, [[spot]]")
    return Stove(
        name=field.text("name", name),
        firebox=field.word("firebox", Firebox, usual.firebox),
        cooktop_width=field.number("cooktop_width_m", usual.cooktop_width, *COOKTOP_LENGTHS),
        cooktop_depth=field.number("cooktop_depth_m", usual.cooktop_depth, *COOKTOP_LENGTHS),
        cooktop_surface=field.text("cooktop_surface", usual.cooktop_surface),
        spots=spots or default_spots(),
        instruments=tuple(
            _instrument(_Fields(row, f"{where}, instrument {place}", text)) for place, row in field.tables("instrument")
        ),
        is_new=field.yes_or_no("is_new", False),
        first_fires_waived=field.yes_or_no("first_fires_waived", False),
        flue_reading=field.word("flue_reading", FlueReading, FlueReading.UNSAID),
        flue_place=field.word("flue_place", FluePlace, FluePlace.UNSAID),
        water_tank=field.word("water_tank", TankPlace, TankPlace.NONE),
        has_warming_closet=field.yes_or_no("has_warming_closet", False),
        has_lids=field.yes_or_no("has_lids", True),
        cooktop_rows=field.count("cooktop_rows", 0, 0, COOKTOP_PLATES[1]),
        cooktop_columns=field.count("cooktop_columns", 0, 0, COOKTOP_PLATES[1]),
        has_water_back=field.yes_or_no("has_water_back", False),
        altitude=field.number("altitude_m", usual.altitude, *ALTITUDES),
        chimney=_chimney(field.table("chimney", f"{where}, chimney")),
        sides=field.text("sides", usual.sides),
        note=field.text("note", ""),
        left_out=field.texts("left_out_of_walk"),
    )


def _spot_table(spot: Spot) -> dict[str, Any]:
    row: dict[str, Any] = {"name": spot.name, "label": spot.label, "kind": str(spot.kind), "x": spot.x, "y": spot.y}
    more = {"width_m": spot.width, "depth_m": spot.depth, "surface": spot.surface, "instrument": spot.instrument}
    return row | {key: value for key, value in more.items() if value}


def _chimney(field: "_Fields | None") -> Chimney | None:
    if field is None:
        return None
    usual = Chimney()
    return Chimney(
        height=field.number("height_m", usual.height, *CHIMNEY_HEIGHTS),
        diameter=field.number("inside_width_m", usual.diameter, *FLUE_WIDTHS),
        loss=field.number("wall_loss_w_m2_k", usual.loss, 0.0, 50.0),
    )


def _spot(field: "_Fields") -> Spot:
    name = field.text("name", "")
    if not name.strip():
        raise InputProblem(f'{field.where}: the name is missing; write name = "top_front_left".')
    return Spot(
        name=name,
        label=field.text("label", name.replace("_", " ")),
        kind=field.word("kind", SpotKind, spot_kind_from_name(name)),
        x=field.number("x", 0.5, 0.0, 1.0),
        y=field.number("y", 0.5, 0.0, 1.0),
        width=field.number("width_m", 0.0, 0.0, PLATE_LENGTHS[1]) or None,
        depth=field.number("depth_m", 0.0, 0.0, PLATE_LENGTHS[1]) or None,
        surface=field.text("surface", ""),
        instrument=field.text("instrument", ""),
    )


def _instrument(field: "_Fields") -> Instrument:
    kind = field.text("kind", INFRARED)
    usual = unchecked("", kind)
    return Instrument(
        name=field.text("name", "thermometer"),
        kind=kind,
        emissivity=field.number("emissivity", usual.emissivity, 0.01, 1.0),
        offset=field.number("offset_k", usual.offset, -200.0, 200.0),
        offset_doubt=field.number("offset_doubt_k", usual.offset_doubt, 0.0, 200.0),
        gain=field.number("gain", usual.gain, -0.5, 0.5),
        gain_doubt=field.number("gain_doubt", usual.gain_doubt, 0.0, 0.5),
        correlation=field.number("offset_gain_correlation", usual.correlation, -1.0, 1.0),
        checked_on=field.text("checked_on", ""),
    )


def _expect_unlike(names: list[str], where: str) -> None:
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise InputProblem(f"{where}: two spots are named “{twice}”; give each its own name.")


class _Fields:
    """The keys of one table, each read with its type, range and a sentence."""

    def __init__(self, table: Mapping[str, Any], where: str, text: str) -> None:
        self.where = where
        self._table = table
        self._text = text

    def text(self, key: str, usual: str) -> str:
        return str(self._value(key, usual, lambda value: isinstance(value, str), "a text in quotation marks"))

    def texts(self, key: str) -> tuple[str, ...]:
        def fits(value: object) -> bool:
            return isinstance(value, list) and all(isinstance(one, str) for one in value)

        return tuple(self._value(key, [], fits, 'a list of texts such as ["room", "flue"]'))

    def yes_or_no(self, key: str, usual: bool) -> bool:
        return bool(self._value(key, usual, lambda value: isinstance(value, bool), "true or false"))

    def number(self, key: str, usual: float, low: float, high: float) -> float:
        def fits(value: object) -> bool:
            return isinstance(value, int | float) and not isinstance(value, bool) and low <= value <= high

        return float(self._value(key, usual, fits, f"a number from {low:g} to {high:g}"))

    def count(self, key: str, usual: int, low: int, high: int) -> int:
        def fits(value: object) -> bool:
            return isinstance(value, int) and not isinstance(value, bool) and low <= value <= high

        return int(self._value(key, usual, fits, f"a whole number from {low} to {high}"))

    def word(self, key: str, words: type[Word], usual: Word) -> Word:
        known = [str(word) for word in words]
        return words(self._value(key, str(usual), lambda value: value in known, f"one of {', '.join(known)}"))

    def table(self, key: str, where: str) -> "_Fields | None":
        row = self._value(key, None, lambda value: value is None or isinstance(value, dict), f"a [{key}] table")
        return None if row is None else _Fields(row, where, self._text)

    def tables(self, key: str) -> list[tuple[int, Mapping[str, Any]]]:
        rows = self._value(
            key,
            [],
            lambda value: isinstance(value, list) and all(isinstance(row, dict) for row in value),
            f"[[{key}]] tables",
        )
        if len(rows) > MOST_SPOTS:
            raise InputProblem(f"{self.where}: more than {MOST_SPOTS} [[{key}]] tables; no stove has so many.")
        return list(enumerate(rows, start=1))

    def _value(self, key: str, usual: Any, fits: Callable[[Any], bool], wanted: str) -> Any:
        value = self._table.get(key, usual)
        if fits(value):
            return value
        raise InputProblem(f"{self.where}{self._line(key, value)}: {key} = {value!r} cannot be used; write {wanted}.")

    def _line(self, key: str, value: object) -> str:
        """Line of a key, when only one line can be meant: tomllib does not tell."""
        shown = str(value).lower()
        lines = [
            number
            for number, line in enumerate(self._text.splitlines(), start=1)
            if line.split("=")[0].strip().strip("\"'") == key and shown in line.lower()
        ]
        return f" line {lines[0]}" if len(lines) == 1 else ""

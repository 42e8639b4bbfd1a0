"""What was typed behind `cookstove-gui`: one request, or one sentence about what is wrong with it."""

import argparse
import math
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, NoReturn, cast

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import HORIZON_MINUTES, LEAVE, Action
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import TemperatureUnit, kelvin

AHEAD = (15, 30, 60)  # min


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """One command with all it was given."""

    command: str
    logs: tuple[Path, ...]
    past: Path | None = None
    band: HeatBand | None = None  # none: bread heat
    unit: TemperatureUnit = "F"
    at: str = ""  # clock as typed; empty for the last row's
    ahead: tuple[int, ...] = AHEAD
    actions: tuple[tuple[str, Action], ...] = ()  # as typed, and what it means
    as_json: bool = False
    target: Path | None = None  # not there yet, or to be replaced
    dishes: Path | None = None  # file of the dishes to plan
    table: str = ""  # when they are to be on the table, as typed
    safe: bool = False  # planned with the larger margin
    one_page: bool = False  # a report for a visitor
    season: int | None = None  # the year in which the season to report began; 0 for all years
    cautions: bool = False  # a season's report with the cautions counted
    said: bool = False  # a report with what was projected
    dates: str = "day"  # how dates and clocks are written in a report
    clocks: str = "24"


class _Parser(argparse.ArgumentParser):
    """Tells a mistake in one sentence instead of printing the usage and leaving."""

    def error(self, message: str) -> NoReturn:
        raise InputProblem(f"{self.prog}: {message}; see {self.prog} --help.")


class _Version(argparse.Action):
    """Looks the version up only when it is asked for."""

    def __call__(self, parser: argparse.ArgumentParser, *_: Any) -> None:
        from importlib.metadata import PackageNotFoundError, version

        try:
            number = version("cookstove-gui")
        except PackageNotFoundError:
            number = "(not installed)"
        print(f"cookstove-gui {number}")
        parser.exit()


def parsed(arguments: Sequence[str]) -> Request | None:
    """The request, or none when only help was asked for; raises InputProblem for what makes no sense."""
    try:
        found = _parser().parse_args(list(arguments))
    except SystemExit:  # after --help or --version
        return None
    except argparse.ArgumentError as error:
        raise InputProblem(f"cookstove-gui: {error}; see cookstove-gui --help.") from None
    logs, ahead = _sorted_out(found)
    if not logs and found.command != "plan":
        raise InputProblem(f"cookstove-gui {found.command}: no log is named; see cookstove-gui {found.command} --help.")
    unit = cast(TemperatureUnit, getattr(found, "unit", "F"))
    return Request(
        command=found.command,
        logs=logs,
        past=getattr(found, "past", None),
        band=_band(getattr(found, "band", None), unit),
        unit=unit,
        at=getattr(found, "at", None) or "",
        ahead=ahead,
        actions=_actions(getattr(found, "what_if", None) or []),
        as_json=getattr(found, "json", False),
        target=_target(found),
        dishes=getattr(found, "dishes", None),
        table=(getattr(found, "table", None) or [""])[0],
        safe=getattr(found, "safe", False),
        one_page=getattr(found, "one_page", False),
        season=getattr(found, "season", None),
        cautions=getattr(found, "cautions", False),
        said=getattr(found, "said", False),
        dates=getattr(found, "dates", "day"),
        clocks=getattr(found, "clock", "24"),
    )


def _target(found: argparse.Namespace) -> Path | None:
    target: Path | None = getattr(found, "target", None)
    if target is not None and target.exists() and not found.replace:
        raise InputProblem(f"{target} is there already; choose another name, or add --replace.")
    return target


def _parser() -> _Parser:
    parser = _Parser(
        prog="cookstove-gui",
        description="Without a command the window opens; with one, an answer is printed and the program ends.",
        epilog=(
            "Options of the window, without a command: --practice [FOLDER] plays a sample session as if live, --pace N "
            "sets how fast, --logbook PATH opens another logbook, --unit F|C shows temperatures in that unit."
        ),
    )
    parser.add_argument("--version", action=_Version, nargs=0, help="the program's version")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND", parser_class=_Parser)

    outlook = commands.add_parser("outlook", help="the oven now and ahead, for each LOG")
    _add_logs(outlook)
    outlook.add_argument("--ahead", nargs="+", metavar="MINUTES", help="minutes ahead (15 30 60)")
    outlook.add_argument(
        "--if",
        dest="what_if",
        action="append",
        metavar="STEP",
        help="what if: “two splits”, “2 kg”, “air 0.3”, “bypass closed”, “leave”; may be given several times",
    )
    zones = commands.add_parser("zones", help="the heat of every spot, for each LOG")
    _add_logs(zones)
    fit = commands.add_parser("fit", help="what each spot is good for, for each LOG")
    _add_logs(fit)
    plan = commands.add_parser("plan", help="a meal planned back from the table")
    plan.add_argument(
        "dishes", type=Path, metavar="DISHES.toml", help="the dishes; a dish with only a key is a usual one"
    )
    plan.add_argument("--table", nargs="+", metavar="CLOCK", help="when they are to be on the table, such as 18:30")
    plan.add_argument("--safe", action="store_true", help="with the larger margin")
    _add_logs(plan)
    record = commands.add_parser("track-record", help="how projections over past sessions would have turned out")
    record.add_argument("logs", nargs=1, type=Path, metavar="DIR", help="folder of logs")
    record.add_argument("--json", action="store_true", help="one JSON object")
    report = commands.add_parser("report", help="a page about a session, a season or a stove for someone else")
    report.add_argument(
        "logs", nargs=1, type=Path, metavar="LOG", help="a session's CSV file, or the folder of a stove's logs"
    )
    report.add_argument(
        "--season", type=int, metavar="YEAR", help="of a folder the winter that began in YEAR; 0 for all years"
    )
    report.add_argument("--cautions", action="store_true", help="of a season, with its cautions counted; takes a while")
    report.add_argument("--said", action="store_true", help="of a session, with what was projected; takes a while")
    report.add_argument(
        "--dates", choices=("day", "month", "year"), default="day", help="what a date begins with (day)"
    )
    report.add_argument("--clock", choices=("24", "12"), default="24", help="hours of a day's clock (24)")
    report.add_argument("-o", dest="target", type=Path, required=True, metavar="FILE", help="FILE.html or FILE.pdf")
    report.add_argument("--one-page", action="store_true", help="for a visitor, without the whole record")
    report.add_argument("--replace", action="store_true", help="write over FILE if it is there")
    _add_past(report)
    _add_unit(report)
    table = commands.add_parser("table", help="all entries of a folder's sessions as one table")
    table.add_argument("logs", nargs=1, type=Path, metavar="DIR", help="folder of logs")
    table.add_argument(
        "-o", dest="target", type=Path, required=True, metavar="FILE", help="FILE.csv, FILE.xlsx or FILE.parquet"
    )
    table.add_argument("--replace", action="store_true", help="write over FILE if it is there")
    return parser


def _add_logs(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("logs", nargs="*", type=Path, metavar="LOG", help="a session's CSV file")
    _add_past(parser)
    parser.add_argument("--at", metavar="CLOCK", help="the moment asked about; the last row's if left out")
    parser.add_argument("--json", action="store_true", help="JSON objects, one a line")
    _add_unit(parser)


def _add_past(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--past", type=Path, metavar="DIR", help="folder of the stove's past logs")
    parser.add_argument("--band", nargs=2, metavar=("LOW", "HIGH"), help="oven heat wanted; bread heat if left out")


def _add_unit(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--unit", type=str.upper, choices=("F", "C"), default="F", help="unit of the answer (F)")


def _sorted_out(found: argparse.Namespace) -> tuple[tuple[Path, ...], tuple[int, ...]]:
    """Logs and minutes ahead; what stands behind the clock of `--table`, or behind the minutes of `--ahead` and is no
    number, is a log."""
    typed: list[str] = getattr(found, "ahead", None) or []
    minutes = [text for text in typed if text.isdecimal()]
    rest = [text for text in typed if not text.isdecimal()]
    if typed and not minutes:
        raise InputProblem(f"“{typed[0]}” is no number of minutes; write for example --ahead 15 30 60.")
    ahead = tuple(int(text) for text in minutes) or AHEAD
    beyond = next((minute for minute in ahead if minute > HORIZON_MINUTES), None)
    if beyond is not None:
        raise InputProblem(f"{beyond} minutes is too far ahead; ask for {HORIZON_MINUTES} or fewer.")
    behind_table: list[str] = (getattr(found, "table", None) or [])[1:]
    return (*found.logs, *map(Path, rest), *map(Path, behind_table)), ahead


def _band(typed: list[str] | None, unit: TemperatureUnit) -> HeatBand | None:
    if typed is None:
        return None
    ends = []
    for text in typed:
        try:
            number = float(text)
        except ValueError:
            number = math.nan
        if not math.isfinite(number):
            raise InputProblem(f"“{text}” is no end of a band; write for example --band 400 450.")
        ends.append(number)
    low, high = ends
    if not low < high:
        raise InputProblem(f"The band {typed[0]} to {typed[1]} is empty; write the lower end first.")
    if kelvin(low, unit) < 0.0:
        raise InputProblem(f"{typed[0]} °{unit} is colder than anything can be; correct the lower end of the band.")
    return HeatBand(name=f"{typed[0]}–{typed[1]} °{unit}", low=kelvin(low, unit), high=kelvin(high, unit))


def _actions(typed: list[str]) -> tuple[tuple[str, Action], ...]:
    from cookstove_gui.commands.what_if import action_from_text

    return tuple((text, action_from_text(text)) for text in typed) if typed else (("", LEAVE),)

"""`plan`: a meal planned back from the table, on the fire that a log tells of, or on one that is to be lit."""

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from cookstove_gui.commands.lines import one_line
from cookstove_gui.commands.parsing import Request
from cookstove_gui.commands.question import Asked, Asker
from cookstove_gui.cooking.fires.first_fires import progress
from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.cooking.supper.dish_text import meal_from_text
from cookstove_gui.cooking.supper.dishes import Meal
from cookstove_gui.cooking.supper.left import clashes_left
from cookstove_gui.cooking.supper.marks import Supper
from cookstove_gui.cooking.supper.moments import moments
from cookstove_gui.cooking.supper.plan import Margin, Plan, PlannedStep
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.learning.learn import learn
from cookstove_gui.logbook.folder import read_folder
from cookstove_gui.one_road import work_out
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.supper import clash_words, fits_words, moment_words, source_words
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.supper import SupperInputs, plan_supper
from cookstove_gui.units import iso_clock, local_offset_minutes, parse_iso_clock, parse_near_clock

_A_DAY = timedelta(days=1)


def plan_lines(request: Request, complain: Callable[[str], None]) -> tuple[list[str], bool]:
    """The lines to print, and whether every row of the log could be read.

    Raises
    ------
    InputProblem
        For dishes that cannot be read or planned, no time for the table, or more than one log.
    """
    if len(request.logs) > 1:
        raise InputProblem("A meal is planned on one fire; name one LOG, or none where nothing is lit yet.")
    meal = _meal(request.dishes)
    asked = Asker(request, complain).ask(request.logs[0]) if request.logs else _nothing_lit(request)
    supper = Supper(
        table_at=_table_at(request.table or meal.table, asked),
        dishes=meal.dishes,
        margin=Margin.SAFE if request.safe else Margin.USUAL,
    )
    first_fires = progress(asked.inputs.stove, asked.inputs.earlier)
    if not request.logs and first_fires.next is not None:
        raise InputProblem("The first fires of this stove aren't done yet, so no food is planned on it.")
    standing = work_out(asked.inputs) if request.logs else None
    plan = plan_supper(
        SupperInputs(supper=supper, asked=asked.inputs, standing=standing, sessions=lambda: asked.inputs.earlier)
    )
    edge = Edge(unit=request.unit, now=asked.inputs.now, offset_minutes=asked.offset_minutes)
    if request.as_json:
        return [one_line(_object(plan, asked.offset_minutes))], asked.is_whole
    said = [f"  {edge.at(one.at):>5}  {moment_words(one, plan, asked.inputs.stove, edge)}" for one in moments(plan)]
    fits = " ".join(part for part in fits_words(plan) if part)
    clashes = [f"  {clash_words(one, plan)}" for one in clashes_left(plan)[1:]]
    return [f"Table at {edge.at(plan.table_at)}. {fits}", *clashes, *said, source_words(plan)], asked.is_whole


def _meal(path: Path | None) -> Meal:
    if path is None:
        raise InputProblem("No file of dishes is named; see cookstove-gui plan --help.")
    try:
        text = path.read_text(encoding="utf-8")
    except OSError as error:
        raise InputProblem(f"{path} cannot be read ({error.strerror}); check its name.") from None
    except UnicodeDecodeError:
        raise InputProblem(f"{path} is not a text in UTF-8; save it as UTF-8.") from None
    return meal_from_text(text, str(path))


def _nothing_lit(request: Request) -> Asked:
    """The moment asked about without a log: `--at` with its offset, or now by this computer's clock."""
    now = datetime.now(UTC)
    offset = local_offset_minutes(now)
    if request.at:
        now, offset = parse_iso_clock(request.at)
    past = read_folder(request.past) if request.past is not None else None
    stove = (past.stove if past is not None else None) or stove_with_default_spots("stove")
    sessions = tuple(
        replace(one, stove=stove.name, entries=kept)
        for one in (past.sessions if past is not None else ())
        if (kept := tuple(row for row in one.entries if row.at < now))
    )
    inputs = Inputs(
        stove=stove,
        rows=(),
        now=now,
        band=request.band or band_from_text("bread", "F"),
        character=learn(stove, meant_sessions(stove, sessions)) if sessions else None,
        earlier=sessions,
        baked=sessions,
    )
    return Asked(log=Path(), inputs=inputs, offset_minutes=offset, is_whole=True)


def _table_at(typed: str, asked: Asked) -> datetime:
    now = asked.inputs.now
    if not typed:
        raise InputProblem("No time for the table is given; add for example --table 18:30.")
    if len(typed.strip()) > len("12:00:00 a.m."):
        return parse_iso_clock(typed)[0]
    at = parse_near_clock(typed, now, asked.offset_minutes)
    return at if at > now else at + _A_DAY


def _object(plan: Plan, offset: int) -> dict[str, Any]:
    def clock(at: datetime | None) -> str | None:
        return None if at is None else iso_clock(at, offset)

    def step_of(step: PlannedStep) -> dict[str, Any]:
        return {
            "step": step.key,
            "kind": str(step.kind),
            "dish": step.dish,
            "what": step.what,
            "begin": clock(step.begin),
            "end": clock(step.end),
            "turn": clock(step.turn_at),
            "spot": step.spot,
            "chance": None if step.chance is None else round(step.chance, 4),
        }

    return {
        "table": clock(plan.table_at),
        "now": clock(plan.made_at),
        "margin": str(plan.margin),
        "lit": plan.lit,
        "firings": plan.firings,
        "chance": None if plan.chance is None else round(plan.chance, 4),
        "proven": plan.proven,
        "steps": [step_of(step) for step in plan.steps],
        "clashes": [
            {
                "dish": clash.dish,
                "late_min": clash.late_min,
                "instead": clash.instead,
                "instead_min": clash.instead_min,
                "no_heat": clash.no_heat,
            }
            for clash in clashes_left(plan)
        ],
    }

"""The sentences of a planned supper: what to do at each moment, what does not fit, what moved, what it rests on."""

from collections.abc import Sequence
from datetime import timedelta

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Dish, Heat, Wait
from cookstove_gui.cooking.supper.heats import planned_for, task_for
from cookstove_gui.cooking.supper.left import clashes_left
from cookstove_gui.cooking.supper.marks import Supper, step_key
from cookstove_gui.cooking.supper.moments import Moment, MomentKind, dish_of, part_of_step
from cookstove_gui.cooking.supper.plan import MARGINS, Clash, FireStep, Move, Plan, PlannedStep, StepKind
from cookstove_gui.phrases.edge import Edge, day_and_month, duration, in_sentence, local_day, spot_label, whole
from cookstove_gui.phrases.plan.fire_steps import fire_mark, fire_order, load_mass
from cookstove_gui.phrases.plot import in_ten
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees

_ON_TIME_MIN = 3.0  # from its time, within which a meal was as planned
_FAILS_BELOW = 0.75  # chance of a heat below which it is told how often it is missed: about three of ten
_FAILS_BY = {"uneven": "Too uneven", "hot": "Too hot"}
_LONGEST_NAME = 32  # letters of a dish in the shortest heading
_WHY = {
    "late": "a step took longer than planned",
    "heat": "the fire does otherwise than expected",
    "known": "it suits the rest better, by what is known of the stove",
    "dish": "the meal changed",
    "own": "you set it",
}


def moment_words(moment: Moment, plan: Plan, stove: Stove, edge: Edge) -> str:
    """What to do, as it stands in the list of the next steps: `bread in, if at 340`."""
    step = moment.step
    dish, part = dish_of(plan, step), part_of_step(plan, step)
    name = _inside(dish)
    match moment.kind:
        case MomentKind.FIRE:
            return _fire_words(step, edge)
        case MomentKind.TURN:
            return f"turn the {name}"
        case MomentKind.TAKE_OUT:
            return f"{name} out, if done"
        case MomentKind.TAKE_OFF:
            return f"{name} off the heat"
        case MomentKind.PUT_IN if isinstance(part, Heat):
            return f"{name} in, if at {whole(degrees(planned_for(task_for(part)).low, edge.unit))}"
        case MomentKind.PUT_ON:
            return f"{name}: {step.what}, {spot_label(stove, step.spot)}"
    return f"{name}: {step.what}"


def due_words(moment: Moment, plan: Plan, stove: Stove, edge: Edge) -> str:
    """The same as the one thing to do now, a sentence of its own."""
    said = moment_words(moment, plan, stove, edge)
    return f"{said[:1].upper()}{said[1:]}."


def due_rungs(moment: Moment, plan: Plan, stove: Stove, edge: Edge) -> tuple[str, ...]:
    """The same from long to short; where on the cooktop is left out first, then what is done."""
    dish = dish_of(plan, moment.step)
    whole = due_words(moment, plan, stove, edge)
    if dish is None:
        return (whole,)
    name = f"{dish.name[:_LONGEST_NAME]}"
    return tuple(dict.fromkeys((whole, f"{name}: {moment.step.what}.", f"{name}: {moment.kind}.", f"{name} now.")))


def next_words(moment: Moment, plan: Plan, stove: Stove, edge: Edge) -> str:
    """What comes next, with its clock: `At 2:30 light the fire.`"""
    return f"At {edge.at(moment.at)}: {moment_words(moment, plan, stove, edge)}."


def fits_words(plan: Plan) -> tuple[str, str]:
    """How sure the table's time is, and what is tightest; or what doesn't fit: a short title, and a line below it."""
    if clashes := clashes_left(plan):
        step = _short_step(clashes[0], plan)
        lacks = "Too little heat" if step is None else _FAILS_BY.get(step.fails_by, "Too little heat")
        title = "Does not fit" if any(one.late_min for one in clashes) else lacks
        return f"{title};", clash_words(clashes[0], plan)
    tightest = min(
        (step for step in plan.steps if step.chance is not None), key=lambda step: step.chance or 0.0, default=None
    )
    if tightest is None or tightest.chance is None:
        return "Everything fits.", ""
    told = f"{_inside(dish_of(plan, tightest))}, {_in_ten(tightest.chance)}"
    way = "not sure of" if tightest.chance < MARGINS[plan.margin] else "tightest:"
    if plan.chance is None:
        return "Everything fits;", f"{way} {told}"
    return f"In time {_in_ten(plan.chance)};", f"{way} {told}"


def plan_rungs(plan: Plan, edge: Edge) -> tuple[str, ...]:
    """The meal as it is planned, behind what comes next, from long to short."""
    names = ", ".join(in_sentence(dish.name) for dish in plan.dishes)
    title, _ = fits_words(plan)
    fits = title.rstrip(".;")
    at = f"On the table at {edge.at(plan.table_at)}"
    return (f"{at}: {names}. {fits}. The whole plan is on Plan, Supper.", f"{at}: {names}. {fits}.", f"{at}. {fits}.")


def _in_ten(chance: float) -> str:
    """A chance in tenths, kept in one line."""
    return in_ten(chance).replace(" ", "\u00a0")


def chance_words(plan: Plan) -> str:
    """What the chance of the whole is of, in full; empty where no heat is wanted."""
    if plan.chance is None:
        return ""
    known = "as the fire burns now" if plan.lit else "before anything is lit"
    share = in_ten(plan.chance).replace(" in ", " of ")
    return (
        f"Every dish is on time, to ten minutes, in {share} futures {known}, tended as planned; each reading "
        "makes it surer, or moves steps."
    )


def clash_words(clash: Clash, plan: Plan) -> str:
    """What does not fit, and the least change that would make it fit."""
    name = _name(plan, clash.dish)
    if clash.late_min and any(step.begun or step.done for step in _heats_of(plan, clash.dish)):
        return f"{name} {duration(clash.late_min)} late."  # it is on the fire: nothing is left to choose
    if clash.late_min:
        late = f"{name} {duration(clash.late_min)} later"
        if clash.instead == clash.dish or not clash.instead:
            return f"{late}, or without it."
        other = in_sentence(_name(plan, clash.instead))
        return f"{late}, or do it first and the {other} {duration(clash.instead_min)} later."
    step = _short_step(clash, plan)
    chance = "" if step is None or step.chance is None else f" ({in_ten(step.chance)})"
    if step is not None and step.fails_by:
        part = part_of_step(plan, step)
        where = "the oven is" if isinstance(part, Heat) and part.place is Place.OVEN else "every spot is"
        return f"{name}: {where} {_FAILS_BY[step.fails_by].lower()}{chance}."
    return f"{name} hardly finds its heat{chance}."


def _short_step(clash: Clash, plan: Plan) -> PlannedStep | None:
    """The step that finds no place as it wants it."""
    return next((one for one in plan.steps if one.key == clash.no_heat), None)


def chance_line(step: PlannedStep) -> str:
    """How often a step fails, where that is often."""
    if step.chance is None or step.done or step.chance > _FAILS_BELOW:
        return ""
    fails = round(10 * (1.0 - step.chance))
    if step.fails_by:
        return f"place {_FAILS_BY[step.fails_by].lower()}"
    if fails > 9:
        return "hardly finds heat"
    return f"fails {fails} times in 10"


def fails_rungs(steps: Sequence[PlannedStep]) -> tuple[str, ...]:
    """Of a dish's steps the one that misses its heat most often, from long to short: `bake fails 3 times in 10`."""
    told = [step for step in steps if chance_line(step)]
    worst = min(told, key=lambda step: step.chance or 0.0, default=None)
    return () if worst is None else (f"{worst.what} {chance_line(worst)}", chance_line(worst))


def _heats_of(plan: Plan, dish: str) -> list[PlannedStep]:
    return [step for step in plan.of_dish(dish) if step.kind is StepKind.HEAT]


def move_words(move: Move, plan: Plan, edge: Edge) -> str:
    """That a step moved, and why: `Bread: shape now 4:25, was 4:18; a step took longer than planned.`"""
    step = next((one for one in plan.steps if one.key == move.step), None)
    said = "a step" if step is None else step_words(step, plan)
    return f"{said[:1].upper()}{said[1:]} at {edge.at(move.now)}, was {edge.at(move.was)}: {_WHY[move.why]}."


def moved_words(plan: Plan, edge: Edge) -> str:
    """What moved in the latest plan: the first, and how many more; the fire's own steps follow the dishes' unsaid."""
    moved = [one for one in plan.moved if not one.step.startswith("fire/") or one.step == "fire/light"]
    if not moved:
        return ""
    more = f" And {len(moved) - 1} more." if len(moved) > 1 else ""
    return f"{move_words(moved[0], plan, edge)}{more}"


def step_words(step: PlannedStep, plan: Plan) -> str:
    """A step by its dish and what is done: `bread: bake`."""
    if step.kind is StepKind.FIRE:
        return fire_order(FireStep(step.what), step.splits, step.opening)
    return f"{_inside(dish_of(plan, step))}: {step.what}"


def fire_word(step: PlannedStep) -> str:
    """The word under a mark in the fire's lane."""
    return fire_mark(FireStep(step.what), step.splits, step.opening)


def _fire_words(step: PlannedStep, edge: Edge) -> str:
    """With what a load weighs: `add 2 splits, 2.6 lb`."""
    order = fire_order(FireStep(step.what), step.splits, step.opening)
    return order if step.wood is None else f"{order}, {load_mass(step.wood, edge)}"


def turned_out_words(supper: Supper, edge: Edge) -> str:
    """How a meal turned out: when its last dish was ready, against when it was wanted; empty while one is not."""
    ends = []
    for dish in supper.dishes:
        last = max((n for n, part in enumerate(dish.parts) if not isinstance(part, Wait)), default=0)
        end = supper.mark(step_key(dish.key, last)).ended
        if end is None:
            return ""
        rest = sum(part.shortest for part in dish.parts[last + 1 :] if isinstance(part, Wait))
        ends.append(end + timedelta(minutes=rest - dish.after_table))
    if not ends:
        return ""
    late = (max(ends) - supper.table_at).total_seconds() / 60.0
    if abs(late) < _ON_TIME_MIN:
        return f"On the table at {edge.at(max(ends))}, as planned."
    way = "late" if late > 0.0 else "early"
    return f"Ready at {edge.at(max(ends))}, {duration(abs(late))} {way}."


def cooked_words(supper: Supper, edge: Edge) -> tuple[str, str] | None:
    """In the place of how sure a plan is, once all of it is cooked; none before."""
    out = turned_out_words(supper, edge)
    return ("All is cooked.", out) if out else None


def earlier_words(supper: Supper, edge: Edge) -> str:
    """An earlier meal in the list: its day, its dishes, how it turned out."""
    names = ", ".join(dish.name for dish in supper.dishes)
    day = day_and_month(local_day(supper.table_at, edge.offset_minutes))
    return f"{day}, {edge.at(supper.table_at)}: {names}. {turned_out_words(supper, edge)}".strip()


def supper_note(supper: Supper, edge: Edge) -> str:
    """A meal beside the session it was cooked in: its dishes, and how it turned out."""
    names = ", ".join(dish.name for dish in supper.dishes)
    return f"Supper planned: {names}. {turned_out_words(supper, edge)}".strip()


def in_meal_words(supper: Supper) -> str:
    """What the meal has so far; empty for nothing."""
    names = ", ".join(dish.name for dish in supper.dishes)
    return f"In the meal: {names}." if names else ""


def source_words(plan: Plan) -> str:
    """What the times rest on."""
    if plan.lit:
        return "Planned from the fire as it burns; every reading plans again."
    if plan.firings == 0:
        return "Nothing is lit: planned from how long a stove usually takes, until this one has shown its own rises."
    fires = "fire" if plan.firings == 1 else "fires"
    return f"Nothing is lit: planned from this stove's own rises in {plan.firings} {fires}."


def under_dish(dish: Dish, plan: Plan, stove: Stove, edge: Edge) -> str:
    """The line under a dish's name: when it is eaten if not at the table's time, how much of it, or where it stands."""
    if dish.after_table:
        return f"eaten at {edge.at(plan.table_at + timedelta(minutes=dish.after_table))}"
    if dish.makes:
        return dish.makes
    spots = list(dict.fromkeys(step.spot for step in plan.of_dish(dish.key) if step.spot))
    return ", ".join(spot_label(stove, spot) for spot in spots[:2])


def _name(plan: Plan, key: str) -> str:
    return next((dish.name for dish in plan.dishes if dish.key == key), key)


def _inside(dish: Dish | None) -> str:
    """A dish's name inside a sentence."""
    return "it" if dish is None else in_sentence(dish.name)

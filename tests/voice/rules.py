"""The rules: each looks at one moment, or at two consecutive ones, and gives a sentence for every breach."""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np

from cookstove_gui.cooking.fit.fit import FitState, TaskFit
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.desk.cook.oven_lines import oven_fan
from cookstove_gui.forecast.answers import HORIZON_MINUTES, JUST_READ_MINUTES
from cookstove_gui.resource_files import table
from tests.voice.drawn_line import entering, leaving
from tests.voice.moment import Moment
from tests.voice.numbers import unknown_numbers
from tests.voice.replay import Pair, Step
from tests.voice.supper_rules import SUPPER_RULES
from tests.voice.words import (
    ASSUMES,
    CLOCK,
    DONE,
    FALLS_OUT,
    LIKELY,
    OF_A_STEP,
    PAST_TENSE,
    TOUCHES,
    UNLIKELY,
    UNTIL,
    WOOD,
    deadlines,
    minutes_to,
    sentences,
)

LINE_TOLERANCE = 3.0  # min; the eye reads no closer off a plot of three hours
EVEN = 0.5
STILL_HOT = 323.15  # K, 122 °F: a cooktop that cannot be called cold
_SOON = 10.0  # min
_NEXT_MINUTE = 2.5  # min; two moments no further apart are of one and the next minute
_HEADING = ("headline", "rung")
_ADVICE = (*_HEADING, "detail", "plot", "large", "outlook", "fit", "pots", "bake", "wood")
_TASK_OF_BAND = {"bread": "bread", "biscuit": "biscuits", "cake": "cake", "roast": "roast_meat", "pie": "pie"}

Breaches = Iterator[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A name, what it holds, and how it is looked for."""

    name: str
    sentence: str
    of_moment: Callable[[Moment], Breaches] | None = None
    of_pair: Callable[[Pair], Breaches] | None = None
    steps: tuple[Step, ...] = (Step.TIME,)  # the kinds of pairs it looks at


# --- of one moment ----------------------------------------------------------------------------------------------------


def likely_is_the_line(moment: Moment) -> Breaches:
    """An arrival is likely when the drawn middle line enters the band; a line that never does says no such clock."""
    for text in moment.at(*_HEADING, "detail", "plot", "outlook"):
        for sentence in sentences(text):
            if UNTIL.search(sentence) or TOUCHES.search(sentence) or DONE.search(sentence):
                continue
            enters = _entering_said(moment, sentence)
            for clock in LIKELY.findall(sentence):
                said = minutes_to(clock, moment.now, moment.edge.offset_minutes)
                if enters is None:
                    yield f"“{sentence}”, but the drawn line never enters the band"
                elif abs(said - enters) > LINE_TOLERANCE:
                    yield f"“{sentence}”, in {said:.0f} min, but the drawn line enters in {enters:.0f} min"


def _entering_said(moment: Moment, sentence: str) -> float | None:
    """Minutes until the line enters that a sentence is about: of the step it advises, or of the present course."""
    step, band = moment.standing.best_step, moment.standing.band
    minutes, kelvin = moment.line
    if step is not None and OF_A_STEP.search(sentence):
        fan = oven_fan(step.projection, moment.standing.stove.oven_spot)
        minutes, kelvin = fan.minutes, fan.p50
    return entering(minutes, kelvin, band.low, band.high)


def unlikely_is_the_chance(moment: Moment) -> Breaches:
    """A heat is called not likely only if most futures never touch it; one that most only touch is not promised."""
    chance = moment.standing.outlook.band.chance_reached_3h
    minutes, kelvin = moment.line
    enters = entering(minutes, kelvin, moment.standing.band.low, moment.standing.band.high)
    for text in moment.at(*_HEADING, "large", "outlook"):
        if UNLIKELY.search(text) and (chance >= EVEN or enters is not None):
            yield f"“{text}” with a chance of {chance:.0%}"
        if TOUCHES.search(text) and (chance < EVEN or enters is not None):
            yield f"“{text}” with a chance of {chance:.0%}, drawn line enters {_in(enters)}"


def falling_out_is_the_line(moment: Moment) -> Breaches:
    """The oven is said to fall out without wood; where the drawn line holds, it is said what the line assumes."""
    minutes, kelvin = moment.line
    leaves = leaving(minutes, kelvin, moment.standing.band.low, moment.standing.band.high)
    for place in (*_HEADING, "detail", "outlook"):
        for text in moment.at(place):
            for sentence in sentences(text):
                falls = FALLS_OUT.search(sentence) is not None
                if falls and (leaves is None or leaves > _SOON) and not ASSUMES.search(text):
                    yield f"{place}: “{text}”, but the drawn line leaves {_in(leaves)}"


def stay_is_the_line(moment: Moment) -> Breaches:
    """A stay ends when the drawn middle line leaves the band."""
    minutes, kelvin = moment.line
    leaves = leaving(minutes, kelvin, moment.standing.band.low, moment.standing.band.high)
    for text in moment.at(*_HEADING, "outlook"):
        for clock in UNTIL.findall(text):
            said = minutes_to(clock, moment.now, moment.edge.offset_minutes)
            if said < HORIZON_MINUTES - LINE_TOLERANCE and (leaves is None or abs(said - leaves) > LINE_TOLERANCE):
                yield f"“{text}”, in {said:.0f} min, but the drawn line leaves {_in(leaves)}"


def unlikely_is_plain(moment: Moment) -> Breaches:
    """What is called not likely within three hours is not given a clock in the same breath."""
    for text in moment.at("headline", "outlook"):
        if "not likely" in text and CLOCK.search(text):
            yield f"“{text}”"


def rungs_say_the_same(moment: Moment) -> Breaches:
    """A shorter form of the heading names no clock that the whole sentence does not, but for the three hours' end."""
    known = {clock[0] for text in moment.at("headline") for clock in CLOCK.finditer(text)}
    known.add(moment.edge.clock(float(HORIZON_MINUTES)))
    for text in moment.at("rung"):
        strange = {clock[0] for clock in CLOCK.finditer(text)} - known
        if strange:
            yield f"{', '.join(sorted(strange))} in “{text}”, but “{' '.join(moment.at('headline'))}”"


def heading_agrees_with_plan(moment: Moment) -> Breaches:
    """The heading does not send in a loaf that the Plan page says this oven will hardly bake."""
    if moment.standing.band.name != "bread":
        return
    ready = table("phrases.toml")["bands"]["bread"]["ready"]
    if not any(ready in text for text in moment.at(*_HEADING)):
        return
    for text in moment.at("bake"):
        if "hardly be done" in text or "will not do it" in text:
            yield f"“{ready}” beside “{text}”"


def deadline_is_ahead(moment: Moment) -> Breaches:
    """A deadline names neither the present minute nor one that has gone."""
    for place in _ADVICE:
        for text in moment.at(place):
            for sentence, clock in deadlines(text):
                if minutes_to(clock, moment.now, moment.edge.offset_minutes) <= 0:
                    yield f"{place}: “{sentence}” at {moment.edge.clock(0)}"


def one_band_state(moment: Moment) -> Breaches:
    """Headline, plot words, large view, fit, plan and commands agree whether the oven is in the band."""
    claims = list(_claims(moment))
    if len({inside for _, inside in claims}) > 1:
        band, heat = moment.standing.band, moment.edge.heat(_oven(moment))
        told = "; ".join(f"{place}: {'in' if inside else 'not in'} the band" for place, inside in claims)
        yield f"{told} (oven {heat}, band {moment.edge.range(band.low, band.high)})"


def _claims(moment: Moment) -> Iterator[tuple[str, bool]]:
    band = moment.standing.band
    for place in (*_HEADING, "outlook"):
        for text in moment.at(place):
            if re.search(r"The oven is at (?!about).*(?:heat|°)", text) or "holds until" in text:
                yield place, True
            elif re.search(r"The oven (?:reaches|may reach|may touch|is above)|not likely to (?:reach|fall)", text):
                yield place, False
    for text in moment.at("plot"):
        if text.startswith("likely"):
            yield "plot", False
    for text in moment.at("large"):
        yield "large view", text.endswith("now")
    for text in moment.at("wood"):
        if "the oven is there already" in text:
            yield "wood", True
    for fit in moment.standing.fits:
        same_heat = fit.task.place is Place.OVEN and (fit.task.low, fit.task.high) == (band.low, band.high)
        if same_heat and fit.state is FitState.NOW:
            yield f"fit of {fit.task.name}", True


def no_food_before_first_fires(moment: Moment) -> Breaches:
    """Before the first fires are done nothing is said of food, bread or loads of wood for a bake."""
    if moment.standing.first_fires.next is None:
        return
    leads = [words[key] for words in table("phrases.toml")["bands"].values() for key in ("prepare", "ready")]
    for fit in moment.standing.fits:
        if fit.task.is_food and fit.state is not FitState.REFUSED:
            yield f"{fit.task.name} is {fit.state}"
    for one in moment.said:
        if one.place in ("pots", "bake", "wood") or any(lead in one.text for lead in leads):
            yield f"{one.place}: “{one.text}”"


def no_next_first_fire_while_hot(moment: Moment) -> Breaches:
    """A first fire that this firing has done is left to go cold: the next one is not ordered while the stove is hot."""
    fires = moment.standing.first_fires
    if fires.next is None or not any(stage.done and stage.session == 0 for stage in fires.stages):
        return
    if moment.hottest_top < STILL_HOT:
        return
    for place in ("headline", "detail", "fit", "outlook"):
        for text in moment.at(place):
            if fires.next.stage.line in text or fires.next.stage.doing in text:
                yield f"{place}: “{text}” with the cooktop at {moment.edge.heat(moment.hottest_top)}"


def numbers_are_known(moment: Moment) -> Breaches:
    """Every number in a sentence is in the record that it is said of."""
    for one in moment.said:
        if one.place in _ADVICE:
            for number in unknown_numbers(moment, one.text):
                yield f"{one.place}: {number} in “{one.text}” is nowhere in the record"


_AGAINST = {  # key of a caution: what must not be said beside it
    "over_fired_flue": (WOOD, re.compile(r"Open the air")),
    "over_fired_top": (WOOD, re.compile(r"Open the air")),
    "wall_urgent": (WOOD, re.compile(r"Open the air")),
    "carbon_monoxide": (re.compile(r"Shut the air|Set the air to \d+ %|Shut it down"),),
    "back_puff": (re.compile(r"Shut the air|Set the air to \d+ %|Shut it down"),),
    "creosote": (re.compile(r"Shut the air|Set the air to \d+ %|Shut it down"),),
    "air_open": (re.compile(r"Open the air"),),
    "cold_flue": (re.compile(r"Close the bypass|Shut the air|Set the air to \d+ %"),),
    "bypass_early": (re.compile(r"Close the bypass"),),
    "first_fire_fumes": (re.compile(r"Put the|Shape|Cut the|Roll out|Mix the|Season the|has a place now"),),
}


def no_word_against_a_caution(moment: Moment) -> Breaches:
    """No sentence orders what a caution of the same moment warns of."""
    for caution in moment.standing.cautions:
        for pattern in _AGAINST.get(caution.key, ()):
            for place in (*_HEADING, "detail", "pots", "bake", "wood"):
                for text in moment.at(place):
                    cautions = moment.standing.cautions
                    told_by_a_caution = any(
                        one.text in text or (one.order and text.startswith(one.title)) for one in cautions
                    )
                    if pattern.search(text) and not told_by_a_caution:
                        yield f"{place}: “{text}” beside the caution “{caution.title}”"


_OPENS = re.compile(r"[Oo]pen (?:the air|(?:the )?bypass and (?:the )?air)|livelier fire")
_SHUTS = re.compile(r"[Ss]hut the air|shut it down|air shut|[Ll]et the fire go down")


def cautions_speak_with_one_voice(moment: Moment) -> Breaches:
    """No caution asks for more air or fire beside one that asks for less."""
    texts = [(one.title, one.text.removesuffix(one.decides)) for one in moment.standing.cautions]
    for opens, text in texts:
        for shuts, other in texts:
            if opens != shuts and _OPENS.search(text) and _SHUTS.search(other):
                yield f"“{opens}: {text}” beside “{shuts}: {other}”"


_HOTTER = re.compile(r"Add (?:one|two) splits?|Open the air|Close the bypass|Build the fire up")
_COOLER = re.compile(r"Set the air to|Shut the air|Add no wood")


def the_step_works_against_the_leaving(moment: Moment) -> Breaches:
    """Beside an oven that gets too hot for a bake nothing is to make it hotter, nor cooler beside one that falls."""
    headline, detail = " ".join(moment.at("headline")), " ".join(moment.at("detail"))
    if "too hot before" in headline and _HOTTER.search(detail):
        yield f"“{headline}” with “{detail}”"
    if "too low before" in headline and _COOLER.search(detail):
        yield f"“{headline}” with “{detail}”"


def clocks_are_ahead(moment: Moment) -> Breaches:
    """No clock is earlier than now except in the past tense."""
    for place in _ADVICE:
        for text in moment.at(place):
            for sentence in sentences(text):
                if PAST_TENSE.search(sentence) and "not before" not in sentence:
                    continue
                for match in CLOCK.finditer(sentence):
                    if minutes_to(match[0], moment.now, moment.edge.offset_minutes) < 0:
                        yield f"{place}: “{sentence}” at {moment.edge.clock(0)}"


def bake_has_an_even_chance(moment: Moment) -> Breaches:
    """A bake is called for only when the whole of it has at least an even chance of staying in its heat."""
    words = table("phrases.toml")["bands"].get(moment.standing.band.name)
    fit = _fit(moment, _TASK_OF_BAND.get(moment.standing.band.name, ""))
    if words is None or fit is None:
        return
    chance, ever = _stays_in_band(moment, fit.task.minutes), max(one.chance_ever for one in fit.spots)
    for text in moment.at(*_HEADING, "detail", "outlook"):
        if words["ready"] in text and chance < EVEN:
            yield f"“{text}” with a chance of {chance:.0%} for {fit.task.minutes:.0f} min of {fit.task.name}"
        if words["prepare"] in text and ever < EVEN:
            yield f"“{text}” with a chance of {ever:.0%} that {fit.task.name} ever finds its heat"


def _stays_in_band(moment: Moment, minutes: float) -> float:
    """Share of the futures that are in the band at every minute of a bake that goes in now."""
    band, projection = moment.standing.band, moment.standing.projection
    clock = np.arange(0.0, minutes + 0.5)
    ovens = np.array([np.interp(clock, projection.minutes, oven) for oven in projection.of("oven_centre")])
    return float(np.mean(np.all((ovens >= band.low) & (ovens <= band.high), axis=1)))


def done_is_not_before_its_probe(moment: Moment) -> Breaches:
    """What is in the oven is not called done by a clock at which its core was measured and was not."""
    for one in moment.standing.bakes:
        cold = [probe for probe in one.inside.probes if one.answer is not None and probe.core < one.answer.done_at]
        for text in moment.at(*_HEADING, "outlook"):
            said = re.search(r"likely done at (\d{1,2}:\d\d)", text)
            if said and one.inside.name in text:
                at = minutes_to(said[1], moment.now, moment.edge.offset_minutes)
                late = [probe for probe in cold if (probe.at - moment.now).total_seconds() / 60.0 > at + 1.0]
                if late:
                    yield f"“{text}”, but its core was {moment.edge.heat(late[-1].core)} later"


def what_is_in_is_not_still_to_go_in(moment: Moment) -> Breaches:
    """A loaf that is in the oven is not told when it goes in, nor is another called for meanwhile."""
    inside = [one for one in moment.standing.bakes if one.likely is None or one.likely > moment.now]
    if not inside or moment.standing.band.name not in table("phrases.toml")["bands"]:
        return
    words = table("phrases.toml")["bands"][moment.standing.band.name]
    for text in moment.at(*_HEADING):
        if words["ready"] in text or words["prepare"] in text:
            yield f"“{text}” with a {inside[0].inside.name} in the oven"


def no_reading_asked_twice(moment: Moment) -> Breaches:
    """No spot is asked for that was read within the last minutes."""
    reading = moment.standing.next_reading
    zone = None if reading is None else moment.standing.zones.get(reading.spot)
    age = None if zone is None else zone.last_reading_age_min
    if (
        age is not None
        and age < JUST_READ_MINUTES
        and any("Worth reading" in text for text in moment.at("headline", "detail"))
    ):
        yield f"“{' '.join(moment.at('detail'))}”, read {age:.0f} min ago"


def a_place_has_an_even_chance(moment: Moment) -> Breaches:
    """A pot has a place only where it is right with an even chance or better."""
    for row in moment.plan.pots:
        if row.spot and row.chance < EVEN:
            yield f"{row.task.name} has a place on {row.label} with a chance of {row.chance:.0%}"


def taken_is_true(moment: Moment) -> Breaches:
    """“Taken” is said only of spots that another pot stands on."""
    for row in moment.plan.pots:
        others = [other for other in moment.plan.pots if other is not row]
        taken = {spot for other in others for spot in (other.spot, other.stands) if spot}
        fit = next((one for one in moment.standing.fits if one.task.key == row.task.key), None)
        would_do = {one.spot for one in fit.spots if one.chance_now >= EVEN} if fit else set()
        if "taken" in row.why_not and not taken & would_do:
            yield f"{row.task.name}: “{row.why_not}” with no other pot on a spot that would do"


# --- of two moments ---------------------------------------------------------------------------------------------------


def deadline_never_recedes(pair: Pair) -> Breaches:
    """Without a new row a deadline never moves later."""
    for place in ("headline", "detail", "outlook"):
        earlier = dict(_deadlines(pair.before, place))
        for stem, (left, text) in _deadlines(pair.after, place):
            if stem in earlier:
                elapsed = _elapsed(pair)
                gone, was = earlier[stem]
                if left + elapsed > gone + 1.0:
                    yield f"{place}: “{was}” became “{text}” {elapsed:.0f} min later"


def _deadlines(moment: Moment, place: str) -> Iterator[tuple[str, tuple[float, str]]]:
    """What is to be done by some clock: its first two words, and the minutes left with the sentence."""
    for text in moment.at(place):
        for sentence, clock in deadlines(text):
            stem = " ".join(sentence.split()[:2])
            yield stem, (minutes_to(clock, moment.now, moment.edge.offset_minutes), sentence)


def good_later_comes(pair: Pair) -> Breaches:
    """“Good later” comes nearer as time passes, and when its time has come it is now."""
    elapsed = _elapsed(pair)
    if not 1.0 <= elapsed <= _NEXT_MINUTE:
        return
    before = {fit.task.key: fit.spots[0].in_min for fit in pair.before.standing.fits if fit.state is FitState.LATER}
    for fit in pair.after.standing.fits:
        first, then = before.get(fit.task.key), fit.spots[0].in_min
        if not first or first > _SOON:  # at its best already, or too far off to be waited for
            continue
        if then is None or then > max(first - elapsed + 1.0, 0.0):
            yield f"{fit.task.name}: in {first:.0f} min became {_in(then)}, {elapsed:.0f} min later"


def no_wood_for_an_open_door(pair: Pair) -> Breaches:
    """Opening the oven door is no reason to advise wood."""
    before = " ".join(pair.before.at("headline", "detail"))
    after = " ".join(pair.after.at("headline", "detail"))
    if WOOD.search(after) and not WOOD.search(before):
        yield f"“{before}” became “{after}” with the oven door opened"


def pots_stay_put(pair: Pair) -> Breaches:
    """Without a new row no pot changes its spot from one minute to the next."""
    if _elapsed(pair) > _NEXT_MINUTE:
        return
    places = {row.task.key: row for row in pair.before.plan.pots if row.spot}
    for row in pair.after.plan.pots:
        was = places.get(row.task.key)
        if was is not None and row.spot and row.spot != was.spot:
            yield f"{row.task.name}: {was.label} became {row.label} in {_elapsed(pair):.0f} min"


def _elapsed(pair: Pair) -> float:
    return (pair.after.now.replace(second=0) - pair.before.now.replace(second=0)).total_seconds() / 60.0


def _in(minutes: float | None) -> str:
    return "never" if minutes is None else f"in {minutes:.0f} min"


def _oven(moment: Moment) -> float:
    return moment.standing.outlook.oven.p50 or 0.0


def _fit(moment: Moment, key: str) -> TaskFit | None:
    return next((fit for fit in moment.standing.fits if fit.task.key == key), None)


def _rule(look: Callable[[Moment], Breaches]) -> Rule:
    return Rule(name=look.__name__, sentence=(look.__doc__ or "").strip(), of_moment=look)


def _pair_rule(look: Callable[[Pair], Breaches], step: Step = Step.TIME) -> Rule:
    return Rule(name=look.__name__, sentence=(look.__doc__ or "").strip(), of_pair=look, steps=(step,))


RULES: tuple[Rule, ...] = (
    _rule(likely_is_the_line),
    _rule(stay_is_the_line),
    _rule(unlikely_is_plain),
    _rule(unlikely_is_the_chance),
    _rule(falling_out_is_the_line),
    _rule(rungs_say_the_same),
    _rule(heading_agrees_with_plan),
    _rule(deadline_is_ahead),
    _pair_rule(deadline_never_recedes),
    _rule(one_band_state),
    _rule(no_food_before_first_fires),
    _rule(no_next_first_fire_while_hot),
    _rule(numbers_are_known),
    _rule(no_word_against_a_caution),
    _rule(cautions_speak_with_one_voice),
    _rule(the_step_works_against_the_leaving),
    _rule(clocks_are_ahead),
    _rule(bake_has_an_even_chance),
    _rule(done_is_not_before_its_probe),
    _rule(what_is_in_is_not_still_to_go_in),
    _rule(no_reading_asked_twice),
    _pair_rule(good_later_comes),
    _pair_rule(no_wood_for_an_open_door, Step.DOOR),
    _rule(a_place_has_an_even_chance),
    _rule(taken_is_true),
    _pair_rule(pots_stay_put),
    *(_rule(look) for look in SUPPER_RULES),
)

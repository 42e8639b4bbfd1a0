"""A recipe's sentences as the parts of a dish, each to be confirmed by the cook before anything is planned with it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from cookstove_gui.cooking.supper.recipe.acts import KIND_OF, ActKind
from cookstove_gui.cooking.supper.recipe.finds import (
    ActFound,
    HeatFound,
    HeatOf,
    MinutesFound,
    Place,
    SentenceFound,
    VesselFound,
)

LONGEST_TITLE = 60  # letters; a longer first line is no dish's name; judgement
_PART_KINDS = {ActKind.HANDS, ActKind.WAIT, ActKind.OVEN, ActKind.COOKTOP}
_TASKS = {"boil": "boil", "steam": "boil", "simmer": "simmer", "fry": "soften_onions"}  # rows of tasks.toml


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftPart:
    """What one part of the dish may be. Nothing of it is used before it was confirmed."""

    place: Place  # of the words that it was found in
    kind: ActKind
    act: str
    shortest: float | None = None  # min
    longest: float | None = None
    each: MinutesFound | None = None  # a time for each pound or side; the cook must say how long in all
    heat: HeatFound | None = None
    core: HeatFound | None = None  # the food's inside when it is done
    vessel: str = ""
    task: str = ""  # row of tasks.toml whose heat it wants on the cooktop
    heat_is_earlier: bool = False  # the heat was said in an earlier sentence


def draft_of(sentences: Sequence[SentenceFound]) -> tuple[DraftPart, ...]:
    """The parts that a recipe's sentences seem to ask for, in their order.

    An oven heat that stands before the bake (“heat the oven to …”) goes to the bakes after it that name none; “then
    lower to …” begins another part on heat unless a bake follows that takes it, without minutes where none are said.
    """
    parts: list[DraftPart] = []
    oven: HeatFound | None = None
    vessel = ""
    untaken: tuple[int, DraftPart] | None = None  # a lower heat without minutes that no bake took yet, and its place
    for sentence in sentences:
        lowered = False  # “lower to …” was said in this sentence, for the part that follows
        for part in _parts_in(sentence):
            if part.kind is ActKind.FIRE:
                oven = part.heat or oven
                follows = part.act == "lower" and any(one.kind is ActKind.OVEN for one in parts)
                if follows and part.shortest is not None:
                    parts.append(replace(part, kind=ActKind.OVEN, act="bake", vessel=vessel))
                else:
                    lowered = lowered or part.heat is not None
                    if follows and part.heat is not None:
                        untaken = len(parts), replace(part, kind=ActKind.OVEN, act="bake", vessel=vessel)
                continue
            if part.kind is ActKind.OVEN:
                heat = part.heat or oven
                earlier = part.heat is None and not lowered and heat is not None
                vessel = part.vessel or vessel
                part = replace(part, heat=heat, heat_is_earlier=earlier, vessel=vessel)
                oven, lowered, untaken = heat, False, None
            parts.append(part)
    if untaken is not None:
        parts.insert(*untaken)
    return tuple(_without_doubles(parts))


def title_of(text: str, sentences: Sequence[SentenceFound]) -> str:
    """What the dish is called, where the text begins with a line of its own that tells nothing to do; else empty."""
    first, _, rest = text.strip().partition("\n")
    title = first.strip(" #*_:").strip()
    if not rest.strip() or not 0 < len(title) <= LONGEST_TITLE or title.endswith((".", "!", "?", ",", ";")):
        return ""
    said = sentences[0]
    is_title = not (said.acts or said.minutes or said.heats) and not title[0].isdigit()
    return title if is_title else ""


def _parts_in(sentence: SentenceFound) -> list[DraftPart]:
    """A sentence cut at what is done; a find goes to the act before it, or to the first."""
    acts = [act for act in sentence.acts if KIND_OF[act.act] in _PART_KINDS or KIND_OF[act.act] is ActKind.FIRE]
    bakes = any(KIND_OF[act.act] is ActKind.OVEN for act in acts)
    oven_heats = [heat for heat in sentence.heats if heat.of is HeatOf.OVEN]
    if oven_heats and not bakes and not any(act.act == "preheat" for act in acts):
        first = oven_heats[0].place
        lowers = [act for act in acts if act.act == "lower"]
        if not lowers:
            acts = sorted((*acts, ActFound(place=first, act="bake")), key=lambda act: act.place.start)
    found = []
    for number, act in enumerate(acts):
        begin = sentence.place.start if number == 0 else act.place.start
        end = acts[number + 1].place.start if number + 1 < len(acts) else sentence.place.end
        found.append(_part(sentence, act, begin, end))
    return found


def _part(sentence: SentenceFound, act: ActFound, begin: int, end: int) -> DraftPart:
    times = [one for one in sentence.minutes if begin <= one.place.start < end]
    heats = [one for one in sentence.heats if begin <= one.place.start < end]
    vessels: list[VesselFound] = [one for one in sentence.vessels if begin <= one.place.start < end]
    whole = [one for one in times if not one.each]
    each = next((one for one in times if one.each), None)
    oven = [one for one in heats if one.of is HeatOf.OVEN]
    kind = KIND_OF[act.act]
    counted = whole[:1] if each is None else []
    return DraftPart(
        place=Place(begin, end),
        kind=kind,
        act=act.act,
        shortest=counted[0].shortest if counted else None,
        longest=counted[0].longest if counted else None,
        each=each,
        heat=oven[0] if oven and kind in (ActKind.OVEN, ActKind.FIRE) else None,
        core=next((one for one in heats if one.of is HeatOf.CORE), None),
        vessel=vessels[0].name if vessels else "",
        task=_TASKS.get(act.act, ""),
    )


def _without_doubles(parts: Sequence[DraftPart]) -> list[DraftPart]:
    """Work for the hands that goes on through several words (“sift, beat, fold”) is one part."""
    kept: list[DraftPart] = []
    for part in parts:
        before = kept[-1] if kept else None
        same = before is not None and before.kind is ActKind.HANDS and part.kind is ActKind.HANDS
        if before is not None and same and (before.act == part.act or (part.shortest is None and part.act != "shape")):
            kept[-1] = replace(before, place=Place(before.place.start, part.place.end))
        else:
            kept.append(part)
    return kept

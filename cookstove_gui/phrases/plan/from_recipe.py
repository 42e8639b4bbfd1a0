"""What is said of the parts found in a recipe, so that the cook can confirm or correct each."""

from cookstove_gui.cooking.supper.recipe.acts import ActKind
from cookstove_gui.cooking.supper.recipe.draft import DraftPart
from cookstove_gui.phrases.edge import whole
from cookstove_gui.units import degrees, tidy

_TAKES = {
    ActKind.HANDS: "hands",
    ActKind.WAIT: "wait",
    ActKind.OVEN: "oven",
    ActKind.COOKTOP: "cooktop",
}


def part_words(part: DraftPart) -> str:
    """What it is, and what it takes: `bake, oven, in a loaf pan`."""
    vessel = f", {part.vessel}" if part.vessel else ""
    return f"{part.act} · {_TAKES[part.kind]}{vessel}"


def part_note(part: DraftPart, unit: str) -> str:
    """What the cook should look at before confirming; empty where the numbers stand in the text as they are."""
    said = []
    if part.each is not None:
        said.append(
            f"The recipe says {_span(part.each.shortest, part.each.longest)} {part.each.each}: type the whole time."
        )
    elif part.shortest is None and part.kind is not ActKind.HANDS:
        said.append("No minutes found.")
    elif part.shortest is not None and part.shortest != part.longest:
        said.append(f"The recipe says {_span(part.shortest, part.longest or part.shortest)}.")
    if part.kind is ActKind.OVEN:
        said += _of_heat(part)
    if part.core is not None and part.core.low is not None:
        said.append(f"Done at a core of {whole(degrees(part.core.low, unit))} °{unit}, the recipe says; measure it.")
    return " ".join(said)


def _of_heat(part: DraftPart) -> list[str]:
    heat = part.heat
    if heat is None:
        return ["No oven heat found."]
    if heat.name and heat.low is None:
        return [f"No table says what a {heat.name} oven is; type its heat."]
    if heat.name:
        return [f"A {heat.name} oven, by this table: {heat.source}."]
    said = ["The heat was said earlier."] if part.heat_is_earlier else []
    if not heat.unit:
        said.append("No unit stands there; °F is assumed.")
    elif heat.low == heat.high:
        said.append("One number: 25 °F either side." if heat.unit == "F" else "One number: 14 °C either side.")
    return said


def _span(shortest: float, longest: float) -> str:
    if round(shortest, 1) == round(longest, 1):
        return f"{tidy(shortest)} min"
    return f"{tidy(shortest)} to {tidy(longest)} min"


def confirmed_words(ticked: int, found: int) -> str:
    """How many lines are confirmed."""
    if ticked == 0:
        return "Press Right on each line that is right, or correct it first. The others are left out."
    left = found - ticked
    return f"{ticked} of {found} confirmed" + (f"; {left} will be left out." if left else ".")


def whole_times_words(hands: float | None, heat: float | None, total: float | None) -> str:
    """The times that a file gives for the whole dish, to compare with."""
    named = (("hands", hands), ("on heat", heat), ("in all", total))
    said = [f"{name} {tidy(minutes)} min" for name, minutes in named if minutes is not None]
    return f"The file says: {', '.join(said)}." if said else ""

"""What a recipe stands on the fire or in the oven in."""

import re

from cookstove_gui.cooking.supper.recipe.finds import Place, VesselFound

_VESSELS = (
    ("Dutch oven", r"dutch ovens?"),
    ("bean pot", r"bean[\s-]?pots?"),
    ("loaf pan", r"(?:loaf|bread) (?:pans?|tins?)|bread[\s-]?tins?"),
    ("pie plate", r"pie[\s-]?(?:plates?|pans?|tins?|dish(?:es)?)"),
    ("cake pan", r"(?:cake|springform|spring-form|tube|bundt|layer|jelly-roll|round|square) (?:cake )?(?:pans?|tins?)"),
    ("muffin tin", r"(?:muffin|gem|popover|patty|cupcake) (?:tins?|pans?|cups)"),
    ("baking sheet", r"(?:baking|cookie) (?:sheets?|trays?)|sheet pans?|the tray|oven tray"),
    ("roasting pan", r"(?:roasting|dripping)[\s-]?(?:pans?|tins?)|roaster"),
    ("casserole", r"casserole(?: dish)?"),
    ("baking dish", r"(?:baking|gratin|earthenware|ovenproof|pudding) dish(?:es)?|baking pans?|lasagne dish"),
    ("ramekins", r"ramekins?|custard cups?"),
    ("skillet", r"skillets?|frying[\s-]?pans?|spiders?|sauté pan|saute pan"),
    ("griddle", r"griddles?"),
    ("saucepan", r"sauce[\s-]?pans?"),
    ("double boiler", r"double boilers?"),
    ("pot", r"stock[\s-]?pots?|soup pots?|kettles?|\w*(?<!tea)(?<!flower)\bpots?"),
)
_ANY = re.compile(
    "|".join(rf"(?P<v{place}>\b(?:{pattern})\b)" for place, (_, pattern) in enumerate(_VESSELS)), re.IGNORECASE
)


def find_vessels(text: str, offset: int = 0) -> tuple[VesselFound, ...]:
    """Every vessel named in a text, each kind once, `offset` letters into the recipe."""
    found: dict[str, VesselFound] = {}
    for match in _ANY.finditer(text):
        group = match.lastgroup or "v0"
        name = _VESSELS[int(group[1:])][0]
        place = Place(offset + match.start(), offset + match.end())
        found.setdefault(name, VesselFound(place=place, name=name))
    return tuple(found.values())

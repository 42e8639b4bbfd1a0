"""What a recipe tells the cook to do, as a few plain acts."""

import re
from enum import Enum

from cookstove_gui.cooking.supper.recipe.finds import ActFound, Place


class ActKind(Enum):
    """What an act takes: hands, time alone, or fire."""

    HANDS = "hands"
    WAIT = "wait"
    OVEN = "oven"
    COOKTOP = "cooktop"
    FIRE = "fire"  # says how the fire is to be, not what happens to the food
    LOOK = "look"  # something done in passing


# Act, what it takes, and the verbs that say it. `^` stands before a verb that must not follow an article, being a noun
# then: “the rest”, “a roast”.
_ACTS: tuple[tuple[str, ActKind, str], ...] = (
    (
        "preheat",
        ActKind.FIRE,
        r"pre-?heat|heat (?:the|your|an|up the) oven|set (?:the|your) oven|while the oven comes up",
    ),
    (
        "lower",
        ActKind.FIRE,
        r"(?:^lower|reduce|^slacken|decrease)(?! sides)(?: the| your)?(?: oven| heat| fire| temperature| to| by)"
        r"|turn(?: the)?(?: oven| heat| fire)? down|turn down|turn the oven down",
    ),
    ("knead", ActKind.HANDS, r"^knead(?:ing)?"),
    ("roll", ActKind.HANDS, r"^roll(?: it| them)?(?: the \w+)? ?(?:out|into|thin|to)|^roll (?:the|half)"),
    ("shape", ActKind.HANDS, r"^shape|^form (?:into|the|a|two)|^mou?ld into|drop (?:by|on|onto|spoonfuls)"),
    (
        "cut",
        ActKind.HANDS,
        r"^cut(?! (?:the )?(?:butter|lard|shortening|in\b))|^chop|^slice|^dice|^peel|^mince|^grate|^shred",
    ),
    (
        "mix",
        ActKind.HANDS,
        r"^mix|^stir(?:ring)?|^combine|^beat|^whisk|^whip|^cream (?:the|together|butter)|^fold|^blend|^sift|^toss|^rub"
        r"|^dissolve|^layer(?= the)|^cut (?:the )?(?:butter|lard|shortening|in\b)|^work in",
    ),
    ("rise", ActKind.WAIT, r"(?:to |let |let it |let them |let dough |dough )?^rise|^proof|to prove|^prove"),
    ("rest", ActKind.WAIT, r"^rest|^stand(?= for| \d| \w+ minutes| until| in| at| over)|^ripen"),
    ("chill", ActKind.WAIT, r"^chill|^refrigerate"),
    (
        "cool",
        ActKind.WAIT,
        r"(?:to |let )?^cool(?=$|[ ,.;]+(?:completely|in|on|for|before|slightly|\d|the|until|well))",
    ),
    ("soak", ActKind.WAIT, r"^soak|^steep|^marinate"),
    (
        "bake",
        ActKind.OVEN,
        r"^bake(?:d)?(?! ?(?:d )?beans)|^baking(?! (?:sheets?|tray|dish|pan|powder|soda|tin|potato))",
    ),
    ("roast", ActKind.OVEN, r"^roast(?! (?:rest|beef|from|is))"),
    ("braise", ActKind.OVEN, r"^braise"),
    ("boil", ActKind.COOKTOP, r"(?:to a |to the |a rolling )boil|^boil(?! over)"),
    ("simmer", ActKind.COOKTOP, r"(?:to a |at a )simmer|^simmer|^stew(?= the| for| until| gently| in)|^poach"),
    (
        "fry",
        ActKind.COOKTOP,
        r"^fry|^sauté|^saute|^sear|(?<!to )^brown (?:the|in|both|all|on|meat|well)|cook and stir"
        r"|cook the \w+(?= until| over| in)",
    ),
    ("steam", ActKind.COOKTOP, r"^steam(?! rises| escape)"),
    (
        "turn",
        ActKind.LOOK,
        r"^turn(?:ing)?(?! (?:out|off|down|up|into|to|on|the (?:oven|heat|fire)|it out|them out))|^rotate|^flip",
    ),
    ("serve", ActKind.HANDS, r"^serve(?= with| hot| at| over| warm| immediately|$)"),
)
KIND_OF: dict[str, ActKind] = {act: kind for act, kind, _ in _ACTS}
_NOUN_BEFORE = r"(?<!\bthe )(?<!\ba )(?<!\ban )(?<!\beach )(?<!\bthis )(?<!\byour )(?<!\bof )(?<!\bgolden )(?<!-)"
_ANY = re.compile(
    "|".join(
        rf"(?P<v{place}>\b(?:{pattern.replace('^', _NOUN_BEFORE)})(?!\w))"
        for place, (_, _, pattern) in enumerate(_ACTS)
    ),
    re.IGNORECASE,
)


def find_acts(text: str, offset: int = 0) -> tuple[ActFound, ...]:
    """What is done in a text, in its order, `offset` letters into the recipe; the same act twice running is one."""
    found: list[ActFound] = []
    for match in _ANY.finditer(text):
        act = _ACTS[int((match.lastgroup or "v0")[1:])][0]
        if not found or found[-1].act != act:
            found.append(ActFound(place=Place(offset + match.start(), offset + match.end()), act=act))
    return tuple(found)

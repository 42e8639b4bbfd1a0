"""The caution for food whose core is too long between cold and hot enough."""

from cookstove_gui.cooking.baking.doneness import BakeAnswer
from cookstove_gui.cooking.safety.food_safety import danger_minutes_allowed, holding_limits
from cookstove_gui.cooking.safety.wall_rises import USUAL_ROOM
from cookstove_gui.phrases.edge import Edge, duration


def danger_words(found: BakeAnswer, edge: Edge, room: float = USUAL_ROOM) -> str:
    """That the core is likely too long there for a kitchen as warm as `room` [K], and who decides; empty where not."""
    if found.danger_min is None or found.danger_min.p50 is None:
        return ""
    if found.danger_min.p50 <= danger_minutes_allowed(room):
        return ""
    limits = holding_limits()
    low, high = edge.heat(limits.danger_low).split(" ")[0], edge.heat(limits.danger_high)
    return (
        f"Its core is likely {duration(found.danger_min.p50)} between {low} and {high}: too long. "
        f"A hotter oven or a smaller piece gets it through sooner. {limits.words}"
    )

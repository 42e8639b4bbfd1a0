"""What a cook is asked before a new session begins on a stove that is still warm."""

from datetime import datetime

from cookstove_gui.phrases.edge import Edge, ago
from cookstove_gui.stove.carried import CarriedHeat


def still_warm_words(title: str, last_at: datetime, heat: CarriedHeat, edge: Edge) -> str:
    """That the stove is still warm, from what, and how warm."""
    return (
        f"The stove is still warm from “{title}”, last entry {ago(last_at, edge.now)}: the cooktop is about "
        f"{edge.heat(heat.cooktop.mean)}, give or take {edge.spread(heat.cooktop.deviation)}."
    )

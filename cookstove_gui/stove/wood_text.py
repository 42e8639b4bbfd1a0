"""Wood as it is typed: by weight or in words."""

import re

from cookstove_gui.errors import InputProblem
from cookstove_gui.units import MassUnit

MASS = re.compile(r"(\d*[.,]?\d+)\s*(kg|lb)?s?", re.IGNORECASE)
# `5 splits`, `half a split`, `an armful of birch`
_COUNTED = re.compile(
    r"(\d*[.,]?\d+)?[^\d]*(split|log|piece|stick|chunk|round|twig|brick|load|full|armful|handful|kindling|bark)[^\d]*",
    re.IGNORECASE,
)


def typed_wood(text: str, mass_unit: MassUnit) -> tuple[str, str, str]:
    """Value, unit and note of any amount of wood as typed: `4.5`, `2 kg`, `5 splits`, `half a split`, `an armful`."""
    typed = text.strip()
    mass = MASS.fullmatch(typed)
    if mass is not None:
        return mass[1].replace(",", "."), (mass[2] or mass_unit).lower(), ""
    if _COUNTED.fullmatch(typed):
        return "", "", typed
    raise InputProblem(f"“{typed}” isn't an amount of wood; type 4.5 for its weight in {mass_unit}, or 5 splits.")

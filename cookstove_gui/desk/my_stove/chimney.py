"""The chimney as its owner describes it: typed, checked, kept for each stove; and the air outdoors."""

from dataclasses import dataclass, replace
from datetime import datetime

from cookstove_gui.cooking.safety.chimney_watch import Chimney
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.describing import height_unit, length_text, short_unit
from cookstove_gui.desk.my_stove.kept_rows import CHIMNEY, Row, keep_row, kept_row
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import METRES_PER_FOOT, kelvin, parse_number, parse_temperature

# What a chimney's wall lets through [W/(m2 K)] and the words for it; common practice, no source
WALLS = {"lined": ("lined and insulated", 2.0), "masonry": ("masonry", 4.0), "pipe": ("single pipe", 8.0)}
USUAL_HEIGHT = 5.0  # m
_SHORTEST, _TALLEST = 1.0, 30.0  # m
_NARROWEST, _WIDEST = 0.08, 0.40  # m
_COLDEST, _WARMEST = kelvin(-60.0, "F"), kelvin(125.0, "F")  # K outdoors


@dataclass(frozen=True, slots=True, kw_only=True)
class ChimneyHere:
    """The chimney of the stove in use, and the air outdoors."""

    height: float = USUAL_HEIGHT  # m
    diameter: float = 0.15  # m
    wall: str = "masonry"  # a key of WALLS
    outdoors: float = kelvin(40.0, "F")  # K
    outdoors_at: datetime | None = None  # when that was typed
    is_described: bool = False

    @property
    def chimney(self) -> Chimney:
        """As the draught is reckoned with."""
        return Chimney(height=self.height, diameter=self.diameter, loss=WALLS[self.wall][1])


def chimney_here(desk: Desk) -> ChimneyHere:
    """What the owner said of the chimney; the usual where nothing was said."""
    row = kept_row(desk, CHIMNEY)
    if row is None:
        return ChimneyHere()
    wall = str(row["wall"])
    return ChimneyHere(
        height=float(row["height"]),
        diameter=float(row["diameter"]),
        wall=wall if wall in WALLS else "masonry",
        outdoors=float(row["outdoors"]),
        outdoors_at=datetime.fromisoformat(str(row["outdoors_at"])) if row.get("outdoors_at") else None,
        is_described=True,
    )


def keep_height(desk: Desk, text: str) -> None:
    """Keep the chimney's height, from the stove's outlet to the top."""
    unit = height_unit(desk)
    metres = parse_number(text, "height") * (METRES_PER_FOOT if unit == "ft" else 1.0)
    if not _SHORTEST <= metres <= _TALLEST:
        raise InputProblem(
            f"{text.strip()} {unit} is no chimney over a cookstove; type a number from "
            f"{length_text(_SHORTEST, unit)} to {length_text(_TALLEST, unit)}."
        )
    _keep(desk, replace(chimney_here(desk), height=metres))


def keep_diameter(desk: Desk, text: str) -> None:
    """Keep the flue's inside width."""
    unit = short_unit(desk)
    metres = parse_number(text, "width") * (METRES_PER_FOOT / 12 if unit == "in" else 0.01)
    if not _NARROWEST <= metres <= _WIDEST:
        raise InputProblem(
            f"{text.strip()} {unit} is no flue's width; type a number from "
            f"{length_text(_NARROWEST, unit)} to {length_text(_WIDEST, unit)}."
        )
    _keep(desk, replace(chimney_here(desk), diameter=metres))


def keep_wall(desk: Desk, key: str) -> None:
    """Keep what the chimney is made of."""
    _keep(desk, replace(chimney_here(desk), wall=key))


def keep_outdoors(desk: Desk, text: str) -> None:
    """Keep the temperature outdoors."""
    value, unit = parse_temperature(text, desk.unit)
    found = float(kelvin(value, unit))
    if not _COLDEST <= found <= _WARMEST:
        raise InputProblem(f"{text.strip()} °{unit} is no weather; look at the number and its unit.")
    _keep(desk, replace(chimney_here(desk), outdoors=found, outdoors_at=desk.clock()))


def _keep(desk: Desk, here: ChimneyHere) -> None:
    row: Row = {
        "height": here.height,
        "diameter": here.diameter,
        "wall": here.wall,
        "outdoors": here.outdoors,
        "outdoors_at": here.outdoors_at.isoformat() if here.outdoors_at else "",
    }
    keep_row(desk, CHIMNEY, row)

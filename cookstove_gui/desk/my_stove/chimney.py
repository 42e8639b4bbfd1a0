"""The chimney as its owner describes it, and the air outdoors: typed, checked, kept."""

from dataclasses import dataclass, replace
from datetime import datetime

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.describing import height_unit, length_from_text, short_unit
from cookstove_gui.desk.my_stove.site import keep_weather
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import CHIMNEY_HEIGHTS, FLUE_WIDTHS, Chimney
from cookstove_gui.stove.weather import WeatherKind
from cookstove_gui.units import kelvin, parse_temperature

# What a chimney's wall lets through [W/(m2 K)] and the words for it; common practice, no source
WALLS = {"lined": ("lined and insulated", 2.0), "masonry": ("masonry", 4.0), "pipe": ("single pipe", 8.0)}
_USUAL_OUTDOORS = kelvin(40.0, "F")  # K
_COLDEST, _WARMEST = kelvin(-60.0, "F"), kelvin(125.0, "F")  # K outdoors


@dataclass(frozen=True, slots=True, kw_only=True)
class ChimneyHere:
    """The chimney of the stove in use, and the air outdoors; the usual where nothing was said of them."""

    chimney: Chimney
    is_described: bool
    outdoors: float = _USUAL_OUTDOORS  # K
    outdoors_at: datetime | None = None  # when that was typed

    @property
    def wall(self) -> str:
        """The key of WALLS that its wall is nearest to."""
        return min(WALLS, key=lambda key: abs(WALLS[key][1] - self.chimney.loss))


def chimney_here(desk: Desk) -> ChimneyHere:
    """What is known of the chimney and of the air outdoors."""
    chimney = desk.stove.chimney
    found = ChimneyHere(chimney=chimney or Chimney(), is_described=chimney is not None)
    read = desk.logbook.facts.latest_weather(desk.stove.name, WeatherKind.OUTDOORS)
    return found if read is None or read.value is None else replace(found, outdoors=read.value, outdoors_at=read.at)


def keep_height(desk: Desk, text: str) -> None:
    """Keep the chimney's height, from the stove's outlet to the top."""
    unit = height_unit(desk)
    _keep(desk, replace(_chimney(desk), height=length_from_text(text, "chimney height", unit, CHIMNEY_HEIGHTS)))


def keep_diameter(desk: Desk, text: str) -> None:
    """Keep the flue's inside width."""
    unit = short_unit(desk)
    _keep(desk, replace(_chimney(desk), diameter=length_from_text(text, "flue width", unit, FLUE_WIDTHS)))


def keep_wall(desk: Desk, key: str) -> None:
    """Keep what the chimney is made of."""
    _keep(desk, replace(_chimney(desk), loss=WALLS[key][1]))


def keep_outdoors(desk: Desk, text: str) -> None:
    """Keep the temperature outdoors."""
    value, unit = parse_temperature(text, desk.unit)
    found = float(kelvin(value, unit))
    if not _COLDEST <= found <= _WARMEST:
        raise InputProblem(
            f"{text.strip()} °{unit} isn't a plausible outdoor temperature; check the number and its unit."
        )
    keep_weather(desk, desk.stove, WeatherKind.OUTDOORS, found)


def _chimney(desk: Desk) -> Chimney:
    return desk.stove.chimney or Chimney()


def _keep(desk: Desk, chimney: Chimney) -> None:
    desk.save_stove(replace(desk.stove, chimney=chimney))

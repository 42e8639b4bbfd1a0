"""The pictures of the answers: what is less sure is drawn longer, and nothing is drawn that is not known."""

from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QWidget

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import Doneness
from cookstove_gui.cooking.baking.doubts import Source
from cookstove_gui.cooking.baking.hangs_on import Hang
from cookstove_gui.cooking.baking.probing import ProbeGain
from cookstove_gui.cooking.fires.burn_times import BurnSummary
from cookstove_gui.cooking.fires.wood_needs import BurningRate, Heat, LoadBurn
from cookstove_gui.cooking.pans.boiling_time import Goal, SimmerHold, WaterCourse, WaterTime
from cookstove_gui.desk.plan.water import PanWater, SpotWater, WaterChoice, WaterPlan
from cookstove_gui.desk.plan.wood import WoodChoice, WoodPlan
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.gui.plan.bake_foot import BakeFoot
from cookstove_gui.gui.plan.pan_rows import PanRows
from cookstove_gui.gui.plan.water_curve import WaterCurve
from cookstove_gui.gui.plan.water_runs import WaterRuns
from cookstove_gui.gui.plan.wood_picture import WoodPicture
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import DAY
from cookstove_gui.phrases.edge import Edge

pytestmark = pytest.mark.gui
EDGE = Edge(unit="F", now=datetime(2026, 3, 14, 12, 3, tzinfo=UTC), offset_minutes=0)
SURE, UNSURE = Quantiles(p10=8.5, p50=9.0, p90=9.5), Quantiles(p10=6.0, p50=9.0, p90=14.0)
NEVER = Quantiles(p10=None, p50=None, p90=None)


def water(minutes: Quantiles) -> WaterPlan:
    time = WaterTime(goal=Goal.BOIL, temperature=373.15, minutes=minutes, chance_reached=1.0)
    simmer = SimmerHold(chance=0.0, chance_boils=1.0, chance_falls=0.0, litres_lost=SURE)
    spot = SpotWater(spot="top_front_left", label="top front left", heat=500.0, answer=time, simmer=simmer)
    at = np.arange(0.0, 20.5, 0.5)
    way = np.minimum(288.0 + 9.0 * at, 373.15)
    course = WaterCourse(minutes=at, p10=way, p25=way, p50=way, p75=way, p90=way)
    return WaterPlan(
        choice=WaterChoice(litres=2.0), boiling=373.15, rows=(spot,), asked=spot, course=course,
        pans=(PanWater(key="kettle", minutes=minutes),), runs=0, said=(), guessed=minutes, preheat_min=None,
    )  # fmt: skip


def coloured(widget: QWidget, size: tuple[int, int], colour: str = DAY.verdigris) -> int:
    """How many pixels of a colour a widget shows at a size."""
    widget.resize(*size)
    image = widget.grab().toImage()
    wanted = QColor(colour).rgb()
    return sum(image.pixel(x, y) == wanted for x in range(image.width()) for y in range(image.height()))


def test_a_wider_window_is_a_longer_bar_on_the_boil(qtbot, look: Look) -> None:
    curve = WaterCurve(look)
    qtbot.addWidget(curve)
    shown = []
    for minutes in (SURE, UNSURE, NEVER):
        curve.show_water(water(minutes), EDGE)
        shown.append(coloured(curve, (400, 250)))
    assert shown[1] > 1.3 * shown[0] > 1.3 * shown[2]


def test_the_bar_of_the_present_answer_is_as_long_as_its_doubt(qtbot, look: Look) -> None:
    runs = WaterRuns(look)
    qtbot.addWidget(runs)
    shown = []
    for minutes in (SURE, UNSURE):
        runs.show_runs(water(minutes), EDGE)
        shown.append(coloured(runs, (600, 170)))
    assert shown[1] > shown[0]


def test_a_pan_that_is_not_likely_to_boil_has_no_range(qtbot, look: Look) -> None:
    rows = PanRows(look, ["kettle", "saucepan"])
    qtbot.addWidget(rows)
    rows.show_key("kettle")
    rows.show_pans(water(UNSURE).pans)
    assert coloured(rows, (320, 140)) > 0
    rows.show_pans(water(NEVER).pans)
    assert coloured(rows, (320, 140)) == 0


def wood(mass: Quantiles) -> WoodPlan:
    choice = WoodChoice(wood="dense hardwood", moisture="dry", split=1.1, thickness=0.08, at_heat_min=60.0)
    heat = Heat(watts=Quantiles(p10=3000.0, p50=4000.0, p90=6000.0))
    return WoodPlan(
        choice=choice, warm_up_min=40.0, warm_up_from="past", mass=mass, splits=mass, heat=heat, air=0.5,
        load=LoadBurn(to_coals_min=Quantiles(p10=60.0, p50=90.0, p90=130.0), heat=heat),
        rate=BurningRate(median=2.0, log_sd=0.4, fires=3),
        measured=BurnSummary(burns=0, typical_min=None, longest_min=None),
    )  # fmt: skip


@pytest.mark.parametrize("is_lit", [True, False], ids=["by the clock", "from lighting"])
def test_wood_less_sure_is_a_longer_bar_at_its_end(qtbot, look: Look, is_lit: bool) -> None:
    picture = WoodPicture(look)
    qtbot.addWidget(picture)
    shown = []
    for low, high in ((2.9, 3.1), (1.5, 5.0)):
        plan = wood(Quantiles(p10=low, p50=3.0, p90=high))
        picture.show_wood(plan, "bread heat", EDGE, is_lit=is_lit)
        shown.append(coloured(picture, (500, 300)))
    assert shown[1] > 1.2 * shown[0]


def done(window: Quantiles, *gains: float) -> Doneness:
    bake = bake_of("bread_loaf")
    return Doneness(
        bake=bake, done_at=bake.done, core_now=None, done_min=window, chance_done=1.0, safe=None, safe_min=None,
        recipe_min=40.0, late_min=0.0,
        hangs_on=(Hang(source=Source.FOOD, window_min=26.0), Hang(source=Source.DONE, window_min=0.4)),
        probe_gains=tuple(ProbeGain(in_min=12.0, window_min=gain) for gain in gains),
    )  # fmt: skip


def test_only_a_reading_that_would_narrow_the_window_is_offered(qtbot, look: Look) -> None:
    foot = BakeFoot(look)
    qtbot.addWidget(foot)
    window = Quantiles(p10=30.0, p50=40.0, p90=60.0)
    foot.show_answer(done(window, 14.0, 29.0), EDGE)
    told = foot.accessibleName()
    assert "read at 12:15 about 14 min" in told
    assert "about 29 min" not in told
    assert "how it takes heat 25 min" in told
    assert "counts as done" not in told  # a doubt of less than a minute
    assert coloured(foot, (800, 150)) > 0
    foot.show_answer(done(window, 40.0), EDGE)
    assert coloured(foot, (800, 150)) == 0


def test_a_window_without_an_end_hangs_on_nothing_that_could_be_told(qtbot, look: Look) -> None:
    foot = BakeFoot(look)
    qtbot.addWidget(foot)
    foot.show_answer(replace(done(Quantiles(p10=30.0, p50=40.0, p90=None), 14.0)), EDGE)
    assert not foot.isVisibleTo(foot.parentWidget())

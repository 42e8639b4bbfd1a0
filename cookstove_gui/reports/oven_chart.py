"""The oven over one session as an SVG picture: readings, belief, and the fire in a lane below, in our own colours.

matplotlib takes a second to load, so it is imported only when a picture is drawn.
"""

import io
from collections.abc import Sequence
from datetime import datetime, timedelta, timezone
from typing import TYPE_CHECKING

from cookstove_gui.forecast.answers import FloatArray, Trace
from cookstove_gui.phrases.edge import heat_name
from cookstove_gui.reports.stages import Stage
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, fraction_open, reading_kelvin
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import TemperatureUnit, degrees

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_GROUND, _INK, _SOFT_INK = "#FFFFFF", "#1C2022", "#4E5558"
_VERDIGRIS = "#17655A"  # the heat wanted; no other colour, so that the page reads in grey
_LANES = ("#F2F3EF", "#E2E5DF")  # a stage and the next: told apart by an edge, named by their words
_TICK_STEPS = (15, 30, 60, 120, 240, 480)  # min
_MOST_TICKS = 10
_SHORTEST_NAMED = 0.11  # share of the picture a stage must fill for its name to fit


def oven_chart(
    stove: Stove,
    standing: Sequence[Entry],
    slips: set[int],
    stages: Sequence[Stage],
    belief: Trace,
    unit: TemperatureUnit,
    band: HeatBand,
) -> str:
    """The picture as SVG text, or nothing when the oven was never read; readings numbered in `slips` are struck out."""
    readings = [row for row in standing if row.kind is Kind.READING and _is_oven(stove, row.spot)]
    if not readings:
        return ""
    import matplotlib
    from matplotlib.backends.backend_svg import FigureCanvasSVG
    from matplotlib.figure import Figure

    with matplotlib.rc_context({"svg.hashsalt": "cookstove", "font.family": "DejaVu Sans", "font.size": 10.0}):
        figure = Figure(figsize=(9.0, 2.9), facecolor=_GROUND, layout="constrained")
        FigureCanvasSVG(figure)
        trend, lane = figure.subplots(2, 1, sharex=True, height_ratios=(5, 1))
        first, last = standing[0].at, max(standing[-1].at, standing[0].at + timedelta(minutes=1))
        _draw_band(trend, band, unit)
        _draw_belief(trend, belief, first, unit)
        _draw_readings(trend, stove, readings, slips, first, unit)
        _draw_lane(lane, standing, stages, first, last)
        _finish(trend, lane, first, last, standing[0].offset_minutes, unit)
        stream = io.StringIO()
        figure.savefig(stream, format="svg", metadata={"Date": None, "Creator": None})
    text = stream.getvalue()
    return text[text.index("<svg") :]


def _is_oven(stove: Stove, name: str) -> bool:
    return stove.kind_of(name) is SpotKind.OVEN


def _minutes(at: datetime, first: datetime) -> float:
    return (at - first).total_seconds() / 60


def _draw_band(axes: "Axes", band: HeatBand, unit: TemperatureUnit) -> None:
    """The heat wanted, with its name."""
    low, high = (float(degrees(heat, unit)) for heat in (band.low, band.high))
    axes.axhspan(low, high, color=_VERDIGRIS, alpha=0.12, linewidth=0)
    for heat in (low, high):
        axes.axhline(heat, color=_VERDIGRIS, linewidth=1.0)
    axes.text(
        0.01, (low + high) / 2, heat_name(band), transform=axes.get_yaxis_transform(), va="center", color=_VERDIGRIS,
        fontsize=9, fontweight="bold", bbox={"facecolor": _GROUND, "edgecolor": "none", "pad": 1.0, "alpha": 0.8},
    )  # fmt: skip


def _draw_belief(axes: "Axes", belief: Trace, first: datetime, unit: TemperatureUnit) -> None:
    minutes = [_minutes(at, first) for at in belief.at]
    low, middle, high = (_degrees(values, unit) for values in (belief.p10, belief.p50, belief.p90))
    axes.fill_between(minutes, low, high, color=_INK, alpha=0.14, linewidth=0, label="oven, 8 times in 10")
    axes.plot(minutes, middle, color=_INK, linewidth=1.6, label="oven, most likely")


def _degrees(values: FloatArray, unit: TemperatureUnit) -> FloatArray:
    return degrees(values, unit)


def _draw_readings(
    axes: "Axes", stove: Stove, readings: Sequence[Entry], slips: set[int], first: datetime, unit: TemperatureUnit
) -> None:
    centre = next((spot.name for spot in stove.spots_of(SpotKind.OVEN)), readings[0].spot)
    good = [row for row in readings if row.number not in slips]
    for mark, size, colour, label, rows in (
        ("o", 7, _INK, "read at the oven's centre", [row for row in good if row.spot == centre]),
        ("s", 4, _SOFT_INK, "read elsewhere in the oven", [row for row in good if row.spot != centre]),
    ):
        if rows:
            heats = [float(degrees(reading_kelvin(row), unit)) for row in rows]
            axes.plot(
                [_minutes(row.at, first) for row in rows],
                heats,
                linestyle="none",
                marker=mark,
                markersize=size,
                markerfacecolor="none",
                markeredgecolor=colour,
                label=label,
            )
    struck = [row for row in readings if row.number in slips]
    if struck:
        # A slip may lie far outside; the picture keeps the scale of the rest and shows it at its edge.
        bottom, top = axes.get_ylim()
        heats = [min(max(float(degrees(reading_kelvin(row), unit)), bottom), top) for row in struck]
        minutes = [_minutes(row.at, first) for row in struck]
        axes.plot(minutes, heats, linestyle="none", marker="x", markersize=7, color=_INK, label="taken for a slip")


def _draw_lane(
    axes: "Axes", standing: Sequence[Entry], stages: Sequence[Stage], first: datetime, last: datetime
) -> None:
    whole = _minutes(last, first)
    for place, stage in enumerate(stages):
        shade = _LANES[place % 2]
        begin, end = _minutes(stage.begins_at, first), _minutes(stage.ends_at, first)
        axes.axvspan(begin, end, color=shade, linewidth=0)
        if (end - begin) / whole >= _SHORTEST_NAMED:
            name = str(stage.name).replace(", ", ",\n")
            behind = {"facecolor": shade, "edgecolor": "none", "pad": 1.5, "alpha": 0.85}
            axes.text(
                (begin + end) / 2, 0.5, name, ha="center", va="center", color=_INK, fontsize=8, bbox=behind, zorder=3
            )
    for row in standing:
        minute = _minutes(row.at, first)
        if row.kind is Kind.LIT:
            axes.plot([minute], [0.08], marker="^", color=_INK, markersize=7, clip_on=False)
        elif row.kind is Kind.WOOD:
            axes.vlines(minute, 0.0, 0.28, color=_INK, linewidth=3)
    air = [(_minutes(row.at, first), fraction_open(row)) for row in standing if row.kind is Kind.AIR]
    if air:
        minutes, shares = zip(*air, strict=True)
        axes.step([*minutes, whole], [*shares, shares[-1]], where="post", color=_SOFT_INK, linewidth=1.4)


def _finish(
    trend: "Axes", lane: "Axes", first: datetime, last: datetime, offset_minutes: int, unit: TemperatureUnit
) -> None:
    whole = _minutes(last, first)
    step = next((size for size in _TICK_STEPS if whole / size <= _MOST_TICKS), 1440 * -(-whole // (1440 * _MOST_TICKS)))
    zone = timezone(timedelta(minutes=offset_minutes))
    local = first.astimezone(zone)
    start = -((local.hour * 60 + local.minute) % step) - local.second / 60
    ticks = [tick for k in range(int(whole // step) + 2) if 0 <= (tick := start + k * step) <= whole]
    lane.set_xticks(ticks, [_clock(first + timedelta(minutes=tick), zone) for tick in ticks])
    lane.set_xlim(-0.01 * whole, 1.01 * whole)
    lane.set_ylim(0.0, 1.05)
    lane.set_yticks([0.0, 1.0], ["shut", "open"])
    lane.set_ylabel("air", color=_SOFT_INK)
    trend.set_ylabel(f"oven, °{unit}", color=_INK)
    trend.legend(loc="best", frameon=False, fontsize=9, labelcolor=_INK)
    for axes in (trend, lane):
        axes.set_facecolor(_GROUND)
        axes.tick_params(colors=_SOFT_INK)
        axes.spines[["top", "right"]].set_visible(False)
        axes.spines[["left", "bottom"]].set_color(_SOFT_INK)
    trend.grid(axis="y", color=_SOFT_INK, alpha=0.15)


def _clock(at: datetime, zone: timezone) -> str:
    local = (at + timedelta(seconds=30)).astimezone(zone)
    return f"{local.hour}:{local.minute:02d}"

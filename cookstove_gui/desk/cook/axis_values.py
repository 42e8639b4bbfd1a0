"""The lines of the plot as a table for a spreadsheet: tab-separated, heats in the unit on the screen."""

from datetime import timedelta

from cookstove_gui.desk.cook.oven_lines import oven_fan
from cookstove_gui.desk.desk import Desk
from cookstove_gui.units import degrees, iso_clock


def values_text(desk: Desk) -> str:
    """Clock, tenth percentile, median and ninetieth percentile of the oven: as known of the past, then as projected."""
    standing, unit = desk.standing, desk.unit
    lines = [f"clock\twhat\tp10 °{unit}\tp50 °{unit}\tp90 °{unit}"]
    if standing is None:
        return lines[0] + "\n"

    def row(at: str, what: str, *heats: float) -> str:
        return "\t".join((at, what, *(f"{float(degrees(heat, unit)):.1f}" for heat in heats)))

    trace = standing.trace
    rows = zip(trace.at, trace.p10, trace.p50, trace.p90, strict=True)
    lines += [row(iso_clock(at, desk.offset_minutes), "known", *heats) for at, *heats in rows]
    if desk.is_live:
        fan = oven_fan(standing.projection, desk.stove.oven_spot)
        ahead = zip(fan.minutes.tolist(), fan.p10, fan.p50, fan.p90, strict=True)
        lines += [
            row(iso_clock(standing.now + timedelta(minutes=minutes), desk.offset_minutes), "projected", *heats)
            for minutes, *heats in ahead
        ]
    return "\n".join(lines) + "\n"

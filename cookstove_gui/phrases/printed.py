"""The lines that the headless commands print for people; scripts ask for JSON."""

from cookstove_gui.cooking.fit.fit import FitState, TaskFit
from cookstove_gui.forecast.answers import Outlook, RecordRow, TrackRecord, Zone
from cookstove_gui.forecast.futures.arrival import arrival_of, leaving_of, touching_of
from cookstove_gui.phrases.advice import arrival_words, missed_words, stay_words, touch_words
from cookstove_gui.phrases.cook import holds_words
from cookstove_gui.phrases.edge import Edge, heat_name, sessions_count, spot_label
from cookstove_gui.phrases.good_for import good_chance, good_when
from cookstove_gui.phrases.logbook.record import arrival_window, came_true, row_edge
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Stove


def outlook_lines(found: Outlook, band: HeatBand, edge: Edge) -> tuple[str, ...]:
    """The oven now, when it reaches the band and how long it stays, and what each moment asked about brings."""
    oven = found.oven
    lines = []
    if oven.p10 is not None and oven.p50 is not None and oven.p90 is not None:
        lines.append(f"The oven is at about {edge.heat(oven.p50)} ({edge.range(oven.p10, oven.p90)}).")
    if oven.p50 is not None and band.holds(oven.p50):
        lines.append(f"The oven is at {heat_name(band)}. {stay_words(leaving_of(found), edge)}")
    else:
        arrival, leaves, touches = arrival_of(found), leaving_of(found), touching_of(found)
        if touches is not None:
            lines.append(touch_words(band, touches, edge))
        elif arrival is None:
            lines.append(missed_words(band, is_above=oven.p50 is not None and oven.p50 > band.high))
        else:
            lines.append(arrival_words(band, arrival, edge))
            held = None if leaves is None else (leaves - arrival.likely).total_seconds() / 60.0
            lines.append(f"{holds_words(held).capitalize()} once there.")
    lines.extend(
        f"{edge.clock(ahead.minutes):>5}  {edge.heat(ahead.p50):>7}  ({edge.range(ahead.p10, ahead.p90)}), "
        f"in the band {ahead.chance_in_band:.0%}"
        for ahead in found.ahead
    )
    return tuple(lines)


def zone_row(zone: Zone, stove: Stove, edge: Edge) -> tuple[str, ...]:
    """A spot, its heat, the range of it, and when it was read."""
    read = "not read yet"
    if zone.last_reading is not None and zone.last_reading_age_min is not None:
        read = f"read {edge.heat(zone.last_reading)} {zone.last_reading_age_min:.0f} min ago"
    return (spot_label(stove, zone.spot), edge.heat(zone.p50), edge.range(zone.p10, zone.p90), read)


def fit_row(fit: TaskFit, stove: Stove, edge: Edge) -> tuple[str, ...]:
    """A task, its best spot, and when it is right there; the last two empty where it never is."""
    best = fit.spots[0]
    if fit.state is FitState.NOT:
        return (fit.task.name, "", "")
    when = good_when(best, edge, is_bake=fit.task.goes_in)
    return (fit.task.name, spot_label(stove, best.spot), f"{when}, {good_chance(best)}")


def record_heading(record: TrackRecord) -> str:
    """The stove, and how many sessions its record is made from."""
    return f"{record.stove}, {sessions_count(record.sessions)}"


def record_line(row: RecordRow) -> str:
    """One projection and what came of it."""
    edge = row_edge(row)
    likely = "" if row.likely_min is None else f", likely {edge.clock(row.likely_min)}"
    return f"{row.session}, {edge.clock(0)}: {heat_name(row.band)} {arrival_window(row)}{likely}; {came_true(row)}"

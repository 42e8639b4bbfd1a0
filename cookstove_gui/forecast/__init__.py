"""The heat model: readings and fire events in, a belief about the whole stove out, and what follows from it."""

from cookstove_gui.forecast.futures.next_reading import next_reading
from cookstove_gui.forecast.futures.outlook import outlook, outlook_of, oven_ahead
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.futures.turns import turns, turns_to_come
from cookstove_gui.forecast.futures.zones import zones
from cookstove_gui.forecast.learning.hot_side import spot_pattern
from cookstove_gui.forecast.learning.learn import Lessons, learn, lessons
from cookstove_gui.forecast.learning.track_record import track_record, verdict
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.forecast.tracking.belief import Belief, doubted_readings, trace, trace_as_believed
from cookstove_gui.forecast.tracking.carried import carried_heat, is_warm
from cookstove_gui.forecast.tracking.tracker import Tracker, track

__all__ = [
    "Belief",
    "Character",
    "Lessons",
    "Tracker",
    "carried_heat",
    "doubted_readings",
    "is_warm",
    "learn",
    "lessons",
    "next_reading",
    "outlook",
    "outlook_of",
    "oven_ahead",
    "project",
    "spot_pattern",
    "trace",
    "trace_as_believed",
    "track",
    "track_record",
    "turns",
    "turns_to_come",
    "verdict",
    "zones",
]

"""The heat model: readings and fire events in, a belief about the whole stove out, and what follows from it."""

from cookstove_gui.forecast.asking import next_reading
from cookstove_gui.forecast.belief import Belief, doubted_readings, trace
from cookstove_gui.forecast.character import Character
from cookstove_gui.forecast.learning import learn
from cookstove_gui.forecast.outlooks import outlook, outlook_of
from cookstove_gui.forecast.patterns import spot_pattern
from cookstove_gui.forecast.projecting import project
from cookstove_gui.forecast.record import track_record
from cookstove_gui.forecast.tracker import Tracker, track
from cookstove_gui.forecast.turns import turns
from cookstove_gui.forecast.zones import zones

__all__ = [
    "Belief",
    "Character",
    "Tracker",
    "doubted_readings",
    "learn",
    "next_reading",
    "outlook",
    "outlook_of",
    "project",
    "spot_pattern",
    "trace",
    "track",
    "track_record",
    "turns",
    "zones",
]

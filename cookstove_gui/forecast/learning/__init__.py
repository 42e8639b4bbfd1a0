"""From past sessions to a stove's character, its hot side and the record of past projections."""

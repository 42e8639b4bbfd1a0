"""Invented stoves and firings to test against: richer physics than the forecast's own, and people who forget things.

`stoves.make_stove(seed, family)` draws a stove with its cook, `sessions.make_session(world, seed)` one firing of it,
`sessions.make_sessions([(world, seed), ...])` many at once. Design seeds are 0 to 999, judging seeds 10000 and up.
"""

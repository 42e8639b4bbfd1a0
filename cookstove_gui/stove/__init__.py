"""The words of the trade as frozen dataclasses: stove, spot, instrument, session, entry, heat band. No I/O."""

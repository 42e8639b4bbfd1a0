"""Alarms in the window: the line, the bell, the voice. Sound is imported when it is first needed, or not at all."""

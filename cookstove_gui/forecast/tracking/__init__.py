"""From the rows of a session to the belief about the stove at one moment."""

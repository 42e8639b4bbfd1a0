"""How the log of the open session grows: rows, corrections, undo, and the walk round the stove."""

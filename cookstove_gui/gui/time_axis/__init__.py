"""One time axis: the oven's curve, its arrival, what was done to the fire, and what it is good for."""

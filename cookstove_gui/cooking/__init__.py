"""Tasks, fit, pans and water, bakes, first fires, cautions: what a cook does with the heat."""

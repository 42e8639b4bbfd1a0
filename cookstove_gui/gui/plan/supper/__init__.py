"""The tab Supper: oven, fire and dishes on one clock, the steps to come, and the dishes to choose from."""

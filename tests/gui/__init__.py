"""The room gui: real widgets, driven by keys and clicks."""

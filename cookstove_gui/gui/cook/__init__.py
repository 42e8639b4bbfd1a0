"""The Cook page: entry, the drawn stove, the trend plot, and what fits where."""

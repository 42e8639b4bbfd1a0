"""Which task fits which spot, now and later."""

"""A stove as it is drawn from in front and above: pure geometry and colours, for the screen and for paper."""

"""Real tracking: readers of its formats, the house frame, spots with hysteresis, and a strip as a timeline."""

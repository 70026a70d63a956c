"""Positions in time: runners, ball flight, routes, and the timeline that everything drawn is read from."""

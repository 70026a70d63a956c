"""Backcut: state the habits of a motion offence once, in sentences; see them played, checked and explained."""

__version__ = "0.1.0"

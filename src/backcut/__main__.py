"""Lets `python -m backcut` do what the command does."""

from backcut.cli.main import run

run()

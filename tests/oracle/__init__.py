"""A second, naive reading of the rules: it imports nothing from the project, so that the two can disagree."""

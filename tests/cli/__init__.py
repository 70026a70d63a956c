"""The command line as a coach meets it."""

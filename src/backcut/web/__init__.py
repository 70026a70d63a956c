"""The live floor in the browser: a face over the same functions as the command line."""

"""The command line: one file a command, each thin; every command has `--json`.

Exit codes: 0 fine, 1 findings or problems in a book, 2 wrong use or a file that cannot be read.
"""

"""The rules engine: one habit a file, in a coach's sentences; two exhaustive readings; properties of random play."""

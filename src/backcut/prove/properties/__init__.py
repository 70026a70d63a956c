"""The properties, one file each."""

"""Tracking formats, one file each; a file here exports READER and is found by scanning."""

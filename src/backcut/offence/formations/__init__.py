"""The formations: one file each, exporting `FORMATION`. Drop a file here and it is known everywhere."""

"""The phrases: one file each, exporting `PHRASE`. Drop a file here and it is known everywhere."""

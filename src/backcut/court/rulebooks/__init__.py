"""Rule books: one file a court, each exporting one record `COURT`; found by scanning, so a new file is a new court."""

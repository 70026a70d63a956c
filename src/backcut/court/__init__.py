"""Courts: units, the house frame, rule books, spots."""

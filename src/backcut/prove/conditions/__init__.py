"""The words of a coach's own properties: conditions, the grammar made from them, and sentences read with it."""

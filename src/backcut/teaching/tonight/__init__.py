"""Tonight's page: a running order from the book's drills for those who are there."""

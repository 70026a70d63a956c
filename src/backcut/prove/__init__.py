"""Every situation a book can come to, and what has to hold in it."""

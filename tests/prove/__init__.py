"""The proof: every situation a book can come to, what holds in it, and outside readings of the same walks."""

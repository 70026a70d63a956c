"""The book: its text, sentences, problems, notations and formations."""

"""Teach a book: drills, sheets, clips, quizzes and tonight's page, all made from its sentences."""

"""Quizzes: keys against the second reading, the page in a browser, codes and the schedule."""

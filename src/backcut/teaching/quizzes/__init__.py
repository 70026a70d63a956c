"""Quizzes: questions from the situations a book comes to, each with its right answer under this book."""

from backcut.teaching.quizzes.asked import QuizError, questions, quiz
from backcut.teaching.quizzes.code import CodeError, Result
from backcut.teaching.quizzes.page import quiz_page
from backcut.teaching.quizzes.paper import PaperQuestion, paper_quiz
from backcut.teaching.quizzes.question import Ask, Choice, Question
from backcut.teaching.quizzes.results import Results, results

__all__ = [
    "Ask",
    "Choice",
    "CodeError",
    "PaperQuestion",
    "Question",
    "QuizError",
    "Result",
    "Results",
    "paper_quiz",
    "questions",
    "quiz",
    "quiz_page",
    "results",
]

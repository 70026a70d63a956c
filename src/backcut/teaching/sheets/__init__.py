"""Sheets on paper, from the book itself: PDF, black only, dated, with the version of the book."""

from backcut.teaching.sheets.bench import bench_pdf
from backcut.teaching.sheets.booklet import booklet_pdf
from backcut.teaching.sheets.card import Card, cards_pdf
from backcut.teaching.sheets.handout import handout_pdf
from backcut.teaching.sheets.paper import PAPERS, Paper, Stamp, paper_named, stamp
from backcut.teaching.sheets.picture import Drawn, paper_still
from backcut.teaching.sheets.plan import Block, Plan, page_pdf
from backcut.teaching.sheets.poster import poster_pdf
from backcut.teaching.sheets.quiz import quiz_pdf, quiz_sheet
from backcut.teaching.sheets.sheets import Made, Sheet, sheets

__all__ = [
    "PAPERS",
    "Block",
    "Card",
    "Drawn",
    "Made",
    "Paper",
    "Plan",
    "Sheet",
    "Stamp",
    "bench_pdf",
    "booklet_pdf",
    "cards_pdf",
    "handout_pdf",
    "page_pdf",
    "paper_named",
    "paper_still",
    "poster_pdf",
    "quiz_pdf",
    "quiz_sheet",
    "sheets",
    "stamp",
]

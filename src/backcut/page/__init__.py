"""The self-contained HTML page: one file, nothing fetched, the still picture first."""

from backcut.page.film import film_page
from backcut.page.possession import possession_page

__all__ = ["film_page", "possession_page"]

"""Tests of the page and of the moments it draws."""

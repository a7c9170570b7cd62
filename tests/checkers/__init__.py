"""Checks of published pages by programs that know nothing of this project; usable on any HTML and PDF."""

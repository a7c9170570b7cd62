"""Blocks laid out as web pages and printed sheets, by the templates of a theme."""

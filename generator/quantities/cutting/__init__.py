"""Cutting plans: pieces of the whole job out of stock lengths, with saw, trim and what is left over."""

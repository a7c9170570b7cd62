"""Drawings: worked sizes in, vector pictures true to scale out."""

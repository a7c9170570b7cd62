"""The rulebook and the required sections, held against methods and jobs."""

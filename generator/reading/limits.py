"""How much one file may hold; far above what a method needs, far below what could do harm."""

from __future__ import annotations

MOST_BYTES = 1_000_000
MOST_NODES = 50_000
MOST_DEPTH = 40
MOST_COLUMNS = 500
MOST_ROWS = 5_000

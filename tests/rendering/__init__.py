"""How documents look: pages, sheets, themes."""

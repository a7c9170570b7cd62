"""The end of the line: slow work shared out among the cores, and the site laid down whole or not at all."""

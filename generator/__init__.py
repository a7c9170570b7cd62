"""Storeyrod: method files in, illustrated method statements out."""

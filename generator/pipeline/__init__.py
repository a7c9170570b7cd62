"""The conductor: the arrow line from files to files, and the run that finds it already travelled."""

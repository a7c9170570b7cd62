"""The register of issued statements: a chain of lines a person can read, and the frozen files of each."""

"""YAML and CSV text to nodes that know where they stand."""

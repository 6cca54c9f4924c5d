"""The study as text and JSON: check, figures, compare."""

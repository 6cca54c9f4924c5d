"""Worked calculations, subject by subject."""

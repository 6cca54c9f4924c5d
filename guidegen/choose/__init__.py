"""Propose arrangements: every sensible split, feed and wire, solved and judged; the best first."""

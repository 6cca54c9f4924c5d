"""Benchmarks: each prints ratios measured in one run, for ratios hold on any machine."""

"""Physics: pure functions on SI floats and numpy arrays, without input, output or project classes."""

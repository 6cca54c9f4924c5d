"""Steps of the build, derived from the arrangement."""

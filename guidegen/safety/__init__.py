"""The safety rules: what they find in a project, and how that is said."""

"""From the text of a project file to the models of the project."""

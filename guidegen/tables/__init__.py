"""Published values, each with its source; where one was not checked against its text, it says so."""

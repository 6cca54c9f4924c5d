"""Published values, each with its source; where one was written from memory, it says so."""

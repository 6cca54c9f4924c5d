"""From meter readings to the string's own LED curve, and from there to the next reading worth taking."""

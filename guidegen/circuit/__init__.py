"""From the project to a solved arrangement: the decisions, the circuit, the worst cases."""

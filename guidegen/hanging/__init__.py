"""How the lights hang: hooks, spans, where every bulb lands, what pulls at the hooks."""

"""The making sheet: all that the person at the bench needs, who never opens the design."""

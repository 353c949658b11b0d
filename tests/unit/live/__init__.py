"""The live page: what it shows, its text, its server."""

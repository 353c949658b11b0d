"""Cutting files read back as a stranger reads them, and what is wrong in them: what, where in mm, what to do.

It lies above the writers and asks none of them: the one proves the other.
"""

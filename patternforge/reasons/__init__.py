"""Reasons: how every size of a drafted wallet came about, down to what the maker entered and the source behind it."""

"""The use cases, from files to files: draft a design, check it, start a new one from a ready one."""

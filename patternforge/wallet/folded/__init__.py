"""One-piece wallets folded without thread: faces that fold in any direction, tabs that hold them closed."""

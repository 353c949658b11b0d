"""The wallet posed: its layers and contents as solid bodies, anywhere between laid open and closed."""

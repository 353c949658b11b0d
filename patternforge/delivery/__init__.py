"""Files on the disk: whole sets or nothing, and nothing of the user's overwritten or lost."""

from patternforge.delivery.folder import Delivery, delivered
from patternforge.delivery.single import file_delivered

__all__ = ["Delivery", "delivered", "file_delivered"]

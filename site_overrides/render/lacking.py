"""What a reply needs and the page's Python does not have yet: a file of the site, which the worker fetches."""


class Lacking(LookupError):
    """A file below the site's assets is missing here; `address` says which."""

    def __init__(self, address: str) -> None:
        super().__init__(f"{address} is not here")
        self.address = address

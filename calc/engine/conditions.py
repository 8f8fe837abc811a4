"""A condition in text over the numbers of a worksheet: `store_top >= boiling - margin and emitter == 'floor'`."""

from collections.abc import Mapping
from functools import cache

from calc.engine.fields import DeclarationError
from calc.expression import CONDITION, Expression, ExpressionError


class Condition:
    """A condition in text over fields, givens and steps: "store_top >= boiling_here - margin and emitter == 'floor'".

    `missing(x)` is true when a step has no value, `assumed(x)` when nobody gave the field, `given(x)` when one did.
    Without a value that it reads, a condition does not hold; where it asks missing(x) first, that decides.
    """

    def __init__(self, text: str) -> None:
        self.text = text
        self.expression = Expression(text, CONDITION)
        try:
            self.asked = {name for _, name in self.expression.asked}
            self.names = self.expression.names | self.asked
        except ExpressionError as wrong:
            raise DeclarationError(str(wrong)) from None
        # What missing() asks for may be absent: the condition itself says what that means.
        self._needed = self.expression.names - {name for ask, name in self.expression.asked if ask == "missing"}

    def __call__(self, values: Mapping[str, float | str | None], origins: Mapping[str, str]) -> bool:
        for name in self._needed:
            if values.get(name) is None:
                return False
        if not self.asked:
            return bool(self.expression(values))
        return bool(
            self.expression(
                values,
                {
                    "missing": lambda name: values.get(name) is None,
                    "assumed": lambda name: origins.get(name) in ("typical", "example"),
                    "given": lambda name: origins.get(name) in ("typed", "link", "computed"),
                },
            )
        )


@cache
def condition(text: str) -> Condition:
    return Condition(text)

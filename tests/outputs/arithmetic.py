"""Reads a line with the numbers put in as a reader does, and works it out.

Knows nothing of the program's expressions: only signs, brackets and the words of the page.
"""

from __future__ import annotations

import math
import re

from builder.language.units import UNITS

RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹·⁻", "0123456789.-")
_UNIT = "|".join(sorted((re.escape(u) for u in UNITS if u), key=len, reverse=True))
TOKEN = re.compile(
    r"\s*(?:(?P<number>-?\d+(?:,\d{3})*(?:\.\d+)?)"
    rf"(?: (?:{_UNIT})(?:/(?:{_UNIT}))?(?![\w²³⁴]))?"
    r"|“(?P<text>[^”]*)”"
    r"|(?P<raised>[⁰¹²³⁴⁵⁶⁷⁸⁹·⁻]+)"
    r"|(?P<word>to the nearest|to the cent|remainder of|least of|greatest of|a dash|"
    r"choose|degrees|radians|not|else|exp|atan|acos|sin|cos|tan|and|ln|if|or|is)\b"
    r"|(?P<sign>[-+−×/^()|⌈⌉⌊⌋√,<>≤≥–]))")
CALLS = {"exp": math.exp, "ln": math.log, "sin": math.sin, "cos": math.cos, "tan": math.tan,
         "atan": math.atan, "acos": lambda x: math.acos(max(-1.0, min(1.0, x))),
         "degrees": math.degrees, "radians": math.radians, "not": lambda x: 1 - x}
TESTS = {"<": lambda a, b: a < b - 1e-9, "≤": lambda a, b: a <= b + 1e-9,
         ">": lambda a, b: a > b + 1e-9, "≥": lambda a, b: a >= b - 1e-9,
         "is": lambda a, b: a == b}
DASH = "–"


class Unreadable(ValueError):
    """A line that is no arithmetic."""


def tokens(line: str) -> list[tuple[str, str]]:
    """Return the pieces of a line: (kind, what it is).

    Raises:
        Unreadable: something that is neither number, sign nor a word of the page.
    """
    found, at = [], 0
    line = line.rstrip()
    while at < len(line):
        match = TOKEN.match(line, at)
        if match is None:
            raise Unreadable(f"{line[at:at + 30]!r} in {line!r}")
        found.append((match.lastgroup, match[match.lastgroup]))
        at = match.end()
    return [*found, ("end", "")]


class Line:
    """One line being read from left to right."""

    def __init__(self, line: str):
        self.line, self.left = line, tokens(line)

    def worth(self) -> float | str:
        """Return what the line comes to.

        Raises:
            Unreadable: the line is no arithmetic.
        """
        value = self._chosen()
        if self.left[0][0] != "end":
            raise Unreadable(f"{self.left[0][1]!r} is left of {self.line!r}")
        return value

    def _is(self, *what: str) -> bool:
        return self.left[0][0] in ("word", "sign") and self.left[0][1] in what

    def _take(self, *what: str) -> str:
        if what and not self._is(*what):
            raise Unreadable(f"{self.left[0][1]!r} where {what[0]!r} is due in {self.line!r}")
        return self.left.pop(0)[1]

    def _chosen(self):
        value = self._either()
        if self._is("if"):
            self._take("if")
            test = self._either()
            self._take(",")
            self._take("else")
            other = self._chosen()
            value = value if test else other
        return value

    def _either(self):
        value = self._test()
        while self._is("and", "or"):
            word, other = self._take(), self._test()
            value = int(bool(value) and bool(other) if word == "and" else
                        bool(value) or bool(other))
        return value

    def _test(self):
        value = self._sum()
        while self._is(*TESTS):
            sign = self._take()
            value = int(TESTS[sign](value, self._sum()))
        return value

    def _sum(self):
        value = self._product()
        while self._is("+", "−"):
            value = value + self._product() if self._take() == "+" else value - self._product()
        return value

    def _product(self):
        value = self._power()
        while self._is("×", "/", "to the nearest", "to the cent"):
            sign = self._take()
            if sign == "to the cent":
                value = math.floor(value * 100 + 0.500001) / 100
                continue
            other = self._power()
            if sign == "to the nearest":
                value = math.floor(value / other + 0.500000001) * other
            else:
                value = value * other if sign == "×" else value / other
        return value

    def _power(self):
        if self._is("−"):
            self._take()
            return -self._power()
        value = self._atom()
        while self.left[0][0] == "raised" or self._is("^"):
            if self._is("^"):
                self._take()
                value = value ** self._atom()
            else:
                value = value ** float(self.left.pop(0)[1].translate(RAISED))
        return value

    def _atom(self):
        kind, what = self.left.pop(0)
        if kind == "number":
            return float(what.replace(",", ""))
        if kind == "text":
            return what
        if what in ("a dash", DASH):
            return DASH
        closing = {"(": ")", "|": "|", "⌈": "⌉", "⌊": "⌋"}.get(what)
        if closing:
            value = self._chosen()
            self._take(closing)
            return {"(": lambda x: x, "|": abs, "⌈": lambda x: math.ceil(x - 1e-9),
                    "⌊": lambda x: math.floor(x + 1e-9)}[what](value)
        if what == "√":
            return math.sqrt(self._atom())
        if what in ("least of", "greatest of", "choose"):
            return self._listed(what)
        if what == "remainder of":
            n = self._power()
            self._take("/")
            divisor = self._power()
            return n - divisor * math.floor(n / divisor + 1e-9)
        if what in CALLS:
            return CALLS[what](self._atom())
        raise Unreadable(f"{what!r} in {self.line!r}")

    def _listed(self, what: str):
        self._take("(")
        values = [self._chosen()]
        while self._is(","):
            self._take()
            values.append(self._chosen())
        self._take(")")
        if what == "choose":
            return values[int(values[0])]
        return min(values) if what == "least of" else max(values)


def worth(line: str) -> float | str:
    """Return what a line with the numbers put in comes to: a number, or a word.

    Raises:
        Unreadable: the line is no arithmetic.
    """
    return Line(line).worth()

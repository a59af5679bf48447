"""Input rules as the writer's data validation: what may be typed, and the words that say so."""

from __future__ import annotations

from typing import Any

from builder.resolve.cells import InputRule

_KINDS = {"decimal": "decimal", "whole": "whole", "list": "list", "text": "length"}


def validation(rule: InputRule) -> dict[str, Any]:
    """Return XlsxWriter's options for a rule that ``limits.rule_faults`` finds lawful.

    The program stops a wrong entry and says why; a blank is let through only where the rule
    says so.  (The Delete key passes any rule: the state cells see to that.)
    """
    options: dict[str, Any] = {
        "validate": _KINDS[rule.kind],
        "ignore_blank": rule.blank,
        "error_type": "stop",
        "show_input": True,
        "show_error": True,
        "input_title": rule.title,
        "input_message": rule.message,
        "error_title": rule.title,
        "error_message": rule.error,
    }
    if rule.kind == "list":
        return {**options, "source": rule.source, "dropdown": True}
    least, most = _limits(rule)
    return {**options, "criteria": "between", "minimum": least, "maximum": most}


def _limits(rule: InputRule) -> tuple[float, float]:
    if rule.kind == "decimal":
        return float(f"{rule.least:.16g}"), float(f"{rule.most:.16g}")
    # A text that is there has at least one letter; a blank is the rule's other matter.
    least = 1 if rule.kind == "text" else int(rule.least)
    return least, int(rule.most)

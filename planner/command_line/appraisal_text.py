"""An appraisal as lines of text: readiness, energy, and what was found with its reason and its mend."""

from __future__ import annotations

from collections.abc import Iterator

from planner.appraisal import Appraisal
from planner.energy import Energy


def appraisal_lines(appraisal: Appraisal) -> Iterator[str]:
    """Each part only where there is something to say; that nothing was found is said too."""
    if appraisal.readiness:
        yield appraisal.readiness.sentence
    if appraisal.energy:
        yield _energy(appraisal.energy)
    if not appraisal.findings:
        yield "Nothing was found that would need a second look."
    for finding in appraisal.findings:
        yield f"{finding.severity.value}: {finding.sentence}"
        if finding.reason:
            yield f"  why: {finding.reason}"
        if finding.mend:
            yield f"  mend: {finding.mend.label}"


def _energy(energy: Energy) -> str:
    spent = energy.by_efficiency
    by_table = "".join(f"; {cost.kcal:.0f} kcal by the table of {cost.edition}" for cost in energy.by_table)
    return f"work {energy.work_kj:.0f} kJ, about {spent.low:.0f} to {spent.high:.0f} kcal{by_table}"

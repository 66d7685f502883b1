"""What was noticed about an athlete's results: which are left out and why, and what rests on thin ground."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from planner.athlete import Athlete, Result
from planner.critical_power import Examined, Fit, Refusal
from planner.errors import pointer
from planner.findings import Finding, Severity
from planner.prediction import LEAST_CRITICAL, MOST_CRITICAL, TWO_K, predict
from planner.trials import Doubt, LeftOut, slowest_by
from planner.units import told_metres, told_time

SCATTER = 0.03
"""A relative spread of times beyond which results do not look like one rower's best: judgement [C]."""
LOOSE = 0.5
"""A share of the reserve beyond which its standard error is worth a word: judgement [C]."""
GROWN_UP = 18

SECOND_PIECE = "row another piece flat out, rested, that takes 3 to 12 minutes"


def result_findings(athlete: Athlete, examined: Examined) -> tuple[Finding, ...]:
    """The findings, with pointers into the athlete's document; those about a result come first."""
    results = athlete.results
    about_results = [_left_out(results, each, examined.fit) for each in examined.left_out]
    return (
        *(finding for finding in about_results if finding),
        *_about_range(results, examined),
        *_about_two_k(results, examined),
        *_about_fit(results, examined),
        *_about_age(athlete),
    )


def _left_out(results: Sequence[Result], left_out: LeftOut, fit: Fit | None) -> Finding | None:
    name, place = named(results[left_out.index]), pointer("results", left_out.index)
    others = " and ".join(named(results[index]) for index in left_out.against[:2])
    match left_out.doubt:
        case Doubt.REPEATED:
            return Finding(
                "result-repeated", Severity.NOTE, place, f"{name} stands here twice: it counts once."
            )
        case Doubt.BETTERED:
            sentence = f"{name} is bettered by {others}: the better one counts."
            return Finding("result-bettered", Severity.NOTE, place, sentence)
        case Doubt.CONTRADICTED:
            return Finding(
                "result-contradicted",
                Severity.WARNING,
                place,
                f"{name} does not go with {others}, so it is left out: check both, and take one away.",
                "Of two pieces rowed flat out the longer has the slower split, and takes more work in all.",
            )
        case Doubt.OUTLYING:
            expected = f" ({_expected(results[left_out.index], fit)})" if fit else ""
            return Finding(
                "result-outlying",
                Severity.WARNING,
                place,
                f"{name} lies far off what the other results say of that distance{expected}, so it is left "
                "out: check it, or row it again.",
                "It is more than four standard deviations from the critical power of the others.",
            )
        case Doubt.OUTSIDE:
            return None
        case Doubt.EASY:
            most = slowest_by(results[left_out.against[0]], results[left_out.index].metres)
            return Finding(
                "result-looks-easy",
                Severity.ADVICE,
                place,
                f"{name} is slower than {others} suggests ({told_time(_second(most))} at the slowest), so it "
                "has no say in critical power: take it away if it was not flat out.",
                "It still counts for the predictions near it, which may come too slow.",
            )


def _expected(result: Result, fit: Fit) -> str:
    return f"about {told_time(_second(fit.seconds_for(result.metres)))}"


def _about_range(results: Sequence[Result], examined: Examined) -> Iterator[Finding]:
    """One quiet note for all results outside what critical power describes, where there is one."""
    if examined.fit is None:
        return
    outside = [each.index for each in examined.left_out if each.doubt is Doubt.OUTSIDE]
    stretched = examined.fit.stretched
    said = []
    if stretched:
        have = "counts" if len(stretched) == 1 else "count"
        said.append(f"{_listed(results, stretched)} {have} for want of better: {SECOND_PIECE}")
    if outside:
        have = "has" if len(outside) == 1 else "have"
        said.append(f"{_listed(results, outside)} {have} no say")
    if said:
        yield Finding(
            "result-outside-critical-power",
            Severity.NOTE,
            pointer("results", min([*stretched, *outside])),
            f"Critical power describes efforts of about 2 to 15 minutes: {'; '.join(said)}.",
        )


def _listed(results: Sequence[Result], indexes: Sequence[int]) -> str:
    *most, last = [named(results[index]) for index in indexes]
    return f"{', '.join(most)} and {last}" if most else last


def _about_two_k(results: Sequence[Result], examined: Examined) -> Iterator[Finding]:
    if not results:
        return
    two_k = predict(TWO_K, results, examined)
    if not any(said.within_range for said in two_k.by):
        yield Finding(
            "two-k-far-from-result",
            Severity.ADVICE,
            pointer("results", two_k.source),
            f"2 km is a long way from {named(results[two_k.source])}, so the 2 km split is a guess: "
            "add a result over 1 to 5 km.",
            "The power law holds for about 3.5 to 230 minutes, the five-seconds custom from about 500 m.",
        )


def _about_fit(results: Sequence[Result], examined: Examined) -> Iterator[Finding]:
    whole = pointer("results")
    fit = examined.fit
    if examined.unlikely_share is not None:
        yield _set_aside(examined.unlikely_share)
        return
    if fit is None:
        if results:
            yield Finding("no-critical-power", Severity.NOTE, whole, _why_no_fit(examined.refusal))
        return
    if fit.time_spread > SCATTER:
        yield Finding(
            "results-scatter",
            Severity.ADVICE,
            whole,
            f"These results lie {100 * fit.time_spread:.0f} % of their time off one curve, more than one day "
            "from the next, and do not say which is wrong: leave out those not rowed flat out.",
        )
    if fit.reserve_joules_error > LOOSE * fit.reserve_joules:
        yield Finding(
            "critical-power-loose",
            Severity.ADVICE,
            whole,
            f"The reserve of {fit.reserve_joules / 1000:.0f} kJ may well be off by "
            f"{fit.reserve_joules_error / 1000:.0f} kJ: {SECOND_PIECE}, much shorter or longer than these.",
        )


def _set_aside(share: float) -> Finding:
    least, most = (round(100 * end) for end in (LEAST_CRITICAL, MOST_CRITICAL))
    return Finding(
        "critical-power-set-aside",
        Severity.ADVICE,
        pointer("results"),
        f"Critical power comes to {100 * share:.0f} % of 2 km power by these results, and rowers have from "
        f"{least} to {most} %: it is set aside. Take away what was not rowed flat out.",
        "What rests on it is taken from the level instead.",
    )


def _why_no_fit(refusal: Refusal | None) -> str:
    if refusal is Refusal.UNCERTAIN:
        return (
            "These results are too alike in length or split to tell critical power from the reserve: "
            f"{SECOND_PIECE}, much shorter or longer than these."
        )
    return f"Critical power needs two all-out results of about 2 to 15 minutes: {SECOND_PIECE}."


def _about_age(athlete: Athlete) -> Iterator[Finding]:
    if athlete.age is None:
        return
    place = pointer("age")
    if athlete.heart_rate_max is None:
        yield Finding(
            "heart-rate-from-age",
            Severity.NOTE,
            place,
            "The highest heart rate is only estimated from age: where breath and talk say otherwise, go by "
            "them; and do so with medicine that slows the heart.",
            "208 - 0.7 x age (Tanaka 2001); such formulas miss by 7 to 11 beats a minute.",
        )
    if athlete.age < GROWN_UP:
        yield Finding(
            "young-rower",
            Severity.ADVICE,
            place,
            "These predictions and bands come from grown-ups: for young rowers short pieces, technique first "
            "and a coach at their side.",
        )


def named(result: Result) -> str:
    """A result as people say it: 2000 m in 7:42."""
    return f"{told_metres(result.metres)} in {told_time(result.seconds)}"


def _second(seconds: float) -> Fraction:
    return Fraction(round(seconds))

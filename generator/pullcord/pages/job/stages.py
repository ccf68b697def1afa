"""How far a machine is: its stages as a line, each with a word and a sign."""

from __future__ import annotations

from dataclasses import dataclass

from pullcord.analysis.job.report import JobReport, NextProof, StageState
from pullcord.pages.job.words import say_money
from pullcord.pages.kit import Kit


@dataclass(frozen=True)
class StageView:
    """One stage."""

    title: str
    key: str
    """`proved`, `not_yet` or `taken_back`: its looks."""
    mark: str
    means: str
    """What has been shown, or is still to be."""
    proof: str
    """Proved or not, with the day."""
    why: str


@dataclass(frozen=True)
class ProofView:
    """A stage still to be proved."""

    title: str
    cost: str
    why: str
    source: str
    """Where the order and the share given up come from."""


@dataclass(frozen=True)
class StagesView:
    """All stages, and what to prove next."""

    count: str
    stages: tuple[StageView, ...]
    proofs: tuple[ProofView, ...]


def stages_view(kit: Kit, report: JobReport) -> StagesView:
    """Return the stages of a job in their order."""
    words = kit.job
    proved = sum(state.proof == "proved" for state in report.stages)
    count = words["stages_count"].format(proved=proved, all=len(report.stages))
    stages = {state.name: state.stage for state in report.stages}
    return StagesView(
        count=count if report.stages else words["stages_none"],
        stages=tuple(_stage(kit, state) for state in report.stages),
        proofs=tuple(
            ProofView(
                title=stages[proof.stage].title,
                cost=_cost(kit, proof),
                why=proof.why,
                source=stages[proof.stage].source or "",
            )
            for proof in report.proofs
        ),
    )


def _cost(kit: Kit, proof: NextProof) -> str:
    if not proof.expected_cost:
        return kit.job["proof_time"]
    cost = say_money(proof.expected_cost, kit.settings.currency)
    return kit.job["proof_likely"].format(cost=cost)


def last_proved(report: JobReport) -> str:
    """Return the title of the last stage that is proved; empty for none."""
    proved = [state.stage.title for state in report.stages if state.proof == "proved"]
    return proved[-1] if proved else ""


def _stage(kit: Kit, state: StageState) -> StageView:
    words, key = kit.job, state.proof.replace(" ", "_")
    proof = words[f"stage_{key}"]
    if state.since:
        pattern = words.get(f"stage_{key}_since", words["stage_since"])
        proof = pattern.format(proof=proof, day=state.since)
    return StageView(
        title=state.stage.title,
        key=key,
        mark=words[f"stage_{key}_mark"],
        means=words[f"stage_{key}_means"].format(means=state.stage.means),
        proof=proof,
        why=state.why,
    )

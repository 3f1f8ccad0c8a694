//! What is written as wrong: spoiled.

use super::super::edit::{Edit, before, instead, leave_out};
use super::super::step::act;
use super::good::Good;
use super::said::FINDING;
use super::way::Spoil;
use crate::hands::action::Action;
use crate::parts::{Answer, Cause, WrittenFinding};

/// Ways of spoiling the findings.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil::new(id!("spoil-what-was-wrong-not-written"), &["cause-not-named"], |_| {
        vec![leave_out(FINDING)]
    }),
    Spoil::new(
        id!("spoil-nothing-written-where-nothing-was-wrong"),
        &["no-finding-written"],
        |_| vec![leave_out(FINDING)],
    ),
    Spoil::new(id!("spoil-a-cause-too-many"), &["wrong-cause"], |_| {
        with_another(Cause::BlowerTooSlow)
    })
    .besides(names_something),
    Spoil::new(id!("spoil-a-leak-too-many"), &["wrong-cause-harms"], |_| {
        with_another(Cause::UnionLeaks)
    })
    .besides(names_something),
    Spoil::new(id!("spoil-an-answer-that-was-not-given"), &["answer-contradicts"], |g| {
        rewritten(g, |it| WrittenFinding { answer: Answer::ShutOff, ..it })
    })
    .besides(|g| g.in_use() && names_something(g)),
    Spoil::new(id!("spoil-nothing-that-speaks-for-it"), &["finding-unbacked"], |g| {
        rewritten(g, |it| WrittenFinding { evidence: Vec::new(), ..it })
    }),
];

/// Whether the good run names a cause, with room for another.
fn names_something(good: &Good) -> bool {
    (1..WrittenFinding::MOST).contains(&good.findings().count())
        && !good.findings().any(|it| it.cause == Cause::NothingFound)
}

/// Another finding before the first one.
fn with_another(cause: Cause) -> Vec<Edit> {
    let another = WrittenFinding { cause, answer: Answer::LeftAsItIs, evidence: Vec::new() };
    vec![before(FINDING, vec![act(Action::WriteFinding(another))])]
}

/// The first finding otherwise.
fn rewritten(good: &Good, otherwise: fn(WrittenFinding) -> WrittenFinding) -> Vec<Edit> {
    let first = good.findings().next().cloned().into_iter();
    first.map(|it| instead(FINDING, vec![act(Action::WriteFinding(otherwise(it)))])).collect()
}

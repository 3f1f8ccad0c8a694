//! A blind run: the ritual done well, with nothing thought. It arrives, isolates, opens, zeroes, reads,
//! closes and restores like the technician, heeds nothing that shows, and ends by one habit.

use super::super::drive::Player;
use super::super::plan::Technician;
use super::detour::{Detour, Next, Piece, decide, wait};
use crate::catalogue::repair::{Nature, Repair};
use crate::hands::action::{Action, Contact, HandOver, PlugStep, Topic};
use crate::hands::refusal::Refusal;
use crate::parts::{
    Answer, Cause, Ending, HandValve, Level, Opening, Phase, Place, Port, PortFill, Reading, Screw,
    Stage, Subject, WrittenFinding,
};
use crate::procedure::{Goal, number};
use crate::rng::stream;
use crate::senses::seen::Seen;
use crate::setup::JobCard;

/// Eighths of a turn after which cranking gives up.
const MOST_EIGHTHS: u32 = 32;
/// Wait after each turn, in seconds.
const SETTLE_S: u64 = 8;

/// A habit that stands in for a diagnosis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Policy {
    /// Says that all is well, whatever it read.
    AllIsWell,
    /// Shuts off, tags and tells, whatever it read.
    ShutsOff,
    /// Calls the owner of the supply, whatever it read.
    CallsOwner,
    /// Replaces every part that can be replaced.
    SwapsParts,
    /// Cleans, clears and refits whatever can be.
    CleansAll,
    /// Turns each level's screw until the number is the plate's.
    Cranks,
    /// Turns the screw of the supply's regulator in by half a turn.
    RaisesSupply,
    /// Writes a cause that is drawn at random, and that it was mended.
    NamesAtRandom,
    /// Has been told what is wrong, writes it, and that it was mended.
    OnlyNames,
}

impl Policy {
    /// Every habit, in the order of the page.
    pub const ALL: [Self; 9] = [
        Self::AllIsWell,
        Self::ShutsOff,
        Self::CallsOwner,
        Self::SwapsParts,
        Self::CleansAll,
        Self::Cranks,
        Self::RaisesSupply,
        Self::NamesAtRandom,
        Self::OnlyNames,
    ];

    /// In words for people.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::AllIsWell => t!("blind-all-is-well"),
            Self::ShutsOff => t!("blind-shuts-off"),
            Self::CallsOwner => t!("blind-calls-owner"),
            Self::SwapsParts => t!("blind-swaps-parts"),
            Self::CleansAll => t!("blind-cleans-all"),
            Self::Cranks => t!("blind-cranks"),
            Self::RaisesSupply => t!("blind-raises-supply"),
            Self::NamesAtRandom => t!("blind-names-at-random"),
            Self::OnlyNames => t!("blind-only-names"),
        }
    }

    /// How it hands over.
    fn ending(self) -> Ending {
        match self {
            Self::ShutsOff => Ending::ShutOff,
            Self::CallsOwner => Ending::SupplyOwnerCalled,
            Self::AllIsWell
            | Self::SwapsParts
            | Self::CleansAll
            | Self::Cranks
            | Self::RaisesSupply
            | Self::NamesAtRandom
            | Self::OnlyNames => Ending::InService,
        }
    }

    /// What it does in place of an action of the ritual; none where it does the action itself.
    fn carry_out(self, action: &Action, seen: &Seen, named: &[Cause]) -> Option<Vec<Piece>> {
        let place = seen.place;
        if let Action::HandOver(said) = action {
            return Some(self.hands_over(said, named));
        }
        let is_tap = seen.fill(Port::Inlet) == Some(PortFill::TapOpen);
        let closes = if is_tap { PlugStep::SpinIn } else { PlugStep::StartByHand };
        let before_closing = *action == Action::Plug { port: Port::Inlet, step: closes };
        let pieces = match self {
            Self::SwapsParts if before_closing => mend_all(Nature::Part, place),
            Self::CleansAll if before_closing => mend_all(Nature::Care, place),
            Self::Cranks => match reading(action, Port::Manifold) {
                Some(it @ Reading { stage: Stage::Firing(level), .. }) => crank(level, it, place),
                Some(_) | None => return None,
            },
            Self::RaisesSupply => match reading(action, Port::Inlet) {
                Some(Reading { stage: Stage::FullLoad, .. }) => raise(place),
                Some(_) | None => return None,
            },
            Self::AllIsWell
            | Self::ShutsOff
            | Self::CallsOwner
            | Self::SwapsParts
            | Self::CleansAll
            | Self::NamesAtRandom
            | Self::OnlyNames => return None,
        };
        Some(after(action, pieces))
    }

    /// What it writes as wrong: nothing, or each of these as mended.
    fn findings(self, named: &[Cause]) -> Vec<Piece> {
        let finding = |cause, answer| {
            Action::WriteFinding(WrittenFinding { cause, answer, evidence: Vec::new() }).into()
        };
        match self {
            Self::NamesAtRandom | Self::OnlyNames if !named.is_empty() => {
                named.iter().map(|&cause| finding(cause, Answer::Mended)).collect()
            }
            Self::AllIsWell
            | Self::ShutsOff
            | Self::CallsOwner
            | Self::SwapsParts
            | Self::CleansAll
            | Self::Cranks
            | Self::RaisesSupply
            | Self::NamesAtRandom
            | Self::OnlyNames => vec![finding(Cause::NothingFound, Answer::LeftAsItIs)],
        }
    }

    fn hands_over(self, said: &HandOver, named: &[Cause]) -> Vec<Piece> {
        let mut pieces: Vec<Piece> = match self {
            Self::ShutsOff => vec![
                Goal::Valve(HandValve::Furnace, Opening::Closed).into(),
                Goal::Tagged.into(),
                Goal::Told(Topic::Unsafe).into(),
                Goal::At(Place::Hall).into(),
            ],
            Self::CallsOwner => vec![Action::Call(Contact::SupplyOwner).into()],
            Self::AllIsWell
            | Self::SwapsParts
            | Self::CleansAll
            | Self::Cranks
            | Self::RaisesSupply
            | Self::NamesAtRandom
            | Self::OnlyNames => Vec::new(),
        };
        pieces.extend(self.findings(named));
        let not_done = said.not_done.clone();
        pieces.push(Action::HandOver(HandOver { ending: self.ending(), not_done }).into());
        pieces
    }
}

/// The reading that an action writes, if it is one of this port.
fn reading(action: &Action, port: Port) -> Option<Reading> {
    let Action::Write(it) = action else { return None };
    Some(*it).filter(|it| it.port == port)
}

/// The action itself, then these.
fn after(action: &Action, pieces: Vec<Piece>) -> Vec<Piece> {
    let mut all = vec![action.clone().into()];
    all.extend(pieces);
    all
}

/// Every repair of a kind, wherever it is done; what is refused is left.
fn mend_all(nature: Nature, place: Place) -> Vec<Piece> {
    let mut pieces = vec![Goal::HandEmpty.into()];
    for there in [Place::GasValve, Place::PlantRoom, Place::Hall, Place::Yard] {
        pieces.push(Goal::At(there).into());
        let ones = Repair::ALL.iter().filter(|it| it.nature() == nature && it.place() == there);
        pieces.extend(ones.map(|&it| Piece::Do(Action::Mend(it))));
    }
    pieces.push(Goal::At(place).into());
    pieces
}

/// A level's screw turned until the number is the one that the plate asks for, and the number
/// written again.
fn crank(level: Level, reading: Reading, place: Place) -> Vec<Piece> {
    let screw = level.screw();
    vec![
        Goal::Uncapped(screw).into(),
        decide(move |seen| turn_to_plate(seen, level, MOST_EIGHTHS)),
        Goal::Capped(screw).into(),
        Goal::HandEmpty.into(),
        wait(SETTLE_S),
        decide(move |seen| write_again(seen, reading)),
        Goal::At(place).into(),
    ]
}

/// One more eighth of a turn towards the plate, and a look at the number.
fn turn_to_plate(seen: &Seen, level: Level, left: u32) -> Vec<Piece> {
    let papers = [Subject::ConversionLabel, Subject::Plate];
    let mut noted = papers.into_iter().filter_map(|it| seen.sheet.note(it)?.finding.figures());
    let Some(figures) = noted.next() else { return Vec::new() };
    let Some(pa) = number(seen) else { return Vec::new() };
    let target = figures.manifold[level];
    let near = (pa - target.pa).abs() <= target.share_pa(0.4);
    if near || left == 0 {
        return Vec::new();
    }
    let eighths = if pa < target.pa { 1 } else { -1 };
    let turn = Action::Turn { screw: level.screw(), eighths };
    vec![turn.into(), wait(SETTLE_S), decide(move |seen| turn_to_plate(seen, level, left - 1))]
}

fn write_again(seen: &Seen, reading: Reading) -> Vec<Piece> {
    let Some(pa) = number(seen) else { return Vec::new() };
    #[expect(clippy::cast_possible_truncation, reason = "a display's number")]
    let thousandths = (pa / reading.unit.pa() * 1000.0).round() as i32;
    vec![Action::Write(Reading { thousandths, phase: Phase::Left, ..reading }).into()]
}

/// The supply's screw half a turn in, and the number under full load written again.
fn raise(place: Place) -> Vec<Piece> {
    let screw = Screw::Supply;
    vec![
        Goal::Uncapped(screw).into(),
        Action::Turn { screw, eighths: 4 }.into(),
        Goal::Capped(screw).into(),
        Goal::HandEmpty.into(),
        Goal::At(place).into(),
        wait(SETTLE_S),
    ]
}

/// Whether the technician does such a thing only after a thought: the ritual goes on without it.
fn takes_thought(action: &Action) -> bool {
    matches!(
        action,
        Action::Mend(_) | Action::Turn { .. } | Action::Call(_) | Action::WriteFinding(_)
    )
}

/// Player of a blind run.
pub struct Blind {
    ritual: Technician,
    policy: Policy,
    /// Causes that it writes, where it writes any.
    named: Vec<Cause>,
    detour: Detour,
}

impl Blind {
    /// A blind run by one habit; the seed and the job's title draw what it names at random.
    #[must_use]
    pub fn new(card: &JobCard, policy: Policy, seed: u64) -> Self {
        let causes: Vec<Cause> =
            Cause::ALL.iter().copied().filter(|it| *it != Cause::NothingFound).collect();
        let among = u32::try_from(causes.len()).unwrap_or(u32::MAX);
        let draw = stream(seed, &format!("blind-run:{}", card.title)).below(among);
        let at = usize::try_from(draw).unwrap_or(0);
        Self::naming(card, policy, causes.get(at).copied().into_iter().collect())
    }

    /// A blind run that names these causes where its habit names any.
    #[must_use]
    pub fn naming(card: &JobCard, policy: Policy, mut named: Vec<Cause>) -> Self {
        let mut ritual = Technician::new(card);
        ritual.close_eyes();
        named.truncate(WrittenFinding::MOST);
        Self { ritual, policy, named, detour: Detour::default() }
    }

    /// Causes that it writes, where its habit writes any.
    #[must_use]
    pub fn named(&self) -> &[Cause] {
        &self.named
    }
}

impl Player for Blind {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        loop {
            match self.detour.next(&mut self.ritual, seen) {
                Next::Act(action) => return Some(action),
                Next::LetPass => return None,
                Next::Done => {}
            }
            let action = self.ritual.next(seen)?;
            if takes_thought(&action) {
                continue;
            }
            match self.policy.carry_out(&action, seen, &self.named) {
                Some(pieces) => self.detour.extend(pieces),
                None => return Some(action),
            }
        }
    }

    /// A refusal changes nothing.
    fn refused(&mut self, _: &Action, _: Refusal) {}

    fn finished(&self) -> bool {
        self.detour.is_empty() && self.ritual.finished()
    }
}

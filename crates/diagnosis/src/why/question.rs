//! Ranking what was found, and questions whose answers would tell the explanations apart.

use super::search::{Found, Group, Story};
use super::space::Space;
use crate::slip::{ActionStep, Change, Part, Slip, SlipKind, Stage};
use blind::{kind_name, kind_named};
use cube::Orbit;
use std::fmt;

/// How often an answer about one's own attempt is right. The project's own estimate.
const ANSWER_IS_RIGHT: f64 = 0.9;
/// How many groups questions are weighed over.
const LEADING: usize = 60;
/// How many questions are asked at most.
const MOST: usize = 3;

/// Something a solver may remember of an attempt, that is true of some explanations and not of others.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Ask {
    /// Whether something went wrong at this stage.
    Stage(Stage),
    /// Whether something went wrong with this kind of piece.
    Kind(Orbit),
    /// Whether something was odd at this letter, counted from 0.
    Letter(Orbit, usize),
    /// Whether something went wrong in a set-up, an algorithm, or the undoing of a set-up.
    Part(Part),
    /// Whether something went wrong about parity.
    Parity,
    /// Whether the puzzle was turned as a whole, or a layer too many turned.
    Held,
}

impl Ask {
    /// Whether it is true of a slip.
    pub fn holds(self, slip: &Slip) -> bool {
        let step = slip.step();
        match self {
            Self::Stage(stage) => slip.kind.stage() == stage,
            Self::Kind(orbit) => slip.orbit() == Some(orbit),
            Self::Letter(orbit, letter) => {
                if let Change::Letters { orbit: kind, from, meant, .. } = &slip.change {
                    *kind == orbit && (*from..from + meant.len().max(1)).contains(&letter)
                } else {
                    let covers = |(first, targets): (usize, &[cube::Sticker])| {
                        (first..first + targets.len()).contains(&letter)
                    };
                    slip.orbit() == Some(orbit) && step.and_then(ActionStep::letters).is_some_and(covers)
                }
            }
            Self::Part(part) => step.is_some_and(|step| step.part() == part),
            Self::Parity => {
                matches!(slip.change, Change::Parity { .. }) || matches!(step, Some(ActionStep::Parity))
            }
            Self::Held => {
                matches!(slip.kind, SlipKind::HeldOtherwise | SlipKind::HeldWrong | SlipKind::TurnWide)
            }
        }
    }

    /// What is asked, from its name: `recall`, `corner`, `corner.5` (counted from 1), `setup`, `algorithm`, `undo`,
    /// `parity`, `held`.
    ///
    /// ```
    /// use diagnosis::Ask;
    /// use cube::Orbit;
    /// assert_eq!(Ask::named("edge.3"), Some(Ask::Letter(Orbit::Midge, 2)));
    /// assert_eq!(Ask::Letter(Orbit::Midge, 2).to_string(), "edge.3");
    /// ```
    pub fn named(name: &str) -> Option<Self> {
        if let Some((kind, letter)) = name.split_once('.') {
            let letter = letter.parse::<usize>().ok()?.checked_sub(1)?;
            return Some(Self::Letter(kind_named(kind)?, letter));
        }
        let stage = Stage::ALL.into_iter().find(|stage| stage.name() == name).map(Self::Stage);
        stage.or_else(|| kind_named(name).map(Self::Kind)).or(match name {
            "setup" => Some(Self::Part(Part::Setup)),
            "algorithm" => Some(Self::Part(Part::Algorithm)),
            "undo" => Some(Self::Part(Part::Undo)),
            "parity" => Some(Self::Parity),
            "held" => Some(Self::Held),
            _ => None,
        })
    }
}

impl fmt::Display for Ask {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Stage(stage) => f.write_str(stage.name()),
            Self::Kind(orbit) => f.write_str(kind_name(*orbit)),
            Self::Letter(orbit, letter) => write!(f, "{}.{}", kind_name(*orbit), letter + 1),
            Self::Part(Part::Setup) => f.write_str("setup"),
            Self::Part(Part::Algorithm) => f.write_str("algorithm"),
            Self::Part(Part::Undo) => f.write_str("undo"),
            Self::Parity => f.write_str("parity"),
            Self::Held => f.write_str("held"),
        }
    }
}

/// An answer.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Answer {
    /// What was asked.
    pub ask: Ask,
    /// Whether it is so.
    pub yes: bool,
}

/// A question worth asking.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Question {
    /// What is asked.
    pub ask: Ask,
    /// How likely the answer is yes.
    pub yes: f64,
    /// How much the answer is expected to tell, beyond the questions before it, in bits.
    pub information: f64,
}

/// A group with its stories in the order that the answers leave.
pub(crate) struct Ranked {
    pub(crate) weight: f64,
    pub(crate) count: usize,
    pub(crate) stories: Vec<Story>,
    likeliest: f64,
    /// How many of its stories are as likely as its likeliest.
    equal: usize,
    slips: Vec<Vec<Slip>>,
    shares: Vec<f64>,
}

/// What was found, in order.
pub(crate) struct Ranking {
    pub(crate) groups: Vec<Ranked>,
}

impl Ranking {
    pub(crate) fn new(found: &Found, space: &Space<'_>, answers: &[Answer]) -> Self {
        let mut order: Vec<(&super::search::Effects, &Group)> = found.groups.iter().collect();
        order.sort_by(|a, b| b.1.weight.total_cmp(&a.1.weight).then_with(|| a.0.cmp(b.0)));
        // Answers change weights by no more than so much; what lies further behind cannot come to the front.
        let sum: f64 = order.iter().map(|(_, group)| group.weight).sum::<f64>() + found.unlisted;
        let looked_at = if answers.is_empty() { LEADING } else { 40 * LEADING };
        let mut groups: Vec<Ranked> =
            order.into_iter().take(looked_at).map(|(_, group)| ranked(group, space, answers, sum)).collect();
        if !answers.is_empty() {
            // What was not looked at keeps its share, whatever was answered.
            let listed = 1.0 - if sum > 0.0 { found.unlisted / sum } else { 0.0 };
            let now: f64 = groups.iter().map(|group| group.weight).sum();
            for group in &mut groups {
                group.weight *= listed / now;
            }
            groups.sort_by(|a, b| b.weight.total_cmp(&a.weight));
        }
        Self { groups }
    }

    /// How many stories are as likely as the likeliest of the leading group.
    pub(crate) fn ambiguity(&self) -> usize {
        let Some(best) = self.groups.first().map(|group| group.likeliest) else { return 0 };
        let equal = |group: &&Ranked| {
            group.likeliest >= best * (1.0 - 1e-9) && group.likeliest <= best * (1.0 + 1e-9)
        };
        self.groups.iter().filter(equal).map(|group| group.equal).sum::<usize>()
    }

    /// The questions that tell most, greedily: each given the ones before it.
    pub(crate) fn questions(&mut self, kinds: &[Orbit]) -> Vec<Question> {
        let leading = &self.groups[..self.groups.len().min(LEADING)];
        let sum: f64 = leading.iter().map(|group| group.weight).sum();
        if leading.len() < 2 || sum <= 0.0 {
            return Vec::new();
        }
        let mut asks: Vec<Ask> = Stage::ALL.into_iter().map(Ask::Stage).collect();
        asks.extend(kinds.iter().map(|&orbit| Ask::Kind(orbit)));
        asks.extend([Part::Setup, Part::Algorithm, Part::Undo].map(Ask::Part));
        asks.extend([Ask::Parity, Ask::Held]);
        for slip in leading.iter().flat_map(|group| &group.slips).flatten() {
            if let (Some(orbit), Some(letter)) = (slip.orbit(), slip.letter()) {
                let ask = Ask::Letter(orbit, letter);
                if !asks.contains(&ask) {
                    asks.push(ask);
                }
            }
        }
        // For each ask and each group, how likely the answer yes is.
        let yes: Vec<Vec<f64>> =
            asks.iter().map(|&ask| leading.iter().map(|group| group.says_yes(ask)).collect()).collect();
        let prior: Vec<f64> = leading.iter().map(|group| group.weight / sum).collect();
        let mut branches = vec![prior];
        let mut chosen: Vec<Question> = Vec::new();
        while chosen.len() < MOST {
            let before: f64 = branches.iter().map(|branch| entropy(branch)).sum();
            let gain = |says: &Vec<f64>| {
                let after: f64 = branches
                    .iter()
                    .flat_map(|branch| split(branch, says))
                    .map(|branch| entropy(&branch))
                    .sum();
                before - after
            };
            let best = yes
                .iter()
                .enumerate()
                .filter(|(at, _)| chosen.iter().all(|question| question.ask != asks[*at]))
                .map(|(at, says)| (at, gain(says)))
                .max_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0)));
            let Some((at, information)) = best.filter(|&(_, gain)| gain > 0.01) else { break };
            let likely = leading.iter().zip(&yes[at]).map(|(group, says)| group.weight / sum * says).sum();
            chosen.push(Question { ask: asks[at], yes: likely, information });
            branches = branches.iter().flat_map(|branch| split(branch, &yes[at])).collect();
        }
        chosen
    }
}

fn split(branch: &[f64], says: &[f64]) -> [Vec<f64>; 2] {
    let yes = branch.iter().zip(says).map(|(share, yes)| share * yes).collect();
    let no = branch.iter().zip(says).map(|(share, yes)| share * (1.0 - yes)).collect();
    [yes, no]
}

/// The entropy of a branch in bits, weighted with how likely the branch is.
fn entropy(branch: &[f64]) -> f64 {
    let sum: f64 = branch.iter().sum();
    branch.iter().filter(|&&share| share > 0.0).map(|&share| -share * libm::log2(share / sum)).sum()
}

impl Ranked {
    /// How likely a solver of whom one of the group's stories is true says yes.
    fn says_yes(&self, ask: Ask) -> f64 {
        let sum: f64 = self.shares.iter().sum();
        let told = self.slips.iter().zip(&self.shares);
        told.map(|(slips, share)| share / sum * says_yes(slips, ask)).sum()
    }
}

fn says_yes(slips: &[Slip], ask: Ask) -> f64 {
    if slips.iter().any(|slip| ask.holds(slip)) { ANSWER_IS_RIGHT } else { 1.0 - ANSWER_IS_RIGHT }
}

fn ranked(group: &Group, space: &Space<'_>, answers: &[Answer], sum: f64) -> Ranked {
    let slips_of = |story: Story| -> Vec<Slip> {
        space.tell(story).into_iter().map(|candidate| candidate.slip).collect()
    };
    let mut told: Vec<(f64, Story, Vec<Slip>)> = group
        .stories
        .iter()
        .map(|&(weight, story)| {
            let slips = slips_of(story);
            let likelihood: f64 = answers
                .iter()
                .map(|answer| {
                    let yes = says_yes(&slips, answer.ask);
                    if answer.yes { yes } else { 1.0 - yes }
                })
                .product();
            (weight * likelihood, story, slips)
        })
        .collect();
    told.sort_by(|a, b| b.0.total_cmp(&a.0));
    let kept: f64 = group.stories.iter().map(|(weight, _)| weight).sum();
    let now: f64 = told.iter().map(|(weight, ..)| weight).sum();
    let likeliest = told.first().map_or(0.0, |told| told.0);
    let equal = told.iter().filter(|told| told.0 >= likeliest * (1.0 - 1e-9)).count();
    // Where all that is kept is equally likely, more that is not kept may be so too.
    let equal = if answers.is_empty() { equal.max(group.equal) } else { equal };
    Ranked {
        weight: if kept > 0.0 { group.weight * now / kept / sum } else { 0.0 },
        count: group.count,
        likeliest,
        equal,
        stories: told.iter().map(|told| told.1).collect(),
        shares: told.iter().map(|told| told.0).collect(),
        slips: told.into_iter().map(|told| told.2).collect(),
    }
}

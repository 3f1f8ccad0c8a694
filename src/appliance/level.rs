//! The firing levels of a furnace: one, or a low and a high one.
//!
//! A furnace lists its levels in [`Levels`], the weakest first. What has to be read, set, heard or
//! shown at each of them follows from that list. What only a second level brings along (jumper, W2,
//! second coil) is there where [`is_staged`] says so.
//!
//! **Source.** Furnaces with one firing rate and with two, and that the burners light at the lower
//! one: installation manuals (makers withheld).
//! Furnaces with three levels, and those that modulate, are left out.
//! **Checked.** `tests/core/appliance/levels.rs`.

use enum_map::Enum;
use serde::{Deserialize, Serialize};
use std::ops::{Index, IndexMut};

/// A firing level: each has a spring of the gas valve with its screw.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Enum, Serialize, Deserialize,
)]
#[serde(rename_all = "kebab-case")]
pub enum Level {
    /// The level of a furnace that has no other.
    #[serde(rename = "firing")]
    Only,
    /// Low fire of a furnace with two levels.
    Low,
    /// High fire of a furnace with two levels.
    High,
}

impl Level {
    /// Every level that any furnace has.
    pub const ALL: [Self; 3] = [Self::Only, Self::Low, Self::High];

    /// The id in scripts, records and job sheets.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Only => "firing",
            Self::Low => "low",
            Self::High => "high",
        }
    }

    /// The level in words, as reports and findings write it.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Only => t!("stage-firing"),
            Self::Low => t!("stage-low"),
            Self::High => t!("stage-high"),
        }
    }

    /// The one with this id.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|level| level.id() == id)
    }

    /// Whichever belongs to this level: texts and ids that each level of any furnace has its own of,
    /// in the order of [`Level::ALL`].
    #[must_use]
    pub fn choose<T>(self, only: T, low: T, high: T) -> T {
        match self {
            Self::Only => only,
            Self::Low => low,
            Self::High => high,
        }
    }

    /// Whether the burners light at this level: it is the weakest of its furnace.
    #[must_use]
    pub fn is_first(self) -> bool {
        match self {
            Self::Only | Self::Low => true,
            Self::High => false,
        }
    }

    /// Whether this is the full rate of its furnace.
    #[must_use]
    pub fn is_top(self) -> bool {
        match self {
            Self::Only | Self::High => true,
            Self::Low => false,
        }
    }

    /// The levels of the furnace that has this level, the weakest first.
    #[must_use]
    pub fn of(self) -> &'static [Self] {
        match self {
            Self::Only => &[Self::Only],
            Self::Low | Self::High => &[Self::Low, Self::High],
        }
    }

    /// The next level up; none at the full rate.
    #[must_use]
    pub fn next(self) -> Option<Self> {
        match self {
            Self::Low => Some(Self::High),
            Self::Only | Self::High => None,
        }
    }
}

/// Whether a furnace with these levels has more than one.
#[must_use]
pub fn is_staged(levels: &[Level]) -> bool {
    levels.len() > 1
}

/// One thing for each firing level of a furnace: one or two, the weakest level first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub struct Levels<T> {
    first: T,
    above: Option<T>,
}

impl<T> Levels<T> {
    /// For a furnace with one level.
    #[must_use]
    pub const fn one(only: T) -> Self {
        Self { first: only, above: None }
    }

    /// For a furnace with two levels.
    #[must_use]
    pub const fn two(low: T, high: T) -> Self {
        Self { first: low, above: Some(high) }
    }

    /// The levels, the weakest first.
    #[must_use]
    pub const fn list(&self) -> &'static [Level] {
        match self.above {
            None => &[Level::Only],
            Some(_) => &[Level::Low, Level::High],
        }
    }

    /// The level at which the burners light.
    #[must_use]
    pub fn first_level(&self) -> Level {
        self.list()[0]
    }

    /// The level of the full rate.
    #[must_use]
    pub fn top_level(&self) -> Level {
        self.list()[self.list().len() - 1]
    }

    /// Whether the furnace has this level.
    #[must_use]
    pub fn has(&self, level: Level) -> bool {
        match level {
            Level::Only => self.above.is_none(),
            Level::Low | Level::High => self.above.is_some(),
        }
    }

    /// What belongs to the level at which the burners light.
    #[must_use]
    pub const fn first(&self) -> &T {
        &self.first
    }

    /// What belongs to the full rate.
    #[must_use]
    pub fn top(&self) -> &T {
        self.above.as_ref().unwrap_or(&self.first)
    }

    /// What belongs to the full rate.
    #[must_use]
    pub fn top_mut(&mut self) -> &mut T {
        self.above.as_mut().unwrap_or(&mut self.first)
    }

    /// What belongs to the level at which the burners light.
    #[must_use]
    pub const fn first_mut(&mut self) -> &mut T {
        &mut self.first
    }

    /// What belongs to a level; none if the furnace does not have it.
    #[must_use]
    pub fn get(&self, level: Level) -> Option<&T> {
        self.has(level).then(|| &self[level])
    }

    /// Each level with what belongs to it, the weakest first.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (Level, &T)> {
        self.list().iter().map(|&level| (level, &self[level]))
    }

    /// Changes what belongs to each level.
    pub fn each_mut(&mut self, mut change: impl FnMut(&mut T)) {
        change(&mut self.first);
        if let Some(above) = &mut self.above {
            change(above);
        }
    }

    /// The same levels with something else for each.
    #[must_use]
    pub fn map<U>(&self, mut make: impl FnMut(Level, &T) -> U) -> Levels<U> {
        let levels = self.list();
        Levels {
            first: make(levels[0], &self.first),
            above: self.above.as_ref().map(|above| make(levels[levels.len() - 1], above)),
        }
    }
}

/// A level that the furnace does not have counts as the one next to it, so that no look-up fails:
/// the full rate for high, else the level of light-up.
impl<T> Index<Level> for Levels<T> {
    type Output = T;

    fn index(&self, level: Level) -> &T {
        if level.is_first() { self.first() } else { self.top() }
    }
}

impl<T> IndexMut<Level> for Levels<T> {
    fn index_mut(&mut self, level: Level) -> &mut T {
        if level.is_first() { self.first_mut() } else { self.top_mut() }
    }
}

//! Sequences of the work that good trade practice leaves open (common practice). Of each pair of things
//! either may come first; the technician has a usual one, and a fair run may take the other.
//!
//! None of them touches what has its fixed place: nose before hands, three barriers before a port is
//! opened, zero before a reading, supply before a screw, leak fluid before a lighting, everything back
//! before the hand-over.

/// Declares the sequences with their words for people.
macro_rules! sequences {
    ($( $(#[doc = $doc:literal])+ $sequence:ident = $words:expr; )+) => {
        /// Something done before what the technician usually does first.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Sequence { $( $(#[doc = $doc])+ $sequence, )+ }

        impl Sequence {
            /// Every sequence, in the order of the page.
            pub const ALL: &'static [Self] = &[ $( Self::$sequence, )+ ];

            /// In words for people.
            #[must_use]
            pub fn words(self) -> &'static str {
                match self { $( Self::$sequence => $words, )+ }
            }
        }
    };
}

sequences! {
    /// In a room the detector comes before the nose.
    DetectorFirst = t!("sequence-detector-first");
    /// The furnace is looked at before the supply in the yard.
    FurnaceFirst = t!("sequence-furnace-first");
    /// A room with propane is aired before anything is looked at.
    AirsFirst = t!("sequence-airs-first");
    /// The furnace is isolated before anything at it is looked at.
    IsolatesFirst = t!("sequence-isolates-first");
    /// Plate and label are read once the furnace is isolated and looked over.
    PapersLate = t!("sequence-papers-late");
    /// What is looked at together is looked at from the last to the first.
    LooksBackwards = t!("sequence-looks-backwards");
    /// The filter is looked at after orifices, springs and hoses.
    FilterLast = t!("sequence-filter-last");
    /// The householder hears on arrival what to do when gas is smelt.
    DrillFirst = t!("sequence-drill-first");
    /// The manometer is switched on as the furnace is come to, and warms while the rest is looked at.
    MeterFirst = t!("sequence-meter-first");
    /// The manometer is zeroed before the plug comes out.
    ZeroesFirst = t!("sequence-zeroes-first");
    /// Manual valve and valve switch are shut before the power goes off.
    GasBeforePower = t!("sequence-gas-before-power");
    /// The valve switch is on before the manual valve is opened.
    SwitchBeforeValve = t!("sequence-switch-before-valve");
    /// The leak fluid is in the hand before gas is given back.
    FluidFirst = t!("sequence-fluid-first");
    /// The plug of the inlet port is checked together with the joint of the manometer at the manifold.
    JointsTogether = t!("sequence-joints-together");
    /// The full rate is read before the first level.
    FullRateFirst = t!("sequence-full-rate-first");
    /// The range is turned before the water heater.
    RangeFirst = t!("sequence-range-first");
    /// The other appliances are as they were found before the last cycle ends.
    OthersBeforeRest = t!("sequence-others-before-rest");
    /// What was wrong is written before the householder hears what to do when gas is smelt.
    FindingsFirst = t!("sequence-findings-first");
}

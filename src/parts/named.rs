//! Closed lists of named things.

/// Declares a closed list of named things with an id (kebab case, as in the drawings and in
/// scripts) and a name for people.
macro_rules! named {
    ($(#[$doc:meta])* $kind:ident { $( $(#[$vdoc:meta])* $variant:ident = $id:literal, $label:expr; )+ }) => {
        $(#[$doc])*
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Enum, Serialize, Deserialize,
        )]
        #[serde(rename_all = "kebab-case")]
        pub enum $kind { $( $(#[$vdoc])* $variant, )+ }

        impl $kind {
            /// All of them, in their usual order.
            pub const ALL: &'static [Self] = &[ $( Self::$variant, )+ ];

            /// The id in scripts, records and drawings.
            #[must_use]
            pub fn id(self) -> &'static str {
                match self { $( Self::$variant => $id, )+ }
            }

            /// The name a person reads.
            #[must_use]
            pub fn label(self) -> &'static str {
                match self { $( Self::$variant => $label, )+ }
            }

            /// The one with this id.
            #[must_use]
            pub fn from_id(id: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.id() == id)
            }
        }
    };
}

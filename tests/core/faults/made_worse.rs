//! Wrong remedies.

//! Palette and sizes.

use egui::Color32;
use quarterturn::panels::theme::{MARK_PAIRS, TEXT_PAIRS, contrast};

/// The contrast formula gives the known ends: black on white 21:1, and #767676 on white 4.54:1
/// (WCAG 2.2, definition of contrast ratio; 4.54 is the value W3C's technique G18 examples use for
/// the lightest grey that passes).
#[test]
fn contrast_formula_gives_known_values() {
    approx::assert_relative_eq!(contrast(Color32::BLACK, Color32::WHITE), 21.0, epsilon = 1e-9);
    let grey = contrast(Color32::from_gray(0x76), Color32::WHITE);
    approx::assert_relative_eq!(grey, 4.54, epsilon = 0.005);
}

/// WCAG 2.2, 1.4.3: text 4.5:1.
#[test]
fn text_stands_out_from_its_background() {
    for &(name, text, background) in TEXT_PAIRS {
        let ratio = contrast(text, background);
        assert!(ratio >= 4.5, "{name}: {ratio:.2}");
    }
}

/// WCAG 2.2, 1.4.11: marks 3:1.
#[test]
fn marks_stand_out_from_their_background() {
    for &(name, mark, background) in MARK_PAIRS {
        let ratio = contrast(mark, background);
        assert!(ratio >= 3.0, "{name}: {ratio:.2}");
    }
}

//! Palette and type: a service manual's plate, ink on paper.

use std::sync::Arc;

use egui::style::WidgetVisuals;
use egui::{
    Color32, Context, CornerRadius, FontData, FontDefinitions, FontFamily, FontId, Margin, Shadow,
    Stroke, TextStyle, vec2,
};

use super::settings::{Motion, Settings, TextSize};

/// Outlines and text on paper.
pub const INK: Color32 = Color32::from_rgb(0x1f, 0x2d, 0x3a);
/// Background of pages and of the drawing.
pub const PAPER: Color32 = Color32::from_rgb(0xf5, 0xf1, 0xe8);
/// The job sheet, a cleaner paper than the background.
pub const SHEET: Color32 = Color32::from_rgb(0xff, 0xfd, 0xf8);
/// The background in shade.
pub const SHADE: Color32 = Color32::from_rgb(0xec, 0xe6, 0xd8);
/// The clipboard behind the job sheet.
pub const BOARD: Color32 = Color32::from_rgb(0xdc, 0xd3, 0xbd);
/// Lines of the plate grid.
pub const GRID: Color32 = Color32::from_rgb(0xe4, 0xdd, 0xcc);
/// Rules and outlines on paper.
pub const RULE: Color32 = Color32::from_rgb(0x8a, 0x80, 0x66);
/// Second-rank text on paper.
pub const QUIET: Color32 = Color32::from_rgb(0x4d, 0x58, 0x62);
/// Sheet steel: a button at rest.
pub const STEEL: Color32 = Color32::from_rgb(0xc3, 0xcc, 0xd3);
/// Sheet steel in the light.
pub const STEEL_LIGHT: Color32 = Color32::from_rgb(0xdd, 0xe3, 0xe7);
/// Second-rank text on ink.
const MIST: Color32 = Color32::from_rgb(0xc3, 0xcc, 0xd3);
/// Outlines of buttons on ink.
pub const SLATE: Color32 = Color32::from_rgb(0x7a, 0x83, 0x8b);
/// A button on ink.
pub const INK_RAISED: Color32 = Color32::from_rgb(0x32, 0x43, 0x52);
/// Dark brass: the ring around a part that a hint is about, a curve.
pub const BRASS_DARK: Color32 = Color32::from_rgb(0x94, 0x74, 0x2b);
/// The trainee's handwriting, and the ring of the keyboard's focus.
pub const PEN: Color32 = Color32::from_rgb(0x2a, 0x5f, 0x9e);
/// Focus on ink, where the pen's blue would not show.
pub const FLAME_CORE: Color32 = Color32::from_rgb(0xbf, 0xe3, 0xff);
/// Danger; always with words and a hatch.
pub const DANGER: Color32 = Color32::from_rgb(0xa9, 0x30, 0x2a);
/// Settled; always with words and a tick.
pub const SETTLED: Color32 = Color32::from_rgb(0x2f, 0x6b, 0x47);
/// The glass of an instrument.
pub const GLASS: Color32 = Color32::from_rgb(0xcb, 0xd6, 0xbf);

/// Every pair of text color and background that the panels use, with a name. A test holds each to
/// 4.5:1 (WCAG 2.2, 1.4.3).
pub const TEXT_PAIRS: &[(&str, Color32, Color32)] = &[
    ("ink-on-paper", INK, PAPER),
    ("ink-on-sheet", INK, SHEET),
    ("ink-on-shade", INK, SHADE),
    ("ink-on-board", INK, BOARD),
    ("ink-on-steel", INK, STEEL),
    ("ink-on-light-steel", INK, STEEL_LIGHT),
    ("ink-on-glass", INK, GLASS),
    ("quiet-on-paper", QUIET, PAPER),
    ("quiet-on-sheet", QUIET, SHEET),
    ("quiet-on-shade", QUIET, SHADE),
    ("pen-on-sheet", PEN, SHEET),
    ("pen-on-paper", PEN, PAPER),
    ("pen-on-shade", PEN, SHADE),
    ("danger-on-sheet", DANGER, SHEET),
    ("danger-on-paper", DANGER, PAPER),
    ("settled-on-sheet", SETTLED, SHEET),
    ("settled-on-paper", SETTLED, PAPER),
    ("paper-on-ink", PAPER, INK),
    ("paper-on-raised-ink", PAPER, INK_RAISED),
    ("mist-on-ink", MIST, INK),
    ("paper-on-pen", PAPER, PEN),
    ("paper-on-danger", PAPER, DANGER),
    ("brass-on-sheet", Color32::from_rgb(0x73, 0x58, 0x1c), SHEET),
];

/// Lines and marks that carry meaning, with their background. A test holds each to 3:1 (WCAG 2.2,
/// 1.4.11).
pub const MARK_PAIRS: &[(&str, Color32, Color32)] = &[
    ("rule-on-sheet", RULE, SHEET),
    ("rule-on-paper", RULE, PAPER),
    ("slate-on-ink", SLATE, INK),
    ("focus-on-paper", PEN, PAPER),
    ("focus-on-steel", PEN, STEEL),
    ("focus-on-ink", FLAME_CORE, INK),
    ("brass-on-paper", BRASS_DARK, PAPER),
];

/// The family of headings and figures that matter.
#[must_use]
pub fn semibold() -> FontFamily {
    FontFamily::Name("semibold".into())
}

/// The style of instrument digits.
#[must_use]
pub fn digits() -> TextStyle {
    TextStyle::Name("digits".into())
}

/// The style of a heading inside a sheet.
#[must_use]
pub fn section() -> TextStyle {
    TextStyle::Name("section".into())
}

/// How much larger type is than in the window of one person.
#[must_use]
pub fn text_factor(settings: &Settings) -> f32 {
    match settings.text {
        TextSize::Window => 1.0,
        TextSize::Projector => 1.6,
    }
}

/// Whether our fonts are at hand in this pass; they come one pass after [`apply`].
#[must_use]
pub fn is_ready(ctx: &Context) -> bool {
    ctx.fonts(|fonts| fonts.definitions().families.contains_key(&semibold()))
}

/// Installs fonts and style. Cheap when nothing changed.
pub fn apply(ctx: &Context, settings: &Settings) {
    let id = egui::Id::new("quarterturn-theme");
    let wanted = (settings.text, settings.motion);
    let have: Option<(TextSize, Motion)> = ctx.data(|data| data.get_temp(id));
    if have.is_none() {
        ctx.set_fonts(fonts());
        ctx.set_theme(egui::ThemePreference::Light);
    }
    if have != Some(wanted) {
        ctx.all_styles_mut(|style| restyle(style, settings));
        ctx.data_mut(|data| data.insert_temp(id, wanted));
        ctx.request_repaint();
    }
}

fn fonts() -> FontDefinitions {
    const REGULAR: &[u8] = include_bytes!("../../assets/fonts/SourceSans3-Regular.ttf");
    const SEMIBOLD: &[u8] = include_bytes!("../../assets/fonts/SourceSans3-Semibold.ttf");
    let mut fonts = FontDefinitions::empty();
    for (name, bytes) in [("regular", REGULAR), ("semibold", SEMIBOLD)] {
        fonts.font_data.insert(name.into(), Arc::new(FontData::from_static(bytes)));
    }
    for family in [FontFamily::Proportional, FontFamily::Monospace] {
        fonts.families.insert(family, vec!["regular".into()]);
    }
    fonts.families.insert(semibold(), vec!["semibold".into(), "regular".into()]);
    fonts
}

fn restyle(style: &mut egui::Style, settings: &Settings) {
    let k = text_factor(settings);
    let regular = |size: f32| FontId::new(size * k, FontFamily::Proportional);
    let bold = |size: f32| FontId::new(size * k, semibold());
    style.text_styles = [
        (TextStyle::Small, regular(small_points(settings))),
        (TextStyle::Body, regular(15.0)),
        (TextStyle::Monospace, regular(15.0)),
        (TextStyle::Button, regular(15.0)),
        (TextStyle::Heading, bold(22.0)),
        (section(), bold(16.0)),
        (digits(), bold(34.0)),
    ]
    .into();
    style.animation_time = match settings.motion {
        Motion::Full => 0.1,
        Motion::Reduced => 0.0,
    };
    if settings.motion == Motion::Reduced {
        style.scroll_animation = egui::style::ScrollAnimation::none();
    }
    style.interaction.selectable_labels = false;
    space(&mut style.spacing);
    style.visuals = visuals();
}

/// The smallest type, before the factor: 13 points in the window, 24 points for a room.
fn small_points(settings: &Settings) -> f32 {
    match settings.text {
        TextSize::Window => 13.0,
        TextSize::Projector => 15.0,
    }
}

fn space(spacing: &mut egui::Spacing) {
    spacing.item_spacing = vec2(8.0, 6.0);
    spacing.button_padding = vec2(10.0, 4.0);
    spacing.interact_size = vec2(32.0, 28.0);
    spacing.icon_width = 18.0;
    spacing.icon_width_inner = 10.0;
    spacing.menu_margin = Margin::same(10);
    spacing.window_margin = Margin::same(12);
}

fn visuals() -> egui::Visuals {
    let mut visuals = egui::Visuals::light();
    visuals.override_text_color = None;
    visuals.weak_text_color = Some(QUIET);
    visuals.panel_fill = PAPER;
    visuals.window_fill = SHEET;
    visuals.window_stroke = Stroke::new(2.0, INK);
    visuals.window_corner_radius = CornerRadius::same(6);
    visuals.menu_corner_radius = CornerRadius::same(6);
    visuals.window_shadow = Shadow::NONE;
    visuals.popup_shadow = Shadow::NONE;
    visuals.extreme_bg_color = SHEET;
    visuals.faint_bg_color = SHADE;
    visuals.hyperlink_color = PEN;
    visuals.error_fg_color = DANGER;
    visuals.warn_fg_color = DANGER;
    visuals.selection.bg_fill = PEN;
    visuals.selection.stroke = Stroke::new(2.0, PAPER);
    visuals.interact_cursor = Some(egui::CursorIcon::PointingHand);
    let face = |fill: Color32, line: Stroke| WidgetVisuals {
        bg_fill: fill,
        weak_bg_fill: fill,
        bg_stroke: line,
        corner_radius: CornerRadius::same(4),
        fg_stroke: Stroke::new(1.5, INK),
        expansion: 0.0,
    };
    visuals.widgets.noninteractive = face(PAPER, Stroke::new(1.0, RULE));
    visuals.widgets.inactive = face(SHEET, Stroke::new(1.5, RULE));
    visuals.widgets.hovered = face(SHADE, Stroke::new(1.5, INK));
    visuals.widgets.active = face(STEEL_LIGHT, Stroke::new(2.5, PEN));
    visuals.widgets.open = face(SHADE, Stroke::new(1.5, INK));
    // The rail of a slider and the box of a tick; buttons take the weak fill.
    visuals.widgets.inactive.bg_fill = STEEL;
    visuals.slider_trailing_fill = true;
    visuals
}

/// Contrast of two opaque colours, 1–21 (WCAG 2.2, definitions of contrast ratio and relative
/// luminance).
#[must_use]
pub fn contrast(a: Color32, b: Color32) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

fn luminance(color: Color32) -> f64 {
    let linear = |channel: u8| {
        let c = f64::from(channel) / 255.0;
        if c <= 0.040_45 { c / 12.92 } else { libm::pow((c + 0.055) / 1.055, 2.4) }
    };
    0.2126 * linear(color.r()) + 0.7152 * linear(color.g()) + 0.0722 * linear(color.b())
}

/// How much larger type is in this panel than in the window of one person.
#[must_use]
pub fn factor_of(ui: &egui::Ui) -> f32 {
    TextStyle::Body.resolve(ui.style()).size / 15.0
}

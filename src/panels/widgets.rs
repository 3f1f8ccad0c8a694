//! Small widgets that the panels share.

use egui::{Button, Color32, CornerRadius, Key, Response, RichText, Stroke, Ui, vec2};

use super::theme;

/// Least side of anything that can be pressed, in points (WCAG 2.2, 2.5.8 asks for 24).
pub(crate) const TARGET: f32 = 26.0;

/// Puts ids apart that many panels would share.
pub(crate) fn id(name: &str) -> egui::Id {
    egui::Id::new(("quarterturn", name))
}

/// A heading inside a sheet.
pub(crate) fn section(ui: &mut Ui, text: &str) -> Response {
    ui.label(RichText::new(text).text_style(theme::section()).color(theme::INK))
}

/// Small gray text of second rank.
pub(crate) fn quiet(ui: &mut Ui, text: impl Into<String>) -> Response {
    ui.label(RichText::new(text).small().color(theme::QUIET))
}

/// A text in two lines at most; what is longer ends in a sign for it and is said whole to those who
/// hear it or point at it.
pub(crate) fn two_lines(ui: &mut Ui, text: &str) -> Response {
    let font = egui::TextStyle::Body.resolve(ui.style());
    let width = ui.available_width();
    let mut job = egui::text::LayoutJob::simple(text.to_owned(), font, theme::INK, width);
    job.wrap.max_rows = 2;
    let galley = ui.painter().layout_job(job);
    let elided = galley.elided;
    let label = ui.label(galley);
    named(&label, egui::WidgetType::Label, text);
    if elided { label.on_hover_text(text) } else { label }
}

/// Words in the trainee's own hand.
pub(crate) fn pen(text: impl Into<String>) -> RichText {
    RichText::new(text).color(theme::PEN).family(theme::semibold())
}

/// A button as wide as the list, its text at the left, its key in a cap at the right.
pub(crate) fn list_button(ui: &mut Ui, text: &str, key: Option<Key>) -> Response {
    let width = ui.available_width();
    let mut button = Button::new(RichText::new(text).color(theme::INK))
        .wrap()
        .min_size(vec2(width, TARGET + 2.0))
        .fill(theme::SHEET);
    if let Some(key) = key {
        button = button.right_text(RichText::new(key.symbol_or_name()).color(theme::QUIET));
    } else {
        button = button.right_text("");
    }
    let response = seen_when_focused(ui.add(button));
    named(&response, egui::WidgetType::Button, text);
    if let Some(key) = key {
        response.ctx.accesskit_node_builder(response.id, |node| {
            node.set_keyboard_shortcut(key.symbol_or_name());
        });
    }
    response
}

/// The button that a page is about.
pub(crate) fn main_button(ui: &mut Ui, text: &str) -> Response {
    // On ink the pen's blue would not show; the light edge does.
    let focused = ui.visuals_mut();
    focused.widgets.active.bg_stroke = Stroke::new(3.0, theme::FLAME_CORE);
    let label = RichText::new(text).color(theme::PAPER).family(theme::semibold());
    let button = ui.add(
        Button::new(label)
            .fill(theme::INK)
            .stroke(Stroke::new(2.0, theme::INK))
            .corner_radius(CornerRadius::same(4))
            .min_size(vec2(96.0, 36.0)),
    );
    ringed(ui, button)
}

/// A choice of one among few, in a row. Gives what was pressed.
pub(crate) fn choice<T: Copy + PartialEq>(
    ui: &mut Ui,
    name: &str,
    now: T,
    all: &[(T, &str)],
) -> Option<T> {
    let mut chosen = None;
    ui.horizontal_wrapped(|ui| {
        ui.label(name);
        for &(one, label) in all {
            let button = Button::selectable(one == now, label)
                .frame_when_inactive(true)
                .min_size(vec2(TARGET + 6.0, TARGET));
            let picked = ui.add(button);
            let picked = ringed(ui, picked);
            picked.widget_info(|| {
                egui::WidgetInfo::selected(
                    egui::WidgetType::RadioButton,
                    true,
                    one == now,
                    format!("{name}: {label}"),
                )
            });
            if picked.clicked() && one != now {
                chosen = Some(one);
            }
        }
    });
    chosen
}

/// A value with − and + beside it. Gives whether it changed.
pub(crate) struct Stepper<'a> {
    /// What the value is.
    pub(crate) name: &'a str,
    /// Smallest and largest value that the buttons reach.
    pub(crate) range: (i16, i16),
    /// By how much one press changes it.
    pub(crate) step: i16,
}

impl Stepper<'_> {
    /// Shows it; − and + on the keyboard press its buttons while nothing is typed.
    pub(crate) fn ui(&self, ui: &mut Ui, value: &mut i16, show: impl Fn(i16) -> String) {
        let (lower, upper) = self.range;
        let typing = ui.ctx().text_edit_focused();
        // Consumed, because the same form may stand in the slip and on the sheet.
        let take =
            |key| !typing && ui.input_mut(|input| input.consume_key(egui::Modifiers::NONE, key));
        let less_key = take(Key::Minus);
        let more_key = take(Key::Plus) || take(Key::Equals);
        let less = ui.add(Button::new("−").min_size(vec2(TARGET + 4.0, TARGET)));
        named(&less, egui::WidgetType::Button, t!("stepper-less", value = self.name));
        let text = RichText::new(show(*value)).family(theme::semibold());
        ui.add_sized(vec2(64.0, TARGET), egui::Label::new(text));
        let more = ui.add(Button::new("+").min_size(vec2(TARGET + 4.0, TARGET)));
        named(&more, egui::WidgetType::Button, t!("stepper-more", value = self.name));
        if less.clicked() || less_key {
            *value = value.saturating_sub(self.step).max(lower);
        }
        if more.clicked() || more_key {
            *value = value.saturating_add(self.step).min(upper);
        }
    }
}

/// Names a widget for those who do not see it.
pub(crate) fn named(response: &Response, kind: egui::WidgetType, name: impl Into<String>) {
    let name = name.into();
    response.widget_info(|| egui::WidgetInfo::labeled(kind, true, name.clone()));
}

/// Scrolls a widget into sight when the keyboard comes to it (WCAG 2.2, 2.4.11).
pub(crate) fn seen_when_focused(response: Response) -> Response {
    if response.gained_focus() {
        response.scroll_to_me(None);
    }
    response
}

/// The same, with a ring of light and dark around what has the keyboard: it shows on any ground,
/// whatever the widget's own colors.
pub(crate) fn ringed(ui: &Ui, response: Response) -> Response {
    let response = seen_when_focused(response);
    if response.has_focus() {
        let around = response.rect.expand(3.0);
        let line = |width, color| Stroke::new(width, color);
        let painter = ui.painter();
        painter.rect_stroke(around, 5.0, line(5.0, theme::SHEET), egui::StrokeKind::Middle);
        painter.rect_stroke(around, 5.0, line(2.5, theme::INK), egui::StrokeKind::Middle);
    }
    response
}

/// Makes changes of a text heard by a screen reader.
pub(crate) fn live(response: &Response) {
    response.ctx.accesskit_node_builder(response.id, |node| {
        node.set_live(egui::accesskit::Live::Polite);
    });
}

/// Slanted lines over a box, for what must not be told by colour alone.
pub(crate) fn hatch(painter: &egui::Painter, rect: egui::Rect, color: Color32) {
    let painter = painter.with_clip_rect(rect.intersect(painter.clip_rect()));
    let stroke = Stroke::new(1.5, color);
    let mut x = rect.left() - rect.height();
    while x < rect.right() {
        painter.line_segment(
            [egui::pos2(x, rect.bottom()), egui::pos2(x + rect.height(), rect.top())],
            stroke,
        );
        x += 8.0;
    }
}

/// A slip of paper, to be laid over the drawing.
pub(crate) fn slip() -> egui::Frame {
    egui::Frame::new()
        .fill(theme::SHEET)
        .stroke(Stroke::new(2.0, theme::INK))
        .corner_radius(CornerRadius::same(6))
        .inner_margin(egui::Margin::symmetric(12, 8))
}

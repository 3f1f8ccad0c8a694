//! What is called how, and where it is.

use bevy::math::Vec2;
use bevy_egui::egui::accesskit::{Node, NodeId};
use bevy_egui::{EguiContext, EguiOutput};
use quarterturn::app::boxes::Boxes;
use quarterturn::app::ui::WindowLayout;
use quarterturn::panels::spot::{Spot, spots};

impl super::Rig {
    /// Everything that a screen reader could name now: label and box.
    pub fn named(&mut self) -> Vec<(String, NodeId, bevy_egui::egui::Rect)> {
        let named = self.nodes().into_iter().filter_map(|(id, node)| {
            let label = node.label().or(node.value())?.to_owned();
            let b = node.bounds()?;
            let min = bevy_egui::egui::pos2(b.x0 as f32, b.y0 as f32);
            let max = bevy_egui::egui::pos2(b.x1 as f32, b.y1 as f32);
            Some((label, id, bevy_egui::egui::Rect::from_min_max(min, max)))
        });
        named.collect()
    }

    /// The same without what is only read: headings and lines.
    pub fn pressable(&mut self) -> Vec<(String, NodeId)> {
        let able = self.nodes().into_iter().filter_map(|(id, node)| {
            let read = node.role() == bevy_egui::egui::accesskit::Role::Label;
            Some((node.label()?.to_owned(), id)).filter(|_| !read)
        });
        able.collect()
    }

    /// The key of what is called so, if it has one.
    pub fn shortcut(&mut self, name: &str) -> Option<String> {
        self.nodes().into_iter().find_map(|(_, node)| {
            let is_it = node.label().is_some_and(|label| label == name);
            node.keyboard_shortcut().filter(|_| is_it).map(str::to_owned)
        })
    }

    /// What is read out: the strip on top, the drawing, the sheet, each from the top down: what it is
    /// and its name.
    pub fn read_out(&mut self) -> Vec<(String, String)> {
        let mut read: Vec<(u8, i64, i64, String, String)> = Vec::new();
        for (_, node) in self.nodes() {
            let label = node.label().or(node.value()).map(str::to_owned);
            let (Some(label), Some(b)) = (label, node.bounds()) else { continue };
            let region = match (b.y0 < 42.0, b.x0 < 955.0) {
                (true, _) => 0,
                (false, true) => 1,
                (false, false) => 2,
            };
            read.push((region, b.y0 as i64, b.x0 as i64, format!("{:?}", node.role()), label));
        }
        read.sort();
        read.dedup();
        read.into_iter().map(|(.., role, label)| (role, label)).collect()
    }

    /// Buttons and the like without a name.
    pub fn nameless(&mut self) -> Vec<NodeId> {
        use bevy_egui::egui::accesskit::Role;
        let pressed = [Role::Button, Role::CheckBox, Role::RadioButton];
        let nodes = self.nodes().into_iter().filter(|(_, node)| pressed.contains(&node.role()));
        let bare = nodes.filter(|(_, node)| node.label().is_none_or(|label| label.is_empty()));
        bare.map(|(id, _)| id).collect()
    }

    /// What a screen reader gets.
    fn nodes(&mut self) -> Vec<(NodeId, Node)> {
        let world = self.app.world_mut();
        let mut contexts = world.query::<&mut EguiContext>();
        for mut context in contexts.iter_mut(world) {
            context.get_mut().enable_accesskit();
        }
        for _ in 0..4 {
            self.frames(1);
            let world = self.app.world_mut();
            let output = world.query::<&EguiOutput>().single(world).expect("one context");
            if let Some(update) = &output.platform_output.accesskit_update {
                return update.nodes.clone();
            }
        }
        Vec::new()
    }

    /// Whether anything is called exactly so.
    pub fn is_named(&mut self, name: &str) -> bool {
        self.named().iter().any(|(label, ..)| label == name)
    }

    /// The whole name of the first thing whose name begins like this.
    pub fn name_that_begins(&mut self, name: &str) -> String {
        let named = self.named();
        let found = named.into_iter().map(|(label, ..)| label).find(|it| it.starts_with(name));
        found.unwrap_or_else(|| panic!("nothing is called `{name}…`"))
    }

    /// The hot-spots of the drawing, as the panels lay them.
    pub fn spots(&self) -> Vec<Spot> {
        let scene = self.app.world().resource::<WindowLayout>().layout.scene;
        let boxes = &self.app.world().resource::<Boxes>().0;
        spots(scene, self.seen().place, boxes)
    }

    /// Whether nothing lies over the drawing at a point.
    pub fn is_bare(&self, at: Vec2) -> bool {
        let over = self.egui.layer_id_at(bevy_egui::egui::pos2(at.x, at.y));
        over.is_none_or(|layer| layer.order == bevy_egui::egui::Order::Background)
    }

    /// What has the keyboard.
    pub fn focused(&self) -> Option<bevy_egui::egui::Id> {
        self.egui.memory(|memory| memory.focused())
    }

    /// Whether something has the keyboard.
    pub fn has_keyboard(&self, node: NodeId) -> bool {
        self.focused().is_some_and(|id| id.accesskit_id() == node)
    }

    /// Scrolls until what is called so lies under the pointer; gives the point. `scroll` moves what is
    /// at a point by so many lines, up positive.
    pub fn bring_into_view(&mut self, name: &str, scroll: impl Fn(&mut Self, Vec2, f32)) -> Vec2 {
        // Down to its end, then up to its end: whoever looks for a line in a list does the same.
        for lines in [-1.0, 1.0] {
            for _ in 0..60 {
                let (node, at) = self.node(name);
                if self.is_in_view(node, at) {
                    return at;
                }
                let mut rows: Vec<f32> = (1..18_u8).map(|row| 40.0 * f32::from(row)).collect();
                rows.sort_by(|a, b| (a - at.y).abs().total_cmp(&(b - at.y).abs()));
                let moved = rows.into_iter().any(|y| {
                    scroll(self, Vec2::new(at.x, y), lines);
                    self.come_to_rest(name);
                    (self.node(name).1.y - at.y).abs() > 1.0
                });
                if !moved {
                    break;
                }
            }
        }
        panic!("`{name}` does not come into view");
    }

    /// What was scrolled goes on for a moment.
    fn come_to_rest(&mut self, name: &str) {
        let mut before = self.node(name).1;
        for _ in 0..40 {
            self.frames(3);
            let now = self.node(name).1;
            if now.distance(before) < 0.1 {
                return;
            }
            before = now;
        }
    }

    /// What is called so, and its middle.
    pub fn node(&mut self, name: &str) -> (NodeId, Vec2) {
        let named = self.named();
        // A heading may be called like the button below it.
        let exact = named
            .iter()
            .filter(|(label, ..)| label == name)
            .max_by(|(.., a), (.., b)| a.top().total_cmp(&b.top()));
        // Or by how it begins: states and figures follow the name.
        let found = exact.or_else(|| {
            named.iter().find(|(label, ..)| {
                label.strip_prefix(name).is_some_and(|rest| rest.starts_with([',', ' ']))
            })
        });
        let Some((_, node, rect)) = found else {
            let labels: Vec<&String> = named.iter().map(|(label, ..)| label).collect();
            panic!("nothing is called `{name}` among {labels:#?}");
        };
        (*node, Vec2::new(rect.center().x, rect.center().y))
    }

    /// Whether a point of it can be pressed: not scrolled out of sight, nothing over it.
    fn is_in_view(&self, node: NodeId, at: Vec2) -> bool {
        let at = bevy_egui::egui::pos2(at.x, at.y);
        let over = self.egui.layer_id_at(at);
        self.egui.viewport(|viewport| {
            let mut layers = viewport.prev_pass.widgets.layers();
            layers.any(|(layer, widgets)| {
                let on_top = over.is_none_or(|over| over == *layer);
                let mut widgets = widgets.iter();
                on_top
                    && widgets
                        .any(|it| it.id.accesskit_id() == node && it.interact_rect.contains(at))
            })
        })
    }

    /// The middle of the first thing whose name begins like this.
    pub fn find(&mut self, name: &str) -> Vec2 {
        let named = self.named();
        let found = named.iter().find(|(label, ..)| label.starts_with(name));
        let Some((_, _, rect)) = found else {
            let labels: Vec<&String> = named.iter().map(|(label, ..)| label).collect();
            panic!("nothing is called `{name}…` among {labels:#?}");
        };
        Vec2::new(rect.center().x, rect.center().y)
    }

    /// Clicks on the first thing whose name begins like this.
    pub fn click_on(&mut self, name: &str) {
        let at = self.find(name);
        self.click(at);
    }
}

//! From a drawing's text to triangles, keeping the element ids: they are the part ids.
//!
//! Named groups stay apart, so that a piece can turn, a state can be hidden and a part has a box.
//! Everything is in the drawing's own units, y down. Nothing here knows the engine.

mod shapes;
mod soften;
mod tessellate;

pub use shapes::{Box4, Edge};
pub use tessellate::Triangles;
pub(crate) use tessellate::core_width;

/// A drawing, ready to be shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// Width and height of its view box.
    pub size: [f32; 2],
    /// Its named groups; a parent stands before its children. The first is the drawing itself.
    pub groups: Vec<Group>,
    /// What is painted, in the order of painting, one for each fill or line.
    pub chunks: Vec<Chunk>,
}

/// A group of a drawing that has an element id.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// Its element id; empty for the drawing itself.
    pub id: String,
    /// Index of the group it lies in.
    pub parent: Option<usize>,
    /// The point it turns or scales about.
    pub pivot: [f32; 2],
    /// The point where something attaches, where the drawing marks one.
    pub spot: Option<[f32; 2]>,
}

/// A fill or a line, in the innermost named group it lies in.
#[derive(Debug, Clone, PartialEq)]
pub struct Chunk {
    /// Index of its group.
    pub group: usize,
    /// The painted area itself, without its soft rim.
    pub core: Triangles,
    /// A rim that fades out, so that its edge is soft; may be empty.
    pub rim: Triangles,
    /// The box around its core.
    pub bounds: Box4,
}

impl Chunk {
    /// A chunk of these triangles; `None` when there are none.
    #[must_use]
    pub fn new(group: usize, core: Triangles, edge: Edge) -> Option<Self> {
        let bounds = core.bounds()?;
        let rim = match edge {
            Edge::Soft => soften::rim(&core),
            Edge::Covered => Triangles::default(),
        };
        Some(Self { group, core, rim, bounds })
    }
}

impl Drawing {
    /// Reads a drawing.
    ///
    /// # Errors
    /// What is wrong with it, in words.
    pub fn parse(text: &str) -> Result<Self, String> {
        let tree = usvg::Tree::from_str(text, &usvg::Options::default())
            .map_err(|error| error.to_string())?;
        let root = Group { id: String::new(), parent: None, pivot: [0.0; 2], spot: None };
        let mut reader = Reader {
            drawing: Self {
                size: [tree.size().width(), tree.size().height()],
                groups: vec![root],
                chunks: Vec::new(),
            },
            pivots: Vec::new(),
        };
        reader.children(tree.root(), 0, 1.0)?;
        Ok(reader.finish())
    }

    /// Index of the group with this id.
    #[must_use]
    pub fn find(&self, id: &str) -> Option<usize> {
        self.groups.iter().position(|group| group.id == id)
    }

    /// Whether `group` is `ancestor` or lies in it.
    #[must_use]
    fn is_within(&self, group: usize, ancestor: usize) -> bool {
        let mut at = Some(group);
        while let Some(index) = at {
            if index == ancestor {
                return true;
            }
            at = self.groups.get(index).and_then(|g| g.parent);
        }
        false
    }

    /// The box around everything in `group` whose own group `shown` lets pass.
    pub fn bounds(&self, group: usize, mut shown: impl FnMut(usize) -> bool) -> Option<Box4> {
        self.chunks
            .iter()
            .filter(|chunk| self.is_within(chunk.group, group) && shown(chunk.group))
            .map(|chunk| chunk.bounds)
            .reduce(Box4::with)
    }
}

struct Reader {
    drawing: Drawing,
    pivots: Vec<(String, [f32; 2])>,
}

impl Reader {
    fn children(&mut self, of: &usvg::Group, group: usize, opacity: f32) -> Result<(), String> {
        for node in of.children() {
            match node {
                usvg::Node::Group(inner) => {
                    let at = self.enter(inner.id(), group);
                    self.children(inner, at, opacity * inner.opacity().get())?;
                }
                usvg::Node::Path(path) => self.path(path, group, opacity)?,
                usvg::Node::Image(_) => return Err(t!("drawing-images").into()),
                usvg::Node::Text(_) => return Err(t!("drawing-text").into()),
            }
        }
        Ok(())
    }

    fn path(&mut self, path: &usvg::Path, group: usize, opacity: f32) -> Result<(), String> {
        if let Some((owner, mark)) = path.id().rsplit_once('.') {
            let bounds = path.abs_bounding_box();
            let middle =
                [(bounds.left() + bounds.right()) / 2.0, (bounds.top() + bounds.bottom()) / 2.0];
            match mark {
                "pivot" => {
                    self.pivots.push((owner.to_owned(), middle));
                    return Ok(());
                }
                "spot" => {
                    let at = self.enter(path.id(), group);
                    if let Some(spot) = self.drawing.groups.get_mut(at) {
                        spot.spot = Some(middle);
                    }
                    return Ok(());
                }
                _ => {}
            }
        }
        if !path.is_visible() {
            return Ok(());
        }
        let at = self.enter(path.id(), group);
        for (core, edge) in tessellate::paint(path, opacity)? {
            self.drawing.chunks.extend(Chunk::new(at, core, edge));
        }
        Ok(())
    }

    /// The group to paint into: a new one when there is a name.
    fn enter(&mut self, id: &str, parent: usize) -> usize {
        if id.is_empty() {
            return parent;
        }
        self.drawing.groups.push(Group {
            id: id.to_owned(),
            parent: Some(parent),
            pivot: [0.0; 2],
            spot: None,
        });
        self.drawing.groups.len() - 1
    }

    /// Gives every group its pivot: its own mark, or its part's, or its middle.
    fn finish(mut self) -> Drawing {
        let pivots: Vec<[f32; 2]> = (0..self.drawing.groups.len())
            .map(|index| {
                let id = self.drawing.groups.get(index).map_or("", |g| g.id.as_str());
                let marked = |name: &str| {
                    self.pivots.iter().find(|(owner, _)| owner == name).map(|(_, at)| *at)
                };
                marked(id)
                    .or_else(|| id.split_once(['.', '@']).and_then(|(part, _)| marked(part)))
                    .or_else(|| self.drawing.bounds(index, |_| true).map(Box4::center))
                    .unwrap_or_default()
            })
            .collect();
        for (group, pivot) in self.drawing.groups.iter_mut().zip(pivots) {
            group.pivot = pivot;
        }
        self.drawing
    }
}

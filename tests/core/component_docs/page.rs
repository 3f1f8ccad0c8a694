//! The page: the heads one after the other.

use super::list::{CHAPTERS, Chapter, Kind, Module};
use super::{Head, friction};

const OPENING: &str = "\
# Components of the model

<!-- Collected from the heads of the modules by tests/core/component_docs.rs. Change them there, then
run `UPDATE_DOCS=1 cargo test --no-default-features --features cli --test core component_docs`. -->

What each part of the physical model computes, on whose word, and how it was checked.
Every law has the same seven headings:
**Equation**, with symbols and units; **Assumptions** that it stands on; the **Valid range** it is
meant for; **Regularisation**, how corners and zeros are smoothed and over what width; **Source**,
published, or else \"common practice\" or \"from memory\"; what is **Left out**; and the tests by which
it was **Checked**, with the published table or closed form that they hold it against.

Units are SI: gauge pascals, standard cubic metres per second (60 °F, 14.696 psia), kelvins, watts.
An inch of water is 249.08891 Pa.

The model trains hands and eyes. It does not size, approve or set real equipment: the plate, the
local code and licensed practice rule there.
";

/// The whole page.
pub fn write() -> String {
    let mut page = String::from(OPENING);
    page += "\n## Contents\n\n";
    page += &format!("- [{}](#{})\n", friction::TITLE, anchor(friction::TITLE));
    for (title, chapter) in numbered() {
        let shown = chapter.modules.iter().filter(|module| module.kind != Kind::Folder);
        let titles: Vec<&str> = shown.map(|module| module.title).collect();
        page += &format!("- [{title}](#{}): {}\n", anchor(&title), titles.join(", "));
    }
    page += &friction::write();
    for (title, chapter) in numbered() {
        page += &format!("\n## {title}\n");
        for module in chapter.modules.iter().filter(|module| module.kind != Kind::Folder) {
            page += &part(module);
        }
    }
    page
}

/// Chapters with their headings.
fn numbered() -> impl Iterator<Item = (String, &'static Chapter)> {
    (1..).zip(CHAPTERS).map(|(number, chapter)| (format!("{number}. {}", chapter.title), chapter))
}

/// The name that a heading can be linked by.
fn anchor(title: &str) -> String {
    let kept = title.to_lowercase();
    let kept = kept.chars().filter(|c| c.is_alphanumeric() || *c == ' ' || *c == '-');
    kept.map(|c| if c == ' ' { '-' } else { c }).collect()
}

fn part(module: &Module) -> String {
    let head = Head::of(module);
    let mut text = format!("\n### {}\n\n`{}`\n\n", module.title, module.path);
    text += &plain(&head.intro);
    text.push('\n');
    for (heading, lines) in &head.sections {
        text += &format!("\n**{heading}.** {}\n", plain(lines));
    }
    text
}

/// Text without links into the code, and without the blank lines at its end.
fn plain(lines: &[String]) -> String {
    lines.join("\n").trim_end().replace("[`", "`").replace("`]", "`")
}

//! Facts of one source file, read from its syntax tree. They hold plain text and line numbers, so
//! that any thread may ask them.

use std::collections::{BTreeMap, BTreeSet};

use proc_macro2::{Delimiter, Span, TokenStream, TokenTree};
use syn::parse::Parser;
use syn::punctuated::Punctuated;
use syn::visit::{self, Visit};
use syn::{Attribute, Expr, Item, Visibility};

use super::parts::{PANICS, SEARCHES, attributes, every_ident, has_words, is_test, prints_debug};
use super::patterns;

/// A path as written, with the module that it stands in.
#[derive(Debug, Clone)]
pub struct Mention {
    pub scope: Vec<String>,
    pub path: Vec<String>,
    pub line: usize,
}

/// One name (or a glob) that a `use` brings in.
#[derive(Debug, Clone)]
pub struct Import {
    pub at: Mention,
    /// `None` for a glob.
    pub name: Option<String>,
    /// `pub use` in any of its forms: others reach the item through this module.
    pub reexport: bool,
}

#[derive(Debug, Clone)]
pub struct Function {
    pub name: String,
    pub line: usize,
    /// Lines between the braces.
    pub lines: usize,
}

/// An item or a method that is visible beyond its module.
#[derive(Debug, Clone)]
pub struct Public {
    /// `Type::method` for a method.
    pub name: String,
    pub line: usize,
    pub is_type: bool,
}

/// A `match` with a catch-all arm beside arms that name variants by a path of two parts or more,
/// such as `Stage::Firing(Level::Low)`.
#[derive(Debug, Clone)]
pub struct CatchAll {
    /// The paths without their last part.
    pub enums: Vec<Mention>,
    pub line: usize,
}

/// A file's facts. Those of `#[cfg(test)]` items are left out, but for `idents` and `functions`.
#[derive(Debug, Clone, Default)]
pub struct Facts {
    pub imports: Vec<Import>,
    pub paths: Vec<Mention>,
    /// Modules declared and items defined, as scope and name.
    pub modules: Vec<(Vec<String>, String)>,
    pub items: Vec<(Vec<String>, String)>,
    pub functions: Vec<Function>,
    pub public: Vec<Public>,
    /// Names in the signatures and fields of public items: a type among them must be public.
    pub signatures: BTreeSet<String>,
    pub catch_alls: Vec<CatchAll>,
    /// Macros called, by the last part of their path.
    pub macros: Vec<(String, usize)>,
    /// Lines of texts that print by `Debug`, outside panics.
    pub debug_texts: Vec<usize>,
    /// Literals that hold words for a person, outside attributes and panics: line and text.
    pub wordy_texts: Vec<(usize, String)>,
    /// Literals with words that are looked for in another text: line and text.
    pub searched_texts: Vec<(usize, String)>,
    /// Every identifier, also in macros and test code.
    pub idents: BTreeSet<String>,
    /// Identifiers outside test code, and how often each stands there.
    pub own_idents: BTreeMap<String, usize>,
}

/// Reads `text`, whose module is `scope`.
pub fn read(scope: &[String], text: &str) -> syn::Result<Facts> {
    let file = syn::parse_file(text)?;
    let mut reader = Reader {
        facts: Facts::default(),
        scope: scope.to_vec(),
        of: None,
        testing: false,
        panicking: false,
        in_trouble: false,
    };
    if let Ok(tokens) = text.parse::<TokenStream>() {
        every_ident(tokens, &mut reader.facts.idents);
    }
    reader.visit_file(&file);
    Ok(reader.facts)
}

struct Reader {
    facts: Facts,
    scope: Vec<String>,
    /// The type of the `impl` block around.
    of: Option<String>,
    testing: bool,
    /// Within a panic.
    panicking: bool,
    /// Within an error of the command line.
    in_trouble: bool,
}

fn line(span: Span) -> usize {
    span.start().line
}

fn first_line(path: &syn::Path) -> usize {
    path.segments.first().map_or(1, |first| line(first.ident.span()))
}

pub fn words(path: &syn::Path) -> Vec<String> {
    path.segments.iter().map(|segment| segment.ident.to_string()).collect()
}

impl Reader {
    fn mention(&self, path: Vec<String>, line: usize) -> Mention {
        Mention { scope: self.scope.clone(), path, line }
    }

    fn path(&mut self, path: Vec<String>, line: usize) {
        if self.testing {
            return;
        }
        let mention = self.mention(path, line);
        self.facts.paths.push(mention);
    }

    fn count(&mut self, ident: &str) {
        *self.facts.own_idents.entry(ident.to_owned()).or_default() += 1;
    }

    fn text(&mut self, text: &str, line: usize) {
        if self.testing || self.panicking {
            return;
        }
        if prints_debug(text) && !self.in_trouble {
            self.facts.debug_texts.push(line);
        }
        if has_words(text) {
            self.facts.wordy_texts.push((line, text.to_owned()));
        }
    }

    fn imports(&mut self, tree: &syn::UseTree, before: &[String], reexport: bool) {
        let mut path = before.to_vec();
        let (name, at) = match tree {
            syn::UseTree::Path(it) => {
                path.push(it.ident.to_string());
                return self.imports(&it.tree, &path, reexport);
            }
            syn::UseTree::Group(it) => {
                it.items.iter().for_each(|item| self.imports(item, before, reexport));
                return;
            }
            syn::UseTree::Glob(it) => (None, line(it.star_token.span)),
            syn::UseTree::Name(it) => {
                let name = it.ident.to_string();
                if name != "self" {
                    path.push(name);
                }
                (path.last().cloned(), line(it.ident.span()))
            }
            syn::UseTree::Rename(it) => {
                if it.ident != "self" {
                    path.push(it.ident.to_string());
                }
                (Some(it.rename.to_string()), line(it.ident.span()))
            }
        };
        path.iter().for_each(|ident| self.count(ident));
        let at = self.mention(path, at);
        self.facts.imports.push(Import { at, name, reexport });
    }

    fn define(&mut self, name: &syn::Ident, vis: &Visibility, is_type: bool) {
        if self.testing {
            return;
        }
        self.facts.items.push((self.scope.clone(), name.to_string()));
        self.publish(name.to_string(), name, vis, is_type);
    }

    fn publish(&mut self, name: String, at: &syn::Ident, vis: &Visibility, is_type: bool) {
        if !self.testing && !matches!(vis, Visibility::Inherited) {
            self.facts.public.push(Public { name, line: line(at.span()), is_type });
        }
    }

    fn signature(&mut self, vis: &Visibility, signature: &syn::Signature) {
        if !matches!(vis, Visibility::Inherited) {
            let mut names = Names(BTreeSet::new());
            names.visit_signature(signature);
            self.facts.signatures.append(&mut names.0);
        }
    }

    fn function(&mut self, name: &syn::Ident, block: &syn::Block) {
        let span = block.brace_token.span;
        let lines = line(span.close()).saturating_sub(line(span.open()) + 1);
        let name = self.of.as_ref().map_or(name.to_string(), |of| format!("{of}::{name}"));
        self.facts.functions.push(Function { name, line: line(span.open()), lines });
    }

    /// Paths and texts of a macro that is no list of expressions.
    fn tokens(&mut self, tokens: TokenStream) {
        let mut path: Vec<String> = Vec::new();
        let mut colons = 0;
        let mut at = 0;
        let mut tokens = tokens.into_iter().peekable();
        while let Some(token) = tokens.next() {
            match token {
                TokenTree::Ident(ident) => {
                    if colons != 2 {
                        self.path_of_tokens(&mut path, at);
                        at = line(ident.span());
                    }
                    path.push(ident.to_string());
                    colons = 0;
                    continue;
                }
                TokenTree::Punct(punct) if punct.as_char() == ':' => {
                    colons += 1;
                    continue;
                }
                // An attribute, also the one that a comment of documentation is read as.
                TokenTree::Punct(punct) if punct.as_char() == '#' => {
                    tokens.next_if(|next| matches!(next, TokenTree::Group(_)));
                }
                TokenTree::Punct(_) => {}
                TokenTree::Group(group) => {
                    // `a::{b, c}` in a macro counts as `a`.
                    if group.delimiter() == Delimiter::Brace {
                        self.path_of_tokens(&mut path, at);
                    }
                    self.tokens(group.stream());
                }
                TokenTree::Literal(literal) => {
                    let at = line(literal.span());
                    if let syn::Lit::Str(text) = syn::Lit::new(literal) {
                        self.text(&text.value(), at);
                    }
                }
            }
            self.path_of_tokens(&mut path, at);
            colons = 0;
        }
        self.path_of_tokens(&mut path, at);
    }

    fn path_of_tokens(&mut self, path: &mut Vec<String>, at: usize) {
        if !path.is_empty() {
            let path = std::mem::take(path);
            if !self.testing {
                path.iter().for_each(|ident| self.count(ident));
            }
            self.path(path, at);
        }
    }
}

/// Names of the types within.
struct Names(BTreeSet<String>);

impl<'ast> Visit<'ast> for Names {
    fn visit_path(&mut self, path: &'ast syn::Path) {
        self.0.extend(words(path));
        visit::visit_path(self, path);
    }
}

impl<'ast> Visit<'ast> for Reader {
    /// `pub(super)` names a module and uses nothing of it.
    fn visit_visibility(&mut self, _: &'ast Visibility) {}

    fn visit_item(&mut self, item: &'ast Item) {
        let before = self.testing;
        self.testing |= is_test(attributes(item));
        match item {
            Item::Struct(it) => self.define(&it.ident, &it.vis, true),
            Item::Enum(it) => self.define(&it.ident, &it.vis, true),
            Item::Trait(it) => self.define(&it.ident, &it.vis, true),
            Item::Type(it) => self.define(&it.ident, &it.vis, true),
            Item::Const(it) => self.define(&it.ident, &it.vis, false),
            Item::Static(it) => self.define(&it.ident, &it.vis, false),
            Item::Fn(it) => self.define(&it.sig.ident, &it.vis, false),
            Item::Macro(syn::ItemMacro { ident: Some(name), .. }) => {
                self.facts.items.push((self.scope.clone(), name.to_string()));
            }
            _ => {}
        }
        visit::visit_item(self, item);
        self.testing = before;
    }

    fn visit_item_mod(&mut self, module: &'ast syn::ItemMod) {
        if self.testing {
            let before = self.scope.clone();
            self.scope.push(module.ident.to_string());
            visit::visit_item_mod(self, module);
            self.scope = before;
            return;
        }
        self.facts.modules.push((self.scope.clone(), module.ident.to_string()));
        self.scope.push(module.ident.to_string());
        visit::visit_item_mod(self, module);
        self.scope.pop();
    }

    fn visit_item_use(&mut self, item: &'ast syn::ItemUse) {
        if !self.testing {
            self.imports(&item.tree, &[], !matches!(item.vis, Visibility::Inherited));
        }
    }

    fn visit_item_impl(&mut self, item: &'ast syn::ItemImpl) {
        let before = self.of.clone();
        self.of = match &*item.self_ty {
            syn::Type::Path(it) => it.path.segments.last().map(|last| last.ident.to_string()),
            _ => None,
        };
        visit::visit_item_impl(self, item);
        self.of = before;
    }

    fn visit_item_fn(&mut self, item: &'ast syn::ItemFn) {
        self.signature(&item.vis, &item.sig);
        let of = self.of.take();
        self.function(&item.sig.ident, &item.block);
        visit::visit_item_fn(self, item);
        self.of = of;
    }

    fn visit_impl_item_fn(&mut self, item: &'ast syn::ImplItemFn) {
        let name = format!("{}::{}", self.of.as_deref().unwrap_or_default(), item.sig.ident);
        self.publish(name, &item.sig.ident, &item.vis, false);
        self.signature(&item.vis, &item.sig);
        self.function(&item.sig.ident, &item.block);
        visit::visit_impl_item_fn(self, item);
    }

    fn visit_impl_item_const(&mut self, item: &'ast syn::ImplItemConst) {
        let name = format!("{}::{}", self.of.as_deref().unwrap_or_default(), item.ident);
        self.publish(name, &item.ident, &item.vis, false);
        visit::visit_impl_item_const(self, item);
    }

    fn visit_trait_item_fn(&mut self, item: &'ast syn::TraitItemFn) {
        if let Some(block) = &item.default {
            self.function(&item.sig.ident, block);
        }
        let mut names = Names(BTreeSet::new());
        names.visit_signature(&item.sig);
        self.facts.signatures.append(&mut names.0);
        visit::visit_trait_item_fn(self, item);
    }

    fn visit_fields(&mut self, fields: &'ast syn::Fields) {
        let mut names = Names(BTreeSet::new());
        for field in fields {
            if !matches!(field.vis, Visibility::Inherited) {
                names.visit_type(&field.ty);
            }
        }
        self.facts.signatures.append(&mut names.0);
        visit::visit_fields(self, fields);
    }

    fn visit_item_enum(&mut self, item: &'ast syn::ItemEnum) {
        let mut names = Names(BTreeSet::new());
        names.visit_item_enum(item);
        self.facts.signatures.append(&mut names.0);
        visit::visit_item_enum(self, item);
    }

    fn visit_item_type(&mut self, item: &'ast syn::ItemType) {
        let mut names = Names(BTreeSet::new());
        names.visit_type(&item.ty);
        self.facts.signatures.append(&mut names.0);
        visit::visit_item_type(self, item);
    }

    /// Attributes hold no paths of ours and no texts for people.
    fn visit_attribute(&mut self, _: &'ast Attribute) {}

    fn visit_path(&mut self, path: &'ast syn::Path) {
        self.path(words(path), first_line(path));
        visit::visit_path(self, path);
    }

    fn visit_ident(&mut self, ident: &'ast syn::Ident) {
        if !self.testing {
            self.count(&ident.to_string());
        }
    }

    /// A text that is matched against is a key, and nobody reads it.
    fn visit_pat(&mut self, pattern: &'ast syn::Pat) {
        if !matches!(pattern, syn::Pat::Lit(_)) {
            visit::visit_pat(self, pattern);
        }
    }

    fn visit_lit_str(&mut self, text: &'ast syn::LitStr) {
        self.text(&text.value(), line(text.span()));
    }

    fn visit_expr_match(&mut self, it: &'ast syn::ExprMatch) {
        if !self.testing
            && let Some(enums) = patterns::enums_beside_a_catch_all(it, self.of.as_deref())
        {
            let at = line(it.match_token.span);
            let enums = enums.into_iter().map(|path| self.mention(path, at)).collect();
            self.facts.catch_alls.push(CatchAll { enums, line: at });
        }
        visit::visit_expr_match(self, it);
    }

    /// A text that is looked for in another one is shown to nobody.
    fn visit_expr_method_call(&mut self, it: &'ast syn::ExprMethodCall) {
        let searched = match it.args.first() {
            Some(Expr::Lit(syn::ExprLit { lit: syn::Lit::Str(text), .. }))
                if SEARCHES.iter().any(|search| it.method == search) =>
            {
                text
            }
            _ => return visit::visit_expr_method_call(self, it),
        };
        if !self.testing && has_words(&searched.value()) {
            self.facts.searched_texts.push((line(searched.span()), searched.value()));
        }
        self.visit_expr(&it.receiver);
        self.visit_ident(&it.method);
        it.args.iter().skip(1).for_each(|arg| self.visit_expr(arg));
    }

    /// `Trouble` is the command line's error: its text may show one of the program's own.
    fn visit_expr_call(&mut self, it: &'ast syn::ExprCall) {
        let before = self.in_trouble;
        self.in_trouble |= matches!(&*it.func, Expr::Path(func)
            if words(&func.path).iter().any(|word| word == "Trouble"));
        visit::visit_expr_call(self, it);
        self.in_trouble = before;
    }

    fn visit_macro(&mut self, it: &'ast syn::Macro) {
        let name = it.path.segments.last().map(|last| last.ident.to_string()).unwrap_or_default();
        if !self.testing {
            self.facts.macros.push((name.clone(), first_line(&it.path)));
        }
        self.visit_path(&it.path);
        let before = self.panicking;
        self.panicking |= PANICS.contains(&name.as_str());
        let list = Punctuated::<Expr, syn::Token![,]>::parse_terminated;
        match list.parse2(it.tokens.clone()) {
            Ok(list) => list.iter().for_each(|expr| self.visit_expr(expr)),
            Err(_) => self.tokens(it.tokens.clone()),
        }
        self.panicking = before;
    }
}

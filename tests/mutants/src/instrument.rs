//! Puts every mutant of a source file into it, each behind a switch.

use proc_macro2::Span;
use syn::spanned::Spanned;
use syn::visit::{self, Visit};
use syn::{BinOp, Expr, ExprLit, ImplItemFn, ItemConst, ItemFn, ItemStatic, Lit, ReturnType, Type};

/// Functions that only ask the job something, by which a mutant is told that changes nothing.
const QUESTIONS: [&str; 5] = ["hits_due", "gives_occasion", "is_done", "is_due", "is_worked"];

/// A mutant: where it is and what it changes.
#[derive(Debug, Clone)]
pub struct Mutant {
    /// Its number, from 1 on over all files.
    pub number: u32,
    /// Line in the file, from 1 on.
    pub line: usize,
    /// Function in which it is.
    pub function: String,
    /// What it changes, on one line.
    pub change: String,
}

/// Text that goes before a place of the source; what is given first stands outermost.
struct Insert {
    at: usize,
    /// Closing texts stand before opening ones at the same place.
    closes: bool,
    order: usize,
    text: String,
}

/// Reader of one file.
struct Reader<'a> {
    text: &'a str,
    next: &'a mut u32,
    mutants: Vec<Mutant>,
    inserts: Vec<Insert>,
    functions: Vec<String>,
    constants: Vec<(String, bool)>,
}

/// The text with its mutants, and the mutants.
///
/// # Errors
/// When the text is not Rust.
pub fn instrument(text: &str, next: &mut u32) -> Result<(String, Vec<Mutant>), syn::Error> {
    let file = syn::parse_file(text)?;
    let mut reader = Reader {
        text,
        next,
        mutants: Vec::new(),
        inserts: Vec::new(),
        functions: Vec::new(),
        constants: numbers(&file),
    };
    reader.visit_file(&file);
    let mutants = std::mem::take(&mut reader.mutants);
    Ok((reader.written(), mutants))
}

/// Constants of a file that are plain numbers: name, and whether it has a point.
fn numbers(file: &syn::File) -> Vec<(String, bool)> {
    let of = |item: &syn::Item| {
        let syn::Item::Const(it) = item else { return None };
        let Type::Path(of) = &*it.ty else { return None };
        let name = of.path.segments.last()?.ident.to_string();
        let whole = ["u8", "u16", "u32", "u64", "usize", "i16", "i32", "i64"];
        match name.as_str() {
            "f64" | "f32" => Some((it.ident.to_string(), true)),
            name if whole.contains(&name) => Some((it.ident.to_string(), false)),
            _ => None,
        }
    };
    file.items.iter().filter_map(of).collect()
}

/// Where the first item of a file begins, its attributes included; none in an empty one.
///
/// # Errors
/// When the text is not Rust.
pub fn first_item(text: &str) -> Result<Option<usize>, syn::Error> {
    let file = syn::parse_file(text)?;
    Ok(file.items.first().map(|item| range(item.span()).start))
}

fn holds_let(expr: &Expr) -> bool {
    struct Finds(bool);
    impl<'ast> Visit<'ast> for Finds {
        fn visit_expr_let(&mut self, _: &'ast syn::ExprLet) {
            self.0 = true;
        }
        fn visit_expr_closure(&mut self, _: &'ast syn::ExprClosure) {}
        fn visit_expr_block(&mut self, _: &'ast syn::ExprBlock) {}
        fn visit_expr_if(&mut self, _: &'ast syn::ExprIf) {}
        fn visit_expr_match(&mut self, _: &'ast syn::ExprMatch) {}
    }
    let mut finds = Finds(false);
    finds.visit_expr(expr);
    finds.0
}

fn range(span: Span) -> std::ops::Range<usize> {
    span.byte_range()
}

impl Reader<'_> {
    fn of(&self, span: Span) -> &str {
        &self.text[range(span)]
    }

    fn mutant(&mut self, span: Span, change: String) -> u32 {
        let number = *self.next;
        *self.next += 1;
        let one_line = change.split_whitespace().collect::<Vec<_>>().join(" ");
        let short: String = one_line.chars().take(120).collect();
        self.mutants.push(Mutant {
            number,
            line: span.start().line,
            function: self.functions.join("::"),
            change: short,
        });
        number
    }

    fn insert(&mut self, at: usize, closes: bool, text: String) {
        let order = self.inserts.len();
        self.inserts.push(Insert { at, closes, order, text });
    }

    fn around(&mut self, span: Span, before: String, after: &str) {
        let place = range(span);
        self.insert(place.start, false, before);
        self.insert(place.end, true, after.to_owned());
    }

    /// The source with everything put in. A closing text that was noted later belongs to an inner
    /// expression and comes first; an opening one comes in the order of noting.
    fn written(mut self) -> String {
        self.inserts.sort_by(|a, b| {
            let inner = if a.closes { b.order.cmp(&a.order) } else { a.order.cmp(&b.order) };
            a.at.cmp(&b.at).then(b.closes.cmp(&a.closes)).then(inner)
        });
        let mut out = String::new();
        let mut from = 0;
        for it in &self.inserts {
            out.push_str(&self.text[from..it.at]);
            from = it.at;
            out.push_str(&it.text);
        }
        out.push_str(&self.text[from..]);
        out
    }

    fn begins(&mut self, output: &ReturnType, block: &syn::Block) {
        let ReturnType::Type(_, of) = output else { return };
        let Type::Path(path) = &**of else { return };
        let Some(last) = path.path.segments.last() else { return };
        let values: &[&str] = match last.ident.to_string().as_str() {
            "bool" => &["true", "false"],
            "Vec" => &["Vec::new()"],
            "Option" => &["None"],
            _ => &[],
        };
        let at = range(block.brace_token.span.open()).end;
        for value in values {
            let number = self.mutant(block.brace_token.span.open(), format!("returns {value}"));
            self.insert(
                at,
                false,
                format!(" if crate::mutant::on({number}) {{ return {value}; }} "),
            );
        }
    }
}

impl<'ast> Visit<'ast> for Reader<'_> {
    fn visit_item_fn(&mut self, it: &'ast ItemFn) {
        self.function(&it.sig, &it.block);
    }

    fn visit_impl_item_fn(&mut self, it: &'ast ImplItemFn) {
        self.function(&it.sig, &it.block);
    }

    fn visit_item_mod(&mut self, it: &'ast syn::ItemMod) {
        let is_test = it.attrs.iter().any(|attr| attr.path().is_ident("cfg"));
        if !is_test {
            visit::visit_item_mod(self, it);
        }
    }

    fn visit_item_const(&mut self, _: &'ast ItemConst) {}

    fn visit_item_static(&mut self, _: &'ast ItemStatic) {}

    fn visit_impl_item_const(&mut self, _: &'ast syn::ImplItemConst) {}

    fn visit_pat(&mut self, _: &'ast syn::Pat) {}

    fn visit_attribute(&mut self, _: &'ast syn::Attribute) {}

    fn visit_type(&mut self, _: &'ast Type) {}

    fn visit_expr_repeat(&mut self, it: &'ast syn::ExprRepeat) {
        self.visit_expr(&it.expr);
    }

    fn visit_expr_if(&mut self, it: &'ast syn::ExprIf) {
        if !holds_let(&it.cond) {
            self.truth(&it.cond);
        }
        visit::visit_expr_if(self, it);
    }

    fn visit_arm(&mut self, it: &'ast syn::Arm) {
        if let Some((_, guard)) = &it.guard
            && !holds_let(guard)
        {
            self.truth(guard);
        }
        visit::visit_arm(self, it);
    }

    fn visit_expr_unary(&mut self, it: &'ast syn::ExprUnary) {
        if matches!(it.op, syn::UnOp::Not(_)) {
            let number = self.mutant(it.span(), format!("no `!` in {}", self.of(it.span())));
            let inner = self.of(it.expr.span()).to_owned();
            self.around(it.span(), format!("(mutant_either!({number}, {inner}, "), "))");
        }
        visit::visit_expr_unary(self, it);
    }

    fn visit_expr_binary(&mut self, it: &'ast syn::ExprBinary) {
        if !holds_let(&it.left) && !holds_let(&it.right) {
            match it.op {
                BinOp::Lt(_) => self.joined(it, &["<=", ">"]),
                BinOp::Le(_) => self.joined(it, &["<", ">"]),
                BinOp::Gt(_) => self.joined(it, &[">=", "<"]),
                BinOp::Ge(_) => self.joined(it, &[">", "<"]),
                BinOp::Eq(_) => self.joined(it, &["!="]),
                BinOp::Ne(_) => self.joined(it, &["=="]),
                BinOp::And(_) => self.joined(it, &["||"]),
                BinOp::Or(_) => self.joined(it, &["&&"]),
                BinOp::Add(_) => self.joined(it, &["-"]),
                BinOp::Sub(_) => self.joined(it, &["+"]),
                _ => {}
            }
        }
        visit::visit_expr_binary(self, it);
    }

    fn visit_expr_method_call(&mut self, it: &'ast syn::ExprMethodCall) {
        let other = match it.method.to_string().as_str() {
            "any" => Some("all"),
            "all" => Some("any"),
            "min" => Some("max"),
            "max" => Some("min"),
            "is_some" => Some("is_none"),
            "is_none" => Some("is_some"),
            "is_some_and" => Some("is_none_or"),
            "is_none_or" => Some("is_some_and"),
            _ => None,
        };
        if let Some(other) = other {
            let whole = self.of(it.span()).to_owned();
            let start = range(it.span()).start;
            let name = range(it.method.span());
            let number =
                self.mutant(it.method.span(), format!("{} to {other} in {whole}", it.method));
            let mutated =
                format!("{}{other}{}", &whole[..name.start - start], &whole[name.end - start..]);
            self.around(it.span(), format!("(mutant_either!({number}, {mutated}, "), "))");
        }
        visit::visit_expr_method_call(self, it);
    }

    fn visit_expr_lit(&mut self, it: &'ast ExprLit) {
        let more = match &it.lit {
            Lit::Int(_) => "+ 1",
            Lit::Float(_) => "* 1.1 + 1e-9",
            _ => return,
        };
        let text = self.of(it.span()).to_owned();
        let number = self.mutant(it.span(), format!("{text} {more}"));
        self.around(it.span(), format!("(mutant_either!({number}, {text} {more}, "), "))");
    }

    fn visit_expr_path(&mut self, it: &'ast syn::ExprPath) {
        let Some(name) = it.path.get_ident().map(ToString::to_string) else { return };
        let Some((_, has_point)) = self.constants.iter().find(|(one, _)| *one == name) else {
            return;
        };
        for more in if *has_point { ["* 1.1", "* 0.9"] } else { ["+ 1", "- 1"] } {
            let number = self.mutant(it.span(), format!("{name} {more}"));
            self.around(it.span(), format!("(mutant_either!({number}, {name} {more}, "), "))");
        }
    }
}

impl Reader<'_> {
    /// A function that runs: a constant one has no switches.
    fn function(&mut self, signature: &syn::Signature, block: &syn::Block) {
        if signature.constness.is_some() {
            return;
        }
        self.functions.push(signature.ident.to_string());
        if QUESTIONS.contains(&signature.ident.to_string().as_str()) {
            let (open, close) = (block.brace_token.span.open(), block.brace_token.span.close());
            self.insert(range(open).end, false, "crate::mutant::question(|| {".to_owned());
            self.insert(range(close).start, false, "})".to_owned());
        }
        self.begins(&signature.output, block);
        visit::visit_block(self, block);
        let _ = self.functions.pop();
    }

    /// A condition that always holds, and one that never does.
    fn truth(&mut self, condition: &Expr) {
        for value in ["true", "false"] {
            let text = self.of(condition.span()).to_owned();
            let number = self.mutant(condition.span(), format!("{value} for {text}"));
            self.around(condition.span(), format!("(mutant_either!({number}, {value}, "), "))");
        }
    }

    /// The two sides joined otherwise; several mutants of one expression stand in each other.
    fn joined(&mut self, it: &syn::ExprBinary, others: &[&str]) {
        let was = self.of(it.op.span()).to_owned();
        let left = self.of(it.left.span()).to_owned();
        let right = self.of(it.right.span()).to_owned();
        for is in others {
            let change = format!("{was} to {is} in {left} {was} {right}");
            let number = self.mutant(it.op.span(), change);
            let mutated = format!("({left}) {is} ({right})");
            self.around(it.span(), format!("(mutant_either!({number}, {mutated}, "), "))");
        }
    }
}

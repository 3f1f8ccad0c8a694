//! Catch-all arms: a `match` that names variants by path and takes the rest by `_` or a name.

use syn::Pat;

use super::facts::words;

/// The enums that a `match` with a catch-all names, if every other arm names one. `of` is the type
/// of the `impl` block around, for `Self::Variant`.
pub fn enums_beside_a_catch_all(it: &syn::ExprMatch, of: Option<&str>) -> Option<Vec<Vec<String>>> {
    let (rest, named): (Vec<_>, Vec<_>) = it.arms.iter().partition(|arm| takes_all(&arm.pat));
    if rest.is_empty() || named.is_empty() {
        return None;
    }
    let mut enums = Vec::new();
    for arm in named {
        let before = enums.len();
        variants(&arm.pat, of, &mut enums);
        if enums.len() == before {
            return None;
        }
    }
    enums.sort();
    enums.dedup();
    Some(enums)
}

/// `_`, `other`, `(_, _)`, `_ if …`.
fn takes_all(pattern: &Pat) -> bool {
    match pattern {
        Pat::Wild(_) | Pat::Rest(_) => true,
        Pat::Ident(it) => {
            it.subpat.is_none() && it.ident.to_string().starts_with(|c: char| c.is_lowercase())
        }
        Pat::Paren(it) => takes_all(&it.pat),
        Pat::Reference(it) => takes_all(&it.pat),
        Pat::Tuple(it) => it.elems.iter().all(takes_all),
        // A guard decides by something else than the variant, and another arm takes the rest.
        _ => false,
    }
}

fn variants(pattern: &Pat, of: Option<&str>, found: &mut Vec<Vec<String>>) {
    let path = match pattern {
        Pat::Guard(it) => return variants(&it.pat, of, found),
        Pat::Paren(it) => return variants(&it.pat, of, found),
        Pat::Reference(it) => return variants(&it.pat, of, found),
        Pat::Or(it) => return it.cases.iter().for_each(|case| variants(case, of, found)),
        Pat::Tuple(it) => return it.elems.iter().for_each(|part| variants(part, of, found)),
        Pat::TupleStruct(it) if it.path.is_ident("Some") || it.path.is_ident("Ok") => {
            return it.elems.iter().for_each(|part| variants(part, of, found));
        }
        Pat::TupleStruct(it) => words(&it.path),
        Pat::Struct(it) => words(&it.path),
        Pat::Path(it) => words(&it.path),
        Pat::Ident(it) => {
            return it.subpat.iter().for_each(|(_, part)| variants(part, of, found));
        }
        _ => return,
    };
    if let Some((_, before)) = path.split_last()
        && let Some((name, _)) = before.split_last()
        && name.starts_with(|c: char| c.is_uppercase())
    {
        let mut before = before.to_vec();
        if let (Some(of), "Self") = (of, name.as_str()) {
            before = vec![of.to_owned()];
        }
        found.push(before);
    }
}

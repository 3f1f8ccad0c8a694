//! Catch-all arms: a `match` that names variants by path and takes the rest by `_` or a name.

use syn::Pat;

use super::facts::words;

/// The enums whose variants a `match` names beside a catch-all arm. `of` is the type of the `impl`
/// block around, for `Self::Variant`.
pub fn enums_beside_a_catch_all(it: &syn::ExprMatch, of: Option<&str>) -> Option<Vec<Vec<String>>> {
    let mut enums = Vec::new();
    it.arms.iter().for_each(|arm| variants(&arm.pat, of, &mut enums));
    enums.sort();
    enums.dedup();
    let takes_all = it.arms.iter().any(|arm| takes_all(&arm.pat));
    (takes_all && !enums.is_empty()).then_some(enums)
}

/// `_`, `other`, `(_, _)`, `Some(_)`, `Some(_) | None`; not a pattern with a guard, because another
/// arm must take the rest.
fn takes_all(pattern: &Pat) -> bool {
    match pattern {
        Pat::Paren(it) => takes_all(&it.pat),
        Pat::Reference(it) => takes_all(&it.pat),
        Pat::Or(it) => it.cases.iter().any(takes_all),
        Pat::Tuple(it) => it.elems.iter().all(is_wild),
        Pat::TupleStruct(it) if wraps(&it.path) => it.elems.iter().all(takes_all),
        _ => is_wild(pattern),
    }
}

fn is_wild(pattern: &Pat) -> bool {
    match pattern {
        Pat::Wild(_) | Pat::Rest(_) => true,
        Pat::Ident(it) => {
            it.subpat.is_none() && it.ident.to_string().starts_with(|c: char| c.is_lowercase())
        }
        _ => false,
    }
}

/// `Some` and `Ok`: the variant within is the one that is asked for.
fn wraps(path: &syn::Path) -> bool {
    path.is_ident("Some") || path.is_ident("Ok")
}

/// The paths of the variants that a pattern names, without their last part.
fn variants(pattern: &Pat, of: Option<&str>, found: &mut Vec<Vec<String>>) {
    let path = match pattern {
        Pat::Guard(it) => return variants(&it.pat, of, found),
        Pat::Paren(it) => return variants(&it.pat, of, found),
        Pat::Reference(it) => return variants(&it.pat, of, found),
        Pat::Or(it) => return it.cases.iter().for_each(|case| variants(case, of, found)),
        Pat::Tuple(it) => return it.elems.iter().for_each(|part| variants(part, of, found)),
        Pat::TupleStruct(it) if wraps(&it.path) => {
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

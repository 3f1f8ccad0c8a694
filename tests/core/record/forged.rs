//! Records with a sound chain and nonsense in them, and records of other formats. The chain is made
//! here anew from its description, so that it is checked against a second hand.

use quarterturn::record::{FaultCode, MAX_LINE_BYTES, read};

use super::small;

/// Seals JSON objects (without their closing brace) as the format says.
pub fn seal(bodies: &[String]) -> String {
    let mut sum = "quarterturn-record".to_owned();
    let mut text = String::new();
    for body in bodies {
        let hash = blake3::hash(format!("{sum}\n{body}").as_bytes()).to_hex();
        sum = hash.as_str()[..16].to_owned();
        text += &format!("{body},\"sum\":\"{sum}\"}}\n");
    }
    text
}

/// The bodies of the small record.
pub fn bodies() -> Vec<String> {
    small().lines().map(|line| line.split(",\"sum\":").next().unwrap().to_owned()).collect()
}

/// The record with one line put in another's place.
fn with(line: usize, body: &str) -> String {
    let mut bodies = bodies();
    bodies[line - 1] = body.to_owned();
    seal(&bodies)
}

/// The description of the chain is true: a second hand makes the very same bytes.
#[test]
fn the_chain_is_as_described() {
    assert_eq!(seal(&bodies()), small());
}

/// Each kind of nonsense is refused with its code, its line and what is to blame.
#[test]
fn nonsense_is_refused_with_its_place() {
    use FaultCode as F;
    let long = format!("{{\"t\":0,\"note\":\"{}\"", "x".repeat(MAX_LINE_BYTES));
    let cases: [(usize, &str, FaultCode, &str); 17] = [
        (3, r#"{"t":0,"do":{"fly":"yard"}"#, F::BadField, "fly"),
        (3, r#"{"t":0,"do":{"go":"moon"}"#, F::BadField, "moon"),
        (3, r#"{"t":0,"do":"go""#, F::BadField, ""),
        (3, r#"{"t":0,"do":{"turn":{"screw":"low"}}"#, F::BadField, "eighths"),
        (3, r#"{"t":0,"do":{"turn":{"screw":"low","eighths":99999}}"#, F::BadField, ""),
        (3, r#"{"t":0,"do":{"turn":{"screw":"low","eighths":1,"more":2}}"#, F::BadField, ""),
        (3, r#"{"t":0,"more":1"#, F::BadField, "more"),
        (3, r#"{"t":0,"t":0,"note":"hint""#, F::BadField, "t"),
        (3, r#"{"t":-1,"note":"hint""#, F::BadField, ""),
        (3, r#"{"t":0.5,"note":"hint""#, F::BadField, ""),
        (3, r#"{"t":0"#, F::BadField, "do"),
        (3, r#"{"t":0,"mark":"0123456789ABCDEF""#, F::BadField, ""),
        (3, r#"{"t":0, "note":"hint""#, F::BadField, ""),
        (3, r#"{"t":0,"note":"hint"]"#, F::Malformed, ""),
        (5, r#"{"t":39,"note":"hint""#, F::Backwards, "t"),
        (6, r#"{"t":4320001,"note":"hint""#, F::AbsurdTick, "t"),
        (3, &long, F::LineTooLong, ""),
    ];
    for (line, body, code, field) in cases {
        let fault = read(with(line, body).as_bytes()).unwrap_err();
        let short = &body[..body.len().min(80)];
        assert_eq!((fault.code, fault.line), (code, line), "{short}: {fault}");
        assert_eq!(fault.field, field, "{short}: {fault}");
        assert!(fault.column >= 1 && fault.column <= body.len() + 30, "{short}: {fault}");
    }
}

/// A mark that is missing, or stands elsewhere, and a line after the end.
#[test]
fn marks_and_the_end_keep_their_places() {
    let marks = |line, body: &str| read(with(line, body).as_bytes()).unwrap_err();
    let fault = marks(8, r#"{"t":250,"note":"hint""#);
    assert_eq!((fault.code, fault.line), (FaultCode::BadMark, 9), "{fault}");
    let fault = marks(3, r#"{"t":1,"mark":"0123456789abcdef""#);
    assert_eq!((fault.code, fault.line), (FaultCode::BadMark, 3), "{fault}");
    let mut more = bodies();
    more.push(r#"{"t":610,"note":"hint""#.to_owned());
    let fault = read(seal(&more).as_bytes()).unwrap_err();
    assert_eq!((fault.code, fault.line), (FaultCode::AfterEnd, more.len()), "{fault}");
}

/// Newer, older and foreign files have codes of their own.
#[test]
fn other_versions_and_formats_are_told_apart() {
    let header = bodies()[0].clone();
    let changed = |from: &str, to: &str| {
        let body = header.replacen(from, to, 1);
        assert_ne!(body, header);
        read(seal(&[body]).as_bytes()).unwrap_err()
    };
    let newer = changed("\"version\":2", "\"version\":3,\"new\":[]");
    assert_eq!((newer.code, newer.exit_code()), (FaultCode::NewerVersion, 4));
    assert_eq!(changed("\"version\":2", "\"version\":0").code, FaultCode::NoSuchVersion);
    assert_eq!(changed("\"version\":2", "\"version\":\"2\"").code, FaultCode::NoSuchVersion);
    assert_eq!(changed("quarterturn-record", "other").code, FaultCode::NotARecord);
    assert_eq!(changed("\"seed\":3", "\"seed\":-3").code, FaultCode::BadField);
    assert_eq!(changed("Healthy", "Healthful").code, FaultCode::BadHeader);
    assert_eq!(read(b"").unwrap_err().code, FaultCode::NoHeader);
    assert_eq!(read(b"{\"format\":\"x\"}\n").unwrap_err().code, FaultCode::NotARecord);
    assert_eq!(read(b"[[[[\n").unwrap_err().code, FaultCode::Malformed);
    let deep = "[".repeat(100_000) + "\n";
    assert_eq!(read(deep.as_bytes()).unwrap_err().code, FaultCode::Malformed);
    assert_eq!(read(b"\xff\xfe\n").unwrap_err().code, FaultCode::NotUtf8);
}

/// Too many lines and too many bytes are refused before they are kept.
#[test]
fn too_much_is_refused() {
    use quarterturn::record::{MAX_BYTES, MAX_LINES};
    let mut bodies = vec![bodies()[0].clone(), bodies()[2].clone()];
    bodies.extend(std::iter::repeat_n(r#"{"t":0,"note":"hint""#.to_owned(), MAX_LINES));
    let fault = read(seal(&bodies).as_bytes()).unwrap_err();
    assert_eq!((fault.code, fault.line), (FaultCode::TooManyLines, MAX_LINES + 1));
    assert_eq!(read(&vec![b'\n'; MAX_BYTES + 1]).unwrap_err().code, FaultCode::TooLarge);
}

//! A table as text: header, rows, and errors that say where.

use core::fmt;

/// Largest file that is read, in bytes.
pub const MAX_BYTES: usize = 4 << 20;
/// Most rows of a table.
const MAX_ROWS: usize = 100_000;

/// Why a table cannot be read, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TableError {
    /// The table's file name.
    pub file: String,
    /// Line in the file, from 1.
    pub line: u64,
    /// Field in that line, from 1.
    pub column: usize,
    /// What is wrong there, and what would do.
    pub message: String,
}

impl fmt::Display for TableError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}:{}: {}", self.file, self.line, self.column, self.message)
    }
}

impl std::error::Error for TableError {}

/// A CSV table: header and rows as text, with their lines in the file.
#[derive(Debug, Clone)]
pub(crate) struct CsvTable {
    file: String,
    header: Vec<String>,
    lines: Vec<(u64, Vec<String>)>,
}

/// One row of a table.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Line<'a> {
    table: &'a CsvTable,
    number: u64,
    cells: &'a [String],
}

impl CsvTable {
    /// Reads a table: UTF-8 with or without a byte-order mark, LF or CRLF, fields quoted where they
    /// hold a comma.
    pub(crate) fn read(file: &str, bytes: &[u8]) -> Result<Self, TableError> {
        let error = |line, column, message: String| TableError {
            file: file.to_owned(),
            line,
            column,
            message,
        };
        if bytes.len() > MAX_BYTES {
            return Err(error(
                1,
                1,
                t!("table-file-larger-than-bytes", max_bytes = MAX_BYTES.to_string()),
            ));
        }
        let text = core::str::from_utf8(bytes).map_err(|bad| {
            let (line, column) = place(bytes.get(..bad.valid_up_to()).unwrap_or_default());
            error(line, column, t!("table-this-not-utf-8").to_owned())
        })?;
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        if let Some(at) = text.find('\0') {
            let (line, column) = place(text.as_bytes().get(..at).unwrap_or_default());
            return Err(error(line, column, t!("table-zero-byte-place-table").to_owned()));
        }
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .from_reader(text.as_bytes());
        let mut table = Self { file: file.to_owned(), header: Vec::new(), lines: Vec::new() };
        for record in reader.records() {
            let record = record.map_err(|bad| {
                let line = bad.position().map_or(1, csv::Position::line);
                error(line, 1, t!("table-this-not-row-table", bad = bad.to_string()))
            })?;
            let number = record.position().map_or(1, csv::Position::line);
            let cells = record.iter().map(|cell| cell.trim().to_owned()).collect();
            table.take(number, cells)?;
        }
        if table.header.is_empty() {
            return Err(error(1, 1, t!("table-file-empty-header-column").into()));
        }
        if table.lines.is_empty() {
            return Err(error(2, 1, t!("table-table-header-row").into()));
        }
        Ok(table)
    }

    fn take(&mut self, number: u64, cells: Vec<String>) -> Result<(), TableError> {
        let width = self.header.len();
        let error =
            |column, message| TableError { file: self.file.clone(), line: number, column, message };
        if width == 0 {
            for (k, name) in cells.iter().enumerate() {
                if cells.iter().take(k).any(|earlier| earlier == name) {
                    return Err(error(k + 1, t!("table-second-column-named", name = name)));
                }
            }
            self.header = cells;
        } else if cells.len() != width {
            let column = cells.len().min(width) + 1;
            let message =
                t!("table-fields-where-header", count = cells.len(), width = width.to_string());
            return Err(error(column, message));
        } else if self.lines.len() >= MAX_ROWS {
            return Err(error(1, t!("table-more-than-rows", max_rows = MAX_ROWS.to_string())));
        } else {
            self.lines.push((number, cells));
        }
        Ok(())
    }

    /// Name of the file that it was read from.
    pub(crate) fn file(&self) -> &str {
        &self.file
    }

    /// Names of its columns.
    pub(crate) fn header(&self) -> &[String] {
        &self.header
    }

    /// The rows after the header, in the file's order.
    pub(crate) fn lines(&self) -> impl Iterator<Item = Line<'_>> {
        self.lines.iter().map(|(number, cells)| Line { table: self, number: *number, cells })
    }

    /// Refuses a table without one of the columns.
    pub(crate) fn needs(&self, columns: &[&str]) -> Result<(), TableError> {
        for column in columns {
            if !self.header.iter().any(|name| name == column) {
                return Err(TableError {
                    file: self.file.clone(),
                    line: 1,
                    column: self.header.len() + 1,
                    message: t!("table-there-column", column = column.to_string()),
                });
            }
        }
        Ok(())
    }
}

impl<'a> Line<'a> {
    /// The text of a column; empty when there is no such column.
    pub(crate) fn text(self, column: &str) -> &'a str {
        self.place_of(column).and_then(|k| self.cells.get(k)).map_or("", String::as_str)
    }

    /// A number, finite and within the range.
    pub(crate) fn number(self, column: &str, range: (f64, f64)) -> Result<f64, TableError> {
        let text = self.text(column);
        let value: f64 = text
            .parse()
            .map_err(|_| self.error(column, t!("table-not-number", text = shorten(text))))?;
        self.within(column, value, range)
    }

    /// The `k`-th number, from 0, among the words of a column, within the range.
    pub(crate) fn figure(
        self,
        column: &str,
        k: usize,
        range: (f64, f64),
    ) -> Result<f64, TableError> {
        let text = self.text(column);
        let value = figures(text).get(k).copied().ok_or_else(|| {
            let count = k + 1;
            self.error(
                column,
                t!("table-does-not-hold-number", text = shorten(text), count = count.to_string()),
            )
        })?;
        self.within(column, value, range)
    }

    fn within(
        self,
        column: &str,
        value: f64,
        (least, most): (f64, f64),
    ) -> Result<f64, TableError> {
        // A value that is no number is in no range.
        if value >= least && value <= most {
            return Ok(value);
        }
        let text = shorten(self.text(column));
        Err(self.error(
            column,
            t!(
                "table-lies-outside",
                text = text,
                least = least.to_string(),
                most = most.to_string()
            ),
        ))
    }

    /// An error at a column of this row.
    pub(crate) fn error(self, column: &str, message: String) -> TableError {
        TableError {
            file: self.table.file.clone(),
            line: self.number,
            column: self.place_of(column).map_or(1, |k| k + 1),
            message: format!("{column}: {message}"),
        }
    }

    fn place_of(self, column: &str) -> Option<usize> {
        self.table.header.iter().position(|name| name == column)
    }
}

/// Every number in a text, in order: `"33 s at 1000 Btu/ft3"` holds 33 and 1000 and no other.
pub(crate) fn figures(text: &str) -> Vec<f64> {
    let mut found = Vec::new();
    let mut rest = text;
    while let Some(start) = rest.find(|c: char| c.is_ascii_digit()) {
        let before = rest.get(..start).unwrap_or_default();
        let tail = rest.get(start..).unwrap_or_default();
        let end = tail.find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap_or(tail.len());
        let (number, after) = tail.split_at(end);
        // A digit inside a word (ft3, H2O, CO2) is part of its name.
        let in_word = before.chars().next_back().is_some_and(|c| c.is_alphabetic() || c == '_');
        if !in_word && let Ok(value) = number.trim_end_matches('.').parse() {
            found.push(value);
        }
        rest = after;
    }
    found
}

/// Half a unit of the last digit of a printed number: 0.005 for `0.52`, 0.5 for `172`, and 0.5 for
/// `1390` too unless `digits` says how many of its digits count.
pub(crate) fn half_unit(text: &str, digits: Option<usize>) -> f64 {
    let mantissa = text.split(['e', 'E']).next().unwrap_or_default();
    let exponent: i32 = text.split(['e', 'E']).nth(1).and_then(|e| e.parse().ok()).unwrap_or(0);
    let (whole, fraction) = mantissa.split_once('.').unwrap_or((mantissa, ""));
    let length = whole.trim_start_matches(['0', '-', '+']).len();
    let decimals = i32::try_from(fraction.len()).unwrap_or(0);
    let zeros = match digits {
        Some(digits) if fraction.is_empty() && length > digits => {
            i32::try_from(length - digits).unwrap_or(0)
        }
        Some(_) | None => 0,
    };
    0.5 * libm::pow(10.0, f64::from(exponent.clamp(-300, 300) - decimals.min(300) + zeros.min(300)))
}

/// Line and field of the end of `before`.
fn place(before: &[u8]) -> (u64, usize) {
    let line = before.iter().filter(|&&byte| byte == b'\n').count() as u64 + 1;
    let last = before.rsplit(|&byte| byte == b'\n').next().unwrap_or_default();
    (line, last.iter().filter(|&&byte| byte == b',').count() + 1)
}

/// A text short enough for a message.
fn shorten(text: &str) -> String {
    match text.char_indices().nth(40) {
        Some((at, _)) => format!("{}…", text.get(..at).unwrap_or_default()),
        None => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Numbers in words are found, digits in names are not.
    #[test]
    fn figures_are_found() {
        assert_eq!(figures("1 psi is 27.7076 (27.70-27.71 used)"), [1.0, 27.7076, 27.70, 27.71]);
        assert_eq!(figures("ft3 of CO2, H2O"), [0.0; 0]);
        assert_eq!(figures("70F 127 ; 100F 196"), [70.0, 127.0, 100.0, 196.0]);
    }

    /// Half a unit of the last digit that counts.
    #[test]
    fn rounding_of_printed_numbers() {
        for (text, digits, want) in [
            ("0.52", None, 0.005),
            ("172", None, 0.5),
            ("1390", Some(3), 5.0),
            ("115000", Some(3), 500.0),
            ("95", Some(3), 0.5),
            ("1.655e+04", None, 5.0),
        ] {
            approx::assert_relative_eq!(half_unit(text, digits), want, max_relative = 1e-12);
        }
    }
}

//! Published tables, read from the CSV files in `refdata`: a header line of column names, then rows; fields may be quoted.

use std::path::Path;

/// A table with named columns.
#[derive(Debug)]
pub struct Table {
    file: String,
    columns: Vec<String>,
    rows: Vec<Vec<String>>,
}

impl Table {
    /// Reads `refdata/<file>`.
    ///
    /// # Panics
    /// Where the file cannot be read, has no rows, or a row has another number of fields than the header: a check that reads
    /// nothing must not pass.
    pub fn published(file: &str) -> Self {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("refdata").join(file);
        let text = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{file}: {error}"));
        Self::parse(file, &text)
    }

    /// Reads a table from its text; `file` is its name in complaints.
    ///
    /// # Panics
    /// As [`Table::published`].
    ///
    /// ```
    /// use hatwright_tests::table::Table;
    /// let table = Table::parse("ratios", "sex,mean,status\nF,0.308,\"derived, \"\"half\"\" an ellipse\"\n");
    /// let row = table.rows().next().unwrap();
    /// assert_eq!((row.text("sex"), row.number("mean")), ("F", 0.308));
    /// assert_eq!(row.text("status"), "derived, \"half\" an ellipse");
    /// ```
    pub fn parse(file: &str, text: &str) -> Self {
        let mut lines = fields(text).into_iter();
        let columns = lines.next().unwrap_or_else(|| panic!("{file} is empty"));
        let rows: Vec<_> = lines.collect();
        assert!(!rows.is_empty(), "{file} has no rows");
        for (line, row) in rows.iter().enumerate() {
            assert_eq!(row.len(), columns.len(), "{file}, row {}: fields", line + 1);
        }
        Self { file: file.to_owned(), columns, rows }
    }

    /// Its rows, in order.
    pub fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.rows.iter().map(|fields| Row { table: self, fields })
    }

    /// Rows whose column holds exactly this text.
    ///
    /// # Panics
    /// Where no row does.
    pub fn rows_where<'a>(&'a self, column: &str, text: &str) -> Vec<Row<'a>> {
        let found: Vec<_> = self.rows().filter(|row| row.text(column) == text).collect();
        assert!(!found.is_empty(), "{} has no row with {column} {text}", self.file);
        found
    }
}

/// A row of a table.
#[derive(Clone, Copy, Debug)]
pub struct Row<'a> {
    table: &'a Table,
    fields: &'a [String],
}

impl<'a> Row<'a> {
    /// The text of a column, as it stands there without its quotes.
    ///
    /// # Panics
    /// Where there is no such column.
    pub fn text(&self, column: &str) -> &'a str {
        let place = self.table.columns.iter().position(|name| name == column);
        &self.fields[place.unwrap_or_else(|| panic!("{} has no column {column}", self.table.file))]
    }

    /// The number in a column.
    ///
    /// # Panics
    /// Where there is no such column, or no number in it.
    pub fn number(&self, column: &str) -> f64 {
        let text = self.text(column);
        text.parse().unwrap_or_else(|_| panic!("{}, {column}: {text:?} is not a number", self.table.file))
    }
}

/// Lines of fields. Inside quotes, commas and line ends belong to the field and a doubled quote is one (RFC 4180).
fn fields(text: &str) -> Vec<Vec<String>> {
    let mut lines = Vec::new();
    let mut line = Vec::new();
    let mut field = String::new();
    let mut quoted = false;
    let mut characters = text.chars().peekable();
    while let Some(c) = characters.next() {
        match c {
            '"' if quoted && characters.peek() == Some(&'"') => field.extend(characters.next()),
            '"' => quoted = !quoted,
            ',' if !quoted => line.push(std::mem::take(&mut field)),
            '\r' if !quoted => {}
            '\n' if !quoted => {
                line.push(std::mem::take(&mut field));
                lines.push(std::mem::take(&mut line));
            }
            other => field.push(other),
        }
    }
    if !field.is_empty() || !line.is_empty() {
        line.push(field);
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quotes_hold_commas_line_ends_and_quotes() {
        let text = "a,b\r\n\"1,5\",\"x\ny\"\n,\"say \"\"no\"\"\"";
        assert_eq!(fields(text), [vec!["a", "b"], vec!["1,5", "x\ny"], vec!["", "say \"no\""]]);
    }

    #[test]
    #[should_panic(expected = "fields")]
    fn a_row_that_is_short_of_fields_is_no_table() {
        Table::parse("short", "a,b\n1\n");
    }

    #[test]
    #[should_panic(expected = "no rows")]
    fn a_table_without_rows_checks_nothing() {
        Table::parse("bare", "a,b\n");
    }

    #[test]
    #[should_panic(expected = "is not a number")]
    fn words_are_no_numbers() {
        Table::parse("words", "a\nx\n").rows().next().unwrap().number("a");
    }
}

//! Lines of several sizes side by side: which line of one is which of another.

/// A line of the merged text: for each size, which of its own lines it is.
pub(super) type Column = Vec<Option<usize>>;

/// Columns that hold every line of every size once, in each size's own order, with only lines of one key in a column.
///
/// Sizes join one after the other, each along the longest common sequence of keys with what is there.
pub(super) fn align(sizes: &[Vec<String>]) -> Vec<Column> {
    let mut columns: Vec<(String, Column)> = Vec::new();
    for (size, keys) in sizes.iter().enumerate() {
        let common = common(&columns.iter().map(|(key, _)| key).collect::<Vec<_>>(), &keys.iter().collect::<Vec<_>>());
        let mut joined = Vec::with_capacity(columns.len() + keys.len());
        let mut old = columns.into_iter();
        let mut line = 0;
        let mut at = 0;
        for (column, own) in common {
            // What only the others have comes first, then what only this size has.
            joined.extend(old.by_ref().take(column - at));
            joined.extend((line..own).map(|line| alone(&keys[line], size, line)));
            let (key, mut matched) = old.next().unwrap_or_else(|| alone(&keys[own], size, own));
            matched.resize(size, None);
            matched.push(Some(own));
            joined.push((key, matched));
            (at, line) = (column + 1, own + 1);
        }
        joined.extend(old);
        joined.extend((line..keys.len()).map(|line| alone(&keys[line], size, line)));
        columns = joined;
    }
    columns
        .into_iter()
        .map(|(_, mut column)| {
            column.resize(sizes.len(), None);
            column
        })
        .collect()
}

fn alone(key: &str, size: usize, line: usize) -> (String, Column) {
    let mut column = vec![None; size];
    column.push(Some(line));
    (key.to_owned(), column)
}

/// The places of a longest common sequence.
fn common(a: &[&String], b: &[&String]) -> Vec<(usize, usize)> {
    let wide = b.len() + 1;
    let mut best = vec![0_u32; (a.len() + 1) * wide];
    for i in (0..a.len()).rev() {
        for j in (0..b.len()).rev() {
            best[i * wide + j] = if a[i] == b[j] {
                best[(i + 1) * wide + j + 1] + 1
            } else {
                best[(i + 1) * wide + j].max(best[i * wide + j + 1])
            };
        }
    }
    let (mut i, mut j) = (0, 0);
    let mut places = Vec::new();
    while i < a.len() && j < b.len() {
        if a[i] == b[j] {
            places.push((i, j));
            (i, j) = (i + 1, j + 1);
        } else if best[(i + 1) * wide + j] >= best[i * wide + j + 1] {
            i += 1;
        } else {
            j += 1;
        }
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn keys(text: &str) -> Vec<String> {
        text.chars().map(String::from).collect()
    }

    #[test]
    fn what_is_alike_shares_a_column() {
        let columns = align(&[keys("abcd"), keys("acxd"), keys("bd")]);
        let shown: Vec<String> = columns
            .iter()
            .map(|column| column.iter().map(|line| line.map_or("-".into(), |line| line.to_string())).collect())
            .collect();
        assert_eq!(shown, ["00-", "1-0", "21-", "-2-", "331"]);
    }

    proptest! {
        #[test]
        fn every_line_is_there_once_in_its_order(texts in prop::collection::vec("[a-d]{0,12}", 1..5)) {
            let sizes: Vec<_> = texts.iter().map(|text| keys(text)).collect();
            let columns = align(&sizes);
            for (size, own) in sizes.iter().enumerate() {
                let lines: Vec<usize> = columns.iter().filter_map(|column| column[size]).collect();
                prop_assert_eq!(lines, (0..own.len()).collect::<Vec<_>>());
            }
            for column in columns {
                let shared: Vec<&String> =
                    column.iter().enumerate().filter_map(|(size, line)| line.map(|line| &sizes[size][line])).collect();
                prop_assert!(!shared.is_empty() && shared.windows(2).all(|pair| pair[0] == pair[1]));
            }
        }
    }
}

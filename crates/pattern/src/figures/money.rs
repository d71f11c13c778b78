//! Amounts of money: plain numbers. What is paid with stands nowhere.

use super::read::begins_number;
use super::{decimal, signed};
use hatwright_sizing::Money;

/// The most letters of a currency's code, and of a sign such as `US$`.
const MOST_LETTERS: usize = 3;

/// An amount with two decimals and nothing else: `4.50`.
///
/// ```
/// use hatwright_pattern::figures::money;
/// use hatwright_sizing::Money;
/// assert_eq!(money(Money::from_ticks(450)), "4.50");
/// assert_eq!(money(Money::from_ticks(450).times(300)), "1350.00");
/// ```
pub fn money(money: Money) -> String {
    signed(money.ticks() < 0, decimal(money.ticks().unsigned_abs(), 2))
}

/// What was typed, without the sign or code of a currency before or after it, or on both sides.
pub(super) fn without_currency(text: &str) -> &str {
    let text = text.trim();
    let before: usize = text.chars().take_while(|c| is_currency(*c)).map(char::len_utf8).sum();
    let (currency, rest) = text.split_at(before);
    let text = if currency.chars().count() > MOST_LETTERS {
        text
    } else {
        let shortened = ends_in_letter(currency);
        rest.strip_prefix('.').filter(|_| shortened).unwrap_or(rest)
    };
    // `4.50 kr.`
    let bare = text.strip_suffix('.').filter(|bare| ends_in_letter(bare)).unwrap_or(text);
    let after: usize = bare.chars().rev().take_while(|c| is_currency(*c)).map(char::len_utf8).sum();
    let (rest, currency) = bare.split_at(bare.len() - after);
    if currency.chars().count() > MOST_LETTERS { text } else { rest.trim() }
}

fn ends_in_letter(text: &str) -> bool {
    text.ends_with(|c: char| c.is_ascii_alphabetic())
}

/// Letters, the dollar, and every sign beyond ASCII that belongs to no number.
fn is_currency(c: char) -> bool {
    c.is_ascii_alphabetic() || c == '$' || !(c.is_ascii() || c.is_whitespace() || c == '−' || begins_number(c))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::{Misread, Units, parse_for};
    use hatwright_sizing::Quantity;

    fn price(text: &str) -> Result<i32, Misread> {
        parse_for(Quantity::BallPrice, text, Units::Inches)
    }

    #[test]
    fn a_currency_is_passed_over_wherever_it_stands() {
        for text in [
            "4.5",
            "4,50",
            "€4.50",
            "€ 4,50",
            "4,50 €",
            "4.50€",
            "$4.50",
            "US$ 4.50",
            "EUR 4.50",
            "4.50 eur",
            "4.50 kr",
            "4,50 kr.",
            "Fr. 4.50",
            "Fr.4.50",
            "4,50 zł",
            "£4½",
            "¥ 4.50",
            "₹4.50",
            "4.50 ₺",
            " € 4.50 EUR ",
        ] {
            assert_eq!(price(text), Ok(450), "{text}");
        }
        assert_eq!((price("0"), price("€.5"), price("12 345")), (Ok(0), Ok(50), Err(Misread::NotANumber)));
    }

    #[test]
    fn what_is_no_price_is_refused() {
        use Misread as M;
        for (text, why) in [
            ("", M::Empty),
            ("€", M::Empty),
            ("free", M::NotANumber),
            ("4.50 a ball", M::NotANumber),
            ("4.50 balls", M::NotANumber),
            ("-4.50", M::Negative),
            ("€ -4.50", M::Negative),
            ("−4.50 €", M::Negative),
            ("1.234,50 €", M::TwoMarks),
            ("50 g", M::Weight),
            ("80 m", M::Length),
            ("99999999", M::TooLong),
        ] {
            assert_eq!(price(text), Err(why), "{text}");
        }
    }

    #[test]
    fn an_amount_has_two_decimals_and_no_currency() {
        for (ticks, text) in [(0, "0.00"), (5, "0.05"), (450, "4.50"), (-450, "−4.50"), (i64::MAX, "92233720368547758.07")] {
            assert_eq!(money(Money::from_ticks(ticks)), text);
        }
        assert_eq!(money(Money::from_ticks(i64::MIN)), "−92233720368547758.08");
    }
}

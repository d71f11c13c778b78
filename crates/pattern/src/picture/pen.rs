//! Path data, written in whole tenths: no formatting of floating-point numbers, and relative steps without drift.

/// A place in user units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct At {
    pub x: f64,
    pub y: f64,
}

impl At {
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// So much of the way to another place.
    pub fn toward(self, other: Self, share: f64) -> Self {
        Self::new(self.x + (other.x - self.x) * share, self.y + (other.y - self.y) * share)
    }
}

/// Writes one path's data.
#[derive(Debug, Default)]
pub(super) struct Pen {
    data: String,
    at: (i32, i32),
    start: (i32, i32),
}

impl Pen {
    pub fn new() -> Self {
        Self::default()
    }

    pub fn is_empty(&self) -> bool {
        self.data.is_empty()
    }

    pub fn finish(self) -> String {
        self.data
    }

    pub fn go(&mut self, to: At) {
        let to = tenths(to);
        self.data.push('M');
        self.numbers(&[to.0, to.1]);
        self.at = to;
        self.start = to;
    }

    /// A straight line; nothing where it would be shorter than a tenth.
    pub fn line(&mut self, to: At) {
        let to = tenths(to);
        let (dx, dy) = (to.0 - self.at.0, to.1 - self.at.1);
        match (dx, dy) {
            (0, 0) => return,
            (_, 0) => self.step('h', &[dx]),
            (0, _) => self.step('v', &[dy]),
            _ => self.step('l', &[dx, dy]),
        }
        self.at = to;
    }

    /// A quadratic curve.
    pub fn curve(&mut self, control: At, to: At) {
        let (c, to) = (tenths(control), tenths(to));
        let (x, y) = self.at;
        self.step('q', &[c.0 - x, c.1 - y, to.0 - x, to.1 - y]);
        self.at = to;
    }

    /// The shorter arc of an upright ellipse; clockwise as seen, or not.
    pub fn arc(&mut self, rx: f64, ry: f64, clockwise: bool, to: At) {
        self.turned_arc(rx, ry, 0, clockwise, to);
    }

    /// The shorter arc of an ellipse whose first axis is turned clockwise by so many tenths of a degree.
    pub fn turned_arc(&mut self, rx: f64, ry: f64, turn: i32, clockwise: bool, to: At) {
        let to = tenths(to);
        let (dx, dy) = (to.0 - self.at.0, to.1 - self.at.1);
        if (dx, dy) == (0, 0) {
            return;
        }
        self.data.push('a');
        self.numbers(&[tenth(rx), tenth(ry)]);
        self.data.push(' ');
        self.numbers(&[turn]);
        self.data.push_str(if clockwise { " 0 1 " } else { " 0 0 " });
        self.numbers(&[dx, dy]);
        self.at = to;
    }

    /// A whole ellipse.
    pub fn ellipse(&mut self, centre: At, rx: f64, ry: f64, clockwise: bool) {
        let (left, right) = (At::new(centre.x - rx, centre.y), At::new(centre.x + rx, centre.y));
        self.go(left);
        self.arc(rx, ry, clockwise, right);
        self.arc(rx, ry, clockwise, left);
        self.close();
    }

    /// A closed figure of straight sides.
    pub fn polygon(&mut self, corners: &[At]) {
        if let Some((first, rest)) = corners.split_first() {
            self.go(*first);
            for corner in rest {
                self.line(*corner);
            }
            self.close();
        }
    }

    pub fn close(&mut self) {
        self.data.push('z');
        self.at = self.start;
    }

    fn step(&mut self, command: char, tenths: &[i32]) {
        self.data.push(command);
        self.numbers(tenths);
    }

    /// Numbers with as little between them as path data allows: a minus sign separates by itself.
    fn numbers(&mut self, tenths: &[i32]) {
        for (i, n) in tenths.iter().enumerate() {
            if i > 0 && *n >= 0 {
                self.data.push(' ');
            }
            push_tenths(&mut self.data, *n);
        }
    }
}

fn tenth(value: f64) -> i32 {
    libm::round(value * 10.0) as i32
}

fn tenths(at: At) -> (i32, i32) {
    (tenth(at.x), tenth(at.y))
}

/// Writes a number of tenths: −7 as `-.7`, 40 as `4`.
pub(super) fn push_tenths(out: &mut String, tenths: i32) {
    if tenths < 0 {
        out.push('-');
    }
    let n = tenths.unsigned_abs();
    let (whole, rest) = (n / 10, n % 10);
    if whole > 0 || rest == 0 {
        push_whole(out, whole);
    }
    if rest > 0 {
        out.push('.');
        out.push(digit(rest));
    }
}

pub(super) fn push_whole(out: &mut String, n: u32) {
    if n >= 10 {
        push_whole(out, n / 10);
    }
    out.push(digit(n % 10));
}

fn digit(n: u32) -> char {
    char::from(b'0' + (n % 10) as u8)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_exact() {
        let written = |n: i32| {
            let mut s = String::new();
            push_tenths(&mut s, n);
            s
        };
        assert_eq!([0, -7, 40, 123, -1005].map(written), ["0", "-.7", "4", "12.3", "-100.5"]);
    }

    #[test]
    fn relative_steps_do_not_drift() {
        let mut pen = Pen::new();
        pen.go(At::new(0.0, 0.0));
        for i in 1..=1000 {
            pen.line(At::new(f64::from(i) * 0.333, 1.0));
        }
        assert_eq!(pen.at, (3330, 10));
    }

    #[test]
    fn a_step_of_nothing_is_not_written() {
        let mut pen = Pen::new();
        pen.go(At::new(1.0, 1.0));
        pen.line(At::new(1.02, 0.98));
        pen.arc(5.0, 5.0, true, At::new(1.0, 1.0));
        assert_eq!(pen.finish(), "M1 1");
    }
}

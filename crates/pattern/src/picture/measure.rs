//! Reads path data back, for the tests: what box does a path fill?

/// Left, top, right, bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Extent(pub [f64; 4]);

impl Extent {
    pub const NONE: Self = Self([f64::MAX, f64::MAX, f64::MIN, f64::MIN]);

    fn take(&mut self, x: f64, y: f64) {
        let [a, b, c, d] = self.0;
        self.0 = [a.min(x), b.min(y), c.max(x), d.max(y)];
    }

    pub fn with(self, other: Self) -> Self {
        let mut all = self;
        all.take(other.0[0], other.0[1]);
        all.take(other.0[2], other.0[3]);
        all
    }

    pub fn lies_in(&self, width: i32, height: i32) -> bool {
        let [a, b, c, d] = self.0;
        a >= 0.0 && b >= 0.0 && c <= f64::from(width) && d <= f64::from(height)
    }
}

/// The extent of path data; of curves, that of points along them.
///
/// # Panics
/// At anything that path data does not allow, or that the pen does not write.
pub(super) fn extent(data: &str) -> Extent {
    let mut all = Extent::NONE;
    let (mut x, mut y) = (0.0, 0.0);
    let mut start = (0.0, 0.0);
    for (command, n) in commands(data) {
        match (command, n.as_slice()) {
            ('M', [a, b]) => {
                (x, y) = (*a, *b);
                start = (x, y);
            }
            ('l', [a, b]) => (x, y) = (x + a, y + b),
            ('h', [a]) => x += a,
            ('v', [b]) => y += b,
            ('q', [a, b, c, d]) => {
                for k in 1..8 {
                    let t = f64::from(k) / 8.0;
                    all.take(x + 2.0 * t * (1.0 - t) * a + t * t * c, y + 2.0 * t * (1.0 - t) * b + t * t * d);
                }
                (x, y) = (x + c, y + d);
            }
            ('a', [rx, ry, turn, large, sweep, dx, dy]) => {
                assert!(*large < 0.5, "the pen writes short arcs only");
                arc(&mut all, (x, y), (*rx, *ry), *turn, *sweep > 0.5, (*dx, *dy));
                (x, y) = (x + dx, y + dy);
            }
            ('z', []) => (x, y) = start,
            other => panic!("{other:?} in {data}"),
        }
        assert!(x.is_finite() && y.is_finite());
        all.take(x, y);
    }
    all
}

/// The places that path data goes to, in order, without those along its curves.
pub(super) fn nodes(data: &str) -> Vec<(f64, f64)> {
    let (mut x, mut y) = (0.0, 0.0);
    let step = |(command, n): (char, Vec<f64>)| {
        match (command, n.as_slice()) {
            ('M', [a, b]) => (x, y) = (*a, *b),
            ('h', [a]) => x += a,
            ('v', [b]) => y += b,
            (_, [.., a, b]) => (x, y) = (x + a, y + b),
            _ => return None,
        }
        Some((x, y))
    };
    commands(data).into_iter().filter_map(step).collect()
}

/// Points of an arc from its end points (SVG 1.1, appendix F.6.5).
fn arc(all: &mut Extent, (x, y): (f64, f64), (rx, ry): (f64, f64), turn: f64, clockwise: bool, (dx, dy): (f64, f64)) {
    if rx == 0.0 || ry == 0.0 {
        return;
    }
    // In the ellipse's own axes.
    let (sin, cos) = turn.to_radians().sin_cos();
    let (dx, dy) = (dx * cos + dy * sin, dy * cos - dx * sin);
    // On the unit circle the centre lies on the chord's bisector.
    let (ux, uy) = (dx / rx, dy / ry);
    let half = ux.hypot(uy) / 2.0;
    let scale = half.max(1.0);
    let away = (1.0 - (half / scale).powi(2)).max(0.0).sqrt();
    let side = if clockwise { 1.0 } else { -1.0 };
    let (cx, cy) = (ux / 2.0 / scale - side * away * uy / (2.0 * half), uy / 2.0 / scale + side * away * ux / (2.0 * half));
    let from = (-cy).atan2(-cx);
    let mut span = (uy / scale - cy).atan2(ux / scale - cx) - from;
    if clockwise && span < 0.0 {
        span += core::f64::consts::TAU;
    } else if !clockwise && span > 0.0 {
        span -= core::f64::consts::TAU;
    }
    for k in 0..=16 {
        let turn = from + span * f64::from(k) / 16.0;
        let (a, b) = ((cx + turn.cos()) * rx * scale, (cy + turn.sin()) * ry * scale);
        all.take(x + a * cos - b * sin, y + a * sin + b * cos);
    }
}

fn commands(data: &str) -> Vec<(char, Vec<f64>)> {
    let mut found: Vec<(char, Vec<f64>)> = Vec::new();
    let mut number = String::new();
    let flush = |number: &mut String, found: &mut Vec<(char, Vec<f64>)>| {
        if !number.is_empty() {
            let value: f64 = number.parse().unwrap_or_else(|e| panic!("{number}: {e}"));
            assert!((value * 10.0 - (value * 10.0).round()).abs() < 1e-6, "{number} has more than one decimal");
            found.last_mut().expect("a number before any command").1.push(value);
            number.clear();
        }
    };
    for c in data.chars() {
        match c {
            'a'..='z' | 'A'..='Z' => {
                flush(&mut number, &mut found);
                found.push((c, Vec::new()));
            }
            ' ' => flush(&mut number, &mut found),
            '-' => {
                flush(&mut number, &mut found);
                number.push(c);
            }
            _ => number.push(c),
        }
    }
    flush(&mut number, &mut found);
    found
}

#[test]
fn a_lower_half_ellipse_is_measured() {
    let Extent(found) = extent("M10 20a30 12.5 0 0 0 60 0z");
    assert!(found.iter().zip([10.0, 20.0, 70.0, 32.5]).all(|(a, b)| (a - b).abs() < 0.01), "{found:?}");
}

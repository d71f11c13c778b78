//! Counts: they suit the stripes, the wedges and the wearer, and so do their neighbours.

use crate::planned::{PLANNED, Planned, Sizes, TICK, ensure, every_hat, near, repeat, sizes, value};
use hatwright_sizing::{
    Chosen, HatSpec, Length, Quantity, Refusal, Remark, Sex, Size, Stretch, Swatch, Unsuited, head_size, plan, share_served,
};

#[test]
fn the_counts_suit_the_stripes_and_the_wearer() {
    every_hat(|Planned { hat, spec, .. }| {
        let Sizes { w, band_row, .. } = sizes(spec);
        let size = &hat.size;
        let (r, n) = (size.rows.get(), size.stitches.get());
        let at = || format!("{size:?}");
        ensure(r.is_multiple_of(repeat(&spec.band.stripes)) && r.is_multiple_of(2), at)?;
        ensure(near(size.girth.cm(), f64::from(n) * w, TICK) && near(size.band_girth.cm(), f64::from(r) * band_row, TICK), at)?;
        let stretch = |of: Stretch, usual: Quantity| match of {
            Stretch::Usual => value(usual),
            Stretch::Measured(ratio) => ratio.value(),
        };
        let body = f64::from(n) * w * stretch(spec.body_stretch, Quantity::BodyStretch);
        let band = f64::from(r) * band_row * stretch(spec.band.stretch, Quantity::BandStretch);
        ensure(near(size.reach.cm(), body.min(band), TICK), || format!("{size:?}: {body} {band}"))?;
        let head = head_size(&spec.head).girth;
        ensure(size.reaches && size.reach >= head && hat.head.girth == head, || format!("{size:?}: {head:?}"))?;
        ensure(near(size.ease.value(), 1.0 - f64::from(n) * w / head.cm(), 1e-4), at)?;
        // A count each row end where the gauges agree to 8 %; otherwise girths that agree to a stitch and a twentieth.
        if (band_row / w - 1.0).abs() <= 0.08 {
            return ensure(r == n, at);
        }
        let apart = (f64::from(n) * w - f64::from(r) * band_row).abs();
        ensure(apart <= 1.5 * w + f64::from(r) * band_row / 20.0, || format!("{apart} cm apart: {size:?}"))
    });
}

/// No other count that satisfies the stripes and reaches the wearer is nearer the girth that was asked for, but for the price of an
/// adjustment round (0.4 cm).
#[test]
fn the_counts_are_the_nearest() {
    every_hat(|Planned { hat, .. }| {
        // A band of its own girth counts half where it is the farther one.
        let off = |size: &Size| {
            let miss = |girth: Length| (girth.cm() - hat.wanted_girth.cm()).abs();
            let beyond = if size.rows.get() == size.stitches.get() { 0.0 } else { miss(size.band_girth) - miss(size.girth) };
            miss(size.girth) + 0.5 * beyond.max(0.0)
        };
        let others = hat.neighbours.iter().filter(|n| n.reaches && n.girth.cm() <= 1.02 * hat.head.girth.cm());
        let spare = value(Quantity::PriceAdjust) + 2.0 * TICK;
        for other in others {
            let worse = if other.adjustment.get() == 0 && hat.size.adjustment.get() > 0 { 0.0 } else { spare };
            ensure(off(&hat.size) <= off(other) + worse, || format!("{:?} not {other:?}", hat.size))?;
        }
        Ok(())
    });
}

#[test]
fn neighbours_satisfy_the_same_rules() {
    let mut planned = 0;
    let mut refused = 0;
    for Planned { seed, spec, hat } in PLANNED.iter() {
        let at = || format!("seed {seed}: {:?} beside {:?}", hat.neighbours, hat.size);
        let all = &hat.neighbours;
        assert!(!all.is_empty() && all.len() <= 4, "{}", at());
        assert!(all.is_sorted_by(|a, b| a.rows < b.rows) && all.iter().all(|n| n.rows != hat.size.rows), "{}", at());
        for size in all {
            let r = size.rows.get();
            assert!(r.is_multiple_of(repeat(&spec.band.stripes)) && r.is_multiple_of(2), "{}", at());
            assert_eq!(size.reaches, size.reach >= hat.head.girth, "{}", at());
        }
        // Taking one gives a hat of those counts, or a reason.
        if seed % 10 == 0 {
            for size in all {
                let chosen = Some(Chosen { rows: size.rows, stitches: size.stitches });
                match plan(&HatSpec { chosen, ..spec.clone() }) {
                    Ok(taken) if taken.size.rows == size.rows => {
                        assert_eq!(taken.size, *size, "{}", at());
                        assert!(!taken.remarks.iter().any(|r| matches!(r, Remark::ChosenDropped { .. })), "{}", at());
                        planned += 1;
                    }
                    Ok(taken) => {
                        let loose = size.girth.cm() > 1.1 * hat.head.girth.cm();
                        let why = taken.remarks.iter().find_map(|r| match r {
                            Remark::ChosenDropped { why, .. } => Some(*why),
                            _ => None,
                        });
                        let expected = if size.reaches { Unsuited::Loose(size.girth) } else { Unsuited::Tight(size.reach) };
                        assert!(why == Some(expected) && (loose || !size.reaches), "{size:?} dropped for {why:?}, {}", at());
                        refused += 1;
                    }
                    Err(Refusal::BandTooTall { .. }) => refused += 1,
                    Err(other) => panic!("{other:?}: {}", at()),
                }
            }
        }
    }
    println!("{planned} neighbours taken, {refused} refused");
    assert!(planned > 1_000 && refused > 100, "{planned} {refused}");
}

#[test]
fn whom_it_fits_is_whom_it_serves() {
    every_hat(|Planned { hat, .. }| {
        let (fit, size) = (&hat.fit, &hat.size);
        ensure(near(fit.least.cm(), 0.98 * size.girth.cm(), TICK) && fit.most == size.reach, || format!("{fit:?}"))?;
        let Some((from, to)) = fit.ages else { return Ok(()) };
        ensure(0.0 <= from && from <= to && to <= 110.0, || format!("{fit:?}"))?;
        for years in [from, to] {
            let share = share_served(years, Sex::Unknown, fit.least, fit.most);
            ensure(share >= 0.8, || format!("{fit:?}: {share} at {years}"))?;
        }
        Ok(())
    });
}

/// Half a stitch in the swatch is carried into the girth.
#[test]
fn the_girth_is_as_sure_as_its_swatch() {
    every_hat(|Planned { hat, spec, .. }| {
        let n = f64::from(hat.size.stitches.get());
        match spec.swatch {
            Swatch::YarnWeight(_) => ensure(hat.girth_range.is_none() && hat.gauge.estimated, || format!("{:?}", hat.gauge)),
            Swatch::Counted { stitches, width, .. } => {
                let girth = |counted: f64| n * width.cm() / counted;
                let (low, high) = hat.girth_range.ok_or("no range")?;
                let holds =
                    near(low.cm(), girth(stitches.value() + 0.5), TICK) && near(high.cm(), girth(stitches.value() - 0.5), TICK);
                ensure(holds, || format!("{low:?} {high:?} of {:?}", hat.size))
            }
        }
    });
}

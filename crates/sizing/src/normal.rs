//! The normal distribution: the share of heads below a girth, and the girth below which a share lies.

use core::f64::consts::FRAC_1_SQRT_2;

/// Share of a standard normal distribution below `z` standard deviations, 0 to 1. Not a number gives not a number.
///
/// ```
/// use hatwright_sizing::normal_share_below;
/// assert_eq!(normal_share_below(0.0), 0.5);
/// assert!((normal_share_below(1.0) - 0.841_344_746).abs() < 1e-9);
/// ```
pub fn normal_share_below(z: f64) -> f64 {
    0.5 * libm::erfc(-z * FRAC_1_SQRT_2)
}

/// Standard deviations from the mean below which a share `p` of a normal distribution lies; the opposite of [`normal_share_below`].
///
/// `p` is a share above 0 and below 1. At 0 and less it is −∞, at 1 and more +∞, and not a number gives not a number.
///
/// Source: M. J. Wichura, "Algorithm AS 241: The Percentage Points of the Normal Distribution", Applied Statistics 37 (1988),
/// 477–484, routine PPND16: about one part in 10¹⁶.
///
/// ```
/// use hatwright_sizing::normal_quantile;
/// assert_eq!(normal_quantile(0.5), 0.0);
/// assert!((normal_quantile(0.975) - 1.959_963_985).abs() < 1e-9);
/// ```
pub fn normal_quantile(p: f64) -> f64 {
    if p <= 0.0 {
        return f64::NEG_INFINITY;
    }
    if p >= 1.0 {
        return f64::INFINITY;
    }
    let q = p - 0.5;
    if q.abs() <= 0.425 {
        return q * CENTRE.at(0.180_625 - q * q);
    }
    let tail = if q < 0.0 { p } else { 1.0 - p };
    let r = libm::sqrt(-libm::log(tail));
    let z = if r <= 5.0 { NEAR_TAIL.at(r - 1.6) } else { FAR_TAIL.at(r - 5.0) };
    if q < 0.0 { -z } else { z }
}

/// A ratio of two polynomials, coefficients from the constant upward.
struct Rational {
    above: [f64; 8],
    below: [f64; 8],
}

impl Rational {
    fn at(&self, x: f64) -> f64 {
        let polynomial = |c: &[f64; 8]| c.iter().rev().fold(0.0, |sum, c| sum * x + c);
        polynomial(&self.above) / polynomial(&self.below)
    }
}

#[expect(clippy::excessive_precision, reason = "digits as published")]
static CENTRE: Rational = Rational {
    above: [
        3.387_132_872_796_366_608_0,
        1.331_416_678_917_843_774_5e2,
        1.971_590_950_306_551_442_7e3,
        1.373_169_376_550_946_112_5e4,
        4.592_195_393_154_987_145_7e4,
        6.726_577_092_700_870_085_3e4,
        3.343_057_558_358_812_810_5e4,
        2.509_080_928_730_122_672_7e3,
    ],
    below: [
        1.0,
        4.231_333_070_160_091_125_2e1,
        6.871_870_074_920_579_083_0e2,
        5.394_196_021_424_751_107_7e3,
        2.121_379_430_158_659_586_7e4,
        3.930_789_580_009_271_061_0e4,
        2.872_908_573_572_194_267_4e4,
        5.226_495_278_852_854_561_0e3,
    ],
};

#[expect(clippy::excessive_precision, reason = "digits as published")]
static NEAR_TAIL: Rational = Rational {
    above: [
        1.423_437_110_749_683_577_34,
        4.630_337_846_156_545_295_90,
        5.769_497_221_460_691_405_50,
        3.647_848_324_763_204_605_04,
        1.270_458_252_452_368_382_58,
        2.417_807_251_774_506_117_70e-1,
        2.272_384_498_926_918_458_33e-2,
        7.745_450_142_783_414_076_40e-4,
    ],
    below: [
        1.0,
        2.053_191_626_637_758_821_87,
        1.676_384_830_183_803_849_40,
        6.897_673_349_851_000_045_50e-1,
        1.481_039_764_274_800_745_90e-1,
        1.519_866_656_361_645_719_66e-2,
        5.475_938_084_995_344_946_00e-4,
        1.050_750_071_644_416_843_24e-9,
    ],
};

#[expect(clippy::excessive_precision, reason = "digits as published")]
static FAR_TAIL: Rational = Rational {
    above: [
        6.657_904_643_501_103_777_20,
        5.463_784_911_164_114_369_90,
        1.784_826_539_917_291_335_80,
        2.965_605_718_285_048_912_30e-1,
        2.653_218_952_657_612_309_30e-2,
        1.242_660_947_388_078_438_60e-3,
        2.711_555_568_743_487_578_15e-5,
        2.010_334_399_292_288_132_65e-7,
    ],
    below: [
        1.0,
        5.998_322_065_558_879_376_90e-1,
        1.369_298_809_227_358_053_10e-1,
        1.487_536_129_085_061_485_25e-2,
        7.868_691_311_456_132_591_00e-4,
        1.846_318_317_510_054_681_80e-5,
        1.421_511_758_316_445_888_70e-7,
        2.044_263_103_389_939_785_64e-15,
    ],
};

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, published: f64, within: f64) {
        assert!((found - published).abs() <= within, "{found} is not {published}");
    }

    /// Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.1: P(x).
    #[test]
    fn shares_agree_with_the_handbook() {
        let table = [
            (0.5, 0.691_462_461_274_013),
            (1.0, 0.841_344_746_068_543),
            (1.5, 0.933_192_798_731_142),
            (2.0, 0.977_249_868_051_821),
            (3.0, 0.998_650_101_968_370),
        ];
        for (z, share) in table {
            near(normal_share_below(z), share, 1e-15);
            near(normal_share_below(-z), 1.0 - share, 1e-15);
        }
    }

    /// Percentage points as statistical handbooks print them (Abramowitz and Stegun, section 26.2, x in terms of P), to nine decimals.
    #[test]
    fn quantiles_agree_with_the_handbook() {
        let table = [
            (0.75, 0.674_489_750),
            (0.90, 1.281_551_566),
            (0.95, 1.644_853_627),
            (0.97, 1.880_793_608),
            (0.975, 1.959_963_985),
            (0.99, 2.326_347_874),
            (0.995, 2.575_829_304),
            (0.999, 3.090_232_306),
        ];
        for (p, z) in table {
            near(normal_quantile(p), z, 5.1e-10);
            near(normal_quantile(1.0 - p), -z, 5.1e-10);
        }
    }

    /// The paper's own three check values, one for each of its three ranges.
    #[test]
    fn quantiles_agree_with_the_papers_check_values() {
        near(normal_quantile(0.25), -0.674_489_750_196_081_7, 1e-15);
        near(normal_quantile(0.001), -3.090_232_306_167_814, 1e-14);
        near(normal_quantile(1e-20), -9.262_340_089_798_408, 1e-14);
    }

    #[test]
    fn quantile_and_share_undo_each_other() {
        for thousandths in 1..1000 {
            let p = f64::from(thousandths) / 1000.0;
            near(normal_share_below(normal_quantile(p)), p, 1e-15);
        }
    }

    #[test]
    fn the_ends_are_infinite_and_nothing_panics() {
        for p in [0.0, -1.0, f64::NEG_INFINITY] {
            assert!(normal_quantile(p).is_infinite() && normal_quantile(p) < 0.0);
        }
        for p in [1.0, 2.0, f64::INFINITY] {
            assert!(normal_quantile(p).is_infinite() && normal_quantile(p) > 0.0);
        }
        assert!(normal_quantile(f64::NAN).is_nan());
        assert!(normal_quantile(f64::MIN_POSITIVE).is_finite());
        near(normal_share_below(f64::INFINITY), 1.0, 0.0);
        near(normal_share_below(f64::NEG_INFINITY), 0.0, 0.0);
    }
}

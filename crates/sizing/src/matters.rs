//! What of a spec matters for its style: the rest is kept, so that going back to another style loses nothing, and is not asked for.

use crate::{BandKind, Begun, Closing, Extra, Fabric, HatSpec, Head, Layout, Length, Quantity, SideTop, Style, Topper, Way};

impl HatSpec {
    /// How the band is worked, if this style has one: a brimmed hat and one worked sideways have none, an ear warmer is nothing else.
    pub const fn band_kind(&self) -> BandKind {
        match (self.style, self.band.kind) {
            (Style::Brimmed | Style::Sideways, _) => BandKind::None,
            (Style::EarWarmer, BandKind::None) => BandKind::Sideways,
            (_, kind) => kind,
        }
    }

    /// The band's fabric. That of an ear warmer without a band of its own is the usual rib.
    pub const fn band_fabric(&self) -> Fabric {
        if self.band.fabric.bands(self.band_kind()) { self.band.fabric } else { Fabric::usual_for(self.band_kind()) }
    }

    /// What is folded up. Only a band, or a sideways hat's edge, can be, and not under flaps, nor of a tam or an ear warmer.
    pub const fn fold(&self) -> Length {
        match (self.style, self.band_kind()) {
            (Style::Sideways, _) | (Style::Fitted | Style::Slouch | Style::Stocking, BandKind::Sideways | BandKind::Around) => {
                self.band.fold
            }
            _ => Length::ZERO,
        }
    }

    /// Where the work begins.
    pub const fn begins(&self) -> Begun {
        if self.style.is_round() { self.begun } else { Begun::Band }
    }

    /// How the top is closed: a hat begun at the crown, a tam, a tail and a brimmed hat are not gathered.
    pub const fn closes(&self) -> Closing {
        match (self.begins(), self.style) {
            (Begun::Band, Style::Fitted | Style::Slouch | Style::EarFlap) => self.closing,
            _ => Closing::Drawn,
        }
    }

    /// How decreases lie. A cone narrows too slowly for wedges.
    pub const fn lays(&self) -> Layout {
        match self.style {
            Style::Stocking => Layout::Spread,
            _ => self.layout,
        }
    }

    /// The pom-pom or the tassel, if this style can carry one.
    pub const fn wears(&self) -> Option<Topper> {
        match self.style {
            Style::EarWarmer | Style::Brimmed => None,
            _ => self.topper,
        }
    }

    /// How rounds follow one another; a spiral where there are none.
    pub const fn goes(&self) -> Way {
        match (self.style, self.band_kind()) {
            (Style::Sideways, _) | (Style::EarWarmer, BandKind::Sideways) => Way::Spiral,
            _ => self.way,
        }
    }

    /// Whether a quantity matters for this hat, so that it is asked for.
    ///
    /// ```
    /// use hatwright_sizing::{HatSpec, Quantity, Style};
    /// let tam = HatSpec { style: Style::Tam, ..HatSpec::default() };
    /// assert!(tam.asks(Quantity::TamAcross) && !tam.asks(Quantity::Tail) && !tam.asks(Quantity::Fold));
    /// ```
    pub fn asks(&self, q: Quantity) -> bool {
        use Quantity as Q;
        let (style, band) = (self.style, self.band_kind());
        match q {
            Q::SlouchWider | Q::SlouchLonger => style == Style::Slouch,
            Q::Tail | Q::Taper | Q::TailStitches => style == Style::Stocking,
            Q::TamAcross => style == Style::Tam,
            Q::FlapLength | Q::FlapTie => style == Style::EarFlap,
            Q::Brim | Q::Flare => style == Style::Brimmed,
            Q::SideWedges => style == Style::Sideways && self.shape.side_top == SideTop::ShortRows,
            Q::BandHeight => band == BandKind::Sideways,
            Q::BandRounds => band == BandKind::Around,
            Q::BandStretch | Q::BandHook | Q::StripeRows => band != BandKind::None,
            Q::BandSwatchStitches | Q::BandSwatchWidth | Q::BandSwatchRows | Q::BandSwatchLength => {
                band != BandKind::None && self.band.swatch.is_some()
            }
            Q::Fold => {
                style == Style::Sideways
                    || (band != BandKind::None && matches!(style, Style::Fitted | Style::Slouch | Style::Stocking))
            }
            Q::StripeRounds => style != Style::EarWarmer,
            Q::Wedges => style.is_round() && matches!(self.lays(), Layout::Wedges(_)),
            Q::Gather => style.is_round() && matches!(self.closes(), Closing::Gathered(_)),
            Q::PomPom | Q::Tassel => self.wears().is_some_and(|topper| topper.kind.quantity() == q),
            Q::Fullness => self.wears().is_some(),
            Q::Chance => matches!(self.extra, Extra::Chance(_)),
            Q::Margin => matches!(self.extra, Extra::Share(_)),
            Q::Percentile => !matches!(self.head, Head::Measured(_)),
            Q::OverTop => !matches!(style, Style::EarWarmer | Style::Tam),
            _ => true,
        }
    }
}

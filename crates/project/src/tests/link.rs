//! Links.

use super::id;
use crate::checksum::checksum;
use crate::link::LONGEST_LINK;
use crate::strategies::arb_project;
use crate::{
    BadLink, ColourName, Designer, Hand, Linked, Project, ProjectId, Rgb, SizeOf, Units, example, from_link, samples, to_link,
};
use data_encoding::BASE64URL_NOPAD;
use hatwright_sizing::{
    Age, Ball, Breach, Build, Colour, Count, Day, Extra, Head, Instead, Kept, KeptRounds, KeptUse, Length, Mass, Money, PLANNER,
    Quantity, Ratio, Rows, Sex, SideTop, Stitches, Unravelled, UseWay, WeighedSwatch, YarnUse, YarnWeight, head_size,
};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(10_000))]

    #[test]
    fn a_link_opens_to_an_equal_hat(project in arb_project()) {
        let link = to_link(&project);
        prop_assert!(link.len() <= LONGEST_LINK);
        let Project { name, units, terms, hand, colours, designer, mut sizes, mut spec, .. } = project;
        for head in sizes.iter_mut().map(|size| &mut size.head).chain([&mut spec.head]) {
            if matches!(head, Head::ByDates { .. }) {
                *head = Head::Measured(head_size(head).girth);
            }
        }
        (spec.kept, spec.instead, spec.yarn_use.hat) = (None, None, None);
        prop_assert_eq!(from_link(&link), Ok(Linked { planner: PLANNER, name, units, terms, hand, colours, designer, sizes, spec }));
    }
}

proptest! {
    #[test]
    fn any_text_is_an_error(text in any::<String>()) {
        prop_assert!(from_link(&text).is_err());
    }

    /// Past the checksum, where anything may stand: an error or a hat that passes its check, never a panic.
    #[test]
    fn any_sealed_bytes_are_an_error_or_a_hat(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        for version in *b"1234" {
            if let Ok(linked) = from_link(&sealed(version, &bytes)) {
                prop_assert_eq!(linked.into_project(id("rowingclub01"), 0).check(), Ok(()));
            }
        }
    }

    #[test]
    fn a_sealed_change_is_an_error_or_a_hat(project in arb_project(), at in any::<prop::sample::Index>(), byte: u8) {
        let mut bytes = unsealed(&to_link(&project));
        let at = at.index(bytes.len());
        bytes[at] = byte;
        if let Ok(linked) = from_link(&sealed(b'4', &bytes)) {
            prop_assert_eq!(linked.into_project(id("rowingclub01"), 0).check(), Ok(()));
        }
    }
}

#[test]
fn every_single_changed_character_is_found() {
    let link = to_link(&hat());
    let others = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_ .#%)é";
    for (at, was) in link.char_indices() {
        for other in others.chars().filter(|&other| other != was) {
            let changed = format!("{}{other}{}", &link[..at], &link[at + 1..]);
            let error = from_link(&changed).unwrap_err();
            assert!(at == 0 || error == BadLink::Damaged, "{changed}: {error:?}");
        }
    }
}

#[test]
fn every_truncation_is_found() {
    let link = to_link(&hat());
    assert_eq!(from_link(""), Err(BadLink::Empty));
    for end in 1..link.len() {
        assert_eq!(from_link(&link[..end]), Err(BadLink::Damaged), "cut at {end}");
        assert!(from_link(&link[end..]).is_err(), "cut before {end}");
    }
}

#[test]
fn what_chat_programs_put_around_it_is_passed_over() {
    let link = to_link(&hat());
    let opened = from_link(&link);
    assert!(opened.is_ok());
    for around in
        [format!("#{link}"), format!("  {link}\n"), format!("{link}."), format!("#{link})."), format!("{link}\u{201d} !")]
    {
        assert_eq!(from_link(&around), opened, "{around}");
    }
    for nothing in ["", " ", "#", "# ", "#."] {
        assert_eq!(from_link(nothing), Err(BadLink::Empty), "{nothing:?}");
    }
    for damaged in [format!("{link}A"), format!("{link}*"), link.replace('A', "%41"), format!("{} {}", &link[..40], &link[40..])]
    {
        assert!(from_link(&damaged).is_err(), "{damaged}");
    }
}

#[test]
fn other_fragments_are_not_ours() {
    for other in ["main", "#pattern", "hat=1", "é", "-1", "\u{0}"] {
        assert_eq!(from_link(other), Err(BadLink::NotOurs), "{other}");
    }
    assert_eq!(from_link(&"4".repeat(LONGEST_LINK + 1)), Err(BadLink::NotOurs));
    assert_eq!(from_link(&"4".repeat(LONGEST_LINK)), Err(BadLink::Damaged));
    assert_eq!(from_link("4"), Err(BadLink::Damaged));
    assert_eq!(from_link(&sealed(b'4', &[])), Err(BadLink::Damaged));
}

#[test]
fn a_newer_link_is_told_from_a_damaged_one() {
    assert_eq!(from_link(&sealed(b'5', b"anything")), Err(BadLink::Newer));
    let link = to_link(&hat());
    assert_eq!(from_link(&format!("5{}", &link[1..])), Err(BadLink::Damaged));
}

#[test]
fn whole_links_are_still_checked() {
    let mut tall = hat();
    tall.spec.band.fold = Length::from_cm(41.0);
    assert_eq!(from_link(&to_link(&tall)), Err(BadLink::OutOfRange(Breach::OutOfRange(Quantity::Fold, 41_000))));
    let mut pale = hat();
    pale.colours.pop();
    assert_eq!(from_link(&to_link(&pale)), Err(BadLink::OutOfRange(Breach::WrongCount)));
    let mut none = hat();
    none.spec.body_stripes[0].colour = Colour(255);
    let error = from_link(&to_link(&none)).unwrap_err();
    assert_eq!(
        error.to_string(),
        "This link is whole, but there is no such hat: it uses colour number 256, which it does not have."
    );
    let longer = [unsealed(&to_link(&hat())), vec![0]].concat();
    assert_eq!(from_link(&sealed(b'4', &longer)), Err(BadLink::Damaged), "nothing may follow the hat");
}

/// A list that claims to be four thousand million long.
#[test]
fn a_claimed_length_is_not_believed() {
    let claim = [1, 0, 0, 0, 0xff, 0xff, 0xff, 0xff, 0x0f];
    assert_eq!(from_link(&sealed(b'4', &claim)), Err(BadLink::Damaged));
}

#[test]
fn notes_identity_revision_and_time_stay_at_home() {
    let kept = Project { id: id("rowingclub09"), revision: 40, notes: "For the harbour race".to_owned(), changed_ms: 1, ..hat() };
    assert_eq!(to_link(&kept), to_link(&hat()));
    let opened = from_link(&to_link(&kept)).unwrap().into_project(id("rowingclub05"), 9);
    assert_eq!(opened, Project { id: id("rowingclub05"), changed_ms: 9, ..hat() });
}

/// A birthday and the rounds of a hat in progress are nobody's business: the girth that the days give is.
#[test]
fn a_link_tells_no_birthday() {
    let mut hat = hat();
    let (born, worn) = (Day(18_000), Day(18_000 + 1_461));
    hat.spec.head = Head::ByDates { born, worn, sex: Sex::Unknown, build: Build::Average };
    let rounds = vec![KeptRounds { after: 56, lead: 0, times: 9 }];
    hat.spec.kept = Some(Kept { planner: 2, rows: Rows::new(56), stitches: Stitches::new(56), rounds });
    let told = from_link(&to_link(&hat)).unwrap().spec;
    assert_eq!(told.head, Head::Measured(head_size(&hat.spec.head).girth));
    assert_eq!(told.kept, None);
    hat.spec.head = told.head;
    hat.spec.kept = None;
    assert_eq!(told, hat.spec);
}

#[test]
fn links_are_short() {
    assert!(to_link(&hat()).len() <= 200, "{}", to_link(&hat()).len());
    // What is not known of its yarn costs next to nothing.
    let mut bare = hat();
    bare.spec.balls.iter_mut().for_each(|ball| *ball = Ball::of(ball.yarn));
    bare.colours.iter_mut().for_each(|colour| colour.yarn.clear());
    assert!(to_link(&bare).len() <= 170, "{}", to_link(&bare).len());
    for sample in samples(core::array::from_fn(|i| ProjectId::from_bits(i as u64))) {
        assert!(to_link(&sample).len() <= 240, "{}: {}", sample.name, to_link(&sample).len());
    }
    // Every measure of every style changed, and all that may be left out put in.
    let mut changed = hat();
    for (q, _) in hat().spec.numbers().into_iter().filter(|(q, _)| SHAPES.contains(q)) {
        assert!(changed.spec.set_number(q, 0, q.row().most - 1));
    }
    changed.spec.over_top = Some(Length::from_cm(31.0));
    changed.spec.hook = Some(Length::from_ticks(500));
    changed.spec.band.hook = Some(Length::from_ticks(450));
    changed.spec.lining = Length::from_ticks(300);
    changed.spec.shape.side_top = SideTop::ShortRows;
    assert!(to_link(&changed).len() <= 290, "{}", to_link(&changed).len());
    // In letters of one byte, and in those of four.
    for (letter, most) in [("m", 3000), ("🧶", 6000)] {
        let longest = longest(&changed, letter);
        let link = to_link(&longest);
        assert!(link.len() < most, "{letter}: {}", link.len());
        let told = from_link(&link).unwrap();
        assert_eq!((told.name, told.colours), (letter.repeat(80), longest.clone().tidy().colours));
    }
    // With the designer's words, as long as they may be, and every size.
    for (letter, most) in [("m", 10_000), ("🧶", 31_000)] {
        let mut longest = longest(&changed, letter);
        let text = letter.repeat(3_000);
        let [introduction, credit, edition, date, tested, care] = [(); 6].map(|()| text.clone());
        longest.designer = Designer { introduction, credit, edition, date, tested, care };
        longest.sizes = vec![SizeOf { name: text, head: Head::Measured(Length::from_cm(60.0)) }; Project::MOST_SIZES];
        let link = to_link(&longest);
        assert!(link.len() < most.min(LONGEST_LINK), "{letter}: {}", link.len());
        let (told, longest) = (from_link(&link).unwrap(), longest.tidy());
        assert_eq!((told.designer, told.sizes), (longest.designer, longest.sizes));
    }
}

/// Texts as long as they may be, unlike from colour to colour, and all that can be known of six yarns.
fn longest(changed: &Project, letter: &str) -> Project {
    let mut longest = changed.clone();
    longest.name = letter.repeat(100);
    let most = |q: Quantity, i: i32| q.row().most - i;
    let ball = |i| Ball {
        yarn: Count::from_ticks(most(Quantity::BallYarn, i)),
        grams: Some(Mass::from_ticks(most(Quantity::BallGrams, i))),
        weight: YarnWeight::new(i as u8).ok(),
        owned: Count::from_ticks(most(Quantity::BallsOwned, i)),
        price: Some(Money::from_ticks(most(Quantity::BallPrice, i).into())),
    };
    longest.spec.balls = (0..6).map(ball).collect();
    let (stitches, grams, length) = (Stitches::new(2_000), Mass::from_grams(999.0), Length::from_cm(4_999.0));
    longest.spec.yarn_use = YarnUse {
        weighed: Some(WeighedSwatch { colour: Colour(1), band: true, stitches, grams }),
        unravelled: Some(Unravelled { band: true, stitches, length }),
        kept: Some(KeptUse { factor: Ratio::of(4.9), doubt: Ratio::of(0.99), way: UseWay::Hat }),
        hat: None,
        scale: Mass::from_grams(49.0),
        swatch_kept: true,
    };
    longest.spec.body_stripes = vec![longest.spec.body_stripes[0]; 12];
    longest.spec.band.stripes = vec![longest.spec.band.stripes[0]; 12];
    let yarns = (0..6).map(|i| ColourName {
        name: letter.repeat(50),
        hex: Rgb::new(0, 0, 0),
        yarn: format!("{i}{}", letter.repeat(59)),
        lot: format!("{i}{}", letter.repeat(23)),
    });
    longest.colours = yarns.collect();
    longest
}

/// What the shop needs is told; what is weighed up at home, and what a finished hat weighs, is not.
#[test]
fn a_link_tells_what_the_shop_needs() {
    let mut hat = hat();
    hat.colours[1].lot = "B7 0412".to_owned();
    hat.spec.balls[0].owned = Count::from_ticks(150);
    hat.spec.balls[1].price = Some(Money::from_ticks(450));
    hat.spec.extra = Extra::Share(Ratio::of(0.2));
    let here = to_link(&hat);
    let told = from_link(&here).unwrap();
    assert_eq!((told.colours, told.spec), (hat.colours.clone(), hat.spec.clone()));
    hat.spec.yarn_use.hat = Some(Mass::from_grams(61.0));
    hat.spec.instead = Some(Instead { yarn: Count::whole(65), grams: None, weight: None, swatch: None });
    assert_eq!(to_link(&hat), here);
}

/// A fact that is told twice, of a colour that is not there, or of each colour where it is one of all, is no link of ours.
#[test]
fn one_hat_has_one_link() {
    let mut hat = hat();
    hat.spec.balls.iter_mut().for_each(|ball| *ball = Ball::of(ball.yarn));
    hat.colours.iter_mut().for_each(|colour| colour.yarn.clear());
    let mut bytes = unsealed(&to_link(&hat));
    // The lists of facts and of what is told of the pattern are the last of a link, and empty.
    assert_eq!((bytes.pop(), bytes.pop()), (Some(0), Some(0)));
    let with = |facts: &[u8]| from_link(&sealed(b'4', &[&bytes[..], facts, &[0]].concat()));
    // So many facts, and for each a colour or 255 for all, a kind (2: grams, 4: owned) and a zigzag number of hundredths.
    let grams = |facts: &[u8]| with(facts).map(|told| told.spec.balls.iter().map(|b| b.grams).collect::<Vec<_>>());
    assert_eq!(grams(&[0]), Ok(vec![None; 2]));
    assert_eq!(grams(&[1, 255, 2, 0x90, 0x4e]), Ok(vec![Some(Mass::from_ticks(5_000)); 2]));
    assert_eq!(grams(&[1, 1, 2, 0x90, 0x4e]), Ok(vec![None, Some(Mass::from_ticks(5_000))]));
    assert_eq!(grams(&[2, 0, 2, 0x90, 0x4e, 1, 2, 0x90, 0x4e]), Err(BadLink::Damaged), "one fact of all colours");
    assert_eq!(grams(&[2, 1, 2, 0x90, 0x4e, 1, 2, 0x90, 0x4e]), Err(BadLink::Damaged), "twice");
    assert_eq!(grams(&[1, 2, 2, 0x90, 0x4e]), Err(BadLink::Damaged), "no such colour");
    assert_eq!(grams(&[1, 0, 4, 0]), Err(BadLink::Damaged), "no ball owned goes without saying");
    assert_eq!(grams(&[2, 0, 4, 2, 1, 2, 0x90, 0x4e]), Err(BadLink::Damaged), "out of order");
}

/// The same of what is told of its pattern: so many, each a kind (0: left-handed, 1: sizes, 3: credit, 4: edition) and what it says.
#[test]
fn one_pattern_has_one_link() {
    let mut bytes = unsealed(&to_link(&hat()));
    assert_eq!(bytes.pop(), Some(0));
    let with = |told: &[u8]| from_link(&sealed(b'4', &[&bytes[..], told].concat()));
    let left = with(&[1, 0]).unwrap();
    assert_eq!((left.hand, left.designer, left.sizes), (Hand::Left, Designer::default(), Vec::new()));
    assert_eq!(with(&[2, 3, 1, b'm', 4, 1, b'2']).unwrap().designer.edition, "2");
    let crew = with(&[1, 1, 1, 0, 0, 0x80, 0xeb, 0x06]).unwrap();
    assert_eq!(crew.sizes, [SizeOf { name: String::new(), head: Head::Measured(Length::from_cm(56.0)) }]);
    for (told, why) in [
        (&[2, 0, 0][..], "twice"),
        (&[2, 4, 1, b'2', 3, 1, b'm'], "out of order"),
        (&[1, 3, 0], "an empty credit goes without saying"),
        (&[1, 1, 0], "and so do no sizes"),
        (&[1, 3, 1, 7], "a bell does not print"),
        (&[&[1, 4, 25], &[b'2'; 25][..]].concat(), "too long"),
        (&[1, 9, 1, b'm'], "no such kind"),
    ] {
        assert_eq!(with(told), Err(BadLink::Damaged), "{why}");
    }
    let small = with(&[1, 1, 1, 0, 0, 2]);
    assert_eq!(
        small,
        Err(BadLink::OutOfRange(Breach::OutOfRange(Quantity::HeadGirth, 1))),
        "a head of a hundredth of a millimetre"
    );
}

/// What a link costs that tells of its pattern, and what it does not tell.
#[test]
fn a_link_carries_the_pattern() {
    let plain = to_link(&hat()).len();
    assert!(plain <= 199, "{plain}");
    let mut hat = hat();
    hat.hand = Hand::Left;
    hat.units = Units::Both;
    let left = to_link(&hat).len();
    assert!(left <= plain + 2, "{left}");
    let by_age = |years| Head::ByAge { age: Age::Years(Count::whole(years)), sex: Sex::Unknown, build: Build::Average };
    hat.sizes = [1, 2, 6, 10].map(|years| SizeOf { name: String::new(), head: by_age(years) }).into();
    let sized = to_link(&hat).len();
    assert!(sized <= left + 40, "{sized}");
    hat.designer = Designer {
        introduction: "For the bow seat.\nWarm, and out of the way of the oar.".to_owned(),
        credit: "Rowing club".to_owned(),
        edition: "2".to_owned(),
        date: "November 2026".to_owned(),
        tested: "By four of the second eight.".to_owned(),
        care: "Cool, by hand.".to_owned(),
    };
    let told = from_link(&to_link(&hat)).unwrap();
    assert_eq!((told.hand, told.units, &told.sizes, &told.designer), (Hand::Left, Units::Both, &hat.sizes, &hat.designer));
    assert_eq!(told.into_project(hat.id.clone(), 0), hat);
    // Nobody's birthday in the sizes either.
    let head = Head::ByDates { born: Day(18_000), worn: Day(19_461), sex: Sex::Male, build: Build::Large };
    hat.sizes.push(SizeOf { name: "Cox".to_owned(), head });
    let told = from_link(&to_link(&hat)).unwrap();
    assert_eq!(told.sizes[4], SizeOf { name: "Cox".to_owned(), head: Head::Measured(head_size(&head).girth) });
    // More than there may be are not told.
    hat.sizes = vec![hat.sizes[0].clone(); Project::MOST_SIZES + 1];
    assert_eq!(from_link(&to_link(&hat)).unwrap().sizes.len(), Project::MOST_SIZES);
}

const SHAPES: [Quantity; 11] = [
    Quantity::SlouchWider,
    Quantity::SlouchLonger,
    Quantity::Tail,
    Quantity::Taper,
    Quantity::TailStitches,
    Quantity::TamAcross,
    Quantity::FlapLength,
    Quantity::FlapTie,
    Quantity::Brim,
    Quantity::Flare,
    Quantity::SideWedges,
];

fn hat() -> Project {
    example(id("rowingclub01"))
}

fn sealed(version: u8, hat: &[u8]) -> String {
    let sum = checksum(&[&[version], hat]).to_le_bytes();
    format!("{}{}", char::from(version), BASE64URL_NOPAD.encode(&[hat, &sum].concat()))
}

fn unsealed(link: &str) -> Vec<u8> {
    let mut bytes = BASE64URL_NOPAD.decode(&link.as_bytes()[1..]).unwrap();
    bytes.truncate(bytes.len() - 4);
    bytes
}

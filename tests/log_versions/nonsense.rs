//! What no app ever wrote: refused, each with its reason.

use super::*;

pub fn check(kind: &str, from: &str, to: &str, said: &str) {
    check_of(LOG_V1, kind, from, to, said);
}

#[track_caller]
pub fn check_of(log: &'static str, kind: &str, from: &str, to: &str, said: &str) {
    let line = first_of(log, kind);
    assert!(line.contains(from), "{from} is not in {line}");
    let why = decode(&line.replacen(from, to, 1)).expect_err(to);
    assert_eq!(why.to_string(), said);
}

#[test]
fn nonsense_is_refused_with_its_reason() {
    check(
        "note",
        "\"text\":\"new basket\"",
        "\"text\":null",
        &BadEntry::Form(Odd::Null).to_string(),
    );
    check(
        "note",
        "\"seq\":",
        "\"seq\":1.0,\"s\":",
        &BadEntry::Form(Odd::NotWhole).to_string(),
    );
    check(
        "note",
        "\"seq\":",
        "\"seq\":1e0,\"s\":",
        &BadEntry::Form(Odd::NotWhole).to_string(),
    );
    check(
        "note",
        "\"body\":{",
        "\"body\":{\n",
        &BadEntry::Form(Odd::LineBreak).to_string(),
    );
    let deep = format!("\"x\":{}{},\"text\":", "[".repeat(40), "]".repeat(40));
    check("note", "\"text\":", &deep, &BadEntry::Form(Odd::Deep).to_string());
    check("note", "\"v\":1", "\"v\":0", "broken envelope: v begins at 1");
    check(
        "note",
        "\"off\":60",
        "\"off\":1440",
        "broken envelope: off is a day or more",
    );
    check(
        "note",
        "\"kind\":\"note\"",
        "\"kind\":\"Note\"",
        "broken envelope: kind is not a lower-case word",
    );
    check(
        "note",
        "\"body\":{",
        "\"body\":[{",
        "broken envelope: expected `,` or `]`",
    );
    check(
        "note",
        "\"dev\":\"00",
        "\"dev\":\"",
        "broken envelope: invalid value: string \"c0ffee00c0ffee\", expected 16 hex digits",
    );
    check("note", "-7", "-4", "broken envelope: id is not a UUID v7");
    check(
        "note",
        "\"text\":",
        "\"more\":1,\"text\":",
        "broken body of note version 1: unknown field `more`, expected `pan` or `text`",
    );
    check(
        "fill",
        "\"ml\":17500",
        "\"ml\":1000001",
        "broken body of fill version 1: invalid value: integer `1000001`, expected millilitres, 0 to 1000000",
    );
    check(
        "fill",
        "2026-05-28\"",
        "2026-5-28\"",
        "broken body of fill version 1: invalid value: string \"2026-5-28\", expected a date, like 2026-01-31",
    );
    check(
        "reading",
        "\"polar_cpc\":1850",
        "\"polar_cpc\":1850,\"ffa_cpc\":1",
        "broken body of reading version 1: a reading holds exactly one value",
    );
    check(
        "reading",
        "\"polar_cpc\":1850,",
        "",
        "broken body of reading version 1: a reading holds exactly one value",
    );
    check(
        "kitchen",
        "\"day_start_min\":300",
        "\"day_start_min\":179",
        "broken body of kitchen version 1: day_start_min lies outside 180 to 660",
    );
    check(
        "kitchen",
        "\"av_limit_cav\":200",
        "\"av_limit_cav\":200,\"ffa_limit_cpc\":100",
        "broken body of kitchen version 1: two limits on acidity",
    );
    check(
        "correct",
        "\"void\":1",
        "\"void\":1,\"off\":60",
        "broken body of correct version 1: neither void 1 alone, nor at, off or body",
    );
    check(
        "correct",
        ",\"void\":1",
        "",
        "broken body of correct version 1: neither void 1 alone, nor at, off or body",
    );
    check(
        "correct",
        "\"void\":1",
        "\"kind\":\"correct\",\"v\":1,\"body\":{}",
        "broken body of correct version 1: a correction may not be corrected; the last one holds",
    );
    check(
        "machine",
        "\"high_dc\":1800",
        "\"high_dc\":2001",
        "broken body of machine version 1: high_dc lies above 200 °C",
    );
    check(
        "machine",
        "\"exposures\":[\"gluten\",\"fish\"]",
        "\"exposures\":\"nothing\"",
        "broken body of machine version 1: neither a list of exposures nor \"unknown\"",
    );
    for (from, to) in [
        ("\"rhythm_sessions\":1", "\"rhythm_sessions\":0"),
        ("\"rhythm_sessions\":1,", ""),
        ("\"rhythm_sessions\":1", "\"rhythm_weekdays\":[0,0,0,0,0,0,0]"),
        ("\"rhythm_sessions\":1", "\"rhythm_weekdays\":[0,2,0,0,0,0,1]"),
        (
            "\"rhythm_sessions\":1",
            "\"rhythm_sessions\":1,\"rhythm_weekdays\":[0,1,0,0,0,0,1]",
        ),
    ] {
        let why = "broken body of pan version 2: neither a number of sessions alone, nor days of the week";
        check_of(LOG_V4, "pan", from, to, why);
    }
    for (to, why) in [
        ("2026-06-07", "to lies before from"),
        ("2027-06-09", "more than 366 days closed"),
    ] {
        let to = format!("\"to\":\"{to}\"");
        let why = format!("broken body of closed version 1: {why}");
        check_of(LOG_V4, "closed", "\"to\":\"2026-06-21\"", &to, &why);
    }
    check_of(
        LOG_V2,
        "machine",
        "\"powder_g_per_l\":18",
        "\"powder_g_per_l\":0",
        "broken body of machine version 2: invalid value: integer `0`, expected grams a litre, 1 to 100",
    );
    check_of(
        LOG_V2,
        "machine",
        "\"high_dc\":1800",
        "\"high_dc\":2001",
        "broken body of machine version 2: high_dc lies above 200 °C",
    );
    check_of(
        LOG_V6,
        "move",
        "\"to\":\"machine\"",
        "\"to\":\"bucket\"",
        "broken body of move version 2: invalid value: string \"bucket\", expected machine or pan",
    );
    for (from, to) in [
        ("\"clean_dry\",\"own_utensils\"", "\"clean_dry\""),
        (
            "\"own_utensils\"]",
            "\"own_utensils\"],\"until\":\"2026-06-03T21:30:00.000Z\"",
        ),
    ] {
        let said = "broken body of claim_restored version 2: not all was seen that restores a claim";
        check_of(LOG_V3, "claim_restored", from, to, said);
    }
}

#[test]
fn evidence_is_answered_in_the_items_own_way() {
    let job = LOG_V1
        .lines()
        .find(|l| l.contains("\"heap_dc\":512"))
        .unwrap()
        .trim_end_matches(',');
    for (from, to, said) in [
        (
            "\"heap_dc\":512",
            "\"heap_dc\":\"cold\"",
            "heap_dc was answered in the wrong way",
        ),
        (
            "\"scraps\":\"thin_outdoors\"",
            "\"scraps\":\"done\"",
            "scraps was answered with an unknown word, \"done\"",
        ),
        (
            "\"scraps\":\"thin_outdoors\"",
            "\"scraps\":7",
            "scraps was answered in the wrong way",
        ),
        (
            "\"heap_again_dc\":498",
            "\"heap_dc\":498",
            "the same name twice in one object",
        ),
    ] {
        let why = decode(&job.replace(from, to)).expect_err(to);
        assert_eq!(why.to_string(), format!("broken body of job version 1: {said}"));
    }
}

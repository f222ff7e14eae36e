//! Which part of a file a request asks for.

use std::ops::Range;

/// What a line `Range` asks for, of a file of known length.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Part {
    /// All of it, also where the line says nothing that is understood.
    Whole,
    /// These bytes.
    Bytes(Range<usize>),
    /// Only bytes that are not there.
    Outside,
}

/// Reads a line `Range`. One range is honoured; a line that is not valid, of another unit or with several ranges is
/// ignored, as a server may. Source: RFC 9110, sections 14.1.1, 14.1.2 and 14.2.
pub(crate) fn part(line: &str, length: usize) -> Part {
    let Some((unit, range)) = line.split_once('=') else { return Part::Whole };
    let Some((first, last)) = range.trim().split_once('-') else { return Part::Whole };
    if !unit.trim().eq_ignore_ascii_case("bytes") || length == 0 {
        return Part::Whole;
    }
    match (position(first), position(last)) {
        (Some(first), _) if last.is_empty() => within(first..length),
        (Some(first), Some(last)) if first <= last => within(first..last.saturating_add(1).min(length)),
        (_, Some(last)) if first.is_empty() => within(length.saturating_sub(last)..length),
        _ => Part::Whole,
    }
}

fn within(range: Range<usize>) -> Part {
    if range.is_empty() { Part::Outside } else { Part::Bytes(range) }
}

/// A number of any length in digits; the largest that fits stands for all beyond it.
fn position(digits: &str) -> Option<usize> {
    let valid = !digits.is_empty() && digits.bytes().all(|digit| digit.is_ascii_digit());
    valid.then(|| digits.parse().unwrap_or(usize::MAX))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The examples of RFC 9110, section 14.1.2, for a file of 10000 bytes. The last two, of several ranges, are
    /// ignored here, which section 14.2 allows.
    #[test]
    fn the_examples_of_the_standard() {
        for (line, wanted) in [
            ("bytes=0-499", Part::Bytes(0..500)),
            ("bytes=500-999", Part::Bytes(500..1000)),
            ("bytes=-500", Part::Bytes(9500..10000)),
            ("bytes=9500-", Part::Bytes(9500..10000)),
            ("bytes=0-0,-1", Part::Whole),
            ("bytes= 0-999, 4500-5499, -1000", Part::Whole),
        ] {
            assert_eq!(part(line, 10000), wanted, "{line}");
        }
    }

    /// Source: RFC 9110, section 14.1.2: a last position beyond the end stands for the end, a suffix longer than the
    /// file for all of it; a first position beyond the end and a suffix of nothing cannot be satisfied; a last
    /// position before the first is not valid. Section 14.1: names of units are the same in capitals.
    #[test]
    fn the_edges() {
        let beyond = "9".repeat(40);
        for (line, wanted) in [
            ("bytes=0-", Part::Bytes(0..10)),
            ("bytes=9-9", Part::Bytes(9..10)),
            ("Bytes=2-20", Part::Bytes(2..10)),
            (&format!("bytes=2-{beyond}"), Part::Bytes(2..10)),
            ("bytes=-11", Part::Bytes(0..10)),
            (&format!("bytes=-{beyond}"), Part::Bytes(0..10)),
            ("bytes=10-", Part::Outside),
            ("bytes=10-20", Part::Outside),
            (&format!("bytes={beyond}-{beyond}"), Part::Outside),
            ("bytes=-0", Part::Outside),
            ("bytes=5-4", Part::Whole),
            ("bytes=-", Part::Whole),
            ("bytes=+1-2", Part::Whole),
            ("bytes=1-2-3", Part::Whole),
            ("bytes=--1", Part::Whole),
            ("bytes=a-b", Part::Whole),
            ("bytes", Part::Whole),
            ("letters=0-1", Part::Whole),
            ("", Part::Whole),
        ] {
            assert_eq!(part(line, 10), wanted, "{line}");
        }
        assert_eq!(part("bytes=0-", 0), Part::Whole);
    }
}

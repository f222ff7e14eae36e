//! What was probably meant by a mistyped word.

/// The known word nearest to a mistyped one, if one is near enough to be meant.
///
/// ```
/// use blind::nearest;
/// assert_eq!(nearest("bufer", &["buffer", "breaks"]), Some("buffer"));
/// assert_eq!(nearest("zebra", &["buffer", "breaks"]), None);
/// ```
pub fn nearest<'a>(word: &str, known: &[&'a str]) -> Option<&'a str> {
    let small = word.to_lowercase();
    known
        .iter()
        .map(|&candidate| (strsim::damerau_levenshtein(&small, &candidate.to_lowercase()), candidate))
        .filter(|&(distance, candidate)| distance <= 1 + candidate.chars().count().min(9) / 4)
        .min_by_key(|&(distance, _)| distance)
        .map(|(_, candidate)| candidate)
}

//! Entity tags: by them a browser says which version of a file it has.

/// An entity tag, without its quotation marks.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Tag<'a> {
    /// Whether it stands for all versions that are as good, not for these bytes alone.
    pub(crate) weak: bool,
    /// What is between the quotation marks.
    pub(crate) text: &'a str,
}

impl Tag<'_> {
    /// Whether the tags stand for the same bytes. Source: RFC 9110, section 8.8.3.2.
    pub(crate) fn same_bytes(self, other: Tag<'_>) -> bool {
        !self.weak && !other.weak && self.text == other.text
    }

    /// Whether one version is as good as the other. Source: RFC 9110, section 8.8.3.2.
    pub(crate) fn as_good(self, other: Tag<'_>) -> bool {
        self.text == other.text
    }
}

/// What a condition names.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Named<'a> {
    /// `*`: any version that there is.
    Any,
    /// These.
    Tags(Vec<Tag<'a>>),
}

impl<'a> Named<'a> {
    /// Reads a list of tags; behind the first thing that is none nothing is read. Source: RFC 9110, sections 8.8.3,
    /// 13.1.1 and 13.1.2. A comma may stand within a tag.
    pub(crate) fn read(line: &'a str) -> Self {
        if line.trim() == "*" {
            return Named::Any;
        }
        let mut tags = Vec::new();
        let mut rest = line;
        loop {
            rest = rest.trim_start_matches([',', ' ', '\t']);
            let (weak, quoted) = rest.strip_prefix("W/").map_or((false, rest), |quoted| (true, quoted));
            let Some((text, behind)) = quoted.strip_prefix('"').and_then(|text| text.split_once('"')) else {
                return Named::Tags(tags);
            };
            tags.push(Tag { weak, text });
            rest = behind;
        }
    }

    /// Whether a version that is there is among what is named.
    pub(crate) fn contains(&self, same: impl Fn(Tag<'a>) -> bool) -> bool {
        match self {
            Named::Any => true,
            Named::Tags(tags) => tags.iter().any(|tag| same(*tag)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one(line: &str) -> Tag<'_> {
        let Named::Tags(tags) = Named::read(line) else { panic!("{line}") };
        assert_eq!(tags.len(), 1, "{line}");
        tags[0]
    }

    /// The table of RFC 9110, section 8.8.3.2.
    #[test]
    fn the_comparisons_of_the_standard() {
        for (first, second, same_bytes, as_good) in [
            ("W/\"1\"", "W/\"1\"", false, true),
            ("W/\"1\"", "W/\"2\"", false, false),
            ("W/\"1\"", "\"1\"", false, true),
            ("\"1\"", "\"1\"", true, true),
        ] {
            assert_eq!(one(first).same_bytes(one(second)), same_bytes, "{first} {second}");
            assert_eq!(one(first).as_good(one(second)), as_good, "{first} {second}");
        }
    }

    /// The examples of RFC 9110, section 13.1.2, and one with commas where they may stand.
    #[test]
    fn the_lists_of_the_standard() {
        let tag = |weak, text| Tag { weak, text };
        for (line, tags) in [
            ("\"xyzzy\"", vec![tag(false, "xyzzy")]),
            ("W/\"xyzzy\"", vec![tag(true, "xyzzy")]),
            (
                "\"xyzzy\", \"r2d2xxxx\", \"c3piozzzz\"",
                vec![tag(false, "xyzzy"), tag(false, "r2d2xxxx"), tag(false, "c3piozzzz")],
            ),
            ("W/\"xyzzy\", W/\"r2d2xxxx\"", vec![tag(true, "xyzzy"), tag(true, "r2d2xxxx")]),
            (", \"a,b\",,\t\"\" ,", vec![tag(false, "a,b"), tag(false, "")]),
            ("\"a\", b, \"c\"", vec![tag(false, "a")]),
            ("w/\"a\"", vec![]),
            ("\"a", vec![]),
            ("", vec![]),
        ] {
            assert_eq!(Named::read(line), Named::Tags(tags), "{line}");
        }
        assert_eq!(Named::read(" * "), Named::Any);
    }
}

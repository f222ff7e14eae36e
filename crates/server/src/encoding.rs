//! Which of the stored forms of a file a browser can read.

/// A stored form of a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Coding {
    /// `Content-Encoding: br`.
    Brotli,
    /// `Content-Encoding: gzip`.
    Gzip,
}

impl Coding {
    /// Best first.
    pub(crate) const ALL: [Coding; 2] = [Coding::Brotli, Coding::Gzip];

    /// The name in HTTP.
    pub(crate) fn token(self) -> &'static str {
        match self {
            Coding::Brotli => "br",
            Coding::Gzip => "gzip",
        }
    }

    /// The ending of the stored copy.
    pub(crate) fn ending(self) -> &'static str {
        match self {
            Coding::Brotli => ".br",
            Coding::Gzip => ".gz",
        }
    }

    /// Whether an `Accept-Encoding` line allows this form. Source: RFC 9110, section 12.5.3: a coding is allowed when
    /// it is listed, or `*` is and it is not, with a weight other than zero.
    pub(crate) fn allowed_by(self, accepted: &str) -> bool {
        let mut others = false;
        for item in accepted.split(',') {
            let mut parts = item.split(';').map(str::trim);
            let name = parts.next().unwrap_or_default();
            let refused = parts.any(|part| {
                part.split_once('=').is_some_and(|(key, value)| {
                    key.trim().eq_ignore_ascii_case("q")
                        && value.trim().parse::<f32>().is_ok_and(|weight| weight <= 0.0)
                })
            });
            if name.eq_ignore_ascii_case(self.token()) {
                return !refused;
            }
            others |= name == "*" && !refused;
        }
        others
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The examples of RFC 9110, section 12.5.3, and what browsers send.
    #[test]
    fn the_examples_of_the_standard() {
        for (accepted, brotli, gzip) in [
            ("compress, gzip", false, true),
            ("", false, false),
            ("*", true, true),
            ("compress;q=0.5, gzip;q=1.0", false, true),
            ("gzip;q=1.0, identity; q=0.5, *;q=0", false, true),
            ("gzip, deflate, br, zstd", true, true),
            ("br;q=0, *", false, true),
            ("GZIP;Q=0.000", false, false),
        ] {
            assert_eq!(Coding::Brotli.allowed_by(accepted), brotli, "br in {accepted:?}");
            assert_eq!(Coding::Gzip.allowed_by(accepted), gzip, "gzip in {accepted:?}");
        }
    }
}

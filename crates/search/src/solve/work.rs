//! How much a search has done, how much it may do, and whether whoever waits still does.

/// How many positions are looked at between two questions whether to go on.
const EACH: u64 = 1 << 16;

/// Positions counted against a bound. Time is the caller's: who asks for an answer within a time says so when told.
pub struct Work<'a> {
    done: u64,
    most: u64,
    /// At which count to look up: the next question, or the end of an allowance.
    next: u64,
    allowance: u64,
    asked: u64,
    told: &'a mut dyn FnMut(u64) -> bool,
    stopped: bool,
}

impl<'a> Work<'a> {
    /// At most so many positions; from time to time `told` hears how many have been looked at, and says whether to go on.
    pub fn new(most: u64, told: &'a mut dyn FnMut(u64) -> bool) -> Self {
        let mut work = Self { done: 0, most, next: 0, allowance: most, asked: 0, told, stopped: most == 0 };
        work.look_up_later();
        work
    }

    fn look_up_later(&mut self) {
        self.next = self.allowance.min(self.most).min(self.asked + EACH);
    }

    /// Allows so many positions from here on, as far as the bound goes.
    pub fn allow(&mut self, positions: u64) {
        self.allowance = self.done.saturating_add(positions);
        self.look_up_later();
    }

    /// Counts a position; the answer says whether to stop: at the end of the allowance, at the bound, or when nobody waits.
    #[inline]
    pub fn one(&mut self) -> bool {
        self.done += 1;
        self.done >= self.next && self.look_up()
    }

    #[cold]
    fn look_up(&mut self) -> bool {
        if self.done >= self.asked + EACH {
            self.asked = self.done;
            self.stopped |= !(self.told)(self.done);
        }
        self.stopped |= self.done >= self.most;
        self.look_up_later();
        self.is_used_up()
    }

    /// Whether the allowance is used up, or everything is.
    pub fn is_used_up(&self) -> bool {
        self.stopped || self.done >= self.allowance
    }

    /// Whether nothing more may be done.
    pub const fn is_over(&self) -> bool {
        self.stopped
    }

    /// How many positions have been looked at.
    pub const fn done(&self) -> u64 {
        self.done
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_allowed_is_done_and_no_more() {
        let mut told = |_| true;
        let mut work = Work::new(1_000_000, &mut told);
        work.allow(10);
        assert_eq!((1..=EACH).find(|_| work.one()), Some(10));
        assert!(work.is_used_up() && !work.is_over());
        work.allow(u64::MAX);
        assert_eq!((11..=2_000_000).find(|_| work.one()), Some(1_000_000));
        assert!(work.is_over());
        assert!(Work::new(0, &mut |_| true).is_over());
    }

    #[test]
    fn whoever_waits_is_asked_and_may_stop() {
        let mut heard = Vec::new();
        let mut told = |done| {
            heard.push(done);
            heard.len() < 3
        };
        let mut work = Work::new(u64::MAX, &mut told);
        assert_eq!((1..=4 * EACH).find(|_| work.one()), Some(3 * EACH));
        assert!(work.is_over());
        assert_eq!(heard, [EACH, 2 * EACH, 3 * EACH]);
    }
}

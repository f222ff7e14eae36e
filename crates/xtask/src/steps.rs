//! Steps of a long task: each is named, timed, and the first failure ends the task with a sentence.

use anyhow::{Context, Result};
use std::time::{Duration, Instant};

/// The steps done so far and what each took.
#[derive(Default)]
pub struct Steps {
    done: Vec<(&'static str, Duration)>,
}

impl Steps {
    /// Does one step.
    ///
    /// # Errors
    /// What the step failed with, under the step's name.
    pub fn step(&mut self, name: &'static str, work: impl FnOnce() -> Result<()>) -> Result<()> {
        println!("== {name}");
        let start = Instant::now();
        work().with_context(|| format!("the step \"{name}\" failed; nothing after it was run"))?;
        let taken = start.elapsed();
        println!("== {name}: done in {:.1} s", taken.as_secs_f64());
        self.done.push((name, taken));
        Ok(())
    }

    /// Prints what each step took.
    pub fn summary(&self) {
        println!("== all steps done:");
        for (name, taken) in &self.done {
            println!("   {:>7.1} s  {name}", taken.as_secs_f64());
        }
    }
}

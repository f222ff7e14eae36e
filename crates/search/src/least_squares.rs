//! Least squares with coefficients that must not be negative, by Lawson and Hanson's active set method.
//!
//! Source: C. L. Lawson, R. J. Hanson, "Solving Least Squares Problems", 1974, chapter 23 (NNLS). Written here since of
//! the crates looked at one ends the program on rounding errors and another reads the clock.

/// The `x >= 0` for which the sum over all rows of `(row · x - target)²` is least. All rows have the same length.
pub(crate) fn non_negative(rows: &[Vec<f64>], targets: &[f64]) -> Vec<f64> {
    let columns = rows.first().map_or(0, Vec::len);
    // The normal equations: small, and made of counts.
    let mut products = vec![vec![0.0; columns]; columns];
    let mut right = vec![0.0; columns];
    for (row, target) in rows.iter().zip(targets) {
        for (i, a) in row.iter().enumerate() {
            right[i] += a * target;
            for (j, b) in row.iter().enumerate() {
                products[i][j] += a * b;
            }
        }
    }
    let scale = right.iter().fold(0.0f64, |most, value| most.max(value.abs()));
    let tolerance = 1e-11 * scale.max(f64::MIN_POSITIVE);
    let mut x = vec![0.0; columns];
    let mut free = vec![false; columns];
    let mut refused = vec![false; columns];
    // Each round frees one coefficient; far fewer rounds than this are ever needed, and rounding must not make a circle.
    for _ in 0..30 * (columns + 1) {
        let gradient =
            |i: usize, x: &[f64]| right[i] - products[i].iter().zip(x).map(|(p, x)| p * x).sum::<f64>();
        let steepest = (0..columns)
            .filter(|&i| !free[i] && !refused[i] && gradient(i, &x) > tolerance)
            .max_by(|&a, &b| gradient(a, &x).total_cmp(&gradient(b, &x)));
        let Some(entering) = steepest else { break };
        free[entering] = true;
        let solved = solve(&products, &right, &free).filter(|z| z[entering] > 0.0);
        let Some(mut z) = solved else {
            // It depends on those that are free already, or would go the wrong way by rounding.
            free[entering] = false;
            refused[entering] = true;
            continue;
        };
        loop {
            let step = (0..columns)
                .filter(|&i| free[i] && z[i] <= 0.0)
                .map(|i| x[i] / (x[i] - z[i]))
                .fold(f64::INFINITY, f64::min);
            if !step.is_finite() {
                break;
            }
            for i in 0..columns {
                if free[i] {
                    x[i] += step * (z[i] - x[i]);
                    if z[i] <= 0.0 && x[i] <= tolerance / scale.max(1.0) {
                        x[i] = 0.0;
                        free[i] = false;
                    }
                }
            }
            match solve(&products, &right, &free) {
                Some(next) => z = next,
                None => break,
            }
        }
        x = (0..columns).map(|i| if free[i] { z[i].max(0.0) } else { 0.0 }).collect();
        refused.fill(false);
    }
    x
}

/// Solves the equations of the free coefficients, the others being zero; `None` when they depend on one another.
fn solve(products: &[Vec<f64>], right: &[f64], free: &[bool]) -> Option<Vec<f64>> {
    let places: Vec<usize> = (0..free.len()).filter(|&i| free[i]).collect();
    let n = places.len();
    // Cholesky's factor of the part of the matrix.
    let mut lower = vec![vec![0.0; n]; n];
    for i in 0..n {
        for j in 0..=i {
            let dot: f64 = (0..j).map(|k| lower[i][k] * lower[j][k]).sum();
            let rest = products[places[i]][places[j]] - dot;
            lower[i][j] = if i == j {
                if rest <= 1e-10 * products[places[i]][places[i]] {
                    return None;
                }
                rest.sqrt()
            } else {
                rest / lower[j][j]
            };
        }
    }
    let mut solution = vec![0.0; n];
    for i in 0..n {
        let known: f64 = (0..i).map(|k| lower[i][k] * solution[k]).sum();
        solution[i] = (right[places[i]] - known) / lower[i][i];
    }
    for i in (0..n).rev() {
        let known: f64 = (i + 1..n).map(|k| lower[k][i] * solution[k]).sum();
        solution[i] = (solution[i] - known) / lower[i][i];
    }
    let mut z = vec![0.0; free.len()];
    for (place, value) in places.into_iter().zip(solution) {
        z[place] = value;
    }
    Some(z)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn close(a: &[f64], b: &[f64]) -> bool {
        a.len() == b.len() && a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-9)
    }

    #[test]
    fn worked_examples() {
        // Source: computed with `scipy.optimize.nnls` of PyPI SciPy 1.17.1.
        let rows = vec![vec![1.0, 0.0], vec![1.0, 0.0], vec![0.0, 1.0]];
        assert!(close(&non_negative(&rows, &[2.0, 1.0, 1.0]), &[1.5, 1.0]));
        assert!(close(&non_negative(&rows, &[-1.0, -1.0, -1.0]), &[0.0, 0.0]));
        assert!(non_negative(&[], &[]).is_empty());
    }

    proptest! {
        #[test]
        fn the_answer_is_the_least(
            rows in prop::collection::vec(prop::collection::vec(0u8..4, 6), 1..25),
            targets in prop::collection::vec(-1.0f64..5.0, 25),
        ) {
            let rows: Vec<Vec<f64>> =
                rows.into_iter().map(|row| row.into_iter().map(f64::from).collect()).collect();
            let targets = &targets[..rows.len()];
            let x = non_negative(&rows, targets);
            // Karush, Kuhn and Tucker's conditions, which are sufficient here: none negative, and moving any does not help.
            for i in 0..6 {
                let slope: f64 = rows
                    .iter()
                    .zip(targets)
                    .map(|(row, target)| {
                        let sum: f64 = row.iter().zip(&x).map(|(a, x)| a * x).sum();
                        row[i] * (target - sum)
                    })
                    .sum();
                prop_assert!(x[i] >= 0.0);
                prop_assert!(slope < 1e-6, "{} could grow: {slope}", i);
                prop_assert!(x[i] == 0.0 || slope.abs() < 1e-6, "{} could shrink: {slope}", i);
            }
        }
    }
}

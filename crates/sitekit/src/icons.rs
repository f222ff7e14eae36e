//! Icons of an installed app, drawn from the one SVG.

use std::path::Path;

use anyhow::{Context, Result};
use resvg::tiny_skia::{Pixmap, Transform};
use resvg::usvg::{Options, Tree};

/// Widths in pixels: what browsers ask of a manifest (192, 512) and what a tablet's home screen takes (180).
/// Source: W3C "Web Application Manifest", installability guidance of the browsers (common practice, no source).
const WIDTHS: [u32; 3] = [180, 192, 512];

/// Draws the square picture at every width of the list as `icon-WIDTH.png` in `folder`.
pub fn draw(picture: &Path, folder: &Path) -> Result<()> {
    let text = std::fs::read(picture).with_context(|| format!("cannot read {}", picture.display()))?;
    let tree = Tree::from_data(&text, &Options::default())
        .with_context(|| format!("{} is not a picture", picture.display()))?;
    std::fs::create_dir_all(folder)?;
    for width in WIDTHS {
        let mut pixels = Pixmap::new(width, width).context("an icon has a width")?;
        let scale = width as f32 / tree.size().width();
        resvg::render(&tree, Transform::from_scale(scale, scale), &mut pixels.as_mut());
        let file = folder.join(format!("icon-{width}.png"));
        pixels.save_png(&file).with_context(|| format!("cannot write {}", file.display()))?;
    }
    Ok(())
}

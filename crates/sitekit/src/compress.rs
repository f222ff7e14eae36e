//! Compressed copies beside the files of a site, so that no server has to compress while someone waits.

use std::fs;
use std::io::Write;
use std::path::Path;

use anyhow::{Context, Result};
use brotli::enc::BrotliEncoderParams;
use flate2::{Compression, write::GzEncoder};

/// Kinds of file that shrink; pictures in PNG are compressed already.
const KINDS: [&str; 8] = ["html", "js", "css", "wasm", "svg", "json", "webmanifest", "txt"];

/// Goes through the folder and all below it, writes `FILE.br` and `FILE.gz`, and prints one line for each file.
pub fn folder(folder: &Path) -> Result<()> {
    let mut totals = [0, 0, 0];
    visit(folder, folder, &mut totals)?;
    println!("{:>9} {:>9} {:>9}  in all", totals[0], totals[1], totals[2]);
    Ok(())
}

fn visit(root: &Path, folder: &Path, totals: &mut [usize; 3]) -> Result<()> {
    let mut entries: Vec<_> = fs::read_dir(folder)
        .with_context(|| format!("cannot read {}", folder.display()))?
        .collect::<Result<_, _>>()?;
    entries.sort_by_key(fs::DirEntry::path);
    for entry in entries {
        let path = entry.path();
        if path.is_dir() {
            visit(root, &path, totals)?;
            continue;
        }
        let kind = path.extension().and_then(|kind| kind.to_str()).unwrap_or_default();
        if !KINDS.contains(&kind) {
            continue;
        }
        let bytes = fs::read(&path)?;
        let (small, older) = (brotli_of(&bytes)?, gzip_of(&bytes)?);
        write_beside(&path, "br", &small)?;
        write_beside(&path, "gz", &older)?;
        let name = path.strip_prefix(root).unwrap_or(&path).display();
        println!("{:>9} {:>9} {:>9}  {name}", bytes.len(), small.len(), older.len());
        for (total, size) in totals.iter_mut().zip([bytes.len(), small.len(), older.len()]) {
            *total += size;
        }
    }
    Ok(())
}

fn write_beside(path: &Path, ending: &str, bytes: &[u8]) -> Result<()> {
    let mut name = path.as_os_str().to_owned();
    name.push(".");
    name.push(ending);
    fs::write(&name, bytes).with_context(|| format!("cannot write {}", Path::new(&name).display()))
}

fn brotli_of(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut out = Vec::new();
    let parameters = BrotliEncoderParams { quality: 11, lgwin: 22, ..BrotliEncoderParams::default() };
    brotli::BrotliCompress(&mut &bytes[..], &mut out, &parameters)?;
    Ok(out)
}

fn gzip_of(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;

    #[test]
    fn both_copies_unpack_to_the_same_bytes_and_are_smaller() {
        let text =
            "the thread goes from the buffer to a sticker, to a sticker, until it comes back. ".repeat(40);
        let small = brotli_of(text.as_bytes()).unwrap();
        let older = gzip_of(text.as_bytes()).unwrap();
        assert!(small.len() < text.len() / 4 && older.len() < text.len() / 4);
        let mut unpacked = Vec::new();
        brotli::BrotliDecompress(&mut &small[..], &mut unpacked).unwrap();
        assert_eq!(unpacked, text.as_bytes());
        let mut unpacked = Vec::new();
        flate2::read::GzDecoder::new(&older[..]).read_to_end(&mut unpacked).unwrap();
        assert_eq!(unpacked, text.as_bytes());
    }
}

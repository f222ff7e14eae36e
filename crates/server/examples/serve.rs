//! Serves the site on a port of this machine: `cargo run -p server --example serve -- 4180`.

use voice::Language;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let port = std::env::args().nth(1).map_or(Ok(0), |word| word.parse())?;
    match server::serve(port, Language::English, |address| println!("http://{address}/"))? {}
}

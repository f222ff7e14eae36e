//! What was found is replayed, and every target has something to begin from.

use fuzz::Target;
use std::fs;
use std::path::Path;

#[test]
fn nothing_that_was_found_makes_anything_stumble() {
    let corpus = Path::new(env!("CARGO_MANIFEST_DIR")).join("corpus");
    let mut folders: Vec<String> = fs::read_dir(&corpus)
        .unwrap()
        .map(|folder| folder.unwrap().file_name().into_string().unwrap())
        .collect();
    folders.sort();
    let mut names: Vec<&str> = Target::ALL.iter().map(|target| target.name).collect();
    names.sort_unstable();
    assert_eq!(folders, names, "a folder for each target");
    for target in Target::ALL {
        let mut files: Vec<_> =
            fs::read_dir(corpus.join(target.name)).unwrap().map(|file| file.unwrap().path()).collect();
        files.sort();
        assert!(!files.is_empty(), "{} has nothing to begin from", target.name);
        for file in files {
            println!("{}", file.display());
            target.run(&fs::read(&file).unwrap());
        }
    }
}

//! Requests as no page would think of them all: every method of the boundary, under conventions, of sizes, with sheets and memos that
//! are drawn at random, some of them wrong. The same seed draws the same.

use std::fmt::Write;

use blind::Conventions;
use cube::{Algorithm, Size, State};
use formats::sheet::Reading;
use serde_json::{Map, Value, json};

/// What a page says to the engine.
#[derive(Debug, Clone)]
pub enum Said {
    /// It tells a document.
    Put { kind: &'static str, handle: &'static str, revision: u32, content: String },
    /// It asks.
    Asked { method: &'static str, language: &'static str, arguments: Value },
}

/// The "minimal standard" generator. Source: S. K. Park, K. W. Miller, 1988.
struct Dice(u64);

impl Dice {
    fn below(&mut self, bound: usize) -> usize {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        self.0 as usize % bound.max(1)
    }

    fn one_in(&mut self, times: usize) -> bool {
        self.below(times) == 0
    }

    fn of<'a, T: ?Sized>(&mut self, all: &[&'a T]) -> &'a T {
        all[self.below(all.len())]
    }

    fn words(&mut self, all: &[&str], count: usize) -> String {
        (0..count).map(|_| self.of(all)).collect::<Vec<_>>().join(" ")
    }

    /// The numbers below `count` in any order.
    fn shuffled(&mut self, count: usize) -> Vec<usize> {
        let mut all: Vec<usize> = (0..count).collect();
        for at in (1..count).rev() {
            all.swap(at, self.below(at + 1));
        }
        all
    }
}

const CORNERS: [&str; 24] = [
    "UBL", "UBR", "UFR", "UFL", "LUB", "LUF", "LDF", "LDB", "FUL", "FUR", "FDR", "FDL", "RUF", "RUB", "RDB",
    "RDF", "BUR", "BUL", "BDL", "BDR", "DFL", "DFR", "DBR", "DBL",
];
const EDGES: [&str; 24] = [
    "UB", "UR", "UF", "UL", "LU", "LF", "LD", "LB", "FU", "FR", "FD", "FL", "RU", "RB", "RD", "RF", "BU",
    "BL", "BD", "BR", "DF", "DR", "DB", "DL",
];
const KINDS: [&str; 8] =
    ["corner", "edge", "wing", "wing-3", "x-centre", "t-centre", "left-oblique", "elbow"];
const FACES: [&str; 6] = ["U", "L", "F", "R", "B", "D"];
/// Turns that sizes have from this one on, and a word that is none.
const TURNS: [(&[&str], u8); 4] = [
    (&["U", "L'", "F2", "R", "B'", "D2", "R'", "x", "y'", "z2"], 2),
    (&["Rw", "u'", "M", "E'", "S2", "[R, U']", "(L F)2"], 3),
    (&["2R", "r2", "2F'", "2-3Rw"], 4),
    (&["3Rw'", "2-3L", "3U"], 6),
];
/// Algorithms for corners and edges; common practice, no source. Some are right for UFR, some for nothing.
const CYCLES: [&str; 6] =
    ["[R' D' R, U]", "[U, R' D' R]", "[L D L', U']", "M U M' U2 M U M'", "R U what", "[R: [U, R D R']]"];
const METHODS: [&str; 4] = ["one-swap", "slice-swap", "three-cycle", "magic"];
const LANGUAGES: [&str; 3] = ["en", "de", "eo"];

/// Draws what a page says.
pub struct Pages {
    dice: Dice,
    told: u32,
    /// The size of the puzzle that was told last.
    told_size: u8,
    /// Whether conventions are told as every page begins with them.
    plain: bool,
}

impl Pages {
    pub fn new(seed: u64) -> Self {
        Self { dice: Dice(seed % 2_147_483_646 + 1), told: 0, told_size: 3, plain: false }
    }

    /// A request of a method, after the documents that it names.
    pub fn say(&mut self, method: &'static str) -> Vec<Said> {
        let mut said = Vec::new();
        let arguments = self.arguments(method, &mut said);
        let language = self.dice.of(&LANGUAGES);
        said.push(Said::Asked { method, language, arguments });
        said
    }

    fn arguments(&mut self, method: &str, said: &mut Vec<Said>) -> Value {
        match method {
            "about" | "texts" | "begin" | "glossary" => json!({}),
            "sequence" => {
                let size = self.size();
                json!({ "size": size, "conventions": self.conventions(said), "text": self.moves(size) })
            }
            "random" => json!({ "size": self.size(), "seed": [0, self.dice.below(1000)] }),
            "conditional" => {
                let conditions = [
                    "parity = odd",
                    "corner.breaks = 1 and corner.twists = 0",
                    "corner.buffer = solved and corner.breaks >= 1",
                    "edge.flips = 2..3 and corner.twists = 0",
                    "corner.letters = 7",
                    "moons = 3",
                    "parity = odd and parity = even",
                ];
                let size = 2 + self.dice.below(3);
                let condition = self.dice.of(&conditions);
                let conventions = self.conventions(said);
                json!({ "size": size, "conventions": conventions, "condition": condition, "seed": [1, self.dice.below(1000)] })
            }
            "lessons" => json!({ "size": self.size() }),
            "renew" => {
                let fields = json!({ "scramble": "R U", "facelets-2": "UUUURRRRFFFFDDDDLLLLBBBB" });
                let draft = json!({ "tab": "a", "savedAt": self.dice.below(1000), "draft": fields });
                let set = json!({ "name": "Own", "revision": self.dice.below(9), "source": "[bufer]" });
                let record = self.dice.of(&["draft", "set", "draft", "set", "setting", "moon"]);
                let text = if record == "draft" { draft } else { set };
                json!({ "record": record, "text": text.to_string() })
            }
            "link" => {
                let size = self.size();
                let seed = [self.dice.below(1000), self.dice.below(1000)];
                json!({ "size": size, "scramble": self.moves(size), "facelets": "", "conventions": "",
                    "bestHold": self.dice.one_in(2), "leftOut": ["edges"], "exercises": self.dice.below(50), "seed": seed })
            }
            "said" => json!({ "source": self.source(said), "at": self.dice.below(150) }),
            "address" => {
                let size = self.size();
                let letter = json!({ "part": self.dice.below(2), "letter": self.dice.below(9) });
                let letter = if self.dice.one_in(2) { letter } else { Value::Null };
                json!({ "size": size, "scramble": self.moves(size), "facelets": "", "conventions": "", "bestHold": null,
                    "letter": letter, "memo": self.memo(), "moves": "" })
            }
            "opened" => {
                let size = self.size().to_string();
                json!({ "parts": { "size": size, "scramble": self.moves(3), "corners": "AB", "best-hold": self.dice.of(&["", "yes", "no"]) } })
            }
            "code" => json!({ "text": self.moves(3).repeat(1 + self.dice.below(40)) }),
            "linked" => {
                let size = self.size().to_string();
                let exercises = self.dice.of(&["", "4", "60", "many"]);
                json!({ "parts": { "size": size, "scramble": self.moves(3), "exercises": exercises, "seed": "1-2" } })
            }
            "paint" => {
                let size = self.size();
                let cell = format!("{} {} {}", self.dice.of(&FACES), self.dice.below(3), self.dice.below(3));
                let cell = if self.dice.one_in(3) { String::new() } else { cell };
                let colour = self.face();
                let facelets = self.facelets(size);
                json!({ "size": size, "conventions": self.conventions(said), "facelets": facelets, "cell": cell, "colour": colour })
            }
            "trace" | "play" => json!({ "source": self.source(said) }),
            "scene" => self.scene(said),
            "check" => {
                let parity = self.dice.of(&["true", "false", "null"]);
                let moves = if self.dice.one_in(3) { self.moves(3) } else { String::new() };
                let parity: Value = parity.parse().unwrap_or(Value::Null);
                // Half of them under plain conventions, whose letters most memos are written in.
                self.plain = self.dice.one_in(2);
                let source = self.source(said);
                self.plain = false;
                json!({ "source": source, "memo": self.memo(), "parity": parity, "moves": moves })
            }
            "why" => self.attempt(said),
            "lesson" => {
                let (holding, execution) = (self.dice.one_in(2), self.dice.one_in(2));
                let kinds = [self.dice.of(&KINDS[..7]), self.dice.of(&KINDS[..2])];
                let exercises = self.dice.below(4);
                json!({
                    "source": self.source(said), "holding": holding, "kinds": kinds, "execution": execution,
                    "exercises": exercises, "seed": [3, self.dice.below(1000)]
                })
            }
            "conventions" => {
                let change = self.change();
                json!({ "conventions": self.conventions(said), "change": change })
            }
            _ => self.about_sheets(method, said),
        }
    }

    /// A picture for some number of pixels.
    fn scene(&mut self, said: &mut Vec<Said>) -> Value {
        let pointed = |dice: &mut Dice| json!({ "part": dice.below(4), "letter": dice.below(14) });
        let source = self.source(said);
        let moment = match self.dice.below(3) {
            0 => {
                let letter = if self.dice.one_in(4) { Value::Null } else { pointed(&mut self.dice) };
                json!({ "kind": "traced", "letter": letter, "drawn": self.part() })
            }
            1 => {
                let (at, playing) = (self.dice.below(150), self.dice.one_in(2));
                let progress = if self.dice.one_in(2) { self.part() } else { 0.0 };
                json!({ "kind": "carried", "at": at, "progress": progress, "playing": playing })
            }
            _ => {
                let memo = if self.dice.one_in(2) { self.memo() } else { json!({}) };
                let cracked = [pointed(&mut self.dice), pointed(&mut self.dice)];
                let secret = self.dice.one_in(4);
                let size = if self.dice.one_in(4) { self.size() } else { self.told_size };
                let outcome = if self.dice.one_in(2) { self.turned(size) } else { String::new() };
                json!({ "kind": "checked", "memo": memo, "cracked": cracked, "secret": secret, "outcome": outcome })
            }
        };
        let (width, height) = (self.dice.below(1500), self.dice.below(1000));
        let looking = self.looking();
        let open = if self.dice.one_in(3) { json!(self.dice.below(3)) } else { Value::Null };
        json!({
            "source": source, "frame": { "width": width, "height": height }, "keep": self.dice.below(300),
            "eye": looking["eye"], "right": looking["right"], "down": looking["down"], "moment": moment, "open": open
        })
    }

    /// An attempt that is to be explained.
    fn attempt(&mut self, said: &mut Vec<Said>) -> Value {
        // Half of them with what every page begins with: these are explained soonest.
        self.plain = self.dice.one_in(2);
        let source = self.source(said);
        let memo = if self.plain || self.dice.one_in(2) { json!({}) } else { self.memo() };
        self.plain = false;
        // Mostly seen is the puzzle that was traced, come out somehow.
        let size = if self.dice.one_in(6) { self.size() } else { self.told_size };
        let seen = if self.dice.one_in(3) { self.facelets(size) } else { self.turned(size) };
        let told =
            self.dice.of(&["", "", "", "UF flipped, UR flipped", "UF>UR", "two corners", "only edges: C B"]);
        let list = self.dice.of(&["", "", "R U F' L2 D", "R U\n\nF2 B' D R2", "R U\nnothing"]);
        json!({ "source": source, "memo": memo, "list": list, "seen": seen, "told": told, "answers": [], "deep": false })
    }

    /// The arguments of a method about sheets of algorithms.
    fn about_sheets(&mut self, method: &str, said: &mut Vec<Said>) -> Value {
        match method {
            "amend" => {
                let change = self.amendment();
                json!({ "subject": self.subject(said), "sheet": self.sheet(said), "change": change })
            }
            "case" => json!({ "chosen": self.chosen(said), "sheet": self.sheet(said) }),
            "cases" => {
                let text = self.dice.of(&["", "b", "ubr", "R'", "coach"]);
                let only = self.dice.of(&["all", "right", "missing", "wrong", "slow"]);
                json!({ "subject": self.subject(said), "sheet": self.sheet(said), "text": text, "only": only })
            }
            "export" => {
                let form = self.dice.of(&["csv", "markdown", "html", "pdf"]);
                json!({ "subject": self.subject(said), "sheet": self.sheet(said), "form": form })
            }
            "find" => {
                let moves = self.dice.of(&["R U D", "R L U", "U D F R", "R F U", "M U R", "R K"]);
                let longest = 7 + self.dice.below(3);
                json!({ "chosen": self.chosen(said), "sheet": self.sheet(said), "moves": moves, "longest": longest })
            }
            "import" => {
                let text = self.table();
                let kind = self.dice.of(&["", "corner", "edge", "wing"]);
                let buffer = self.dice.of(&["", "UFR", "UF", "nowhere"]);
                json!({ "conventions": self.conventions(said), "sheet": self.sheet(said), "text": text, "kind": kind, "buffer": buffer })
            }
            "pictures" => {
                let subject = self.subject(said);
                let names = if subject["kind"] == "corner" { &CORNERS } else { &EDGES };
                let count = 1 + self.dice.below(2);
                let cases: Vec<[&str; 2]> =
                    (0..count).map(|_| [self.dice.of(names), self.dice.of(names)]).collect();
                json!({ "subject": subject, "cases": cases })
            }
            "turned" => {
                let (algorithm, at) = (self.dice.of(&CYCLES), self.dice.below(10));
                json!({
                    "chosen": self.chosen(said), "algorithm": algorithm, "looking": self.looking(), "at": at,
                    "progress": self.part()
                })
            }
            other => unreachable!("no requests are drawn for the method {other}"),
        }
    }

    fn put(&mut self, said: &mut Vec<Said>, kind: &'static str, content: String) -> Value {
        self.told += 1;
        let revision = self.told;
        said.push(Said::Put { kind, handle: kind, revision, content });
        json!({ "handle": kind, "revision": revision })
    }

    /// Mostly a 3x3, sometimes what is no cube.
    fn size(&mut self) -> u8 {
        match self.dice.below(6) {
            0..=2 => 3,
            3 => 2,
            _ => (1 + self.dice.below(8)) as u8,
        }
    }

    fn face(&mut self) -> &'static str {
        if self.dice.one_in(12) { "Q" } else { self.dice.of(&FACES) }
    }

    fn part(&mut self) -> f64 {
        self.dice.below(1000) as f64 / 1000.0
    }

    fn moves(&mut self, size: u8) -> String {
        let turns: Vec<&str> = TURNS
            .iter()
            .filter(|(_, from)| *from <= size.max(2))
            .flat_map(|(turns, _)| turns.iter().copied())
            .collect();
        let count = self.dice.below(24);
        let mut text = self.dice.words(&turns, count);
        if self.dice.one_in(12) {
            text += " K";
        }
        text
    }

    /// All stickers of a size: solved, the colours of a shuffle, or a number that fits nothing.
    fn facelets(&mut self, size: u8) -> String {
        let per_face = usize::from(size) * usize::from(size);
        let solved: String = FACES.iter().flat_map(|face| std::iter::repeat_n(*face, per_face)).collect();
        match self.dice.below(4) {
            0 => solved,
            1 => {
                let signs: Vec<char> = solved.chars().collect();
                self.dice.shuffled(signs.len()).into_iter().map(|at| signs[at]).collect()
            }
            2 => solved.chars().skip(1).collect(),
            // Two neighbours exchanged: it can often not be.
            _ => {
                let mut signs: Vec<char> = solved.chars().collect();
                if signs.len() > per_face {
                    signs.swap(per_face - 1, per_face);
                }
                signs.into_iter().collect()
            }
        }
    }

    /// All stickers of a puzzle after a few turns; nothing of what is no size.
    fn turned(&mut self, size: u8) -> String {
        let Some(size) = Size::new(size) else { return String::new() };
        let count = self.dice.below(4);
        let turns = self.dice.words(TURNS[0].0, count);
        let turns = Algorithm::parse(&turns, size).expect("turns of every size").flatten();
        State::solved(size).after(&turns).facelets().to_string()
    }

    fn looking(&mut self) -> Value {
        let eye = json!({ "yaw": self.part() * 6.0 - 3.0, "pitch": self.part() * 3.0 - 1.5 });
        let eye = if self.dice.one_in(2) { eye } else { Value::Null };
        json!({ "eye": eye, "right": self.part() - 0.5, "down": self.part() - 0.5, "hidden": self.dice.of(&["no", "mirrors", "net"]) })
    }

    fn source(&mut self, said: &mut Vec<Said>) -> Value {
        let size = self.size();
        self.told_size = size;
        let facelets = if self.dice.one_in(5) { self.facelets(size) } else { String::new() };
        let puzzle = json!({
            "size": size, "scramble": self.moves(size), "facelets": facelets, "bestHold": self.dice.one_in(3)
        });
        let puzzle = self.put(said, "puzzle", puzzle.to_string());
        json!({ "puzzle": puzzle, "conventions": self.conventions(said), "sheet": self.sheet(said) })
    }

    fn letters(&mut self) -> String {
        let order = self.dice.shuffled(24);
        let letter = |at: &usize| match order[0] % 3 {
            0 => char::from(b'A' + *at as u8).to_string(),
            1 => (at + 1).to_string(),
            _ => ["ka", "ki", "ku", "ke", "ko", "ma"][at % 6].to_owned() + &"xyzw"[at / 6..=at / 6],
        };
        let all: Vec<String> = order.iter().map(letter).map(|letter| format!("\"{letter}\"")).collect();
        format!("[{}]", all.join(", "))
    }

    fn conventions(&mut self, said: &mut Vec<Said>) -> Value {
        let mut text = String::new();
        if self.plain {
            return self.put(said, "conventions", text);
        }
        if self.dice.one_in(3) {
            writeln!(text, "[letters]\ncorner = {}\nedge = {}", self.letters(), self.letters()).unwrap();
        }
        if self.dice.one_in(3) {
            let (corner, edge) = (self.dice.of(&METHODS[..3]), self.dice.of(&METHODS[..3]));
            let corner = if corner == "slice-swap" { "three-cycle" } else { corner };
            writeln!(text, "[method]\ncorner = \"{corner}\"\nedge = \"{edge}\"").unwrap();
        }
        if self.dice.one_in(4) {
            writeln!(text, "[breaks]\ncorner = \"{}\"", self.dice.of(&["first", "fewest", "least"])).unwrap();
        }
        if self.dice.one_in(4) {
            writeln!(
                text,
                "[memo]\npairs = {}\norder = [\"{}\"]",
                self.dice.one_in(2),
                self.dice.of(&["edge", "corner"])
            )
            .unwrap();
        }
        if self.dice.one_in(5) {
            text += "[holding]\nup = \"yellow\"\nfront = \"red\"\n";
        }
        // As a page keeps them: JSON, where nothing is changed nothing, now and then something that is not understood.
        let kept = match formats::conventions::read(&text) {
            _ if text.is_empty() => text,
            Ok(read) => formats::conventions::to_json(&read),
            Err(error) => panic!("{error}: {text}"),
        };
        let kept = if self.dice.one_in(20) { kept.replace("memo", "mmo") } else { kept };
        self.put(said, "conventions", kept)
    }

    fn table(&mut self) -> String {
        let mut text = String::from("kind,buffer,first,second,algorithm,notes\n");
        for _ in 0..self.dice.below(8) {
            let (kind, buffer, names) =
                if self.dice.one_in(2) { ("corner", "UFR", &CORNERS) } else { ("edge", "UF", &EDGES) };
            let (first, second, algorithm) =
                (self.dice.of(names), self.dice.of(names), self.dice.of(&CYCLES));
            writeln!(text, "{kind},{buffer},{first},{second},\"{algorithm}\",by heart").unwrap();
        }
        text
    }

    fn sheet(&mut self, said: &mut Vec<Said>) -> Value {
        if self.dice.one_in(2) {
            return Value::Null;
        }
        // As a page keeps it.
        let table = self.table();
        let usual = Conventions::default();
        let kept = match formats::sheet::read(&table, &Reading::new(&usual)) {
            Ok(read) => formats::sheet::keep(&read),
            Err(_) => "{}".to_owned(),
        };
        self.put(said, "sheet", kept)
    }

    fn subject(&mut self, said: &mut Vec<Said>) -> Value {
        let (kind, buffer) = match self.dice.below(12) {
            0 => ("wing", ""),
            1 => ("corner", "UF"),
            2..=4 => ("corner", ""),
            5..=7 => ("corner", "UFR"),
            8 | 9 => ("edge", "UF"),
            _ => ("edge", ""),
        };
        json!({ "conventions": self.conventions(said), "kind": kind, "buffer": buffer })
    }

    fn chosen(&mut self, said: &mut Vec<Said>) -> Value {
        let subject = self.subject(said);
        let names = if subject["kind"] == "corner" { &CORNERS } else { &EDGES };
        json!({ "subject": subject, "first": self.dice.of(names), "second": self.dice.of(names) })
    }

    fn memo(&mut self) -> Value {
        let mut memo = Map::new();
        let third = if self.dice.one_in(8) { self.dice.of(&KINDS) } else { "edge" };
        for kind in ["corner", "edge", third] {
            let count = self.dice.below(12);
            let mut letters: String =
                (0..count).map(|_| char::from(b'A' + self.dice.below(24) as u8)).collect();
            if self.dice.one_in(10) {
                letters.push('?');
            }
            memo.insert(kind.to_owned(), letters.into());
        }
        memo.into()
    }

    fn change(&mut self) -> Value {
        let kind = self.dice.of(&KINDS);
        let names = if kind == "corner" { &CORNERS } else { &EDGES };
        let sticker = self.dice.of(names);
        match self.dice.below(12) {
            0 => Value::Null,
            10 => {
                let text =
                    self.dice.of(&["ABCDEFGHIJKLMNOPQRSTUVWX", "ABCDEFGHIJKLMNOPQRSTUVWXYZ", "A A", ""]);
                json!({ "what": "letters", "kind": kind, "text": text })
            }
            1 => {
                json!({ "what": "letter", "kind": kind, "sticker": sticker, "letter": self.dice.of(&["Q", "ß", "ko", "", "12"]) })
            }
            2 => json!({ "what": "buffer", "kind": kind, "sticker": sticker }),
            3 => {
                json!({ "what": "shade", "face": self.face(), "shade": self.dice.of(&["#123456", "#d0402b", "red"]) })
            }
            4 => {
                json!({ "what": "name", "face": self.face(), "name": self.dice.of(&["night", "white", ""]) })
            }
            5 => json!({ "what": "holding", "up": self.face(), "front": self.face() }),
            6 => json!({ "what": "algorithm", "kind": kind, "text": self.moves(3) }),
            7 => json!({ "what": "method", "kind": kind, "method": self.dice.of(&METHODS) }),
            8 => json!({ "what": "parity", "text": self.moves(3) }),
            9 => {
                json!({ "what": "breaks", "kind": kind, "choice": self.dice.of(&["first", "least", "fewest", "list"]) })
            }
            _ => json!({ "what": "pairs", "paired": self.dice.one_in(2) }),
        }
    }

    fn amendment(&mut self) -> Value {
        let (first, second) = (self.dice.of(&CORNERS), self.dice.of(&CORNERS));
        let algorithm = self.dice.of(&CYCLES);
        match self.dice.below(6) {
            0 => json!({ "what": "take", "first": first, "second": second, "algorithm": algorithm }),
            1 => json!({ "what": "take", "first": "UBR", "second": "RDF", "algorithm": "[R' D' R, U]" }),
            2 => json!({ "what": "drop", "first": first, "second": second, "algorithm": algorithm }),
            3 => json!({ "what": "discard", "named": "UXL RDF", "algorithm": algorithm }),
            4 => json!({ "what": "fill" }),
            _ => json!({ "what": "clear" }),
        }
    }
}

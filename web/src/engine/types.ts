// Written from the Rust side (crates/wasm); a test there fails when this file is stale.

/**
 * Version and languages.
 */
export type About = {
/**
 * Version of the program, as in its manifest.
 */
version: string,
/**
 * The languages that texts and sentences come in.
 */
languages: Array<Language>, };

/**
 * A row or cell.
 */
export type Accounted = {
/**
 * Where it stands in the text.
 */
place: string,
/**
 * The case as it is written, or as people speak of it.
 */
case: string,
/**
 * The algorithm as it is written.
 */
algorithm: string,
/**
 * What it does.
 */
said: string,
/**
 * Whether that is something to look at.
 */
wrong: boolean, };

/**
 * What an address carries.
 */
export type Address = {
/**
 * Its parts by name.
 */
parts: { [key in string]: string }, };

/**
 * A change that is wanted.
 */
export type Amended = {
/**
 * What is changed of it.
 */
subject: Subject,
/**
 * The sheet; none for an empty one.
 */
sheet: DocumentName | null,
/**
 * What is to be changed.
 */
change: Amendment, };

/**
 * A change of a sheet.
 */
export type Amendment = { "what": "take",
/**
 * The first target's sticker.
 */
first: string,
/**
 * The second target's sticker.
 */
second: string,
/**
 * As it is written.
 */
algorithm: string, } | { "what": "drop",
/**
 * The first target's sticker.
 */
first: string,
/**
 * The second target's sticker.
 */
second: string,
/**
 * As it is written.
 */
algorithm: string, } | { "what": "discard",
/**
 * What it says of the case.
 */
named: string,
/**
 * As it is written.
 */
algorithm: string, } | { "what": "fill", } | { "what": "clear", };

/**
 * An answer.
 */
export type Answered = {
/**
 * The question's name.
 */
name: string,
/**
 * The answer.
 */
yes: boolean, };

/**
 * A question.
 */
export type Asked = {
/**
 * Its name, for the answer.
 */
name: string,
/**
 * In words.
 */
sentence: string, };

/**
 * An attempt.
 */
export type Attempt = {
/**
 * The puzzle as it was scrambled.
 */
source: Source,
/**
 * The memo; without any letters, the one that the engine would make.
 */
memo: { [key in string]: string },
/**
 * The scrambles of the list that the scramble is of, one a line.
 */
list: string,
/**
 * How the puzzle came out: the colours by the letters of the faces, held in any way.
 */
seen: string,
/**
 * How it came out in words; where there are any, they stand for the colours.
 */
told: string,
/**
 * What was answered so far.
 */
answers: Array<Answered>,
/**
 * Whether to look for three slips.
 */
deep: boolean, };

/**
 * What the bench begins with.
 */
export type Beginning = {
/**
 * The sizes that are offered.
 */
sizes: Array<Offered>,
/**
 * The size that is meant where none is said, by layers.
 */
usual: number,
/**
 * The most characters that a field takes in.
 */
longest: number,
/**
 * The most exercises of a lesson.
 */
exercises: number,
/**
 * The puzzle of a first visit.
 */
first: FirstVisit, };

/**
 * A text that is to be taken in.
 */
export type Brought = {
/**
 * The conventions.
 */
conventions: DocumentName,
/**
 * The sheet that it comes into; none for an empty one.
 */
sheet: DocumentName | null,
/**
 * The text: CSV, semicolons or tabs, a list or a grid. What begins as an address of data (`data:…;base64,…`) is a file as its
 * bytes are.
 */
text: string,
/**
 * Whether the first target of a grid stands at the left, where the algorithms do not tell.
 */
rowsFirst: boolean | null,
/**
 * The kind of piece where the text does not say; empty: as the text says.
 */
kind: string,
/**
 * The buffer, by sticker or letter; empty: as the text or the conventions say.
 */
buffer: string, };

/**
 * A sticker to be painted, or none to look at the whole only.
 */
export type Brush = {
/**
 * Layers of the cube.
 */
size: number,
/**
 * The conventions.
 */
conventions: DocumentName,
/**
 * The colours so far by the letters of the faces; empty: solved.
 */
facelets: string,
/**
 * Which sticker, as the picture names it: face, row and column.
 */
cell: string,
/**
 * The colour, by the letter of its face.
 */
colour: string, };

/**
 * Everything that is known of a case.
 */
export type Case = {
/**
 * Letters and stickers.
 */
title: string,
/**
 * What the letters ask for, in words.
 */
meaning: string,
/**
 * Everything that solves it, the easiest first.
 */
ways: Array<Way>,
/**
 * Algorithms that stand under it and do something else.
 */
troubles: Array<Trouble>, };

/**
 * A case.
 */
export type CaseCell = {
/**
 * The first target's sticker.
 */
first: string,
/**
 * The second target's sticker.
 */
second: string,
/**
 * Both letters.
 */
letters: string,
/**
 * What it has.
 */
has: Has,
/**
 * Whether it is among the cases that are to be shown.
 */
shown: boolean,
/**
 * The easiest right algorithm; empty if there is none.
 */
algorithm: string,
/**
 * Its estimated time; empty if there is none.
 */
time: string,
/**
 * The case and what it has, to be read aloud.
 */
said: string, };

/**
 * A sheet of one buffer.
 */
export type Cases = {
/**
 * The kinds there are.
 */
kinds: Array<Choice>,
/**
 * The buffers that the kind has in the conventions and in the sheet.
 */
buffers: Array<Choice>,
/**
 * The buffer shown.
 */
buffer: string,
/**
 * How many cases have a right algorithm.
 */
coverage: string,
/**
 * Mean moves and time; empty where there is no right algorithm.
 */
means: string,
/**
 * How many cases are shown.
 */
matching: string,
/**
 * The targets in the order of their letters.
 */
heads: Array<Head>,
/**
 * For each first target the cases by second target; none where both are on one piece.
 */
rows: Array<Array<CaseCell | null>>,
/**
 * Rows of the sheet that are not right, of this buffer or of none that can be read.
 */
troubles: Array<Trouble>,
/**
 * How many more there are; empty if none.
 */
moreTroubles: string,
/**
 * Why solutions do not use the sheet; empty if they do.
 */
note: string, };

/**
 * A sticker of the net.
 */
export type Cell = {
/**
 * As the picture names it.
 */
cell: string,
/**
 * Where it is and which colour it has, to be read aloud.
 */
said: string, };

/**
 * A change of conventions.
 */
export type Change = { "what": "letter",
/**
 * The kind.
 */
kind: string,
/**
 * The sticker.
 */
sticker: string,
/**
 * The letter: one sign or a few.
 */
letter: string, } | { "what": "letters",
/**
 * The kind.
 */
kind: string,
/**
 * The letters.
 */
text: string, } | { "what": "buffer",
/**
 * The kind.
 */
kind: string,
/**
 * The sticker.
 */
sticker: string, } | { "what": "shade",
/**
 * The face, by its letter.
 */
face: string,
/**
 * The shade, as `#d0402b`.
 */
shade: string, } | { "what": "name",
/**
 * The face, by its letter.
 */
face: string,
/**
 * The name.
 */
name: string, } | { "what": "holding",
/**
 * The colour up, by the letter of its face.
 */
up: string,
/**
 * The colour in front, by the letter of its face.
 */
front: string, } | { "what": "algorithm",
/**
 * The kind.
 */
kind: string,
/**
 * As it is written.
 */
text: string, } | { "what": "method",
/**
 * The kind.
 */
kind: string,
/**
 * The method.
 */
method: string, } | { "what": "parity",
/**
 * As it is written.
 */
text: string, } | { "what": "breaks",
/**
 * The kind.
 */
kind: string,
/**
 * The choice.
 */
choice: string, } | { "what": "pairs",
/**
 * Whether they do.
 */
paired: boolean, };

/**
 * A chapter.
 */
export type Chapter = {
/**
 * Its heading.
 */
heading: string,
/**
 * What stands before its steps.
 */
lead: Array<string>,
/**
 * Its steps.
 */
steps: Array<Explained>,
/**
 * All moves together, if it has any.
 */
moves: string,
/**
 * What stands after its steps.
 */
end: Array<string>, };

/**
 * What was found.
 */
export type Checked = {
/**
 * Whether it solves the puzzle.
 */
right: boolean,
/**
 * In words, a line each.
 */
sentences: Array<string>,
/**
 * The memo that was checked: what was written, or ours where moves were made and nothing was written.
 */
memo: { [key in string]: string },
/**
 * Its letters that are wrong.
 */
cracked: Array<Pointed>,
/**
 * The colours of the puzzle that it leads to, by the letters of the faces; empty if it cannot be carried out.
 */
outcome: string,
/**
 * Which pieces are not solved then; empty if it cannot be carried out.
 */
unsolved: string, };

/**
 * Something to choose.
 */
export type Choice = {
/**
 * Its name in requests.
 */
name: string,
/**
 * What it is called.
 */
said: string, };

/**
 * A case.
 */
export type Chosen = {
/**
 * What it is of.
 */
subject: Subject,
/**
 * The first target's sticker.
 */
first: string,
/**
 * The second target's sticker.
 */
second: string, };

/**
 * A code that a camera reads.
 */
export type Code = {
/**
 * As SVG; none for a text that is too long for a phone to read.
 */
svg: string | null, };

/**
 * A colour.
 */
export type ColourOf = {
/**
 * The letter of its face.
 */
face: string,
/**
 * Its name as it is in the file.
 */
name: string,
/**
 * Its name in the language of the page.
 */
said: string,
/**
 * Its shade, as `#d0402b`.
 */
shade: string,
/**
 * How well letters read on it.
 */
contrast: string, };

/**
 * A scramble that is wanted.
 */
export type ConditionalDraw = {
/**
 * Layers of the cube: 2 to 4.
 */
size: number,
/**
 * The conventions; conditions speak of their letters and buffers.
 */
conventions: DocumentName,
/**
 * The condition.
 */
condition: string,
/**
 * The seed in two halves; the same seed gives the same scramble.
 */
seed: [number, number], };

/**
 * A puzzle in words.
 */
export type CubeSaid = {
/**
 * All faces in sentences.
 */
text: string,
/**
 * The faces U L F R B D.
 */
faces: Array<FaceSaid>, };

/**
 * What a document is.
 */
export type DocumentKind = "conventions" | "sheet" | "puzzle";

/**
 * The name of a document: what the page calls it, and which state of it is meant.
 */
export type DocumentName = {
/**
 * What the page calls it.
 */
handle: string,
/**
 * Grows with every change; two documents of one name are the same.
 */
revision: number, };

/**
 * What is wanted.
 */
export type Draw = {
/**
 * Layers of the cube, 2 to 7.
 */
size: number,
/**
 * The seed in two halves; the same seed gives the same scramble.
 */
seed: [number, number], };

/**
 * A picture.
 */
export type Drawn = {
/**
 * The picture as SVG; it names and describes itself for those who cannot see it.
 */
svg: string,
/**
 * From where it was looked at.
 */
eye: Eye, };

/**
 * A scene: three layers of one picture, from the one behind to the one before, as inner markup of an `svg` element of the size
 * that was asked for.
 */
export type DrawnScene = {
/**
 * The thread on its way from the cube to the memo.
 */
link: string,
/**
 * The cube.
 */
cube: string,
/**
 * The memo.
 */
thread: string,
/**
 * The colour of the thread: it gives way where stickers have it.
 */
silk: string,
/**
 * What the picture is, for those who cannot see it.
 */
title: string,
/**
 * What it shows.
 */
description: string,
/**
 * From where the cube is looked at.
 */
eye: Eye,
/**
 * The beads that are seen, in order.
 */
beads: Array<SeenBead>,
/**
 * The threads.
 */
parts: Array<SeenPart>,
/**
 * Where the cube is.
 */
cubeBox: Rect, };

/**
 * Conventions, and perhaps a change of them.
 */
export type Edited = {
/**
 * The conventions.
 */
conventions: DocumentName,
/**
 * What is to be changed.
 */
change: Change | null, };

/**
 * An exercise with its answer.
 */
export type Exercise = {
/**
 * The scramble.
 */
scramble: string,
/**
 * The puzzle unfolded.
 */
svg: string,
/**
 * What is asked, a line of the sheet each.
 */
asked: Array<string>,
/**
 * The answers.
 */
answers: Array<string>,
/**
 * A name for the picture's file, without an ending.
 */
file: string, };

/**
 * A step with its picture.
 */
export type Explained = {
/**
 * What it is about, such as a letter.
 */
name: string,
/**
 * Moves, if there are any.
 */
moves: string,
/**
 * In words.
 */
text: string,
/**
 * The picture as SVG.
 */
svg: string,
/**
 * A name for the picture's file, without an ending.
 */
file: string, };

/**
 * A form that is wanted.
 */
export type Exported = {
/**
 * What is saved of it.
 */
subject: Subject,
/**
 * The sheet; none for an empty one.
 */
sheet: DocumentName | null,
/**
 * The form.
 */
form: Form, };

/**
 * From where the puzzle is looked at.
 */
export type Eye = {
/**
 * To the right, in radians.
 */
yaw: number,
/**
 * Upward, in radians.
 */
pitch: number, };

/**
 * A face in words.
 */
export type FaceSaid = {
/**
 * Its letter.
 */
name: string,
/**
 * The colours of its stickers, row by row.
 */
rows: Array<Array<string>>, };

/**
 * Why a request has no view, said in the language of the request.
 */
export type Failure = {
/**
 * The sentence to show.
 */
sentence: string,
/**
 * Where in the text that was typed, if the trouble has a place there.
 */
place: Place | null,
/**
 * A document that was named and is not kept: whoever asked tells it again and asks once more.
 */
missing: DocumentName | null, };

/**
 * A grid that is wanted.
 */
export type Filtered = {
/**
 * What it is of.
 */
subject: Subject,
/**
 * The sheet; none for an empty one.
 */
sheet: DocumentName | null,
/**
 * Letters, stickers or moves that a case is to have; empty for all cases.
 */
text: string,
/**
 * Which cases are to be shown.
 */
only: Only, };

/**
 * The puzzle of a first visit.
 */
export type FirstVisit = {
/**
 * Layers of the cube.
 */
size: number,
/**
 * The scramble.
 */
scramble: string,
/**
 * What is seen.
 */
title: string,
/**
 * What to do next.
 */
text: string, };

/**
 * The form of a file.
 */
export type Form = "csv" | "markdown" | "html";

/**
 * What a search found.
 */
export type Found = {
/**
 * The least length, and how far the order is certain.
 */
said: Array<string>,
/**
 * The easiest first.
 */
ways: Array<Way>, };

/**
 * A record as it was found.
 */
export type FoundRecord = {
/**
 * What it is: `draft`, `set` or `setting`.
 */
record: string,
/**
 * As it was found, as JSON.
 */
text: string, };

/**
 * Breadth and height in pixels.
 */
export type Frame = {
/**
 * Breadth.
 */
width: number,
/**
 * Height.
 */
height: number, };

/**
 * How the puzzle is held.
 */
export type Grip = {
/**
 * The colours up and in front.
 */
colours: string,
/**
 * Why it is held so.
 */
why: string,
/**
 * Whether it is the hold with the shortest memo; none where centres leave no choice.
 */
best: boolean | null, };

/**
 * What a case has.
 */
export type Has = "right" | "slow" | "wrong" | "nothing";

/**
 * A target along a side of the grid.
 */
export type Head = {
/**
 * Its letter.
 */
letter: string,
/**
 * Its sticker.
 */
sticker: string, };

/**
 * What becomes of the three faces out of sight.
 */
export type HiddenFaces = "no" | "mirrors" | "net";

/**
 * What was found.
 */
export type Import = {
/**
 * The sheet with what was taken in.
 */
sheet: string,
/**
 * How it was read, how many cells are what, and where.
 */
said: Array<string>,
/**
 * What is to be asked before it is taken in: the mistake that most rows share; empty if there is none.
 */
question: string,
/**
 * Every row or cell, in the order of the text.
 */
rows: Array<Accounted>,
/**
 * The kind and the buffer of its first case, to be shown; empty if there is none.
 */
kind: string,
/**
 * The buffer's sticker.
 */
buffer: string, };

/**
 * What is settled for a kind.
 */
export type KindOf = {
/**
 * The kind, as files name it.
 */
kind: string,
/**
 * The kind, as people say.
 */
name: string,
/**
 * The buffer's sticker.
 */
buffer: string,
/**
 * The swap algorithm.
 */
algorithm: string,
/**
 * How its letters are carried out: `one-swap`, `slice-swap` or `three-cycle`.
 */
method: string,
/**
 * The methods that there are for it.
 */
methods: Array<string>,
/**
 * `first`, `fewest`, `least` or `list`.
 */
breaks: string,
/**
 * All letters in a row, as they can be typed.
 */
row: string,
/**
 * The stickers with their letters, faces U L F R B D, each clockwise from the upper left.
 */
stickers: Array<StickerOf>,
/**
 * The net with the letters of this kind; each sticker has `data-place`.
 */
svg: string, };

/**
 * A language to choose.
 */
export type Language = {
/**
 * Language tag after BCP 47.
 */
code: string,
/**
 * Its name, in itself.
 */
name: string, };

/**
 * A page for pupils.
 */
export type Lesson = {
/**
 * Its title.
 */
title: string,
/**
 * The scramble, if there is one.
 */
scramble: string,
/**
 * The chapters.
 */
chapters: Array<Chapter>,
/**
 * The exercises.
 */
exercises: Array<Exercise>, };

/**
 * What a link to a lesson carries.
 */
export type LessonSetting = {
/**
 * Layers of the puzzle, 2 to 7.
 */
size: number,
/**
 * The scramble as it was typed.
 */
scramble: string,
/**
 * The colours of all stickers by the letters of the faces, in the order U L F R B D; if not empty, these count
 * and not the scramble.
 */
facelets: string,
/**
 * Conventions as the browser keeps them; empty for the usual ones.
 */
conventions: string,
/**
 * Pick it up so that the memo is shortest, or as the conventions say; none: as is usual for the size.
 */
bestHold: boolean | null,
/**
 * Topics that are left out: `holding`, `corners`, `edges`, `execution`.
 */
leftOut: Array<string>,
/**
 * How many exercises.
 */
exercises: number,
/**
 * The seed of the exercises, in two halves.
 */
seed: [number, number], };

/**
 * A letter of the memo.
 */
export type Letter = {
/**
 * Which one of its kind, from 0.
 */
index: number,
/**
 * The letter.
 */
letter: string,
/**
 * Its sticker.
 */
target: string,
/**
 * What it is there for.
 */
role: LetterRole,
/**
 * Which letter of how many.
 */
place: string,
/**
 * Letter and sticker, to be read aloud.
 */
said: string,
/**
 * Why it is there.
 */
reason: string, };

/**
 * What a letter of the memo is there for.
 */
export type LetterRole = "follow" | "break" | "close" | "turned-first" | "turned-second";

/**
 * An explanation.
 */
export type Likely = {
/**
 * In words.
 */
sentence: string,
/**
 * How likely it is among all.
 */
share: string,
/**
 * Other slips that come to the same, in words.
 */
alike: Array<string>,
/**
 * The letters of the memo that it is about.
 */
cracked: Array<Pointed>, };

/**
 * The part of an address that carries a lesson.
 */
export type LinkPart = {
/**
 * Its name.
 */
name: string,
/**
 * What it carries.
 */
word: string, };

/**
 * How the puzzle is looked at.
 */
export type Looking = {
/**
 * From where; none: from the usual place.
 */
eye: Eye | null,
/**
 * Dragged to the right by so many widths of the cube.
 */
right: number,
/**
 * Dragged downward by so many widths of the cube.
 */
down: number,
/**
 * The faces out of sight.
 */
hidden: HiddenFaces, };

/**
 * What a link to a moment carries.
 */
export type MomentSetting = {
/**
 * Layers of the puzzle.
 */
size: number,
/**
 * The scramble as it was typed.
 */
scramble: string,
/**
 * The colours of all stickers by the letters of the faces, in the order U L F R B D; if not empty, these count
 * and not the scramble.
 */
facelets: string,
/**
 * Conventions as the browser keeps them; empty for the usual ones.
 */
conventions: string,
/**
 * Pick it up so that the memo is shortest, or as the conventions say; none: as is usual for the size.
 */
bestHold: boolean | null,
/**
 * The letter that is looked at.
 */
letter: Pointed | null,
/**
 * A memo that was written to be checked.
 */
memo: { [key in string]: string },
/**
 * Moves that were made, to be checked.
 */
moves: string, };

/**
 * A move.
 */
export type Move = {
/**
 * As it is set in type: with a real prime.
 */
text: string,
/**
 * What it is part of.
 */
part: MovePart,
/**
 * That it is the next one.
 */
next: string,
/**
 * Number, move and part, to be read aloud.
 */
said: string, };

/**
 * What a move is part of.
 */
export type MovePart = "setup" | "swap" | "cycle" | "undo" | "parity";

/**
 * Arguments of a method that takes none.
 */
export type Nothing = Record<symbol, never>;

/**
 * A case of a sheet.
 */
export type OfSheet = {
/**
 * The case.
 */
chosen: Chosen,
/**
 * The sheet; none for an empty one.
 */
sheet: DocumentName | null, };

/**
 * A size.
 */
export type OfSize = {
/**
 * Layers of the cube: 2 to 7.
 */
size: number, };

/**
 * A size that is offered.
 */
export type Offered = {
/**
 * Layers of the cube.
 */
layers: number,
/**
 * What it is called.
 */
name: string, };

/**
 * Which cases are to be shown.
 */
export type Only = "all" | "right" | "missing" | "wrong" | "slow";

/**
 * The net as it is painted.
 */
export type Painted = {
/**
 * The colours by the letters of the faces, in the order U L F R B D.
 */
facelets: string,
/**
 * The net as SVG; each sticker has `data-cell`.
 */
svg: string,
/**
 * Whether every colour is there as often as it should be; before that nothing is judged.
 */
settled: boolean,
/**
 * Whether turning can lead to it.
 */
possible: boolean,
/**
 * Why not, and what was probably misread; or that it can be.
 */
verdict: Array<string>,
/**
 * The colours there are.
 */
colours: Array<Pot>,
/**
 * The stickers in the order of the faces, each with where it is and its colour in words.
 */
cells: Array<Cell>, };

/**
 * The memo of a kind.
 */
export type Part = {
/**
 * The kind, as files name it.
 */
kind: string,
/**
 * The kind, as people say.
 */
name: string,
/**
 * What a field for its letters is called.
 */
field: string,
/**
 * The buffer with its letter.
 */
buffer: string,
/**
 * Whether the number of letters is odd.
 */
odd: boolean,
/**
 * The letters in one string, as they are memorised.
 */
memo: string,
/**
 * The letters in groups: pairs, unless the conventions say otherwise.
 */
groups: Array<Array<Letter>>,
/**
 * Memo, buffer and number of letters in a sentence.
 */
sentence: string,
/**
 * What is found after the last letter.
 */
finish: string, };

/**
 * Cases whose pictures are wanted.
 */
export type Pictured = {
/**
 * What they are of.
 */
subject: Subject,
/**
 * The two targets of each case.
 */
cases: Array<[string, string]>, };

/**
 * A stretch of the text that was typed, in UTF-16 units as a browser counts them; `to` is the first unit after it.
 */
export type Place = {
/**
 * First unit of the stretch.
 */
from: number,
/**
 * First unit after the stretch.
 */
to: number, };

/**
 * What the lesson is to explain.
 */
export type Plan = {
/**
 * The puzzle.
 */
source: Source,
/**
 * How it is picked up.
 */
holding: boolean,
/**
 * The kinds whose trace is explained, as files name them; one that the puzzle does not have is left out.
 */
kinds: Array<string>,
/**
 * How each letter is carried out.
 */
execution: boolean,
/**
 * How many exercises there are.
 */
exercises: number,
/**
 * The seed of the exercises, in two halves.
 */
seed: [number, number], };

/**
 * A letter of the memo.
 */
export type Pointed = {
/**
 * Which part of the memo, from 0.
 */
part: number,
/**
 * Which letter of the part, from 0.
 */
letter: number, };

/**
 * A colour to paint with.
 */
export type Pot = {
/**
 * The letter of its face.
 */
face: string,
/**
 * Its name.
 */
name: string,
/**
 * Its shade, as `#d0402b`.
 */
shade: string,
/**
 * Black or white, whichever reads on it.
 */
ink: string,
/**
 * The colour's own letter.
 */
letter: string, };

/**
 * How far long work has come.
 */
export type Progress = {
/**
 * Steps done.
 */
done: number,
/**
 * Steps in all, if that is known.
 */
of: number | null, };

/**
 * A request about a puzzle alone.
 */
export type Puzzle = {
/**
 * The puzzle.
 */
source: Source, };

/**
 * What a document of a puzzle holds.
 */
export type PuzzleContent = {
/**
 * Layers of the cube, 2 to 7.
 */
size: number,
/**
 * The scramble as it was typed.
 */
scramble: string,
/**
 * The colours of all stickers by the letters of the faces, in the order U L F R B D; if not empty, these count
 * and not the scramble.
 */
facelets: string,
/**
 * Where no centre says how: pick it up so that the memo is shortest, or as the conventions say; none: as is usual for the size.
 */
bestHold: boolean | null, };

/**
 * A scramble.
 */
export type RandomScramble = {
/**
 * Its moves.
 */
moves: string, };

/**
 * A condition that goes with a lesson.
 */
export type Ready = {
/**
 * What the lesson is called.
 */
title: string,
/**
 * The condition.
 */
condition: string, };

/**
 * A rectangle in pixels.
 */
export type Rect = {
/**
 * Left.
 */
x: number,
/**
 * Top.
 */
y: number,
/**
 * Breadth.
 */
width: number,
/**
 * Height.
 */
height: number, };

/**
 * A record as it is kept now.
 */
export type Renewed = {
/**
 * As JSON.
 */
text: string,
/**
 * The version of its form, which the page writes into every record.
 */
version: number, };

/**
 * A sheet after a change.
 */
export type Revised = {
/**
 * The sheet.
 */
sheet: string,
/**
 * What was done.
 */
said: string, };

/**
 * What a scene shows.
 */
export type SceneMoment = { "kind": "traced",
/**
 * Which; none: the first look.
 */
letter: Pointed | null,
/**
 * How far the way to the target and the bead into the memo have come, 0 to 1; 1 at rest.
 */
drawn: number, } | { "kind": "carried",
/**
 * How many moves are done.
 */
at: number,
/**
 * How much of the next one is done, 0 to 1.
 */
progress: number,
/**
 * Whether it goes on by itself: then no face opens.
 */
playing: boolean, } | { "kind": "checked",
/**
 * The letters; without any, those that the engine would memorise.
 */
memo: { [key in string]: string },
/**
 * Which of them are wrong.
 */
cracked: Array<Pointed>,
/**
 * Whether the memo is kept back, as from someone who is still to write one: the cube lies alone.
 */
secret: boolean,
/**
 * How the puzzle came out, by the letters of its colours: what is not solved is lit, all else stays back. Empty: the puzzle
 * as it is held.
 */
outcome: string, };

/**
 * A bead of a scene.
 */
export type SeenBead = {
/**
 * Which part of the memo.
 */
part: number,
/**
 * Which letter of it.
 */
letter: number,
/**
 * Its middle, in pixels.
 */
x: number,
/**
 * Downward.
 */
y: number,
/**
 * Half its breadth.
 */
radius: number,
/**
 * Letter and sticker, to be read aloud.
 */
said: string,
/**
 * Its sticker: kind and name.
 */
sticker: string, };

/**
 * A thread of a scene.
 */
export type SeenPart = {
/**
 * Which part of the memo.
 */
part: number,
/**
 * What it is called.
 */
name: string,
/**
 * Whether its beads are seen; else touching its name opens it.
 */
open: boolean,
/**
 * Memo, buffer and number of letters in a sentence.
 */
said: string,
/**
 * Where its head is.
 */
frame: Rect, };

/**
 * What the text means.
 */
export type Sequence = {
/**
 * The moves, brackets worked out, in the usual writing.
 */
moves: string,
/**
 * How many moves those are; a turn of the whole cube counts as one.
 */
length: number, };

/**
 * Conventions as they are shown.
 */
export type Settled = {
/**
 * As the browser keeps them.
 */
kept: string,
/**
 * As a file with every key written out, for people.
 */
toml: string,
/**
 * The colours of the faces U L F R B D in the hold for scrambling.
 */
colours: Array<ColourOf>,
/**
 * What is said of the colours together.
 */
report: string,
/**
 * The colours that may be up, by the letters of their faces, and which is.
 */
up: string,
/**
 * The colour in front, by the letter of its face.
 */
front: string,
/**
 * The colours that may be in front with this one up, by the letters of their faces.
 */
fronts: Array<string>,
/**
 * Holding in words.
 */
holding: string,
/**
 * What is settled for each kind.
 */
kinds: Array<KindOf>,
/**
 * The parity algorithm.
 */
parity: string,
/**
 * Whether letters go in pairs.
 */
paired: boolean,
/**
 * What else the change brought about, or what does not fit together on a 3x3.
 */
notes: Array<string>,
/**
 * What does not fit together, if something does not.
 */
trouble: string | null, };

/**
 * A file to save.
 */
export type SheetFile = {
/**
 * Its name.
 */
name: string,
/**
 * What is in it.
 */
text: string,
/**
 * Its media type.
 */
media: string, };

/**
 * A solution.
 */
export type Solved = {
/**
 * All moves, merged and cancelled.
 */
moves: string,
/**
 * How long it is, and that it was applied.
 */
length: string, };

/**
 * A search that is wanted.
 */
export type Sought = {
/**
 * The case.
 */
chosen: Chosen,
/**
 * The sheet; none for an empty one.
 */
sheet: DocumentName | null,
/**
 * The turns that may be used.
 */
moves: string,
/**
 * How long an algorithm may be.
 */
longest: number, };

/**
 * The puzzle that a request is about, by the names of its documents.
 */
export type Source = {
/**
 * The puzzle.
 */
puzzle: DocumentName,
/**
 * The conventions.
 */
conventions: DocumentName,
/**
 * The sheet of three-cycles; none for those that are found by search.
 */
sheet: DocumentName | null, };

/**
 * A letter carried out, or the parity algorithm.
 */
export type Step = {
/**
 * The letter; empty for parity.
 */
letter: string,
/**
 * The letters of the memo that it carries out.
 */
letters: Array<Pointed>,
/**
 * Which letter of how many; empty for parity.
 */
place: string,
/**
 * What it is called: the sticker, or the word for parity.
 */
name: string,
/**
 * Its number and parts, to be read aloud.
 */
said: string,
/**
 * The number of its first move, from 0.
 */
first: number,
/**
 * Its moves.
 */
moves: Array<Move>,
/**
 * How the puzzle stands after it.
 */
after: string,
/**
 * Whether that is what the letters should have done, where they alone say so.
 */
asExpected: boolean | null, };

/**
 * A sticker with its letter.
 */
export type StickerOf = {
/**
 * Its name.
 */
name: string,
/**
 * Its letter.
 */
letter: string,
/**
 * Name, colour and letter, to be read aloud.
 */
said: string, };

/**
 * What a request about a sheet is about.
 */
export type Subject = {
/**
 * The conventions.
 */
conventions: DocumentName,
/**
 * The kind of piece, as files name it.
 */
kind: string,
/**
 * The buffer's sticker; empty for that of the conventions.
 */
buffer: string, };

/**
 * Text by its name.
 */
export type Texts = {
/**
 * The language that the texts are in: the one asked for, or English.
 */
language: string,
/**
 * Every text of the catalogue.
 */
texts: { [key in string]: string }, };

/**
 * The time line.
 */
export type TimeLine = {
/**
 * The steps in the order of the execution.
 */
steps: Array<Step>,
/**
 * How many moves there are, each set-up written out.
 */
moves: number,
/**
 * What is carried out in which order, and in how many moves.
 */
summary: string,
/**
 * Where the moves come from, a sentence each.
 */
origins: Array<string>,
/**
 * How it is picked up before the first move.
 */
holding: string, };

/**
 * What is to be checked.
 */
export type ToCheck = {
/**
 * The puzzle.
 */
source: Source,
/**
 * The memo.
 */
memo: { [key in string]: string },
/**
 * Whether parity was noted; none if the memo says nothing of it.
 */
parity: boolean | null,
/**
 * The moves that were made; empty: check the memo.
 */
moves: string, };

/**
 * A text that is to become a code.
 */
export type ToCode = {
/**
 * The text.
 */
text: string, };

/**
 * A puzzle that is to be said.
 */
export type ToSay = {
/**
 * The puzzle.
 */
source: Source,
/**
 * How many moves of the execution are done.
 */
at: number, };

/**
 * What explains it.
 */
export type Told = {
/**
 * What cannot come from turning, or which piece must be missing from what was told, if that is so.
 */
fault: string | null,
/**
 * What is to be known before the explanations: a fault of the memo itself, kinds that were not looked at.
 */
remarks: Array<string>,
/**
 * The likeliest first.
 */
explanations: Array<Likely>,
/**
 * How many are as likely as the first, or that there is none.
 */
summary: string,
/**
 * The questions whose answers would tell most.
 */
questions: Array<Asked>,
/**
 * Where it most likely went wrong, in a few words.
 */
headline: string,
/**
 * The memo that was carried out: what was written, or ours.
 */
memo: { [key in string]: string },
/**
 * The colours as it came out, by the letters of the faces; empty where nothing explains it.
 */
outcome: string,
/**
 * Which pieces are not solved.
 */
unsolved: string, };

/**
 * Memo, reasons and solution.
 */
export type Traced = {
/**
 * How it is picked up, and what is then already solved.
 */
holding: string,
/**
 * A memo a kind, in the order in which they are memorised.
 */
parts: Array<Part>,
/**
 * Whether there is parity, and what follows.
 */
parity: string,
/**
 * How many letters in all, and whether there is parity, in a few words.
 */
summary: string,
/**
 * How it is held, in a few words.
 */
grip: Grip,
/**
 * Whether there is nothing to memorise at all.
 */
solved: boolean,
/**
 * The stickers as they are before it is picked up, to be painted on.
 */
facelets: string,
/**
 * What carries the memo out; applied and found right.
 */
solution: Solved | null,
/**
 * Why there is no solution, if there is none.
 */
trouble: string | null, };

/**
 * A row that is not right.
 */
export type Trouble = {
/**
 * The case as it is written, or as people speak of it.
 */
case: string,
/**
 * Whether the case cannot be read.
 */
unread: boolean,
/**
 * The algorithm as it is written.
 */
algorithm: string,
/**
 * What it does.
 */
said: string, };

/**
 * A moment of an algorithm.
 */
export type Turned = {
/**
 * The case.
 */
chosen: Chosen,
/**
 * The algorithm.
 */
algorithm: string,
/**
 * How the puzzle is looked at.
 */
looking: Looking,
/**
 * How many moves are done.
 */
at: number,
/**
 * How much of the next one is done, 0 to 1.
 */
progress: number, };

/**
 * A sequence as it was typed.
 */
export type Typed = {
/**
 * Layers of the cube, 2 to 7.
 */
size: number,
/**
 * The conventions; they say what lower-case letters stand for.
 */
conventions: DocumentName,
/**
 * The text.
 */
text: string, };

/**
 * A scene that is wanted.
 */
export type WantedScene = {
/**
 * The puzzle.
 */
source: Source,
/**
 * The pixels that there are.
 */
frame: Frame,
/**
 * How many of them the page keeps for words of its own: above the thread where it lies beside the cube, else above the cube.
 */
keep: number,
/**
 * From where; none: so that what is spoken of is seen.
 */
eye: Eye | null,
/**
 * Dragged since to the right, by breadths of the cube.
 */
right: number,
/**
 * Dragged downward, by breadths of the cube.
 */
down: number,
/**
 * What is shown.
 */
moment: SceneMoment,
/**
 * Which part's thread is open where there is no room for all; none: the one in hand.
 */
open: number | null, };

/**
 * An algorithm that solves a case.
 */
export type Way = {
/**
 * As it is written, with brackets where it has any.
 */
algorithm: string,
/**
 * Its moves, one by one.
 */
moves: Array<string>,
/**
 * How many moves there are, a slice counted as one.
 */
count: string,
/**
 * The estimated time.
 */
time: string,
/**
 * Where hands take hold anew.
 */
regrips: string,
/**
 * Where it comes from.
 */
origin: string,
/**
 * Whether the sheet has it.
 */
kept: boolean, };

/**
 * A word of the trade.
 */
export type WordSaid = {
/**
 * Its name, the same in every language.
 */
name: string,
/**
 * The word itself.
 */
title: string,
/**
 * The forms in which it is met, the longest first.
 */
forms: Array<string>,
/**
 * What it means.
 */
means: string,
/**
 * A picture of it, if there is an easy one.
 */
picture: string | null, };

/** Everything that can be asked. */
export interface Methods {
  /** Version of the engine and the languages it speaks. */
  about: { arguments: Nothing; view: About };
  /** What the bench begins with. */
  begin: { arguments: Nothing; view: Beginning };
  /** The execution as a time line. */
  play: { arguments: Puzzle; view: TimeLine };
  /** Cube and thread in one for the pixels that there are. */
  scene: { arguments: WantedScene; view: DrawnScene };
  /** Reads a sequence of moves, or says where it is none. */
  sequence: { arguments: Typed; view: Sequence };
  /** Every text of the screens in the language of the request. */
  texts: { arguments: Nothing; view: Texts };
  /** The memo with the reason for every letter. */
  trace: { arguments: Puzzle; view: Traced };
  /** The part of an address that carries a moment of the bench. */
  address: { arguments: MomentSetting; view: LinkPart };
  /** A sheet after a change. */
  amend: { arguments: Amended; view: Revised };
  /** Everything that is known of a case. */
  case: { arguments: OfSheet; view: Case };
  /** A sheet as a grid. */
  cases: { arguments: Filtered; view: Cases };
  /** A text as a code that a camera reads. */
  code: { arguments: ToCode; view: Code };
  /** Conventions as they are shown, perhaps after a change. */
  conventions: { arguments: Edited; view: Settled };
  /** A sheet as a file. */
  export: { arguments: Exported; view: SheetFile };
  /** The easiest algorithms for a case, by search. */
  find: { arguments: Sought; view: Found };
  /** Words of the trade and what they mean. */
  glossary: { arguments: Nothing; view: Array<WordSaid> };
  /** Takes a sheet in, with an account of every row. */
  import: { arguments: Brought; view: Import };
  /** The part of an address that carries a lesson. */
  link: { arguments: LessonSetting; view: LinkPart };
  /** What an address of any version carries of a lesson. */
  linked: { arguments: Address; view: LessonSetting };
  /** What an address of any version carries of a moment of the bench. */
  opened: { arguments: Address; view: MomentSetting };
  /** The net with a sticker painted. */
  paint: { arguments: Brush; view: Painted };
  /** Pictures of cases. */
  pictures: { arguments: Pictured; view: Array<string> };
  /** A record of the browser in its present form. */
  renew: { arguments: FoundRecord; view: Renewed };
  /** The puzzle in words and as a table. */
  said: { arguments: ToSay; view: CubeSaid };
  /** A case at a moment of an algorithm, perhaps in the middle of a turn. */
  turned: { arguments: Turned; view: Drawn };
  /** Whether a memo, or moves that were made, are right. */
  check: { arguments: ToCheck; view: Checked };
  /** A random scramble that meets a condition. */
  conditional: { arguments: ConditionalDraw; view: RandomScramble };
  /** A page for pupils and a sheet of exercises. */
  lesson: { arguments: Plan; view: Lesson };
  /** The conditions of lessons for a size. */
  lessons: { arguments: OfSize; view: Array<Ready> };
  /** A random scramble. */
  random: { arguments: Draw; view: RandomScramble };
  /** The slips that explain how an attempt came out. */
  why: { arguments: Attempt; view: Told };
}

/** Name of a text in the catalogue of the screens. */
export type TextName =
  | "algorithm-label"
  | "algorithms-purpose"
  | "algs-bring"
  | "algs-bring-anyway"
  | "algs-brought"
  | "algs-cards"
  | "algs-case"
  | "algs-changed-meanwhile"
  | "algs-choose"
  | "algs-clear"
  | "algs-clear-sure"
  | "algs-drop"
  | "algs-estimates"
  | "algs-files"
  | "algs-fill"
  | "algs-find"
  | "algs-find-hint"
  | "algs-grid"
  | "algs-grid-hint"
  | "algs-kept"
  | "algs-legend-nothing"
  | "algs-legend-right"
  | "algs-legend-slow"
  | "algs-legend-wrong"
  | "algs-longest"
  | "algs-look"
  | "algs-more"
  | "algs-only"
  | "algs-open"
  | "algs-open-as-said"
  | "algs-open-buffer"
  | "algs-open-first"
  | "algs-open-first-left"
  | "algs-open-first-told"
  | "algs-open-first-top"
  | "algs-open-hint"
  | "algs-open-what"
  | "algs-own"
  | "algs-own-check"
  | "algs-paste"
  | "algs-pieces"
  | "algs-report"
  | "algs-report-all"
  | "algs-report-close"
  | "algs-save-csv"
  | "algs-save-html"
  | "algs-save-markdown"
  | "algs-search"
  | "algs-start"
  | "algs-take"
  | "algs-troubles"
  | "algs-turns"
  | "algs-turns-hint"
  | "algs-unbring"
  | "algs-unbrought"
  | "algs-unread"
  | "algs-watch"
  | "algs-ways"
  | "algs-wrong-here"
  | "answers-heading"
  | "app-name"
  | "app-purpose"
  | "best-hold"
  | "breaks-at-fewest"
  | "breaks-at-first"
  | "breaks-at-least"
  | "breaks-at-list"
  | "breaks-label"
  | "buffer-label"
  | "by-one-swap"
  | "by-slice-swap"
  | "by-three-cycle"
  | "cancel"
  | "cancelled"
  | "carry-again"
  | "carry-all"
  | "carry-done"
  | "carry-from"
  | "carry-move"
  | "check-extras"
  | "check-hint"
  | "check-purpose"
  | "check-write"
  | "collection-algorithms"
  | "collection-letters"
  | "colour-label"
  | "colour-name"
  | "colour-shade"
  | "colours-heading"
  | "conventions-purpose"
  | "copied"
  | "copy"
  | "cube-as-table"
  | "cube-as-text"
  | "cube-face"
  | "cube-keys"
  | "cube-region"
  | "dismiss"
  | "engine-failed-text"
  | "engine-failed-title"
  | "engine-starting"
  | "engine-stopped"
  | "exercise-ask"
  | "exercises-heading"
  | "exercises-label"
  | "exercises-list"
  | "exercises-other"
  | "explain-corners"
  | "explain-edges"
  | "explain-execution"
  | "explain-holding"
  | "field-too-long"
  | "file-heading"
  | "first-learn"
  | "first-solve"
  | "first-teach"
  | "fits"
  | "hidden-label"
  | "hidden-mirrors"
  | "hidden-net"
  | "hidden-no"
  | "hold-conventions"
  | "hold-shortest"
  | "holding-front"
  | "holding-heading"
  | "holding-up"
  | "input-colours"
  | "input-label"
  | "input-scramble"
  | "keys-off"
  | "keys-on"
  | "knot"
  | "lens-check"
  | "lens-play"
  | "lens-trace"
  | "lens-why"
  | "lenses-label"
  | "lesson-choose"
  | "lesson-empty"
  | "lesson-purpose"
  | "letter-back"
  | "letter-of"
  | "letter-on"
  | "letters-heading"
  | "letters-hint"
  | "letters-row"
  | "link-label"
  | "link-opened"
  | "link-shown"
  | "link-take"
  | "loose-end"
  | "mark-buffer"
  | "mark-target"
  | "memo-corners"
  | "memo-edges"
  | "memo-heading"
  | "memo-hint"
  | "memo-next"
  | "memo-nothing"
  | "memo-previous"
  | "method-label"
  | "more-of-memo"
  | "motion-less"
  | "motion-system"
  | "move-back"
  | "move-on"
  | "moves-made"
  | "moves-made-hint"
  | "moves-none"
  | "nav-algorithms"
  | "nav-check"
  | "nav-conventions"
  | "nav-label"
  | "nav-lesson"
  | "nav-play"
  | "nav-trace"
  | "nav-why"
  | "needs-scripts"
  | "no"
  | "no-solution"
  | "not-found-text"
  | "not-found-title"
  | "nothing-to-undo"
  | "offline-ready"
  | "only-all"
  | "only-missing"
  | "only-right"
  | "only-slow"
  | "only-wrong"
  | "outcome-heading"
  | "paint-hint"
  | "paint-reset"
  | "pairs-label"
  | "paper-a4"
  | "paper-label"
  | "paper-letter"
  | "parity-label"
  | "parity-not-said"
  | "parity-noted"
  | "part-cycle"
  | "part-not-loaded"
  | "part-parity"
  | "part-setup"
  | "part-swap"
  | "part-undo"
  | "picture-png"
  | "picture-save"
  | "picture-svg"
  | "place-bench"
  | "place-collection"
  | "place-practice"
  | "place-progress"
  | "place-teach"
  | "play-first"
  | "play-keys"
  | "play-nothing"
  | "play-pause"
  | "play-purpose"
  | "play-ready"
  | "play-start"
  | "print"
  | "puzzle-size"
  | "quick-heading"
  | "random-any"
  | "random-condition"
  | "random-scramble"
  | "random-wait"
  | "reason-after"
  | "reason-begin"
  | "reason-begin-hint"
  | "redo"
  | "redone"
  | "scramble-empty"
  | "scramble-hint"
  | "scramble-label"
  | "set-delete"
  | "set-export"
  | "set-import"
  | "set-kept"
  | "set-label"
  | "set-name"
  | "set-new"
  | "set-own"
  | "set-usual"
  | "settings"
  | "settings-close"
  | "settings-keys"
  | "settings-language"
  | "settings-motion"
  | "settings-theme"
  | "share"
  | "share-code-long"
  | "share-code-title"
  | "share-copy"
  | "share-not-copied"
  | "share-send"
  | "share-title"
  | "size-2"
  | "size-3"
  | "size-4"
  | "skip-to-content"
  | "solution-title"
  | "speed"
  | "speed-fast"
  | "speed-slow"
  | "speed-usual"
  | "store-changed-elsewhere"
  | "store-denied"
  | "store-failed"
  | "store-full"
  | "store-newer"
  | "subject-change"
  | "subject-colours"
  | "subject-done"
  | "subject-from"
  | "subject-from-first"
  | "subject-from-lesson"
  | "subject-from-link"
  | "subject-from-painted"
  | "subject-from-random"
  | "subject-from-typed"
  | "subject-hold"
  | "subject-label"
  | "subject-more"
  | "subject-scramble-none"
  | "tap-buffer"
  | "tap-label"
  | "tap-letter"
  | "theme-dark"
  | "theme-light"
  | "theme-system"
  | "time-line"
  | "to-carry-out"
  | "to-conventions"
  | "to-trace"
  | "trace-purpose"
  | "try-again"
  | "turn-back"
  | "turn-down"
  | "turn-left"
  | "turn-right"
  | "turn-up"
  | "turned-piece"
  | "undo"
  | "undone"
  | "update-later"
  | "update-ready"
  | "update-take"
  | "velvet-keys"
  | "velvet-label"
  | "velvet-loading"
  | "why-alike"
  | "why-ask"
  | "why-begun"
  | "why-cant-say"
  | "why-change"
  | "why-deep"
  | "why-list"
  | "why-list-hint"
  | "why-memo-hint"
  | "why-options"
  | "why-paint"
  | "why-purpose"
  | "why-questions-heading"
  | "why-seen"
  | "why-tell"
  | "why-tell-hint"
  | "why-told"
  | "why-told-hint"
  | "why-words"
  | "working"
  | "yes";

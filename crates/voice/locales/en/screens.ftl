# Texts of the screens, English. A text here takes no arguments: what depends on a puzzle is said by the engine.

## Name of the app and where one is

app-name = Hoodwink
app-purpose = A workbench for solving cubes blindfolded
nav-label = Places
nav-trace = Trace
nav-play = Carry out
nav-check = Check
nav-why = Why
nav-conventions = Letters and colours
nav-lesson = Lesson
nav-algorithms = Algorithms
skip-to-content = Skip to the content
not-found-title = Nothing is at this address
not-found-text = The link may be cut off. Choose a place.

## What each view is for

trace-purpose = From a scramble to the memo, with the reason for every letter.
play-purpose = Watch the solution letter by letter.
check-purpose = Is my memo right? Any memo that solves is right.
why-purpose = What went wrong in an attempt?
conventions-purpose = Letters, buffers, colours and holding.
lesson-purpose = A page for pupils, and an exercise sheet.
algorithms-purpose = Your sheet of algorithms, checked move by move.

## Settings

settings = Settings
settings-language = Language
settings-theme = Light or dark
theme-system = As the device
theme-light = Light
theme-dark = Dark
settings-motion = Movement
motion-system = As the device
motion-less = Less movement
settings-close = Close

## Long work

working = Working …
cancel = Cancel
cancelled = Cancelled.
try-again = Try again

## Scramble

scramble-label = Scramble
scramble-hint = Moves such as R U' F2, Rw, 3Rw, M, x
scramble-empty = Type a scramble.

## The engine and the store

engine-starting = Starting the engine …
engine-failed-title = The engine does not start
engine-failed-text = This browser could not load the part that computes. Reload the page; if that does not help, take a browser from the middle of 2024 or later.
needs-scripts = Hoodwink computes in this page and needs JavaScript. Allow scripts for this address and reload.
part-not-loaded = This part could not be loaded. Look whether the network is there, then reload the page; nothing you typed is lost.
engine-stopped = The engine stopped in the middle of its work and was started again. Nothing you typed is lost.
store-denied = This browser keeps nothing for this page. You can go on, but a reload loses what you typed.
store-full = This browser's storage is full. What you change from here on is not kept.
store-failed = The storage of this browser gave an error. What you change from here on may not be kept.
store-newer = Something that a newer version of Hoodwink kept in this browser was left as it is. Reload the page to get the newer version.
store-changed-elsewhere = This set was changed in another tab. Yours was kept under a new name.
dismiss = Close this notice

## A new version

update-ready = A new version is ready.
update-take = Load it now
update-later = Later
offline-ready = Works without network from now on.

## The puzzle and how it is looked at

puzzle-size = Puzzle
size-2 = 2x2
size-3 = 3x3
size-4 = 4x4
input-label = Start from
input-scramble = A scramble
input-colours = Colours I see
best-hold = Choose the holding with the shortest memo
random-scramble = Random scramble
random-condition = Lesson
random-any = Any scramble
random-wait = A scramble is being searched …
cube-region = The puzzle
cube-keys = Turn it with the arrow keys or by dragging.
turn-left = Turn to the left
turn-right = Turn to the right
turn-up = Turn upward
turn-down = Turn downward
turn-back = Usual view
hidden-label = Hidden faces
hidden-no = Not shown
hidden-mirrors = In mirrors
hidden-net = Unfolded
colour-label = Colour
paint-hint = Choose a colour, then tap stickers. With the keyboard: arrow keys and Enter. The centres are painted too.
paint-reset = Reset to solved

## The memo

memo-heading = Memo
memo-hint = Choose a letter to see where it comes from.
memo-nothing = Solved: there is nothing to memorise.
memo-previous = Letter before
memo-next = Next letter
knot = New cycle
loose-end = Odd number of letters: parity
turned-piece = Turned in its place
holding-heading = Holding
solution-title = Solution
copy = Copy
copied = Copied.
no-solution = The memo can be made, but not carried out:
to-conventions = Change the conventions
quick-heading = Holding and buffers
holding-up = Up
holding-front = In front

## Play

play-nothing = There is nothing to carry out: give a scramble.
play-start = Play
play-pause = Pause
move-back = Move back
move-on = Move on
letter-back = Letter back
letter-on = Letter on
play-first = To the start
speed = Speed
speed-slow = Slow
speed-usual = Medium
speed-fast = Fast
part-setup = Set-up
part-swap = Swap
part-cycle = Three-cycle
part-undo = Undo
part-parity = Parity
time-line = Time line
play-keys = Space plays and pauses; arrow keys go by move, with Shift by letter.
mark-buffer = Square: buffer
mark-target = Diamond: target
play-ready = Ready for the first move.

## Conventions

set-label = Set
set-usual = The usual ones
set-own = My conventions
set-name = Name of the set
set-new = Save under this name
set-delete = Delete this set
set-kept = Every change is kept at once.
set-import = Open a file
set-export = Save as a file
letters-heading = Letters
letters-hint = Choose a sticker on the net and type its letter.
tap-label = A tap
tap-letter = chooses a sticker for its letter
tap-buffer = makes it the buffer
letter-of = Letter of
buffer-label = Buffer
method-label = Method
by-one-swap = One swap a letter
by-slice-swap = Half turns of the slice
by-three-cycle = Two letters at once, by three-cycles
algorithm-label = Swap algorithm
parity-label = Parity algorithm
breaks-label = New cycles begin
breaks-at-first = at the first unsolved letter
breaks-at-fewest = where the letters take the fewest set-up moves
breaks-at-least = so that the whole takes the least estimated time
breaks-at-list = by the list in the file
pairs-label = Letters in pairs
colours-heading = Colours
colour-name = Name
colour-shade = Shade
file-heading = As a file
fits = No contradictions.

## Lesson

lesson-choose = What to explain
explain-holding = Picking it up
explain-corners = The corners' letters
explain-edges = The edges' letters
explain-execution = The execution
exercises-label = Exercises
exercises-other = Other exercises
paper-label = Paper
paper-a4 = A4
paper-letter = Letter
print = Print
link-label = Link to this lesson
link-shown = This lesson came with a link; your own scramble is untouched.
link-take = Make it mine
lesson-empty = Give a scramble here or on the bench.
picture-svg = SVG
picture-png = PNG
picture-save = Save picture
exercises-heading = Exercises
answers-heading = Answers
exercise-ask = Write down the memo.

## Check and Why

memo-corners = The corners' letters
memo-edges = The edges' letters
parity-noted = Parity noted
parity-not-said = not said
yes = Yes
no = No
moves-made = Moves that were made
moves-made-hint = Compared with the memo above, or with the engine's where there is none.
check-hint = Write your memo; it is checked as you type.
outcome-heading = What it leads to
why-begun = What was to be done
why-memo-hint = Leave the letters empty if you memorised what Trace shows.
why-seen = How the puzzle came out
why-list = The scramble is one of a list
why-list-hint = One scramble a line: another of them may have been made.
why-told = Or in words
why-told-hint = For example: UF>UR>FR, UF flipped, white-green and white-red swapped, edges: A B, two corners, only edges: …; or stickers with ? for those you do not know, U: … F: …
why-ask = Explain
why-deep = Look for three slips
why-alike = Other slips that come to the same
why-questions-heading = These answers would tell most

## Algorithms

algs-pieces = Pieces
algs-open = Open a sheet
algs-open-what = In the file are
algs-open-as-said = what the file says
algs-open-buffer = Buffer, where the file names none
algs-open-hint = CSV, TSV or text with semicolons: a list, or a grid with targets along both sides. Choose a file, drop it here, or paste its text; you see what is in it before anything is taken in.
algs-files = Change and save
algs-fill = Fill the gaps
algs-clear = Take all out
algs-clear-sure = Take all algorithms of this buffer out of the sheet?
algs-save-csv = Save as CSV
algs-save-markdown = Save as Markdown
algs-save-html = Save as a page to print
algs-find = Find
algs-find-hint = Letters, stickers, moves or a note
algs-only = Show
only-all = all cases
only-right = with a right algorithm
only-missing = without a right algorithm
only-wrong = with one that does something else
only-slow = much slower than the best known
algs-grid = All cases
algs-grid-hint = The first target stands at the left, the second along the top. Arrow keys go from case to case.
algs-legend-right = right
algs-legend-slow = right, but slow
algs-legend-wrong = does something else
algs-legend-nothing = no algorithm
algs-cards = Cases
algs-more = Show more
algs-troubles = Rows to look at
algs-report = What is in the file
algs-report-all = Every row
algs-report-close = Close the report
algs-bring = Take it in
algs-bring-anyway = Take it in all the same
algs-brought = Taken in.
algs-unbring = Undo
algs-unbrought = Undone; the sheet is as it was.
algs-paste = Or paste its text
algs-look = Look at the text
algs-unread = This file cannot be read.
algs-open-first = First target of a grid
algs-open-first-told = as the algorithms tell
algs-open-first-left = at the left
algs-open-first-top = at the top
algs-choose = Choose a case to see what solves it.
algs-case = The case
algs-ways = What solves it, the easiest first
algs-watch = Show
algs-take = Take into the sheet
algs-drop = Take out
algs-kept = In the sheet
algs-wrong-here = Stands here, but is not right
algs-own = An algorithm of your own
algs-own-check = Check and take in
algs-search = Search for more
algs-turns = Turns
algs-turns-hint = Blocks of turns, such as R U D, or with slices M E S; each may turn by any amount.
algs-longest = Up to this many turns
algs-start = Search
algs-estimates = Times are this program's own estimates for two hands.
algs-changed-meanwhile = The sheet was changed or another set was chosen meanwhile, so nothing was done. Do it again if you still want it.

## The frame: five places, four lenses

place-bench = Bench
place-practice = Practice
place-teach = Teach
place-collection = Collection
place-progress = Progress
lenses-label = Lenses
lens-trace = Trace
lens-play = Carry out
lens-check = Check
lens-why = Why
collection-letters = Letters and colours
collection-algorithms = Algorithms

## The puzzle in hand

subject-label = The puzzle in hand
subject-change = Change the puzzle
subject-scramble-none = No scramble yet
subject-colours = Painted colours
subject-from = Where it came from
subject-from-first = It lay here to begin with.
subject-from-typed = You typed it.
subject-from-painted = You painted it.
subject-from-random = A random scramble.
subject-from-lesson = A scramble for a lesson.
subject-from-link = It came with a link.
subject-done = Done
subject-hold = Holding
hold-shortest = Shortest memo
hold-conventions = As in my conventions
subject-more = Holding, lesson, link
undo = Undo
redo = Redo
undone = Taken back.
redone = Done again.
nothing-to-undo = There is nothing to take back.
field-too-long = That is too long for this field, so it was not taken in.
moves-none = Give a scramble, and there is something to see.

## Velvet

velvet-label = Cube and memo
velvet-keys = Arrow keys walk the letters, Home and End go to the first and last. Shift with arrows turns the cube. Space is the dark button. 1 to 4 are the lenses, R is a random scramble, / the scramble.
cube-as-text = The cube in words
cube-as-table = The cube as a table
cube-face = Face
velvet-loading = Being worked out …

## First visit

first-learn = I want to learn
first-solve = I solve blindfolded
first-teach = I teach

## The reason

reason-begin = Begin with the first letter
reason-begin-hint = Press Next letter: each step says where to look, what you see and where it belongs.
reason-after = That was the last letter. Carry it out now.
to-carry-out = Carry it out
more-of-memo = More about this memo

## Carrying out

carry-move = Move
carry-done = Done. The puzzle is solved.
carry-again = Once more
carry-all = All letters
carry-from = Where the moves come from

## Check and why

check-write = Write your memo. Any memo that solves is right.
check-extras = Moves, parity
why-tell = Tell how it came out
why-tell-hint = Paint it or say it in words, then ask why.
why-paint = Paint it
why-words = Say it in words
why-cant-say = Can’t say
why-change = Change what I told
why-options = List of scrambles, my own memo

## Links and sharing

share = Link
share-title = A link to this moment
share-copy = Copy the link
share-send = Share
share-not-copied = The clipboard refused. Mark the link and copy it yourself.
share-code-title = Link as a code for a camera
share-code-long = This link is too long for a code; copy it instead.

## Settings of keys

settings-keys = Single keys
keys-on = On
keys-off = Off
link-opened = This puzzle came with a link. What you had before comes back with Undo.
exercises-list = The scrambles as a list
to-trace = Show the memo
letters-row = All letters in a row, faces U L F R B D, each clockwise from the upper left

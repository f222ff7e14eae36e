# What the command line says around the results.

label-scramble = Scramble
label-stickers = Stickers
reasons-heading = Why, for the { $kinds }:
solution-heading = Carried out (set-up, swap, set-up undone):
step-swap = { $kind } swap

holdings-up = Up
holdings-front = Front
holdings-moves = Turn it
holdings-centres = Centres right
holdings-solved = Solved
holdings-letters = Letters
scramble-hold-most-centres = --hold most-centres is for tracing; scrambles are drawn for your conventions or for --hold best.
hold-shorter = Held another way the memo has only { $letters ->
    [one] 1 letter
   *[other] { $letters } letters
}: ask with --hold best.
hold-best-odd = --hold best is for puzzles without fixed centres; on a { $size } the centres and your conventions fix the holding.

no-such-puzzle = “{ $text }” is no puzzle here; choose 2, 3, 4, 5, 6 or 7, as --puzzle 3.
png-width = A picture { $width } pixels wide cannot be made; 1 to { $most } are possible.
png-letters = The fonts at hand have no “{ $letters }”; keep the picture as SVG, or leave the letters out with --no-letters.
png-fault = The picture could not be made into pixels; this is a fault of the program: { $why }
scramble-missing = There is no scramble. Write it behind the command in quotation marks, as "R U' F2", or give the stickers with --facelets.
facelets-other-size = These are the stickers of a { $found }, but the puzzle is a { $size }; say --puzzle.
no-such-kind = “{ $text }” is no kind of piece here; choose one of { $known }.
no-swap = The method has no swap for this kind.
not-text = This line is no text (UTF-8).
line-no-moves = There are no moves in this line.
file-too-long = It is longer than { $most } bytes, which is the most that is read.
system-not-found = There is no such file.
system-denied = This system does not let the program use it.
system-directory = This is a directory; a file is needed.
system-no-directory = A part of this path is a file and no directory.
system-full = There is no room left where this is written.
system-number = The system refuses it (error { $number }).
system-unknown = The system refuses it without a reason.
output-closed = The output was closed.
standard-input = standard input
held-no-rotation = { $turn } is no rotation; --held takes x, y and z only.

setups-heading = { $algorithm }
    exchanges { $buffer } and { $target }. A set-up brings a target's sticker to { $target } and leaves alone { $left }.
setups-item = Item { $number } of --turns: { $what }
setups-no-turns = There are no turns in --turns; name some, as R,F,D or R2,U.
setup-none = none
setup-not-found = not possible with these turns
setups-also = also { $others }

shortest-solved = It is solved: no turns.
shortest-proven = { $turns ->
    [one] 1 turn
   *[other] { $turns } turns
}; no solution is shorter.
shortest-open = { $turns } turns: the shortest solution found so far, not proven to be a shortest one. No solution takes fewer than { $least } turns. More time may bring the two together: --seconds.
shortest-size = Shortest solutions are searched for the 2x2 and the 3x3, not for a { $size }.
shortest-progress = at least { $least } turns, at most { $found }

apply-solved = Every face shows one colour: solved.
apply-centres = The centres have moved; where pieces are is told as seen from them.
apply-kind-solved = All { $kinds } are solved.
apply-kind = { $kinds }: { $what }.
apply-away = { $count } in other places, at { $pieces }
apply-turned = { $count } in place but turned, { $pieces }

picture-after = The puzzle after { $moves }
picture-strip = The trace, letter by letter
picture-ending = { $file }: a picture file ends in .svg or .png.

conventions-right = { $file } is in order.
conventions-sheet = the sheet of the { $kinds } that it names, { $what }
conventions-ease = the costs of turning that it names, { $what }
conventions-holding = Held to solve: { $up } up, { $front } front.
conventions-kind = { $kinds }: buffer { $buffer }, method { $method }, { $algorithm }
    New cycles begin { $breaks }.
conventions-kind-searched = { $kinds }: buffer { $buffer }, method { $method }, algorithms found by search
    New cycles begin { $breaks }.
breaks-first = at the first unsolved letter
breaks-fewest = where the letters take the fewest set-up moves
breaks-least = so that the whole takes the least estimated time
breaks-preference = at the first unsolved of { $list }
conventions-parity = Parity: { $algorithm }
conventions-order = Memorised in the order { $memo }; carried out in the order { $execution }.
usage-unknown-option = There is no option “{ $text }” here.
usage-too-much = “{ $text }” is one word too many; what has blanks in it stands in quotation marks.
usage-unknown-command = There is no command “{ $text }”.
usage-no-value = { $option } needs a value.
usage-no-value-of = { $option } needs a value: { $known }.
usage-value = “{ $text }” will not do for { $option }; { $known } will.
usage-number = “{ $text }” will not do for { $option }: a whole number is needed, { $least } or more.
usage-number-between = “{ $text }” will not do for { $option }: a whole number from { $least } to { $most } is needed.
usage-twice = { $option } may be given only once.
usage-conflict = { $option } and { $other } do not go together.
usage-missing = { $count ->
    [one] { $options } is missing.
   *[other] { $options } are missing.
}
usage-missing-command = Say what to do: { $known }.
usage-values = { $option } has too many values or too few.
usage-not-text = One of the arguments is no text (UTF-8).
usage-other = The arguments cannot be understood.
usage-help = How to call it: { $call } --help
usage-language = “{ $text }” is no language here; { $known } are.
no-such-command = There is no command “{ $text }”; known are { $known }.
one-corner-blind = Add --blind, which lets it.

# What is wrong with what was entered: where, and what would be right.

placed = Line { $line }, column { $column }: { $what }
did-you-mean = Did you mean { $word }?

moves-too-long = The text is { $bytes } bytes long; at most { $most } are read.
moves-too-many = This stands for more than { $most } moves.
moves-too-deep = Brackets are nested more than { $most } deep.
moves-unexpected = “{ $found }” is not understood; expected is { $expected }.
moves-unexpected-prime = “{ $found }” is not understood; for the other direction write '.
moves-unexpected-end = The text ends here; expected is { $expected }.
moves-number-after-prime = Behind a prime no number can stand; write it first: { $rather }.
moves-wrong-case = “{ $found }” is no move; “{ $rather }” is.
moves-no-such-turn = { $turn } cannot be made: { $reason }

turn-no-slice = a { $size } has no middle layer, so it has no slice moves.
turn-no-wide = a { $size } has no wide moves; turning both layers is a rotation (x, y or z).
turn-too-deep = { $depth } layers are too many for a { $size }; at most { $most } turn together.
turn-no-inner = a { $size } has no inner layers.
turn-other-layers =
    { $most ->
        [2] the only inner layer of a { $size } is layer 2.
       *[other] the inner layers of a { $size } are 2 to { $most }.
    }
turn-layers-backwards = of inner layers the one nearer to the face is named first, as in 2-3R.

expected-turn = a move (U L F R B D, wide as Rw, M E S, x y z) or an opening bracket
expected-turn-or-close = a move or the closing bracket “)”
expected-separator = “,” or “:” between the two parts of a square bracket
expected-close-square = a move or the closing bracket “]”
expected-face = a face after the number of layers, as in 2R, 2-3R or 3Rw
expected-layers = a number of layers, 2 or more, as in 2R, 2-3R or 3Rw
expected-space = a space between a prime and a number of layers (R' 2U); a half turn is R2'
expected-quarters = an amount of 1, 2 or 3 quarter turns
expected-repeats = a number of repeats, 1 or more

facelets-unknown = “{ $found }” stands for no colour; expected is one of { $expected }.
facelets-on-face = Face { $face }: { $what }
facelets-face-count = Face { $face } has { $count } stickers; on a { $size } a face has { $right }.
facelets-face-odd = Face { $face } has { $count } stickers; a face has 4, 9, 16, 25, 36 or 49.
facelets-wrong-count = { $count } stickers fit no cube: a 2x2 has 24, a 3x3 54, a 4x4 96, a 5x5 150, a 6x6 216, a 7x7 294.

fault-colour-count = There are { $count } { $colour } stickers; there must be { $expected }.
fault-centres = The centres of U L F R B D are { $found }; on your puzzle they do not lie like that.
fault-centre-count = Among the { $kinds } { $count } are { $colour }; there must be 4.
fault-no-such-piece = At { $place } you see { $colours }; no { $kind } has these colours.
fault-mirrored = At { $place } you see { $colours }, clockwise; the corner with these colours has them the other way round, as in a mirror.
fault-same-piece = { $first } and { $second } both show the { $colours } { $kind }; there is only one.
fault-twist = The twists of the corners do not add up: one corner is turned clockwise.
fault-twist-counter = The twists of the corners do not add up: one corner is turned counter-clockwise.
fault-flip = The flips of the edges do not add up: one edge is flipped.
fault-swap = Two pieces have changed places, which turning cannot do: corners and edges do not agree in parity.

physical-misread = Most likely one sticker was read wrong: { $place } must be { $rather }, not { $seen }.
physical-misread-among = Most likely one { $seen } sticker was read wrong and must be { $rather }: { $places }.
physical-cell = face { $face }, row { $row }, column { $column }
turn-clockwise = clockwise
turn-counter-clockwise = counter-clockwise
physical-twisted = Most likely someone twisted a corner by hand; { $count ->
    [one] { $pieces } is in its place but turned: turn it
   *[other] turn one of { $pieces }, which are in their places but turned,
} { $back } and the puzzle can be solved.
physical-twisted-any = Most likely someone twisted a corner by hand; turn any corner { $back } and the puzzle can be solved.
physical-flipped = Most likely an edge was taken out and put back flipped; { $count ->
    [one] { $pieces } is in its place but flipped: flip it
   *[other] flip one of { $pieces }, which are in their places but flipped,
} and the puzzle can be solved.
physical-flipped-any = Most likely an edge was taken out and put back flipped; flip any and the puzzle can be solved.
physical-exchanged = Most likely two pieces were taken out and put back in each other's place: { $pairs }.
physical-exchanged-any = Most likely two pieces were taken out and put back in each other's place; it may be any two of a kind.
physical-exchanged-turned = Most likely two { $kinds } were taken out and put back in each other's place, one of them turned: { $pairs }.
physical-exchanged-turned-any = Most likely two { $kinds } were taken out and put back in each other's place, one of them turned; it may be any two.
physical-stickers-exchanged = Most likely two stickers of one corner were read, or stuck on, the wrong way round: { $first } and { $second }.
physical-taken-apart = The puzzle was taken apart and put together wrong in more than one way; put it together solved.

swap-nothing = The algorithm moves none of the { $kinds }; it has to exchange two.
swap-not-a-swap = The algorithm does not simply exchange two { $kinds }; it moves { $moved }.
swap-buffer-not-moved = The algorithm does not move the buffer { $buffer }: it exchanges { $first } and { $second }. Choose a buffer on one of these, or this algorithm: { $instead }
swap-not-its-own-inverse = Made twice the algorithm does not undo itself, so odd and even would not be enough to know what is left.
swap-turns-the-cube = The algorithm leaves the whole puzzle turned.
swap-moves-centres = The algorithm leaves { $kinds } on other faces.
swap-other-target = The algorithm exchanges the buffer with { $actual }, not with { $named }.

method-cannot-be-made = The algorithm for a { $kind } cannot be made on a { $size }: { $what }
method-no-setup = No set-up moves were found that bring { $target } to the swap.
method-parity-does-not-fit = The parity algorithm does not fit your swaps: they leave { $wanted } exchanged, it moves { $moved }.
method-parity-cannot-be-made = The parity algorithm cannot be made on a { $size }: { $what }
method-not-covered = There is no method yet to carry out the { $kinds } of a { $size }.
execution-kind-missing = The method has no algorithm for the { $kinds }.
execution-centres-late = Carried out in your order, this does not solve the puzzle: an odd number of corner or wing letters turns centres about on their faces, so say in execution under [memo] that the centres come first.
execution-own-piece = { $target } is on the buffer's own piece and can be no target.
not-proven = Tried on the puzzle, { $claim ->
    [solution] the solution
    [algorithm] the algorithm
    [setup] the set-up
    [scramble] the scramble
    [memo] the memo
    [condition] the state that was drawn
   *[explanation] the explanation
} did not do what it should, so it is not shown; that is a fault of this program, not yours.

toml-no = This file holds no conventions: { $what }
toml-unknown-key = “{ $key }” means nothing here; known are { $known }.
toml-unknown-word = “{ $word }” is not known here; known are { $known }.
toml-no-method-for = “{ $word }” cannot carry out { $kinds }; they have { $known }.
toml-wrong-sort = “{ $key }” needs { $needs }.
toml-no-sticker = “{ $word }” is no { $kind } sticker.
toml-no-shade = “{ $text }” is no shade; a shade is # and six hexadecimal digits, as #d7263d.
toml-shade-missing = “{ $name }” needs a shade: { "{" } name = "{ $name }", shade = "#rrggbb" { "}" }.
toml-colour-twice = Two faces are { $name }; each colour is there once.
toml-holding-same = { $up } cannot be up and front at once.
toml-holding-opposite = { $up } and { $front } are opposite; they cannot be up and front.
toml-algorithm = The algorithm cannot be read. { $what }
toml-kinds-once = “{ $key }” names a kind twice; each may stand there once.
toml-sticker-twice = “{ $word }” stands here twice; each sticker may stand here once.

letters-count = { $count } letters for the 24 { $kind } stickers.
letters-twice = The letter { $letter } stands for two stickers, { $first } and { $second }.
letters-no-letter = { $letter } cannot be a letter of the scheme.
letters-missing = { $sticker } has no letter.
letters-not-one = “{ $text }” is not one letter.
letters-empty = A letter is empty; each sticker needs one.
letters-too-long = A letter has { $count } signs; at most { $most } are read.

needs-table = a table of further keys
needs-text = a text in quotation marks
needs-yes-no = true or false
needs-list = a list of texts
needs-letters = 24 letters in one text or in a list, or a table that gives a letter for each sticker or four for each face
needs-breaks = "first", "fewest", "least" or a list of stickers
needs-colour = a colour name, or a table with name and shade

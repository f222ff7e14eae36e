# What the screens say of a puzzle.

picture-net = The puzzle unfolded
picture-letters = The letters of the { $kinds }, unfolded

view-face = { $face }: { $rows }.
view-letter = Letter { $number }: { $letter }, { $target }
# Beside the name of a thread.
thread-letters = { $letters ->
    [one] 1 letter
   *[other] { $letters } letters
}
thread-letter = letter { $number } of { $letters }
view-step = Step { $number } of { $all }: { $what }
view-move = Move { $number } of { $all }, { $turn }: { $part ->
    [setup] set-up
    [swap] swap
    [cycle] three-cycle
    [undo] set-up undone
   *[parity] parity
}
view-after-solves = { $letter } is done: { $piece } is solved.
view-after-moves = { $letter } is done: the buffer's piece went to { $piece }.
view-after-letters = { $letter } is done.
view-as-expected = The puzzle is as this letter should leave it.
view-not-as-expected = The puzzle is not as this letter should leave it.
view-after-parity = The parity algorithm is done.
view-pieces-solved = { $solved } of { $all } pieces are solved.
view-share = { $percent } %
view-cell = { $face }, row { $row }, column { $column }: { $colour }
view-sticker = { $sticker }, { $colour }: { $letter }
view-letters-exchanged = { $sticker } now has { $letter }, so that no letter stands twice.
view-turned-along = The { $kind } algorithm was turned with the cube, so that it moves the new buffer: { $algorithm }
view-contrast = Letters read well ({ $whole }.{ $tenth }:1).
view-contrast-poor = Letters read poorly ({ $whole }.{ $tenth }:1; at least 4.5:1 is good).
view-colours-alike = { $first } and { $second } look much alike { $sight ->
    [protanopia] to those without red cones
    [deuteranopia] to those without green cones
    [tritanopia] to those without blue cones
   *[usual] to everyone
}.
view-carried-out = Bring { $target } ({ $letter }) to the swap with { $setup }, make the { $kind } swap, undo with { $undo }.
view-carried-out-plainly = { $target } ({ $letter }) lies at the swap already: make the { $kind } swap.
colours-apart = Everyone can tell these six colours apart, colour-blind or not.
paint-possible = Turning can lead to this.

lesson-title = Memo and solution, step by step
lesson-holding = Pick the puzzle up
lesson-holding-lead = Scramble as written, then turn the whole puzzle so that your colours are up and in front.
lesson-trace = Trace the { $kinds }
lesson-trace-lead = Begin at the buffer { $buffer }. Ask: which sticker do I see there, and where does it belong? That place is the next letter.
lesson-execution = Carry it out
lesson-hands = Hours of fast turning strain hands and wrists: turn slowly while learning, and rest before it hurts.
lesson-step-parity = The number of letters is odd, so two pieces of each kind are still exchanged: the parity algorithm puts that right.
lesson-exercise = Exercise { $number }

change-name-missing = A colour needs a name.
change-not-for-kind = There is no such way to carry out { $kinds }: { $method }.
put-too-long = { $kind ->
    [sheet] This sheet is longer than { $most } KiB, more than is read.
    [puzzle] This puzzle is, as a text, longer than { $most } KiB, more than is read.
   *[other] These conventions are longer than { $most } KiB, more than is read.
}
sheet-not-for-kind = Sheets are for corners and edges, not for { $kinds }.

# Whether a memo or the moves of an attempt are right, and if not, where they go wrong.

check-right = The memo is right: carried out, it solves the puzzle.
check-kind-right = { $kinds }: right.
check-kind-wrong = { $kinds }: { $count ->
    [one] one slip.
   *[other] { $count } slips.
}
check-leads-to = Carried out as it stands, the memo leaves { $pieces } unsolved.
check-cannot-be-carried-out = As it stands the memo cannot be carried out.
check-unchecked = Not checked: { $kinds }.

check-letter = Letter { $position } of the { $kinds }, { $letter }: { $what }
check-end = After the last letter of the { $kinds }: { $what }
check-wrong-sticker = right piece, wrong sticker.
check-followed-from-elsewhere = that is what lies at { $elsewhere }; the letter before leads to { $place }.
check-buffer-letter = that is on the buffer's own piece, for which nothing is memorised.
check-closed-early = the cycle is not closed yet; one letter is missing.
check-closed-late = the cycle was closed already.
check-solved-already = that piece is right already.
check-break-on-solved = a new cycle begun at a piece that is solved.
check-turned-wrong-way = { $kind ->
    [corner] the corner is twisted the other way.
   *[other] an edge flipped in its place takes both its letters.
}
check-letter-missing = a letter is missing before it.
check-other-letter = another letter is due.
check-left-out = { $pieces } { $count ->
    [one] is left out.
   *[other] are left out.
}
check-instead = At { $place } lies what belongs at { $target }: { $letter }.
check-instead-any = Right here is any letter of { $pieces }.
check-instead-nothing = Nothing is left to memorise here.

check-parity-overlooked = Parity is overlooked: the number of letters is odd.
check-parity-without-need = Parity is noted without need: the number of letters is even.

check-moves-right = The moves carry the plan out and solve the puzzle.
check-moves-solve = The moves solve the puzzle all the same.
check-moves-turn = From move { $turn } on: { $what }

place-letter = letter { $position } of the { $kinds }, { $letter }, { $part ->
    [setup] in the set-up
    [undo] undoing the set-up
   *[algorithm] in the algorithm
}
place-letters = letters { $position }–{ $last } of the { $kinds }, { $letter }, { $part ->
    [setup] in the set-up
    [undo] undoing the set-up
   *[algorithm] in the algorithm
}
place-parity = in the parity algorithm
place-end = after the last step

how-other-way = { $where }: { $planned } was turned the other way, as { $made }.
how-other-amount = { $where }: { $planned } was turned as { $made }.
how-left-out = { $where }: { $planned } was left out.
how-added = { $where }: { $made } was made and does not belong there.
how-doubled = { $where }: { $made } was made twice.
how-other-face = { $where }: { $made } was made instead of { $planned }, on another face.
how-other-width = { $where }: { $made } was made instead of { $planned }, with another number of layers.
how-step-left-out = { $where }: the whole step { $planned } was left out.
how-step-doubled = { $where }: the whole step { $made } was made twice.
how-not-undone = { $where }: the set-up was not undone; { $planned } is missing.
how-undone-wrong-way = { $where }: the set-up was not undone but made again: { $made } instead of { $planned }.
how-held = { $where }: the puzzle was turned as a whole, { $made }.
how-broken-off = { $where }: the moves end here; { $planned } is missing.
how-gone-on = { $where }: the plan was carried out; { $made } was made after it.
how-otherwise = { $where }: { $made } was made instead of { $planned }.
how-otherwise-nothing = { $where }: { $planned } was not made.

memo-unknown-letter = Column { $column }: “{ $found }” is no letter of the { $kind } scheme; its letters are { $letters }.
memo-ambiguous-letters = Column { $column }: these signs can be read as letters in more than one way; put a blank between the letters.
memo-empty = The memo is empty, and the puzzle is not solved.
check-no-kind = Which letters are “{ $text }”? Write the kind and its letters, as wing=KDVA.
check-kind-twice = The letters of the { $kinds } were given twice.
check-no-memo = There is no memo to check. Give the letters with --corners and --edges (other kinds as --letters wing=KDVA), or the moves with --moves.

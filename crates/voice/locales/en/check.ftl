# Whether a memo or the moves of an attempt are right, and if not, where they go wrong.

check-right = The memo is right: carried out, it solves the puzzle.
check-kind-right = { $kinds }: right.
check-kind-wrong = { $kinds }: { $count ->
    [one] one slip.
   *[other] { $count } slips.
}
check-right-held = The memo is right, held with { $up } up and { $front } in front: carried out, it solves the puzzle.
check-right-if-held = The memo is right if you hold it with { $up } up and { $front } in front. { $made ->
    [nothing] You left it as it was scrambled; it should have been turned by { $planned }.
   *[other] You held it turned by { $made }; { $planned ->
        [nothing] it should have stayed as scrambled.
       *[other] it should have been { $planned }.
    }
}
check-right-if-scramble-turn-left-out = The memo is right for the scramble without move { $turn }, { $planned }. Was it left out?
check-right-if-scramble-turn-wrong = The memo is right for the scramble with { $made } instead of { $planned } as move { $turn }.
check-right-if-scramble-turn-added = The memo is right for the scramble with { $made } added before move { $turn }.
check-right-if-kinds-exchanged = The memo is right with { $kinds } exchanged.
check-right-if-other-buffer = The memo is right for another buffer: { $buffers }.
check-buffer-of = { $buffer } of the { $kinds }
check-leads-to = Carried out as it stands, the memo leaves { $pieces } unsolved.
check-cannot-be-carried-out = As it stands the memo cannot be carried out.
check-unchecked = Not checked: { $kinds }.

check-letter = Letter { $position } of the { $kinds }, { $letter }: { $what }
check-end = After the last letter of the { $kinds }: { $what }
check-wrong-sticker = right piece, another sticker.
check-followed-from-elsewhere = you looked at { $elsewhere } again. { $first ->
    [yes] First look at { $place }.
   *[no] After { $before }, look at { $place }.
}
check-buffer-letter = that is on the buffer's own piece, for which nothing is memorised.
check-closed-early = the cycle is not closed yet; one letter is missing.
check-closed-late = the cycle was closed already.
check-solved-already = that piece was right from the start.
check-break-on-solved = a new cycle begun at a piece that is solved.
check-turned-wrong-way = { $kind ->
    [corner] the corner is twisted the other way.
   *[other] an edge flipped in its place takes both its letters.
}
check-letter-missing = a letter is missing before it.
check-other-letter = that is not what you see there.
check-left-out = { $pieces } { $more ->
    [0] { $count ->
        [one] is left out.
       *[other] are left out.
    }
   *[other] and { $more } more are left out.
}
check-followed-from-wrong-sticker = At letter { $position } of the { $kinds } you took { $letter }, another sticker of { $other }’s piece, and followed on from there.
check-has-letter = you already have a letter for that piece: letter { $number }, { $earlier }.
check-other-letter-between = another letter is due.
check-letter-too-many = one letter too many.
check-letters-exchanged = Letters { $position } and { $with } of the { $kinds }, { $letter } and { $other }, have changed places.
check-pairs-exchanged = The pairs { $letter } and { $other } of the { $kinds } (letters { $position } and { $with } on) have changed places.
check-instead-there = There lies what belongs at { $target }: { $letter }.
check-instead-letter = Right here is { $letter } ({ $target }).
check-hardly-fits = Hardly a letter fits this scramble. Was it this one, and held like this?
check-more = And { $count ->
    [one] one more slip.
   *[other] { $count } more slips.
}
check-instead = At { $place } lies what belongs at { $target }: { $letter }.
check-instead-any = Right here is any letter of { $pieces }{ $more ->
    [0] {""}
   *[other] {" "}or { $more } more pieces
}.
check-instead-nothing = Nothing is left to memorise here.

check-parity-overlooked = This scramble has parity, and you noted none.
check-parity-without-need = You noted parity, and this scramble has none.

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
check-moves-many = { $first } … ({ $count } moves)
place-whole-letter = letter { $position } of the { $kinds }, { $letter }
place-whole-letters = letters { $position }–{ $last } of the { $kinds }, { $letter }
place-move = { $where }, move { $number }
how-letter-left-out = { $where }, was not carried out: { $planned } is missing.
how-letter-doubled = { $where }, was carried out twice.
how-letters-exchanged = { $where }, was carried out after the next one.
how-step-inverted = { $where }: made backwards, { $made } instead of { $planned }.
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

memo-unknown-letter = { $kinds }, column { $column }: “{ $found }” is none of your letters; they are { $letters }.
memo-ambiguous-letters = { $kinds }, column { $column }: these signs can be read as letters in more than one way; put a blank between the letters.
memo-empty = The memo is empty, and the puzzle is not solved.
check-no-kind = Which letters are “{ $text }”? Write the kind and its letters, as wing=KDVA.
check-kind-twice = The letters of the { $kinds } were given twice.
check-parity-twice = The memo notes parity, and --parity says no. Which is it?
check-no-memo = There is no memo to check. Give the letters with --corners and --edges (other kinds as --letters wing=KDVA), or the moves with --moves.

# Why an attempt did not come out: a sentence for each kind of slip.

why-as-planned = Everything was done as planned, and the puzzle is solved: nothing is to be explained.
why-memo-itself = Everything was done as the memo says; the memo itself does not solve the puzzle.
why-nothing-found = { $whole ->
    [yes] No one{ $most ->
        [three] , two or three
       *[two] { "" } or two
    } mistakes lead here.
   *[no] Nothing that was looked at leads here.
} Was it this scramble? Held like this? Did you stop early?
why-deeper = With --deep three mistakes are looked for.
why-any-other = Is any other piece unsolved?
why-ambiguity = { $count ->
    [one] { $whole ->
        [yes] No other explanation is as likely as the first.
       *[no] The first is the likeliest of those looked at; there may be others.
    }
   *[other] { $whole ->
        [yes] { $count }
       *[no] At least { $count }
    } explanations are as likely as the first, itself included; they cannot be told apart by the puzzle alone.
}
why-slightly = The first is only slightly likelier than the next{ $whole ->
    [yes] .
   *[no] ; there may be others.
}
why-memo-fault = The memo itself does not solve the puzzle. { $sentence }
why-besides = Besides, on the way to what the memo leads to:
why-missing = Is any other piece unsolved? { $sentence } If nothing else is, say “nothing else”.
missing-alone = { $piece } cannot be the only unsolved { $kind ->
    [corner] corner
   *[edge] edge
}: turning never leaves just one; at least one more must be.
missing-turned = As they are told, the { $kinds } cannot come from turning, since their { $kind ->
    [corner] twists
   *[edge] flips
} do not add up; at least one more must be unsolved.
missing-exchanged = Turning never leaves an odd number of exchanges; at least two more { $kinds } must be unsolved.
unlooked-as-planned = The { $kinds } were not looked at and are taken to be as planned.
unlooked-any-way = The { $kinds } were not looked at; as planned, nothing explains the rest, so they may have come out in any way.
why-no-outcome = How did the puzzle come out? With --seen, the stickers as you see them, ? for those you do not know, or some faces: "U: … F: …". With --unsolved, the pieces: "UF>UR>FR", "UF flipped", "white-green and white-red swapped", "edges: A B", "two corners", "only edges: UF flipped, UR flipped".
why-ways = { $count ->
    [one] One other slip acts in the same way
   *[other] { $count } others act in the same way
}
why-also = for instance: { $sentence }
why-broken-off = The search was stopped before its end; there may be more.
why-questions = These answers would tell most:
why-question = { $sentence } (--answer { $name }=yes or { $name }=no)
why-other-size = The attempt was on a { $planned }; what was seen is a { $seen }.
why-contradiction = The pieces do not fit together: two places would show the same piece.
why-no-piece = At { $piece } there are colours that no piece has together.
why-no-hold = The centres are not where they can be, however the puzzle is held.
why-no-letter = There is no letter { $position } of the { $kinds }: the memo has { $letters }.
why-no-ask = “{ $text }” is no answer; write it as corner.5=yes, with one of the names in the questions.

slip-scramble-turn-wrong = Scramble, move { $turn }: { $made } was made instead of { $planned }.
slip-scramble-turn-left-out = Scramble, move { $turn }: { $planned } was left out.
slip-scramble-turn-added = Scramble, before move { $turn }: { $made } was made and does not belong there.
slip-scramble-turns-exchanged = Scramble, moves { $turn } and { $next }: { $planned } was made in the other order, { $made }.
slip-scramble-mirrored = The scramble was made as in a mirror.
slip-scrambled-in-other-hold = The scramble was made with the puzzle held another way, turned by { $made } first; it was picked up as usual.
slip-other-scramble = Scramble { $number } of the list was made instead.
slip-held-wrong = You held it otherwise than the memo was made for: after the scramble { $made ->
    [nothing] it was left as scrambled
   *[other] it was turned by { $made }
}; { $planned ->
    [nothing] it should have stayed as scrambled
   *[other] it should have been turned by { $planned }
}.
slip-wrong-sticker-followed = At letter { $position } of the { $kinds } you took { $took }, another sticker of { $letter }'s piece, and followed on from there: { $taken } for { $meant }.
slip-wrong-sticker = At letter { $position } of the { $kinds } you took { $took }, another sticker of { $letter }'s piece.
slip-closed-early = Letter { $position } of the { $kinds }: the cycle was closed one letter early, without { $meant }.
slip-cycle-missed = The cycle { $meant } of the { $kinds }, from letter { $position } on, was missed.
slip-flip-missed = The flipped edge { $meant }, letters { $position } and { $next } of the { $kinds }, was missed.
slip-twist-missed = The twisted corner { $meant }, letters { $position } and { $next } of the { $kinds }, was missed.
slip-twist-other-way = Letter { $position } of the { $kinds }: the corner was memorised as twisted the other way, { $taken } for { $meant }.
slip-traced-from-other-buffer = The { $kinds } were traced from { $buffer } as the buffer: { $taken }.
slip-parity-overlooked = This scramble has parity, and the parity algorithm was not made.
slip-parity-overlooked-exchange = This scramble has parity, and the two edges were not taken for each other in the trace.
slip-parity-without-need = This scramble has no parity, and the parity algorithm was made.
slip-parity-without-need-exchange = This scramble has no parity, and two edges were taken for each other in the trace.
slip-letter-neighbour = Letter { $position } of the { $kinds }: { $meant } was taken for { $taken }, its neighbour in the scheme.
slip-letter-alike = Letter { $position } of the { $kinds }: { $meant } was taken for { $taken }, which sounds or looks like it.
slip-letter-other = Letter { $position } of the { $kinds }: { $meant } was taken for { $taken }.
slip-letter-dropped = Letter { $position } of the { $kinds }: { $meant } was left out.
slip-pair-dropped = Letters { $position } and { $next } of the { $kinds }: the pair { $meant } was left out.
slip-letter-doubled = Letter { $position } of the { $kinds }: { $meant } was carried out twice.
slip-pair-doubled = Letters { $position } and { $next } of the { $kinds }: the pair { $meant } was carried out twice.
slip-pair-reversed = Letters { $position } and { $next } of the { $kinds }: the pair { $meant } was carried out as { $taken }.
slip-letters-exchanged = From letter { $position } of the { $kinds } on: two letters were exchanged, { $meant } carried out as { $taken }.
slip-pairs-exchanged = From letter { $position } of the { $kinds } on: the pairs { $meant } were carried out as { $taken }.
slip-kinds-exchanged = The letters of the { $kinds } and of the { $others } were exchanged, each carried out on the other kind.
slip-kind-forgotten = The { $kinds } were forgotten: nothing of { $meant } was carried out.
slip-turn-other-way = { $where }: move { $turn }, { $planned }, was turned the other way.
slip-turn-half = { $where }: move { $turn }, { $planned }, was turned as { $made }.
slip-turn-quarter = { $where }: move { $turn }, { $planned }, was turned as { $made }.
slip-turn-left-out = { $where }: move { $turn }, { $planned }, was left out.
slip-turn-added = { $where }: { $made } was made before move { $turn } and does not belong there.
slip-turn-other-face = { $where }: move { $turn }, { $planned }, was made as { $made }.
slip-turn-wide = { $where }: move { $turn }, { $planned }, was made as { $made }.
slip-setup-left-out = { $where }: the set-up { $planned } was left out, and yet undone.
slip-setup-doubled = { $where }: the set-up { $planned } was made twice.
slip-setup-wrong-way = { $where }: the set-up was made as { $made } instead of { $planned }.
slip-setup-not-undone = { $where }: the set-up was not undone; { $planned } was left out.
slip-setup-undone-wrong-way = { $where }: the set-up was undone as { $made } instead of { $planned }.
slip-setup-undone-twice = { $where }: the set-up was undone twice, { $made }.
slip-setup-of-another = { $where }: { $made } was made instead of { $planned }, as for { $other }.
slip-algorithm-left-out = { $where }: the algorithm was left out.
slip-algorithm-doubled = { $where }: the algorithm was made twice.
slip-algorithm-inverted = { $where }: the algorithm was made backwards.
slip-algorithm-of-other-kind = { $where }: another algorithm was made, { $made }.
slip-held-otherwise = From there on the puzzle was held another way, turned by { $made }: { $where }.
slip-broken-off = { $where }: from move { $turn } on nothing more was made.

by-hand-twisted = The corner at { $piece } was twisted by hand, { $clockwise ->
    [yes] clockwise
   *[no] counter-clockwise
}.
by-hand-flipped = The edge at { $piece } came out and was put back flipped.
by-hand-exchanged = The { $kinds } at { $first } and { $second } came out and were put back in each other's place.
by-hand-otherwise-right = Otherwise everything was done as planned.

ask-start = Could something have been wrong before the start, in scrambling or picking up?
ask-tracing = Could the memo have been wrong as you memorised it?
ask-recall = Was there a letter that you were not sure of, or had to search for?
ask-execution = Did a turn feel wrong, or did your hands falter?
ask-kind = Did anything go wrong in the { $kinds }?
ask-letter = Was anything odd at letter { $position } of the { $kinds }{ $letter ->
    [none] { "" }
   *[other] , { $letter }
}?
ask-setup = Were you unsure of a set-up?
ask-algorithm = Did you stumble within an algorithm, or lose count of it?
ask-undo = Could a set-up have been undone wrong, or not at all?
ask-parity = Were you unsure about parity?
ask-held = Did the puzzle turn in your hands, or a layer too many turn along?

observed-no-sticker = Column { $column }: “{ $found }” is not understood; a piece is written by its stickers (UFR, UF), its colours (white-green) or its letter after the kind (edges: A).
observed-kind-needed = Column { $column }: say of which kind the letter “{ $found }” is, as in edges: { $found }.
observed-no-letter = Column { $column }: “{ $found }” is no letter of the { $kinds } and no sticker; letters stand apart, as in A B or A>B.
observed-no-piece = Column { $column }: no piece is { $found }; a piece has two or three colours that meet.
observed-other-kind = Column { $column }: “{ $found }” is no { $kind ->
    [corner] corner
   *[edge] edge
}.
observed-no-cycle = Column { $column }: “{ $found }” does not go on with another piece of the same kind.
observed-same = Column { $column }: { $sticker }>{ $sticker } says that { $sticker } is right; at an unsolved place lies something else.
observed-no-word = Column { $column }: “{ $found }” is not understood after { $piece }; say { $expected }.
observed-expected-flip = flipped | ?
observed-expected-twist = twisted | twisted clockwise | twisted counter-clockwise | ?
observed-expected-query = ?
observed-expected-unsolved = unsolved, or name the pieces
observed-not-two = Column { $column }: “{ $found }” needs { $wanted ->
    [cycle] two or more
   *[two] two
} pieces of one kind before it, and there { $count ->
    [one] is one
   *[other] are { $count }
}.
observed-twice = Column { $column }: “{ $piece }” was named before.
observed-nothing = No unsolved piece is named; a solved puzzle needs no explanation.
observed-no-count = Column { $column }: “{ $found }” is no count; write it as 3 corners.
observed-too-many = Column { $column }: there are only { $most } { $kinds }.
why-size = On a { $size } an attempt is explained by all its stickers as they came out, not by some of its pieces.
why-long-list = The list has { $count } scrambles; { $most } are looked at at most.

# The trace, as a coach would tell it. $kind is "corner" or "edge".

reason-buffer = Look at the buffer { $place }: you see { $colour }, on the { $piece } { $kind }. That { $kind } lives at { $home }, and { $colour } belongs on { $face }. So { $target }, letter { $letter }.
reason-follow = Go on at { $place } ({ $placeletter }): you see { $colour }, on the { $piece } { $kind }. It lives at { $home }, and { $colour } belongs on { $face }. So { $target }, letter { $letter }.
reason-close = At { $place } ({ $placeletter }) you see { $colour }, on the { $kind } where this cycle began: { $began } ({ $beganletter }). Memorise it once more, { $target }, letter { $letter }; the cycle is closed.
reason-close-turned = At { $place } ({ $placeletter }) you see { $colour }, on the { $kind } where this cycle began, but another sticker of it: it began at { $began } ({ $beganletter }) and ends at { $target }, letter { $letter }. The cycle is closed.

break-first = Not solved yet: { $unsolved }. A new cycle begins at { $target }, letter { $letter }, the first of these in your order.
break-fewest = Not solved yet: { $unsolved }. A new cycle begins at { $target }, letter { $letter }, where its letters take the fewest set-up moves.
break-only = Only { $unsolved } is not solved yet. A new cycle begins at { $target }, letter { $letter }.

turned-first = { $piece } is in its place but { $kind ->
    [corner] twisted
   *[edge] flipped
}: that takes two letters. First { $target }, letter { $letter }.
turned-second = At { $place } you see { $colour }, which belongs on { $face }: so { $target }, letter { $letter }. These two letters { $kind ->
    [corner] untwist
   *[edge] flip
} it.

end-buffer-piece = At { $place } ({ $placeletter }) you see the buffer's own { $kind }: nothing to memorise, the cycle is closed.
end-buffer-solved = The buffer's { $kind } { $buffer } is solved.
end-buffer-turned = The buffer's { $kind } { $buffer } is in its place but { $kind ->
    [corner] twisted
   *[edge] flipped
}; it takes no letter, the others put it right.

finish = All { $kinds } are accounted for, with { $letters ->
    [one] one letter
   *[other] { $letters } letters
}.
finish-all-solved = All { $kinds } are solved; there is nothing to memorise.
finish-only-buffer = There is nothing to memorise for the { $kinds }.

parity-letters = { $letters } for the { $kinds }
parity-even = No parity; the number of letters is even: { $counts }.
parity-odd = Parity, since the number of letters is odd: { $counts }. The parity algorithm comes between the two kinds.
parity-odd-nothing = The number of letters is odd: { $counts }. On this puzzle nothing needs to be done about it.

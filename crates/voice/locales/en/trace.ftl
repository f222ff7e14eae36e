# The trace, as a coach would tell it. $kind is "corner", "edge", "wing" or "centre".

reason-buffer = Look at the buffer { $place }: you see { $colour }, on the { $piece } { $kind }. That { $kind } lives at { $home }, and { $colour } belongs on { $face }. So { $target }, letter { $letter }.
reason-follow = Go on at { $place } ({ $placeletter }): you see { $colour }, on the { $piece } { $kind }. It lives at { $home }, and { $colour } belongs on { $face }. So { $target }, letter { $letter }.
# A wing shows one of its two sides on the sticker that has the letter.
reason-buffer-wing = Look at the buffer { $place }: you see { $colour }, with { $other } on its other side. Two wings have these colours; the one that shows { $colour } here belongs at { $target }: letter { $letter }.
reason-follow-wing = Go on at { $place } ({ $placeletter }): you see { $colour }, with { $other } on its other side. The wing that shows { $colour } here belongs at { $target }: letter { $letter }.

# Centres are told by their colour alone.
reason-buffer-centre = Look at the buffer { $place }: you see { $colour }. That belongs on { $face }, where { $target } still wants it: letter { $letter }.
reason-buffer-centre-on = Look at the buffer { $place }: you see { $colour }, its own colour. It could stay there, but { $target } on { $face } still wants it too, and giving it away saves beginning a new cycle: letter { $letter }.
reason-follow-centre = Go on at { $place } ({ $placeletter }): you see { $colour }. That belongs on { $face }, where { $target } still wants it: letter { $letter }.
reason-follow-centre-on = Go on at { $place } ({ $placeletter }): you see { $colour }, the buffer's own colour. It could stay in the buffer, but { $target } on { $face } still wants it, and going on there saves beginning a new cycle: letter { $letter }.
reason-choice = It was a choice: { $others } would have done as well.
reason-costlier = { $places } { $count ->
    [one] wants it too, but from there
   *[other] want it too, but from each of these
} a cycle would be left out, which takes a letter more.

reason-close = At { $place } ({ $placeletter }) you see { $colour }, on the { $kind } where this cycle began: { $began } ({ $beganletter }). Memorise it once more, { $target }, letter { $letter }; the cycle is closed.
reason-close-turned = At { $place } ({ $placeletter }) you see { $colour }, on the { $kind } where this cycle began, but another sticker of it: it began at { $began } ({ $beganletter }) and ends at { $target }, letter { $letter }. The cycle is closed.
reason-close-centre = At { $place } ({ $placeletter }) you see { $colour }, and { $began } ({ $beganletter }), where this cycle began, still wants it. Memorise it once more, { $target }, letter { $letter }; the cycle is closed.

break-first = Not solved yet: { $unsolved }. A new cycle begins at { $target }, letter { $letter }, the first of these in your order.
break-first-centre = Not solved yet: { $unsolved }. A new cycle begins at { $target }, letter { $letter }, the first of these in your order. It was a choice: any of the others would have done as well.
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
end-buffer-colour = At { $place } ({ $placeletter }) you see { $colour }, the buffer's own colour: nothing to memorise, the cycle is closed.
end-buffer-solved = { $kind ->
    [centre] The buffer { $buffer } has its colour already.
   *[other] The buffer's { $kind } { $buffer } is solved.
}
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
letters-none = There are no letters: nothing is to be memorised.
letters-all = { $letters } letters in all: { $counts }.
odd-for = odd for { $kinds }
even-for = even for { $kinds }
parity-of-some = Parity; the number of letters is { $what }.
parity-of-none = No parity; the number of letters is { $what }.
parity-centres = Centres of one colour look alike, so they have no parity; the number of letters is { $what }.
odd-corners = Once all letters of the first of them are done, the parity algorithm follows ({ $kinds }).
odd-corners-exchange = So { $first } and { $second } were taken for each other in the trace; the last corner letter exchanges them.
odd-wings = The last letter of the { $kinds } is carried out by a swap of two wings that leaves all else as it looks.
odd-centres = The last letter of the { $kinds } is carried out by a three-cycle through a third place that looks alike.
parity-even = No parity; the number of letters is even: { $counts }.
parity-odd = Parity, since the number of letters is odd: { $counts }. The parity algorithm comes between the two kinds.
parity-odd-nothing = The number of letters is odd: { $counts }. Nothing needs to be done about it.
parity-odd-corners = The number of letters is odd: { $counts }. That is fine on this puzzle: it has no edges.

memo-line = { $kinds }, buffer { $buffer }: { $memo } ({ $letters ->
    [one] 1 letter
   *[other] { $letters } letters
})
memo-line-empty = { $kinds }, buffer { $buffer }: nothing to memorise
step-parity = parity
solution-length = { $half } moves in the half-turn metric, { $quarter } in quarter turns, { $slice } with slices as one. Applied to the puzzle, they solve it.
hold-goal = Solved, { $up } will be up and { $front } in front.
hold-solved = Then { $count ->
    [one] { $pieces } is already solved.
   *[other] { $pieces } are already solved.
}
hold-many-solved = Then { $count } pieces are already solved.
hold-none-solved = No piece is solved yet.
kind-not-there = A { $size } has no { $kinds }.
no-such-target = “{ $text }” is neither a letter nor a sticker of { $kind ->
    [edge] an edge
   *[other] a { $kind }
}, as UFR or UF.
no-such-sticker = “{ $text }” is no sticker of this puzzle.
file-not-text = This file is no text.
picture-puzzle = The puzzle
picture-thread = The memo as a thread

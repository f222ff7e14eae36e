# Die Verfolgung, wie ein Lehrer sie erzählen würde. $kind ist "corner" oder "edge".

reason-buffer = Sieh auf den Puffer { $place }: dort ist { $colour }, auf { $kind ->
    [corner] der Ecke
   *[edge] der Kante
} { $piece }. { $kind ->
    [corner] Diese Ecke
   *[edge] Diese Kante
} gehört nach { $home }, und { $colour } gehört auf { $face }. Also { $target }, Buchstabe { $letter }.
reason-follow = Weiter bei { $place } ({ $placeletter }): dort ist { $colour }, auf { $kind ->
    [corner] der Ecke
   *[edge] der Kante
} { $piece }. Sie gehört nach { $home }, und { $colour } gehört auf { $face }. Also { $target }, Buchstabe { $letter }.
reason-close = Bei { $place } ({ $placeletter }) siehst du { $colour }, auf { $kind ->
    [corner] der Ecke
   *[edge] der Kante
}, bei der dieser Zyklus begann: { $began } ({ $beganletter }). Merke sie noch einmal, { $target }, Buchstabe { $letter }; der Zyklus ist geschlossen.
reason-close-turned = Bei { $place } ({ $placeletter }) siehst du { $colour }, auf { $kind ->
    [corner] der Ecke
   *[edge] der Kante
}, bei der dieser Zyklus begann, aber einen anderen Sticker davon: er begann bei { $began } ({ $beganletter }) und endet bei { $target }, Buchstabe { $letter }. Der Zyklus ist geschlossen.

break-first = Noch nicht gelöst: { $unsolved }. Ein neuer Zyklus beginnt bei { $target }, Buchstabe { $letter }, dem ersten davon in deiner Reihenfolge.
break-fewest = Noch nicht gelöst: { $unsolved }. Ein neuer Zyklus beginnt bei { $target }, Buchstabe { $letter }; so brauchen seine Buchstaben die wenigsten Setup-Züge.
break-only = Nur { $unsolved } ist noch nicht gelöst. Ein neuer Zyklus beginnt bei { $target }, Buchstabe { $letter }.

turned-first = { $piece } ist an seinem Platz, aber { $kind ->
    [corner] verdreht
   *[edge] gekippt
}: das braucht zwei Buchstaben. Zuerst { $target }, Buchstabe { $letter }.
turned-second = Bei { $place } siehst du { $colour }, das gehört auf { $face }: also { $target }, Buchstabe { $letter }. Diese beiden Buchstaben { $kind ->
    [corner] drehen die Ecke
   *[edge] kippen die Kante
} richtig.

end-buffer-piece = Bei { $place } ({ $placeletter }) siehst du { $kind ->
    [corner] die Ecke
   *[edge] die Kante
} des Puffers selbst: nichts zu merken, der Zyklus ist geschlossen.
end-buffer-solved = { $kind ->
    [corner] Die Ecke
   *[edge] Die Kante
} des Puffers { $buffer } ist gelöst.
end-buffer-turned = { $kind ->
    [corner] Die Ecke
   *[edge] Die Kante
} des Puffers { $buffer } ist an ihrem Platz, aber { $kind ->
    [corner] verdreht
   *[edge] gekippt
}; sie braucht keinen Buchstaben, die anderen bringen sie in Ordnung.

finish = Alle { $kinds } sind erfasst, mit { $letters ->
    [one] einem Buchstaben
   *[other] { $letters } Buchstaben
}.
finish-all-solved = Alle { $kinds } sind gelöst; es gibt nichts zu merken.
finish-only-buffer = Für die { $kinds } gibt es nichts zu merken.

parity-letters = { $letters } für die { $kinds }
parity-even = Keine Parität; die Zahl der Buchstaben ist gerade: { $counts }.
parity-odd = Parität, denn die Zahl der Buchstaben ist ungerade: { $counts }. Der Paritätsalgorithmus kommt zwischen den beiden Arten.
parity-odd-nothing = Die Zahl der Buchstaben ist ungerade: { $counts }. Bei diesem Puzzle ist dafür nichts zu tun.

# Die Verfolgung, wie ein Lehrer sie erzählen würde. $kind ist "corner", "edge", "wing" oder "centre".

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
# Ein Wing zeigt eine seiner beiden Seiten auf dem Sticker, der den Buchstaben hat.
reason-buffer-wing = Sieh auf den Puffer { $place }: dort ist { $colour }, auf der anderen Seite { $other }. Zwei Wings haben diese Farben; der, der hier { $colour } zeigt, gehört nach { $target }: Buchstabe { $letter }.
reason-follow-wing = Weiter bei { $place } ({ $placeletter }): dort ist { $colour }, auf der anderen Seite { $other }. Der Wing, der hier { $colour } zeigt, gehört nach { $target }: Buchstabe { $letter }.

# Center erkennt man nur an der Farbe.
reason-buffer-centre = Sieh auf den Puffer { $place }: dort ist { $colour }. Das gehört auf { $face }, und dort fehlt es noch bei { $target }: Buchstabe { $letter }.
reason-buffer-centre-on = Sieh auf den Puffer { $place }: dort ist { $colour }, seine eigene Farbe. Es könnte dort bleiben, aber bei { $target } auf { $face } fehlt es auch, und es wegzugeben spart den Anfang eines neuen Zyklus: Buchstabe { $letter }.
reason-follow-centre = Weiter bei { $place } ({ $placeletter }): dort ist { $colour }. Das gehört auf { $face }, und dort fehlt es noch bei { $target }: Buchstabe { $letter }.
reason-follow-centre-on = Weiter bei { $place } ({ $placeletter }): dort ist { $colour }, die Farbe des Puffers selbst. Es könnte im Puffer bleiben, aber bei { $target } auf { $face } fehlt es noch, und dort weiterzugehen spart den Anfang eines neuen Zyklus: Buchstabe { $letter }.
reason-choice = Das war eine Wahl: ebenso gut ginge { $others }.
reason-costlier = Auch bei { $places } fehlt es, aber von { $count ->
    [one] dort
   *[other] diesen
} aus bliebe ein Zyklus übrig, der einen Buchstaben mehr braucht.

reason-close = Bei { $place } ({ $placeletter }) siehst du { $colour }, auf { $kind ->
    [corner] der Ecke
    [wing] dem Wing
   *[edge] der Kante
}, bei { $kind ->
    [wing] dem
   *[other] der
} dieser Zyklus begann: { $began } ({ $beganletter }). Merke { $kind ->
    [wing] ihn
   *[other] sie
} noch einmal, { $target }, Buchstabe { $letter }; der Zyklus ist geschlossen.
reason-close-turned = Bei { $place } ({ $placeletter }) siehst du { $colour }, auf { $kind ->
    [corner] der Ecke
   *[edge] der Kante
}, bei der dieser Zyklus begann, aber einen anderen Sticker davon: er begann bei { $began } ({ $beganletter }) und endet bei { $target }, Buchstabe { $letter }. Der Zyklus ist geschlossen.
reason-close-centre = Bei { $place } ({ $placeletter }) siehst du { $colour }, und bei { $began } ({ $beganletter }), wo dieser Zyklus begann, fehlt es noch. Merke das noch einmal, { $target }, Buchstabe { $letter }; der Zyklus ist geschlossen.

break-first = Noch nicht gelöst: { $unsolved }. Ein neuer Zyklus beginnt bei { $target }, Buchstabe { $letter }, dem ersten davon in deiner Reihenfolge.
break-first-centre = Noch nicht gelöst: { $unsolved }. Ein neuer Zyklus beginnt bei { $target }, Buchstabe { $letter }, dem ersten davon in deiner Reihenfolge. Das war eine Wahl: jedes andere davon wäre ebenso gut gewesen.
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
    [wing] den Wing
   *[edge] die Kante
} des Puffers selbst: nichts zu merken, der Zyklus ist geschlossen.
end-buffer-colour = Bei { $place } ({ $placeletter }) siehst du { $colour }, die Farbe des Puffers selbst: nichts zu merken, der Zyklus ist geschlossen.
end-buffer-solved = { $kind ->
    [corner] Die Ecke des Puffers { $buffer } ist gelöst.
    [wing] Der Wing des Puffers { $buffer } ist gelöst.
    [centre] Der Puffer { $buffer } hat seine Farbe schon.
   *[edge] Die Kante des Puffers { $buffer } ist gelöst.
}
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
letters-none = Es gibt keine Buchstaben: nichts ist zu merken.
letters-all = Insgesamt { $letters } Buchstaben: { $counts }.
odd-for = ungerade für { $kinds }
even-for = gerade für { $kinds }
parity-of-some = Parität; die Zahl der Buchstaben ist { $what }.
parity-of-none = Keine Parität; die Zahl der Buchstaben ist { $what }.
parity-centres = Center einer Farbe sehen gleich aus, darum haben sie keine Parität; die Zahl der Buchstaben ist { $what }.
odd-corners = Sind alle Buchstaben der ersten davon getan, folgt der Paritätsalgorithmus ({ $kinds }).
odd-corners-exchange = Also wurden { $first } und { $second } beim Verfolgen füreinander genommen; der letzte Eckenbuchstabe vertauscht sie.
odd-wings = Der letzte Buchstabe der { $kinds } wird mit einem Tausch zweier Wings ausgeführt, der alles andere aussehen lässt wie zuvor.
odd-centres = Der letzte Buchstabe der { $kinds } wird mit einem Dreierzyklus über einen dritten Platz ausgeführt, der gleich aussieht.
parity-even = Keine Parität; die Zahl der Buchstaben ist gerade: { $counts }.
parity-odd = Parität, denn die Zahl der Buchstaben ist ungerade: { $counts }. Der Paritätsalgorithmus kommt zwischen den beiden Arten.
parity-odd-nothing = Die Zahl der Buchstaben ist ungerade: { $counts }. Dafür ist nichts zu tun.
parity-odd-corners = Die Zahl der Buchstaben ist ungerade: { $counts }. Das ist bei diesem Würfel in Ordnung: Er hat keine Kanten.

memo-line = { $kinds }, Puffer { $buffer }: { $memo } ({ $letters ->
    [one] 1 Buchstabe
   *[other] { $letters } Buchstaben
})
memo-line-empty = { $kinds }, Puffer { $buffer }: nichts zu merken
step-parity = Parität
solution-length = { $half } Züge, Halbdrehungen als eine gezählt, { $quarter } Vierteldrehungen, { $slice } mit Scheiben als einem Zug. Auf das Puzzle angewandt lösen sie es.
hold-goal = Gelöst ist dann { $up } oben und { $front } vorn.
hold-solved = So { $count ->
    [one] ist { $pieces } schon gelöst.
   *[other] sind { $pieces } schon gelöst.
}
hold-many-solved = So sind { $count } Steine schon gelöst.
hold-none-solved = Noch ist kein Stein gelöst.
kind-not-there = Ein { $size } hat keine { $kinds }.
no-such-target = „{ $text }“ ist weder ein Buchstabe noch ein Sticker dieser Art ({ $kind }), wie UFR oder UF.
no-such-sticker = „{ $text }“ ist kein Sticker dieses Puzzles.
file-not-text = Diese Datei ist kein Text.
picture-puzzle = Das Puzzle
picture-thread = Das Memo als Faden

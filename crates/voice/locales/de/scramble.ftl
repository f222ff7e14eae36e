# Scrambles und die Bedingungen, die an sie gestellt werden.

condition-placed = Spalte { $column }: { $what }
condition-quoted = „{ $text }“
condition-expected = „{ $found }“ wird nicht verstanden; nötig ist { $expected }.
condition-expected-end = Hier endet die Bedingung; nötig ist { $expected }.
condition-unknown-feature = „{ $word }“ ist kein Merkmal; bekannt sind hier { $known }.
condition-unknown-word = { $feature } ist nie „{ $word }“, sondern eines von { $known }.
condition-no-pair = „{ $word }“ ist kein Paar; schreibe zwei Buchstaben, wie AB, oder zwei Sticker mit einem Leerzeichen dazwischen.
condition-number-too-large = Die Zahl ist zu groß; kein Wert ist über 99.
condition-range-backwards = Der Bereich geht von { $from } hinunter zu { $to }; schreibe die kleinere Zahl zuerst.
condition-only-equal = Ein Wort oder ein Bereich wird nur mit = oder != verglichen.
condition-too-deep = Klammern und „not“ sind mehr als { $most } tief verschachtelt.
condition-too-many = Mehr als { $most } verschiedene Merkmale einer Art lassen sich nicht zusammen zählen; lass einige weg.
condition-size-not-covered = Bedingungen gibt es für 2x2, 3x3 und 4x4, nicht für einen { $size }.

condition-needs-condition = ein Merkmal wie corner.breaks oder parity, „not“ oder „(“
condition-needs-comparison = eines von = != < <= > >=
condition-needs-value = eine Zahl, ein Wort oder ein Merkmal
condition-needs-number = eine Zahl
condition-needs-dot = ein Punkt und ein Name, wie corner.breaks
condition-needs-name = der Name eines Merkmals
condition-needs-open = „(“
condition-needs-close = „)“
condition-needs-item = ein Buchstabe oder der Name eines Stickers
condition-needs-joint = „and“, „or“ oder das Ende

condition-never-alone = Kein Scramble erfüllt „{ $part }“: { $why }
condition-never-together = Kein Scramble erfüllt { $parts } zugleich: { $why }
never-parity = Ecken und Kanten sind immer beide ungerade oder beide gerade.
never-twists = die Drehungen aller Ecken ergeben zusammen immer ganze Umdrehungen.
never-flips = die Zahl der gekippten Kanten ist immer gerade.
never-parity-and-turning = Ecken und Kanten haben dieselbe Parität, Drehungen ergeben ganze Umdrehungen, und gekippte Kanten sind gerade an Zahl; zusammen lassen diese Gesetze das nicht zu.
never-of-buffer = { $sticker } liegt auf dem Stein des Puffers, der nie gemerkt wird.
never-one-corner-stays = beim Verdrehen eines geraden Würfels bleibt eine Ecke an ihrem Platz; solche Zustände gibt es nur, wo das Puzzle auch beliebig liegen darf.
never-out-of-range = { $feature } geht von { $least } bis { $most }.
never-contradiction = sie widersprechen einander, oder es gibt zu wenige Steine.

lesson-unknown = Es gibt keine Lektion „{ $name }“; es gibt { $known }.
lesson-not-for = Die Lektion „{ $name }“ gibt es für einen { $size } nicht.
lesson-one-cycle = Nur ein Zyklus
lesson-first-break = Der erste neue Zyklus
lesson-closing-elsewhere = Ein Zyklus, der an einem anderen Sticker schließt, als er begann
lesson-two-breaks = Zwei neue Zyklen in einer Art
lesson-twisted-corner = Eine verdrehte Ecke
lesson-buffer-solved = Die Pufferecke ist von Anfang an gelöst
lesson-buffer-twisted = Die Pufferecke ist an ihrem Platz verdreht
lesson-parity = Parität
lesson-no-parity = Keine Parität
lesson-flipped-edges = Gekippte Kanten
lesson-short-memo = Ein kurzes Memo
lesson-typical-memo = Ein Memo üblicher Länge
lesson-long-memo = Ein langes Memo

share-exact = { $matching } von { $total } Zuständen: 1 von { $ratio }
share-estimated = Das lässt sich nicht zählen, also wurde probiert: von { $tried } Zuständen erfüllen es { $share } %; in 95 von 100 solchen Versuchen liegt der wahre Anteil in den Grenzen, hier { $low } % bis { $high } %.

scramble-progress = { $done } von { $count } Scrambles
scramble-tries = { $tries } Zustände für einen Scramble probiert
scramble-tables = Tabellen für den 4x4, einmal angelegt: { $done } %
scramble-solved = (gelöst: keine Züge)
scramble-sheet-too-many = Auf ein Blatt passen höchstens { $most } Scrambles; verlange mit --count weniger.
scramble-official = Bei einem Wettbewerb gelten das offizielle Programm, das aktuelle Reglement und das Wort des Delegierten.

sheet-title = Scrambles für den { $size }
sheet-answers = Antworten
sheet-picture = Das verdrehte Puzzle
sheet-holding = Verdrehe mit { $up } oben und { $front } vorn und vergleiche dann mit dem Bild.
sheet-condition = Ausgewählt für: { $condition }
sheet-seed = Gemacht mit hoodwink scramble --seed { $seed }
sheet-care = Stundenlanges schnelles Drehen belastet Hände und Handgelenke: mach Pausen, und hör auf, wenn es schmerzt.

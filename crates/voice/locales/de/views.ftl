# Was die Ansichten über einen Würfel sagen.

picture-net = Der Würfel aufgefaltet
picture-letters = Die Buchstaben der { $kinds }, aufgefaltet

view-face = { $face }: { $rows }.
view-letter = Buchstabe { $number }: { $letter }, { $target }
# Neben dem Namen eines Fadens.
thread-letters = { $letters ->
    [one] 1 Buchstabe
   *[other] { $letters } Buchstaben
}
thread-letter = Buchstabe { $number } von { $letters }
view-step = Schritt { $number } von { $all }: { $what }
view-move = Zug { $number } von { $all }, { $turn }: { $part ->
    [setup] Set-up
    [swap] Tausch
    [cycle] Dreierzyklus
    [undo] Set-up zurück
   *[parity] Parity
}
view-after-solves = { $letter } ist erledigt: { $piece } ist gelöst.
view-after-moves = { $letter } ist erledigt: Der Stein des Puffers kam nach { $piece }.
view-after-letters = { $letter } ist erledigt.
view-as-expected = Der Würfel ist so, wie dieser Buchstabe ihn hinterlassen soll.
view-not-as-expected = Der Würfel ist nicht so, wie dieser Buchstabe ihn hinterlassen soll.
view-after-parity = Der Paritätsalgorithmus ist gemacht.
view-pieces-solved = { $solved } von { $all } Steinen sind gelöst.
view-share = { $percent } %
view-cell = { $face }, Reihe { $row }, Spalte { $column }: { $colour }
view-sticker = { $sticker }, { $colour }: { $letter }
view-letters-exchanged = { $sticker } hat jetzt { $letter }, damit kein Buchstabe doppelt steht.
view-turned-along = Der Algorithmus für diese Art ({ $kind }) wurde mit dem Würfel gedreht, damit er den neuen Puffer bewegt: { $algorithm }
view-contrast = Buchstaben sind gut lesbar ({ $whole },{ $tenth }:1).
view-contrast-poor = Buchstaben sind schlecht lesbar ({ $whole },{ $tenth }:1; gut ist ab 4,5:1).
view-colours-alike = { $first } und { $second } sehen { $sight ->
    [protanopia] für Menschen ohne Rotzapfen
    [deuteranopia] für Menschen ohne Grünzapfen
    [tritanopia] für Menschen ohne Blauzapfen
   *[usual] für alle
} sehr ähnlich aus.
view-carried-out = Bring { $target } ({ $letter }) mit { $setup } zum Tausch, mach den Tausch ({ $kind }), dann zurück mit { $undo }.
view-carried-out-plainly = { $target } ({ $letter }) liegt schon am Tausch: Mach den Tausch ({ $kind }).
colours-apart = Diese sechs Farben kann jeder unterscheiden, farbenblind oder nicht.
paint-possible = Durch Drehen kommt man dorthin.

lesson-title = Memo und Lösung, Schritt für Schritt
lesson-holding = Den Würfel aufnehmen
lesson-holding-lead = Mach den Scramble wie angegeben, dann dreh den ganzen Würfel so, dass deine Farben oben und vorn sind.
lesson-trace = Verfolge die { $kinds }
lesson-trace-lead = Beginne am Puffer { $buffer }. Frage: Welchen Sticker sehe ich dort, und wohin gehört er? Dieser Platz ist der nächste Buchstabe.
lesson-execution = Ausführen
lesson-hands = Stundenlanges schnelles Drehen belastet Hände und Handgelenke: Dreh beim Lernen langsam und mach Pause, bevor es wehtut.
lesson-step-parity = Die Zahl der Buchstaben ist ungerade, also sind von jeder Art noch zwei Steine vertauscht: Der Paritätsalgorithmus bringt das in Ordnung.
lesson-exercise = Übung { $number }

change-name-missing = Eine Farbe braucht einen Namen.
change-not-for-kind = So werden { $kinds } nicht ausgeführt: { $method }.
put-too-long = { $kind ->
    [sheet] Diese Tabelle ist länger als { $most } KiB, mehr wird nicht gelesen.
    [puzzle] Dieses Puzzle ist als Text länger als { $most } KiB, mehr wird nicht gelesen.
   *[other] Diese Festlegungen sind länger als { $most } KiB, mehr wird nicht gelesen.
}
sheet-not-for-kind = Tabellen gibt es für Ecken und Kanten, nicht für { $kinds }.

# Was an der Eingabe nicht stimmt: wo, und was richtig wäre.

placed = Zeile { $line }, Spalte { $column }: { $what }
did-you-mean = Meinst du { $word }?

moves-too-long = Der Text ist { $bytes } Bytes lang; höchstens { $most } werden gelesen.
moves-too-many = Das steht für mehr als { $most } Züge.
moves-too-deep = Klammern sind mehr als { $most } tief verschachtelt.
moves-unexpected = „{ $found }“ wird nicht verstanden; erwartet wird { $expected }.
moves-unexpected-prime = „{ $found }“ wird nicht verstanden; für die andere Richtung schreib '.
moves-unexpected-end = Hier endet der Text; erwartet wird { $expected }.
moves-number-after-prime = Hinter einem Strich kann keine Zahl stehen; schreib sie davor: { $rather }.
moves-wrong-case = „{ $found }“ ist kein Zug; „{ $rather }“ ist einer.
moves-no-such-turn = { $turn } geht nicht: { $reason }

turn-no-slice = ein { $size } hat keine mittlere Schicht, also keine Scheibenzüge.
turn-no-wide = ein { $size } hat keine weiten Züge; beide Schichten zu drehen ist eine Drehung (x, y oder z).
turn-too-deep = { $depth } Schichten sind für einen { $size } zu viele; höchstens { $most } drehen zusammen.
turn-no-inner = ein { $size } hat keine inneren Schichten.
turn-other-layers =
    { $most ->
        [2] die einzige innere Schicht eines { $size } ist die 2.
       *[other] die inneren Schichten eines { $size } sind 2 bis { $most }.
    }
turn-layers-backwards = von inneren Schichten steht die nähere zuerst, wie in 2-3R.

expected-turn = ein Zug (U L F R B D, weit wie Rw, M E S, x y z) oder eine öffnende Klammer
expected-turn-or-close = ein Zug oder die schließende Klammer „)“
expected-separator = „,“ oder „:“ zwischen den beiden Teilen einer eckigen Klammer
expected-close-square = ein Zug oder die schließende Klammer „]“
expected-face = eine Seite nach der Zahl der Schichten, wie in 2R, 2-3R oder 3Rw
expected-layers = eine Zahl von Schichten, 2 oder mehr, wie in 2R, 2-3R oder 3Rw
expected-space = ein Leerzeichen zwischen einem Strich und einer Zahl von Schichten (R' 2U); eine halbe Drehung ist R2'
expected-quarters = ein Maß von 1, 2 oder 3 Vierteldrehungen
expected-repeats = eine Zahl von Wiederholungen, mindestens 1

facelets-unknown = „{ $found }“ steht für keine Farbe; erwartet wird eine von { $expected }.
facelets-on-face = Fläche { $face }: { $what }
facelets-face-count = Fläche { $face } hat { $count } Sticker; auf einem { $size } hat eine Fläche { $right }.
facelets-face-odd = Fläche { $face } hat { $count } Sticker; eine Fläche hat 4, 9, 16, 25, 36 oder 49.
facelets-wrong-count = { $count } Sticker passen auf keinen Würfel: ein 2x2 hat 24, ein 3x3 54, ein 4x4 96, ein 5x5 150, ein 6x6 216, ein 7x7 294.

fault-colour-count = Es gibt { $count } Sticker in { $colour }; es müssen { $expected } sein.
fault-centres = Die Center von U L F R B D sind { $found }; so liegen sie auf deinem Puzzle nicht.
fault-centre-count = Unter den { $kinds } sind { $count } { $colour }; es müssen 4 sein.
fault-no-such-piece = Bei { $place } siehst du { $colours }; diese Farben hat keine { $kind }.
fault-mirrored = Bei { $place } siehst du { $colours }, im Uhrzeigersinn; die Ecke mit diesen Farben hat sie andersherum, wie im Spiegel.
fault-same-piece = { $first } und { $second } zeigen beide { $colours } ({ $kind }); das gibt es nur einmal.
fault-twist = Die Drehungen der Ecken gehen nicht auf: eine Ecke ist im Uhrzeigersinn verdreht.
fault-twist-counter = Die Drehungen der Ecken gehen nicht auf: eine Ecke ist gegen den Uhrzeigersinn verdreht.
fault-flip = Die Kippungen der Kanten gehen nicht auf: eine Kante ist gekippt.
fault-swap = Zwei Steine haben die Plätze getauscht, was Drehen nicht kann: Ecken und Kanten haben nicht dieselbe Parität.

physical-misread = Wahrscheinlich wurde ein Sticker falsch gelesen: { $place } muss { $rather } sein, nicht { $seen }.
physical-misread-among = Wahrscheinlich wurde ein Sticker in { $seen } falsch gelesen und muss { $rather } sein: { $places }.
physical-cell = Fläche { $face }, Zeile { $row }, Spalte { $column }
turn-clockwise = im Uhrzeigersinn
turn-counter-clockwise = gegen den Uhrzeigersinn
physical-twisted = Wahrscheinlich hat jemand eine Ecke von Hand verdreht; { $count ->
    [one] { $pieces } ist an ihrem Platz, aber verdreht: drehe sie
   *[other] drehe eine von { $pieces }, die an ihrem Platz, aber verdreht sind,
} { $back }, und das Puzzle ist lösbar.
physical-twisted-any = Wahrscheinlich hat jemand eine Ecke von Hand verdreht; drehe irgendeine Ecke { $back }, und das Puzzle ist lösbar.
physical-flipped = Wahrscheinlich wurde eine Kante herausgenommen und gekippt wieder eingesetzt; { $count ->
    [one] { $pieces } ist an ihrem Platz, aber gekippt: kippe sie
   *[other] kippe eine von { $pieces }, die an ihrem Platz, aber gekippt sind,
}, und das Puzzle ist lösbar.
physical-flipped-any = Wahrscheinlich wurde eine Kante herausgenommen und gekippt wieder eingesetzt; kippe irgendeine, und das Puzzle ist lösbar.
physical-exchanged = Wahrscheinlich wurden zwei Steine herausgenommen und vertauscht eingesetzt: { $pairs }.
physical-exchanged-any = Wahrscheinlich wurden zwei Steine herausgenommen und vertauscht eingesetzt; es können zwei beliebige einer Art sein.
physical-exchanged-turned = Wahrscheinlich wurden zwei { $kinds } herausgenommen und vertauscht eingesetzt, eine davon verdreht: { $pairs }.
physical-exchanged-turned-any = Wahrscheinlich wurden zwei { $kinds } herausgenommen und vertauscht eingesetzt, eine davon verdreht; es können zwei beliebige sein.
physical-stickers-exchanged = Wahrscheinlich wurden zwei Sticker einer Ecke vertauscht gelesen oder geklebt: { $first } und { $second }.
physical-taken-apart = Das Puzzle wurde zerlegt und auf mehr als eine Weise falsch zusammengesetzt; setze es gelöst zusammen.

swap-nothing = Der Algorithmus bewegt keine { $kinds }; er muss zwei davon tauschen.
swap-not-a-swap = Der Algorithmus tauscht nicht einfach zwei { $kinds }; er bewegt { $moved }.
swap-buffer-not-moved = Der Algorithmus bewegt den Puffer { $buffer } nicht: er tauscht { $first } und { $second }. Wähle einen Puffer auf einem davon, oder diesen Algorithmus: { $instead }
swap-not-its-own-inverse = Zweimal gemacht hebt sich der Algorithmus nicht auf; gerade und ungerade würden nicht reichen, um zu wissen, was übrig ist.
swap-turns-the-cube = Der Algorithmus lässt das ganze Puzzle gedreht zurück.
swap-moves-centres = Der Algorithmus lässt { $kinds } auf anderen Seiten zurück.
swap-other-target = Der Algorithmus tauscht den Puffer mit { $actual }, nicht mit { $named }.

method-cannot-be-made = Der Algorithmus ({ $kind }) geht auf einem { $size } nicht: { $what }
method-no-setup = Es wurden keine Setup-Züge gefunden, die { $target } zum Tausch bringen.
method-parity-does-not-fit = Der Paritätsalgorithmus passt nicht zu deinen Tauschen: sie lassen { $wanted } vertauscht, er bewegt { $moved }.
method-parity-cannot-be-made = Der Paritätsalgorithmus geht auf einem { $size } nicht: { $what }
method-not-covered = Für die { $kinds } eines { $size } gibt es noch keine Methode, sie auszuführen.
execution-kind-missing = Die Methode hat keinen Algorithmus für die { $kinds }.
execution-centres-late = In deiner Folge ausgeführt löst das den Würfel nicht: eine ungerade Zahl von Ecken- oder Wingbuchstaben dreht Center auf ihren Seiten umher; schreib in execution unter [memo], dass die Center zuerst kommen.
execution-own-piece = { $target } liegt auf dem Stein des Puffers und kann kein Ziel sein.
not-proven = Auf dem Puzzle versucht, tat { $claim ->
    [solution] die Lösung
    [algorithm] der Algorithmus
    [setup] das Setup
    [scramble] der Scramble
    [memo] das Memo
    [condition] der gezogene Zustand
   *[explanation] die Erklärung
} nicht, was nötig ist, und wird nicht gezeigt; das ist ein Fehler dieses Programms, nicht deiner.

toml-no = In dieser Datei stehen keine Festlegungen: { $what }
toml-unknown-key = „{ $key }“ bedeutet hier nichts; bekannt sind { $known }.
toml-unknown-word = „{ $word }“ ist hier nicht bekannt; bekannt sind { $known }.
toml-no-method-for = Mit „{ $word }“ lassen sich { $kinds } nicht ausführen; für sie gibt es { $known }.
toml-wrong-sort = „{ $key }“ braucht { $needs }.
toml-no-sticker = „{ $word }“ ist kein Sticker dieser Art ({ $kind }).
toml-no-shade = „{ $text }“ ist kein Farbton; ein Farbton ist # und sechs Hexadezimalziffern, wie #d7263d.
toml-shade-missing = „{ $name }“ braucht einen Farbton: { "{" } name = "{ $name }", shade = "#rrggbb" { "}" }.
toml-colour-twice = Zwei Flächen sind { $name }; jede Farbe gibt es einmal.
toml-holding-same = { $up } kann nicht zugleich oben und vorn sein.
toml-holding-opposite = { $up } und { $front } liegen gegenüber; sie können nicht oben und vorn sein.
toml-algorithm = Der Algorithmus ist nicht lesbar. { $what }
toml-kinds-once = „{ $key }“ nennt eine Art zweimal; jede darf dort einmal stehen.
toml-sticker-twice = „{ $word }“ steht hier zweimal; jeder Sticker darf hier einmal stehen.

letters-count = { $count } Buchstaben für die 24 Sticker dieser Art ({ $kind }).
letters-twice = Der Buchstabe { $letter } steht für zwei Sticker, { $first } und { $second }.
letters-no-letter = { $letter } kann kein Buchstabe des Schemas sein.
letters-missing = { $sticker } hat keinen Buchstaben.
letters-not-one = „{ $text }“ ist nicht ein Buchstabe.
letters-empty = Ein Buchstabe ist leer; jeder Sticker braucht einen.
letters-too-long = Ein Buchstabe hat { $count } Zeichen; höchstens { $most } werden gelesen.

needs-table = eine Tabelle mit weiteren Schlüsseln
needs-text = einen Text in Anführungszeichen
needs-yes-no = true oder false
needs-list = eine Liste von Texten
needs-letters = 24 Buchstaben in einem Text oder einer Liste, oder eine Tabelle mit einem Buchstaben je Sticker oder vier je Fläche
needs-breaks = "first", "fewest", "least" oder eine Liste von Stickern
needs-colour = einen Farbnamen oder eine Tabelle mit name und shade

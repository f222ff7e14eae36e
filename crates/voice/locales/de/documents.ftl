# Was an einem Dokument nicht stimmt, oder an einem Zustand, der eingegeben wurde.

placed-on = Zeile { $line }, Spalte { $column } ({ $spot }): { $what }

document-newer = Dieses Dokument ({ $document }) stammt von einer neueren Version von Hoodwink (Form { $found }; diese hier liest bis { $known }). Es wurde gelassen, wie es ist.
document-other = Dieses Dokument ist ein anderes; gebraucht wird: { $document }.
document-other-found = Dieses Dokument ist nach eigener Angabe „{ $found }“; gebraucht wird: { $document }.
document-too-long = Der Text ist { $bytes } Bytes lang; höchstens { $most } werden gelesen.
document-content = Dieses Dokument ({ $document }) ist nicht vollständig: { $what }

document-conventions = Datei mit Konventionen
document-sheet = Tabelle von Algorithmen
document-ease = Datei der Kosten des Drehens
document-slips = Katalog der Fehler
document-lesson = Lektion
document-moment = Link
document-draft = Entwurf
document-set = Satz von Konventionen
document-setting = Einstellung

state-no-colour = „{ $found }“ ist keine Farbe; das sind: { $expected }.
state-empty = Es stehen keine Farben darin.
state-face-count = { $faces }; auf einem { $size } hat eine Fläche { $right } Sticker.
state-face = Fläche { $face } hat { $count }
state-row-count = Zeile { $row } der Fläche { $face } hat { $count } Sticker; auf einem { $size } hat sie { $right }.
state-net-line = Zeile { $line } des Netzes hat { $count } Sticker; auf einem { $size } hat sie { $right }.
state-count = { $count } Sticker passen auf keinen Würfel; ein { $size } hat { $right }. Schreibe jede Fläche in eine eigene Zeile, dann lässt sich die unvollständige nennen.

toml-missing = „{ $key }“ fehlt.
needs-tables = eine oder mehr Tabellen, jede unter [[name]]
needs-texts = eine Liste von Texten
needs-seconds = eine Zahl von Sekunden, null oder mehr
needs-share = eine Zahl über null
needs-three-shares = eine Liste von drei Zahlen über null
needs-whole = eine ganze Zahl

ease-no-turn = „{ $text }“ ist kein Zug.
ease-bad-turn = { $turn } ist kein Zug, den ein Finger macht.
ease-no-way = Für { $turn } gibt es keine Art zu drehen.
ease-bad-cost = „{ $key }“ braucht eine Zahl von Sekunden, null oder mehr.

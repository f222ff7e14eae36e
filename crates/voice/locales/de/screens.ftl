# Texte der Ansichten, Deutsch. Ein Text hier nimmt keine Angaben auf: Was vom Würfel abhängt, sagt der Kern selbst.

## Name der App und wo man ist

app-name = Hoodwink
app-purpose = Eine Werkbank für das blinde Lösen von Würfeln
nav-label = Orte
nav-trace = Verfolgen
nav-play = Ausführen
nav-check = Prüfen
nav-why = Warum
nav-conventions = Buchstaben und Farben
nav-lesson = Lektion
nav-algorithms = Algorithmen
skip-to-content = Zum Inhalt springen
not-found-title = Unter dieser Adresse ist nichts
not-found-text = Vielleicht ist der Link abgeschnitten. Wähle einen Ort.

## Wozu jede Ansicht dient

trace-purpose = Vom Scramble zum Memo, mit dem Grund für jeden Buchstaben.
play-purpose = Sieh der Lösung Buchstabe für Buchstabe zu.
check-purpose = Stimmt mein Memo? Jedes Memo, das löst, ist richtig.
why-purpose = Was ging in einem Versuch schief?
conventions-purpose = Buchstaben, Puffer, Farben und Haltung.
lesson-purpose = Eine Seite für Schüler und ein Übungsblatt.
algorithms-purpose = Deine Tabelle mit Algorithmen, Zug für Zug geprüft.

## Einstellungen

settings = Einstellungen
settings-language = Sprache
settings-theme = Hell oder dunkel
theme-system = Wie das Gerät
theme-light = Hell
theme-dark = Dunkel
settings-motion = Bewegung
motion-system = Wie das Gerät
motion-less = Weniger Bewegung
settings-close = Schließen

## Lange Arbeit

working = In Arbeit …
cancel = Abbrechen
cancelled = Abgebrochen.
try-again = Noch einmal

## Scramble

scramble-label = Scramble
scramble-hint = Züge wie R U' F2, Rw, 3Rw, M, x
scramble-empty = Gib einen Scramble ein.

## Kern und Speicher

engine-starting = Der Kern startet …
engine-failed-title = Der Kern startet nicht
engine-failed-text = Dieser Browser konnte den Teil nicht laden, der rechnet. Lade die Seite neu; hilft das nicht, nimm einen Browser ab Mitte 2024.
needs-scripts = Hoodwink rechnet in dieser Seite und braucht JavaScript. Erlaube Skripte für diese Adresse und lade neu.
part-not-loaded = Dieser Teil konnte nicht geladen werden. Sieh nach, ob das Netz da ist, und lade die Seite neu; nichts Geschriebenes geht verloren.
engine-stopped = Der Kern hielt mitten in der Arbeit an und wurde neu gestartet. Von deiner Eingabe ist nichts verloren.
store-denied = Dieser Browser bewahrt für diese Seite nichts auf. Du kannst weitermachen, aber beim Neuladen geht deine Eingabe verloren.
store-full = Der Speicher dieses Browsers ist voll. Was du ab jetzt änderst, wird nicht aufbewahrt.
store-failed = Der Speicher dieses Browsers meldet einen Fehler. Was du ab jetzt änderst, bleibt vielleicht nicht erhalten.
store-newer = Etwas, das eine neuere Fassung von Hoodwink in diesem Browser abgelegt hat, blieb, wie es ist. Lade die Seite neu, um die neuere Fassung zu bekommen.
store-changed-elsewhere = Dieser Satz wurde in einem anderen Tab geändert. Deiner wurde unter neuem Namen aufbewahrt.
dismiss = Hinweis schließen

## Eine neue Version

update-ready = Eine neue Version ist da.
update-take = Jetzt laden
update-later = Später
offline-ready = Läuft ab jetzt auch ohne Netz.

## Der Würfel und wie man ihn ansieht

puzzle-size = Würfel
size-2 = 2x2
size-3 = 3x3
size-4 = 4x4
input-label = Ausgangspunkt
input-scramble = Ein Scramble
input-colours = Farben, die ich sehe
best-hold = Die Haltung mit dem kürzesten Memo wählen
random-scramble = Zufälliger Scramble
random-condition = Lektion
random-any = Irgendein Scramble
random-wait = Ein Scramble wird gesucht …
cube-region = Der Würfel
cube-keys = Drehe ihn mit den Pfeiltasten oder durch Ziehen.
turn-left = Nach links drehen
turn-right = Nach rechts drehen
turn-up = Nach oben drehen
turn-down = Nach unten drehen
turn-back = Übliche Ansicht
hidden-label = Verdeckte Seiten
hidden-no = Nicht gezeigt
hidden-mirrors = In Spiegeln
hidden-net = Aufgefaltet
colour-label = Farbe
paint-hint = Wähle eine Farbe, dann tippe auf Sticker. Mit der Tastatur: Pfeiltasten und Eingabe. Auch die Mitten werden gemalt.
paint-reset = Auf gelöst zurücksetzen

## Das Memo

memo-heading = Memo
memo-hint = Wähle einen Buchstaben, um zu sehen, woher er kommt.
memo-nothing = Gelöst: Es gibt nichts zu merken.
memo-previous = Buchstabe davor
memo-next = Nächster Buchstabe
knot = Neuer Zyklus
loose-end = Ungerade Zahl von Buchstaben: Parität
turned-piece = An seinem Platz verdreht
holding-heading = Haltung
solution-title = Lösung
copy = Kopieren
copied = Kopiert.
no-solution = Das Memo geht, die Ausführung nicht:
to-conventions = Festlegungen ändern
quick-heading = Haltung und Puffer
holding-up = Oben
holding-front = Vorn

## Abspielen

play-nothing = Es gibt nichts auszuführen: Gib einen Scramble ein.
play-start = Abspielen
play-pause = Pause
move-back = Zug zurück
move-on = Zug weiter
letter-back = Buchstabe zurück
letter-on = Buchstabe weiter
play-first = Zum Anfang
speed = Tempo
speed-slow = Langsam
speed-usual = Mittel
speed-fast = Schnell
part-setup = Set-up
part-swap = Tausch
part-cycle = Dreierzyklus
part-undo = Zurück
part-parity = Parität
time-line = Zeitleiste
play-keys = Leertaste spielt ab und hält an; Pfeiltasten gehen zugweise, mit Umschalt buchstabenweise.
mark-buffer = Quadrat: Puffer
mark-target = Raute: Ziel
play-ready = Bereit für den ersten Zug.

## Festlegungen

set-label = Satz
set-usual = Die üblichen
set-own = Meine Festlegungen
set-name = Name des Satzes
set-new = Unter diesem Namen sichern
set-delete = Diesen Satz löschen
set-kept = Jede Änderung wird sofort aufbewahrt.
set-import = Datei öffnen
set-export = Als Datei sichern
letters-heading = Buchstaben
letters-hint = Wähle einen Sticker im Netz und tippe seinen Buchstaben.
tap-label = Ein Tippen
tap-letter = wählt einen Sticker für seinen Buchstaben
tap-buffer = macht ihn zum Puffer
letter-of = Buchstabe von
buffer-label = Puffer
method-label = Methode
by-one-swap = Ein Tausch je Buchstabe
by-slice-swap = Halbe Drehungen der mittleren Schicht
by-three-cycle = Zwei Buchstaben auf einmal, durch Dreierzyklen
algorithm-label = Tausch-Algorithmus
parity-label = Paritätsalgorithmus
breaks-label = Neue Zyklen beginnen
breaks-at-first = beim ersten ungelösten Buchstaben
breaks-at-fewest = wo die Buchstaben die wenigsten Set-up-Züge brauchen
breaks-at-least = so, dass das Ganze die geringste geschätzte Zeit braucht
breaks-at-list = nach der Liste in der Datei
pairs-label = Buchstaben in Paaren
colours-heading = Farben
colour-name = Name
colour-shade = Farbton
file-heading = Als Datei
fits = Keine Widersprüche.

## Lektion

lesson-choose = Was erklärt wird
explain-holding = Das Aufnehmen
explain-corners = Die Buchstaben der Ecken
explain-edges = Die Buchstaben der Kanten
explain-execution = Die Ausführung
exercises-label = Übungen
exercises-other = Andere Übungen
paper-label = Papier
paper-a4 = A4
paper-letter = Letter
print = Drucken
link-label = Link zu dieser Lektion
link-shown = Diese Lektion kam mit einem Link; dein eigener Scramble ist unberührt.
link-take = Zu meinem machen
lesson-empty = Gib hier oder auf der Werkbank einen Scramble ein.
picture-svg = SVG
picture-png = PNG
picture-save = Bild sichern
exercises-heading = Übungen
answers-heading = Antworten
exercise-ask = Schreib das Memo auf.

## Prüfen und Warum

memo-corners = Die Buchstaben der Ecken
memo-edges = Die Buchstaben der Kanten
parity-noted = Parität notiert
parity-not-said = nicht gesagt
yes = Ja
no = Nein
moves-made = Züge, die gemacht wurden
moves-made-hint = Verglichen mit dem Memo oben, oder, wo keines steht, mit dem des Kerns.
check-hint = Schreib dein Memo; es wird beim Tippen geprüft.
outcome-heading = Wohin es führt
why-begun = Was zu tun war
why-memo-hint = Lass die Buchstaben leer, wenn du dir gemerkt hast, was „Verfolgen“ zeigt.
why-seen = Wie der Würfel herauskam
why-list = Der Scramble ist aus einer Liste
why-list-hint = Ein Scramble je Zeile: ein anderer davon kann gemacht worden sein.
why-told = Oder in Worten
why-told-hint = Zum Beispiel: UF>UR>FR, UF gekippt, weiß-grün und weiß-rot vertauscht, Kanten: A B, zwei Ecken, nur Kanten: …; oder Sticker mit ? für unbekannte, U: … F: …
why-ask = Erklären
why-deep = Nach drei Fehlern suchen
why-alike = Andere Fehler, die auf dasselbe hinauslaufen
why-questions-heading = Diese Antworten sagen am meisten

## Algorithmen

algs-pieces = Teile
algs-open = Tabelle öffnen
algs-open-what = In der Datei sind
algs-open-as-said = was die Datei sagt
algs-open-buffer = Puffer, wo die Datei keinen nennt
algs-open-hint = CSV, TSV oder Text mit Semikolons: eine Liste, oder ein Gitter mit Zielen an zwei Rändern. Wähle eine Datei, zieh sie hierher oder füge ihren Text ein; du siehst, was darin steht, bevor etwas übernommen wird.
algs-files = Ändern und sichern
algs-fill = Lücken füllen
algs-clear = Alles herausnehmen
algs-clear-sure = Alle Algorithmen dieses Puffers aus der Tabelle nehmen?
algs-save-csv = Als CSV sichern
algs-save-markdown = Als Markdown sichern
algs-save-html = Als Seite zum Drucken sichern
algs-find = Finden
algs-find-hint = Buchstaben, Sticker, Züge oder eine Notiz
algs-only = Zeigen
only-all = alle Fälle
only-right = mit richtigem Algorithmus
only-missing = ohne richtigen Algorithmus
only-wrong = mit einem, der etwas anderes tut
only-slow = viel langsamer als das Beste, das bekannt ist
algs-grid = Alle Fälle
algs-grid-hint = Das erste Ziel steht links, das zweite oben. Pfeiltasten gehen von Fall zu Fall.
algs-legend-right = richtig
algs-legend-slow = richtig, aber langsam
algs-legend-wrong = tut etwas anderes
algs-legend-nothing = kein Algorithmus
algs-cards = Fälle
algs-more = Mehr zeigen
algs-troubles = Zeilen zum Nachsehen
algs-report = Was in der Datei steht
algs-report-all = Jede Zeile
algs-report-close = Bericht schließen
algs-bring = Übernehmen
algs-bring-anyway = Trotzdem übernehmen
algs-brought = Übernommen.
algs-unbring = Rückgängig
algs-unbrought = Rückgängig gemacht; die Tabelle ist wie vorher.
algs-paste = Oder füge ihren Text ein
algs-look = Text ansehen
algs-unread = Diese Datei lässt sich nicht lesen.
algs-open-first = Erstes Ziel eines Gitters
algs-open-first-told = wie die Algorithmen verraten
algs-open-first-left = links
algs-open-first-top = oben
algs-choose = Wähle einen Fall, um zu sehen, was ihn löst.
algs-case = Der Fall
algs-ways = Was ihn löst, das Leichteste zuerst
algs-watch = Zeigen
algs-take = In die Tabelle aufnehmen
algs-drop = Herausnehmen
algs-kept = In der Tabelle
algs-wrong-here = Steht hier, ist aber nicht richtig
algs-own = Ein eigener Algorithmus
algs-own-check = Prüfen und aufnehmen
algs-search = Nach weiteren suchen
algs-turns = Züge
algs-turns-hint = Arten von Zügen, wie R U D, oder mit mittleren Schichten M E S; jede darf beliebig weit drehen.
algs-longest = Bis zu so vielen Zügen
algs-start = Suchen
algs-estimates = Die Zeiten sind Schätzungen dieses Programms für zwei Hände.
algs-changed-meanwhile = Inzwischen wurde die Tabelle geändert oder ein anderer Satz gewählt; es wurde nichts getan. Mach es noch einmal, wenn du es noch willst.

## Der Rahmen: fünf Orte, vier Blicke

place-bench = Werkbank
place-practice = Üben
place-teach = Lehren
place-collection = Sammlung
place-progress = Fortschritt
lenses-label = Blicke
lens-trace = Verfolgen
lens-play = Ausführen
lens-check = Prüfen
lens-why = Warum
collection-letters = Buchstaben und Farben
collection-algorithms = Algorithmen

## Der Würfel in der Hand

subject-label = Der Würfel in der Hand
subject-change = Den Würfel ändern
subject-scramble-none = Noch kein Scramble
subject-colours = Gemalte Farben
subject-from = Woher er kommt
subject-from-first = Er lag am Anfang hier.
subject-from-typed = Du hast ihn getippt.
subject-from-painted = Du hast ihn gemalt.
subject-from-random = Ein zufälliger Scramble.
subject-from-lesson = Ein Scramble für eine Lektion.
subject-from-link = Er kam mit einem Link.
subject-done = Fertig
subject-hold = Haltung
hold-shortest = Kürzestes Memo
hold-conventions = Wie in meinen Festlegungen
subject-more = Haltung, Lektion, Link
undo = Rückgängig
redo = Wiederholen
undone = Zurückgenommen.
redone = Wieder gemacht.
nothing-to-undo = Es gibt nichts zurückzunehmen.
field-too-long = Das ist zu lang für dieses Feld und wurde nicht übernommen.
moves-none = Gib einen Scramble ein, dann gibt es etwas zu sehen.

## Samt

velvet-label = Würfel und Memo
velvet-keys = Pfeiltasten gehen durch die Buchstaben, Pos1 und Ende zum ersten und letzten. Umschalt mit Pfeilen dreht den Würfel. Die Leertaste ist der dunkle Knopf. 1 bis 4 sind die Blicke, R ist ein zufälliger Scramble, / das Feld dafür.
cube-as-text = Der Würfel in Worten
cube-as-table = Der Würfel als Tabelle
cube-face = Seite
velvet-loading = Wird ausgerechnet …

## Erster Besuch

first-learn = Ich will lernen
first-solve = Ich löse blind
first-teach = Ich lehre

## Der Grund

reason-begin = Fang mit dem ersten Buchstaben an
reason-begin-hint = Tippe auf „Nächster Buchstabe“: Jeder Schritt sagt, wohin du schaust, was du siehst und wohin es gehört.
reason-after = Das war der letzte Buchstabe. Führ es jetzt aus.
to-carry-out = Ausführen
more-of-memo = Mehr zu diesem Memo

## Ausführen

carry-move = Zug
carry-done = Fertig. Der Würfel ist gelöst.
carry-again = Noch einmal
carry-all = Alle Buchstaben
carry-from = Woher die Züge kommen

## Prüfen und Warum

check-write = Schreib dein Memo. Jedes Memo, das löst, ist richtig.
check-extras = Züge, Parität
why-tell = Sag, wie er herauskam
why-tell-hint = Mal ihn oder sag es in Worten, dann frag, warum.
why-paint = Malen
why-words = In Worten sagen
why-cant-say = Weiß nicht
why-change = Ändern, was ich gesagt habe
why-options = Liste von Scrambles, eigenes Memo

## Links und Teilen

share = Link
share-title = Ein Link zu diesem Augenblick
share-copy = Link kopieren
share-send = Teilen
share-not-copied = Die Zwischenablage hat abgelehnt. Markiere den Link und kopiere ihn selbst.
share-code-title = Link als Code für eine Kamera
share-code-long = Dieser Link ist zu lang für einen Code; kopiere ihn.

## Einstellung der Tasten

settings-keys = Einzelne Tasten
keys-on = An
keys-off = Aus
link-opened = Dieser Würfel kam mit einem Link. Was du vorher hattest, kommt mit „Rückgängig“ wieder.
exercises-list = Die Scrambles als Liste
to-trace = Das Memo zeigen
letters-row = Alle Buchstaben in einer Reihe, Seiten U L F R B D, jede im Uhrzeigersinn von links oben

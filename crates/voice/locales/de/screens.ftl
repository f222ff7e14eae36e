# Texte der Ansichten, Deutsch. Ein Text hier nimmt keine Angaben auf: Was vom Würfel abhängt, sagt der Kern selbst.

## Name der App und wo man ist

app-name = Hoodwink
app-purpose = Eine Werkbank für das blinde Lösen von Würfeln
nav-label = Ansichten
nav-trace = Verfolgen
nav-play = Abspielen
nav-check = Prüfen
nav-why = Warum
nav-conventions = Festlegungen
nav-lesson = Lektion
nav-algorithms = Algorithmen
skip-to-content = Zum Inhalt springen
not-found-title = Unter dieser Adresse ist nichts
not-found-text = Vielleicht ist der Link abgeschnitten. Wähle oben eine Ansicht.

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
best-hold = So aufnehmen, dass das Memo am kürzesten ist
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
paint-reset = Wieder gelöst

## Das Memo

memo-heading = Memo
memo-hint = Wähle einen Buchstaben, um zu sehen, woher er kommt.
memo-nothing = Gelöst: Es gibt nichts zu merken.
memo-previous = Buchstabe davor
memo-next = Nächster Buchstabe
knot = Neuer Zyklus
loose-end = Loses Ende: Parity
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

play-nothing = Es gibt nichts abzuspielen. Gib unter „Verfolgen“ einen Scramble ein.
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
part-parity = Parity
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
fits = Alles passt zusammen.

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
link-take = Übernehmen
lesson-empty = Gib einen Scramble ein, unter „Verfolgen“ oder hier.
picture-svg = SVG
picture-png = PNG
picture-save = Bild sichern
exercises-heading = Übungen
answers-heading = Antworten
exercise-ask = Schreib das Memo auf.

## Prüfen und Warum

memo-corners = Die Buchstaben der Ecken
memo-edges = Die Buchstaben der Kanten
parity-noted = Parity notiert
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
why-told-hint = Gilt statt der Farben oben. UF>UR>FR, UF gekippt, weiß-grün und weiß-rot vertauscht, Kanten: A B, zwei Ecken, nur Kanten: …; oder Sticker mit ? für unbekannte, U: … F: …
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

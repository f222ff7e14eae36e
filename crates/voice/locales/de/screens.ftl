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
conventions-purpose = Buchstaben, Buffer, Farben und Haltung.
lesson-purpose = Eine Seite für Schüler und ein Übungsblatt.
algorithms-purpose = Dein Blatt mit Algorithmen, Zug für Zug geprüft.

## Einstellungen

settings = Einstellungen
settings-language = Sprache
language-name = Deutsch
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
engine-stopped = Der Kern hielt mitten in der Arbeit an und wurde neu gestartet. Von deiner Eingabe ist nichts verloren.
store-denied = Dieser Browser bewahrt für diese Seite nichts auf. Du kannst weitermachen, aber beim Neuladen geht deine Eingabe verloren.
store-full = Der Speicher dieses Browsers ist voll. Was du ab jetzt änderst, wird nicht aufbewahrt.
store-failed = Der Speicher dieses Browsers meldet einen Fehler. Was du ab jetzt änderst, bleibt vielleicht nicht erhalten.
store-changed-elsewhere = Dieser Satz wurde in einem anderen Tab geändert. Deiner wurde unter neuem Namen aufbewahrt.
dismiss = Hinweis schließen

## Eine neue Version

update-ready = Eine neue Version ist da.
update-take = Jetzt laden
update-later = Später
offline-ready = Läuft ab jetzt auch ohne Netz.

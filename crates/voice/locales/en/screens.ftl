# Texts of the screens, English. A text here takes no arguments: what depends on a puzzle is said by the engine.

## Name of the app and where one is

app-name = Hoodwink
app-purpose = A workbench for solving cubes blindfolded
nav-label = Views
nav-trace = Trace
nav-play = Play
nav-check = Check
nav-why = Why
nav-conventions = Conventions
nav-lesson = Lesson
nav-algorithms = Algorithms
skip-to-content = Skip to the content
not-found-title = Nothing is at this address
not-found-text = The link may be cut off. Choose a view above.

## What each view is for

trace-purpose = From a scramble to the memo, with the reason for every letter.
play-purpose = Watch the solution letter by letter.
check-purpose = Is my memo right? Any memo that solves is right.
why-purpose = What went wrong in an attempt?
conventions-purpose = Letters, buffers, colours and holding.
lesson-purpose = A page for pupils, and an exercise sheet.
algorithms-purpose = Your sheet of algorithms, checked move by move.

## Settings

settings = Settings
settings-language = Language
language-name = English
settings-theme = Light or dark
theme-system = As the device
theme-light = Light
theme-dark = Dark
settings-motion = Movement
motion-system = As the device
motion-less = Less movement
settings-close = Close

## Long work

working = Working …
cancel = Cancel
cancelled = Cancelled.
try-again = Try again

## Scramble

scramble-label = Scramble
scramble-hint = Moves such as R U' F2, Rw, 3Rw, M, x
scramble-empty = Type a scramble.

## The engine and the store

engine-starting = Starting the engine …
engine-failed-title = The engine does not start
engine-failed-text = This browser could not load the part that computes. Reload the page; if that does not help, take a browser from the middle of 2024 or later.
needs-scripts = Hoodwink computes in this page and needs JavaScript. Allow scripts for this address and reload.
engine-stopped = The engine stopped in the middle of its work and was started again. Nothing you typed is lost.
store-denied = This browser keeps nothing for this page. You can go on, but a reload loses what you typed.
store-full = This browser's storage is full. What you change from here on is not kept.
store-failed = The storage of this browser gave an error. What you change from here on may not be kept.
store-changed-elsewhere = This set was changed in another tab. Yours was kept under a new name.
dismiss = Close this notice

## A new version

update-ready = A new version is ready.
update-take = Load it now
update-later = Later
offline-ready = Works without network from now on.

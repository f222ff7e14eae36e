# What is wrong with a document, or with a state that was typed.

placed-on = Line { $line }, column { $column } ({ $spot }): { $what }

document-newer = This { $document } was written by a newer version of Hoodwink (form { $found }; this one reads up to { $known }). It was left as it is.
document-other = This is no { $document }.
document-other-found = This is no { $document }; it says that it is “{ $found }”.
document-too-long = The text is { $bytes } bytes long; at most { $most } are read.
document-content = This { $document } is not whole: { $what }

document-conventions = file of conventions
document-sheet = sheet of algorithms
document-ease = file of costs of turning
document-slips = catalogue of slips
document-lesson = lesson
document-moment = link
document-draft = draft
document-set = set of conventions
document-setting = setting

state-no-colour = “{ $found }” is no colour; these are: { $expected }.
state-empty = There are no colours in it.
state-face-count = { $faces }; on a { $size } a face has { $right } stickers.
state-face = face { $face } has { $count }
state-row-count = Row { $row } of face { $face } has { $count } stickers; on a { $size } it has { $right }.
state-net-line = Line { $line } of the net has { $count } stickers; on a { $size } it has { $right }.
state-count = { $count } stickers fit no cube; a { $size } has { $right }. Write each face on a line of its own, and the one that is not whole can be named.

toml-missing = “{ $key }” is missing.
needs-tables = one or more tables, each under [[name]]
needs-texts = a list of texts
needs-seconds = a number of seconds, zero or more
needs-share = a number above zero
needs-three-shares = a list of three numbers above zero
needs-whole = a whole number

ease-no-turn = “{ $text }” is no turn.
ease-bad-turn = { $turn } is no turn that a finger makes.
ease-no-way = There is no way to make { $turn }.
ease-bad-cost = “{ $key }” needs a number of seconds, zero or more.

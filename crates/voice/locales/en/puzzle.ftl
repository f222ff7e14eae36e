# What colours, pieces, kinds and holds are called.

colour-white = white
colour-yellow = yellow
colour-red = red
colour-orange = orange
colour-green = green
colour-blue = blue

kind-corner = corner
kinds-corner = corners
kind-edge = edge
kinds-edge = edges
kind-wing = wing
kinds-wing = wings
kind-wing-3 = inner wing
kinds-wing-3 = inner wings
kind-x-centre = x-centre
kinds-x-centre = x-centres
kind-x-centre-3 = inner x-centre
kinds-x-centre-3 = inner x-centres
kind-t-centre = t-centre
kinds-t-centre = t-centres
kind-t-centre-3 = inner t-centre
kinds-t-centre-3 = inner t-centres
kind-left-oblique = left oblique
kinds-left-oblique = left obliques
kind-right-oblique = right oblique
kinds-right-oblique = right obliques

list-and = { $first } and { $last }
list-or = { $first } or { $last }
pieces-number = { $number } { $kinds }

hold-as-scrambled = Hold it with { $up } up and { $front } in front, as you scrambled it.
hold-turned = Turn the whole puzzle so that { $newup } is up and { $newfront } in front: { $moves }. While scrambling, { $up } was up and { $front } in front.

# A number with decimals.
decimal = { $whole }.{ $rest }

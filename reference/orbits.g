# Orders of the groups by which all turns permute the facelets of each orbit, by GAP (www.gap-system.org, Debian package
# gap-core). GAP finds the orbits itself; nothing of ours tells it which facelets belong together.
# Reads the tables from the files named in the list TABLES (pairs of a name and a path) and prints orbits_gap.txt.

report := function(origin, path)
  local input, line, parts, tables, size, group, orders;
  tables := List([1 .. 7], size -> []);
  input := InputTextFile(path);
  line := ReadLine(input);
  while line <> fail do
    line := Chomp(line);
    if Length(line) > 0 and line[1] <> '#' then
      parts := SplitString(line, "\t");
      Add(tables[Int(parts[1])], PermList(List(SplitString(parts[3], " "), number -> Int(number) + 1)));
    fi;
    line := ReadLine(input);
  od;
  CloseStream(input);
  for size in [4 .. 7] do
    group := Group(tables[size]);
    orders := Collected(List(Orbits(group, MovedPoints(group)), orbit -> [Length(orbit), Size(Action(group, orbit))]));
    for line in orders do
      Print(origin, "\t", size, "\t", line[1][1], "\t", line[1][2], "\t", line[2], "\n");
    od;
  od;
end;

SizeScreen([100000, 24]);
Print("# Source: GAP (Orbits, Size of the action on each), for the tables of generators.txt and of ours/, rotations of the cube included.\n");
Print("# tables<TAB>size<TAB>facelets of an orbit<TAB>order of the group on it<TAB>how many such orbits\n");
for pair in TABLES do report(pair[1], pair[2]); od;
QUIT;

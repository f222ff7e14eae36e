# Orders of the groups that the turn tables make, by GAP (www.gap-system.org, Debian package gap-core).
# Sizes 2 to 5: GAP needs minutes for the groups of 6 and 7.
# Reads the tables from the files named in the list TABLES (pairs of a name and a path) and prints orders_gap.txt.
# The last column counts the states that look different. Centres of one colour may change places unseen; the
# states in which only such centres have moved form a subgroup, and since parity ties each orbit of centres to the
# corners, half of the 24^6 ways to permute the centres of one orbit within their colours are in it.

held := function(size)
  # Quarter turns that make every state and never turn the whole cube: an even size keeps the corner at D, B, L where
  # it is, an odd size its fixed centres.
  local faces, depths, names, depth, face;
  if size mod 2 = 0 then faces := "RUF"; depths := size - 1;
  else faces := "ULFRBD"; depths := (size - 1) / 2; fi;
  names := [];
  for depth in [1 .. depths] do
    for face in faces do
      if depth = 1 then Add(names, [face]);
      elif depth = 2 then Add(names, Concatenation([face], "w"));
      else Add(names, Concatenation(String(depth), [face], "w")); fi;
    od;
  od;
  return names;
end;

report := function(origin, path)
  local input, line, parts, tables, size, names, group, order, unseen;
  tables := List([1 .. 7], size -> rec());
  input := InputTextFile(path);
  line := ReadLine(input);
  while line <> fail do
    line := Chomp(line);
    if Length(line) > 0 and line[1] <> '#' then
      parts := SplitString(line, "\t");
      tables[Int(parts[1])].(parts[2]) := PermList(List(SplitString(parts[3], " "), number -> Int(number) + 1));
    fi;
    line := ReadLine(input);
  od;
  CloseStream(input);
  for size in [2 .. 5] do
    names := held(size);
    order := Size(Group(List(names, name -> tables[size].(name))));
    unseen := (Factorial(4)^6 / 2)^QuoInt((size - 2)^2, 4);
    Print(origin, "\t", size, "\t", JoinStringsWithSeparator(names, " "), "\t", order, "\t", order / unseen, "\n");
  od;
end;

SizeScreen([100000, 24]);
Print("# Source: GAP (Size of the group), for the tables of generators.txt and of ours/.\n");
Print("# tables<TAB>size<TAB>generators<TAB>order of the group<TAB>states that look different\n");
for pair in TABLES do report(pair[1], pair[2]); od;
QUIT;

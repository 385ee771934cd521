// A winding's inside seen from above: six round rods in the former (gmsh). Numbers are in metres.
SetFactory("OpenCASCADE");
DefineConstant[ mesh = {2e-4}, rod = {2.375e-3}, halfLength = {30.5e-3}, halfWidth = {3.1e-3}, spacing = {10.4e-3} ];
Rectangle(1) = {-halfLength + halfWidth, -halfWidth, 0, 2 * (halfLength - halfWidth), 2 * halfWidth};
Disk(2) = {-halfLength + halfWidth, 0, 0, halfWidth};
Disk(3) = {halfLength - halfWidth, 0, 0, halfWidth};
BooleanUnion(10) = { Surface{1}; Delete; }{ Surface{2, 3}; Delete; };
rods[] = {};
For k In {0:5}
  Disk(20 + k) = {(k - 2.5) * spacing, 0, 0, rod};
  rods[] += 20 + k;
EndFor
outside[] = CombinedBoundary{ Surface{10}; };
left[] = BooleanDifference{ Surface{10}; Delete; }{ Surface{rods[]}; Delete; };
all[] = Boundary{ Surface{left[]}; };
Physical Surface(1) = left[];                       // insulator
edge[] = {};
For k In {0:5}
  edge[] += Curve In BoundingBox{(k - 2.5) * spacing - rod - 1e-5, -rod - 1e-5, -1e-5, (k - 2.5) * spacing + rod + 1e-5, rod + 1e-5, 1e-5};
EndFor
Physical Curve(101) = edge[];                       // rods
Physical Curve(102) = {all[]};                      // all edges: the winding is what is no rod
Mesh.CharacteristicLengthMax = mesh;
Mesh.CharacteristicLengthMin = mesh / 4;

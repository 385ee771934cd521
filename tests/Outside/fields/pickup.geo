// A quarter (x > 0, y > 0) of a pickup about the origin: one winding in the middle (coilY = 0) or a pair at +-coilY, rods, and optionally a bar.
// Lengths in mm. Run through make-field-results; the numbers come from the command line (-setnumber).
SetFactory("OpenCASCADE");
DefineConstant[ a = 29.75, r0 = 3.25, b = 3, h = 11, coilY = 0, rodR = 2.4, rodLow = -9, rodTop = 9, pitch = 10.4, withRods = 1,
  barX = 0, barY = 12, barLow = -9, barTop = -6, fineBar = 0,
  coverX = 0, coverY = 37.5, coverLow = -9, coverTop = 6.6, coverThick = 0.5, fineCover = 0,
  fine = 0.9, coarse = 22, far = 140, order = 2 ];
Mesh.ElementOrder = order;
Mesh.Algorithm3D = 1;

// A stadium of offset d about the coil's axis, from z1 to z2.
Macro Stadium
  sv = newv; Box(sv) = {-a, coilY - d, z1, 2 * a, 2 * d, z2 - z1};
  s1 = newv; Cylinder(s1) = {-a, coilY, z1, 0, 0, z2 - z1, d};
  s2 = newv; Cylinder(s2) = {a, coilY, z1, 0, 0, z2 - z1, d};
  made() = BooleanUnion{ Volume{sv}; Delete; }{ Volume{s1, s2}; Delete; };
Return

world = newv; Box(world) = {0, 0, -far, far, far, 2 * far};
z1 = -h / 2; z2 = h / 2;
d = r0;
Call Stadium;
hole() = made();
d = r0 + b;
Call Stadium;
outer() = made();
parts() = {hole(), outer()};
If(withRods)
  For i In {0:2}
    rod = newv; Cylinder(rod) = {(i + 0.5) * pitch, coilY, rodLow, 0, 0, rodTop - rodLow, rodR};
    parts() += {rod};
  EndFor
EndIf
If(barX > 0)
  bar = newv; Box(bar) = {-barX / 2, -barY / 2, barLow, barX, barY, barTop - barLow};
  parts() += {bar};
EndIf
If(coverX > 0)
  shell = newv; Box(shell) = {-coverX / 2, -coverY / 2, coverLow, coverX, coverY, coverTop - coverLow};
  room = newv; Box(room) = {-coverX / 2 + coverThick, -coverY / 2 + coverThick, coverLow - 1, coverX - 2 * coverThick, coverY - 2 * coverThick, coverTop - coverThick - coverLow + 1};
  cup() = BooleanDifference{ Volume{shell}; Delete; }{ Volume{room}; Delete; };
  parts() += {cup()};
EndIf
quarter = newv; Box(quarter) = {0, 0, -far, far, far, 2 * far};
kept() = BooleanIntersection{ Volume{parts()}; Delete; }{ Volume{quarter}; Delete; };
all() = BooleanFragments{ Volume{world}; Delete; }{ Volume{kept()}; Delete; };

e = 1e-4;
all() = Volume In BoundingBox{-e, -e, -far - e, far + e, far + e, far + e};
rods() = {};
If(withRods)
  For i In {0:2}
    x = (i + 0.5) * pitch;
    rods() += Volume In BoundingBox{x - rodR - 0.01, coilY - rodR - 0.01, rodLow - 0.01, x + rodR + 0.01, coilY + rodR + 0.01, rodTop + 0.01};
  EndFor
EndIf
bars() = {};
If(barX > 0)
  bars() = Volume In BoundingBox{-0.01, -0.01, barLow - 0.01, barX / 2 + 0.01, barY / 2 + 0.01, barTop + 0.01};
EndIf
covers() = {};
If(coverX > 0)
  // The only part that reaches the cover's top from outside its room.
  covers() = Volume In BoundingBox{-0.01, -0.01, coverLow - 0.01, coverX / 2 + 0.01, coverY / 2 + 0.01, coverTop + 0.01};
  inside() = Volume In BoundingBox{-0.01, -0.01, -far, coverX / 2 - coverThick + 0.01, coverY / 2 - coverThick + 0.01, coverTop - coverThick + 0.01};
  covers() -= inside();
EndIf
air() = all(); air() -= rods(); air() -= bars(); air() -= covers();
Physical Volume("air", 1) = air();
Physical Volume("rods", 2) = rods();
Physical Volume("bar", 3) = bars();
Physical Volume("cover", 4) = covers();
farFaces() = Surface In BoundingBox{far - e, -e, -far - e, far + e, far + e, far + e};
farFaces() += Surface In BoundingBox{-e, far - e, -far - e, far + e, far + e, far + e};
farFaces() += Surface In BoundingBox{-e, -e, far - e, far + e, far + e, far + e};
farFaces() += Surface In BoundingBox{-e, -e, -far - e, far + e, far + e, -far + e};
Physical Surface("far", 11) = farFaces();
sideY() = Surface In BoundingBox{-e, -e, -far - e, far + e, e, far + e};
Physical Surface("planeY", 12) = sideY();
Mesh.CharacteristicLengthExtendFromBoundary = 0;
Mesh.CharacteristicLengthFromPoints = 0;
Mesh.CharacteristicLengthFromCurvature = 0;
bx = a + r0 + b; by = coilY + r0 + b;
Field[1] = Box; Field[1].VIn = fine; Field[1].VOut = coarse; Field[1].Thickness = 120;
Field[1].XMin = 0; Field[1].XMax = bx + 1; Field[1].YMin = 0; Field[1].YMax = by + 1; Field[1].ZMin = rodLow - 1; Field[1].ZMax = rodTop + 1;
// Conductors, in which the current is to be resolved.
Field[2] = Box; Field[2].VIn = fineBar > 0 ? fineBar : coarse; Field[2].VOut = coarse; Field[2].Thickness = 60;
Field[2].XMin = 0; Field[2].XMax = barX / 2; Field[2].YMin = 0; Field[2].YMax = barY / 2; Field[2].ZMin = barLow; Field[2].ZMax = barTop;
fields() = {1, 2};
If(coverX > 0)
  Field[3] = MathEval; Field[3].F = Sprintf("%g", fineCover);
  Field[4] = Restrict; Field[4].IField = 3; Field[4].RegionsList = {covers()}; Field[4].FacesList = {Boundary{ Volume{covers()}; }};
  fields() += {4};
EndIf
Field[5] = Min; Field[5].FieldsList = {fields()};
Background Field = 5;

// Sections across long windings (gmsh): x across the strings' direction, y up. Every conductor is a rectangle that is meshed too. Metres.
SetFactory("OpenCASCADE");
DefineConstant[ mesh = {2.5e-4}, case = {1}, far = {60e-3} ];
mm = 1e-3;
// windings 1 to 4 (left and right side of each coil), metal 5 and up, insulators from 20
r[] = {};
If (case == 1) // one coil round a bar, in a cover, over a plate
  w[] = {1,-7,-3.2,-3,3.2, 2,3,-3.2,7,3.2};
  m[] = {5,-2,-5,2,5, 6,-10,-7,-9,6.5, 7,9,-7,10,6.5, 8,-10,6.5,10,7.3, 9,-10,-8,10,-7.2};
  i[] = {20,-7,3.2,-2.05,4.4, 21,2.05,3.2,7,4.4, 22,-7,-4.4,-2.05,-3.2, 23,2.05,-4.4,7,-3.2, 24,-3,-3.2,-2.05,3.2, 25,2.05,-3.2,3,3.2};
EndIf
If (case == 2) // two coils over a plate
  w[] = {1,-16,-3.2,-12,3.2, 2,-7,-3.2,-3,3.2, 3,3,-3.2,7,3.2, 4,12,-3.2,16,3.2};
  m[] = {5,-18,-6,18,-5};
  i[] = {20,-16,-4.4,-3,-3.2, 21,3,-4.4,16,-3.2};
EndIf
If (case == 3) // two coils round bars on one bar magnet
  w[] = {1,-16,-3.2,-12,3.2, 2,-7,-3.2,-3,3.2, 3,3,-3.2,7,3.2, 4,12,-3.2,16,3.2};
  m[] = {5,-11.5,-9,-7.5,5, 6,7.5,-9,11.5,5, 7,-7.5,-9,7.5,-5.8};
  i[] = {20,-16,-4.4,-11.55,-3.2, 21,-7.45,-4.4,-3,-3.2, 22,3,-4.4,7.45,-3.2, 23,11.55,-4.4,16,-3.2,
         24,-12,-3.2,-11.55,3.2, 25,-7.45,-3.2,-7,3.2, 26,7,-3.2,7.45,3.2, 27,11.55,-3.2,12,3.2};
EndIf
all[] = {w[], m[], i[]};
n = #all[] / 5;
tools[] = {};
For k In {0:n-1}
  Rectangle(all[5*k]) = {all[5*k+1]*mm, all[5*k+2]*mm, 0, (all[5*k+3]-all[5*k+1])*mm, (all[5*k+4]-all[5*k+2])*mm};
  tools[] += all[5*k];
EndFor
Rectangle(100) = {-far, -far, 0, 2*far, 2*far};
parts[] = BooleanFragments{ Surface{100}; Delete; }{ Surface{tools[]}; Delete; };
e = 1e-6;
metal[] = {};
solid[] = {};
wind[] = {};
For k In {0:n-1}
  s[] = Surface In BoundingBox{all[5*k+1]*mm-e, all[5*k+2]*mm-e, -e, all[5*k+3]*mm+e, all[5*k+4]*mm+e, e};
  If (all[5*k] < 5)
    Physical Surface(all[5*k]) = s[];
    wind[] += s[];
  EndIf
  If (all[5*k] >= 5 && all[5*k] < 20)
    metal[] += s[];
  EndIf
  If (all[5*k] >= 20)
    solid[] += s[];
  EndIf
EndFor
Physical Surface(5) = metal[];
Physical Surface(20) = solid[];
air[] = Surface{:};
air[] -= wind[];
air[] -= metal[];
air[] -= solid[];
Physical Surface(30) = air[];
Mesh.CharacteristicLengthMax = 3e-3;
Field[1] = Box;
Field[1].VIn = mesh; Field[1].VOut = 3e-3; Field[1].Thickness = 30e-3;
Field[1].XMin = -19*mm; Field[1].XMax = 19*mm; Field[1].YMin = -10*mm; Field[1].YMax = 8*mm;
Background Field = 1;

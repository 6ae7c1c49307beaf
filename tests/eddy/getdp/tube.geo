// A magnet on the axis of a tube, half plane r >= 0 (x = r, y = z). Lengths in bore radii; set on the command line:
// R magnet radius, L magnet length (cylinder), sphere 0|1, b outer radius, tube half length T, domain radius D, fineness h.
SetFactory("OpenCASCADE");
DefineConstant[ R = 0.8, L = 1.5, sphere = 0, b = 1.15, T = 30, D = 45, h = 0.05 ];
Geometry.OCCAutoFix = 0;
Disk(1) = {0, 0, 0, D};
Rectangle(2) = {-D, -D, 0, D, 2 * D};
BooleanDifference(3) = { Surface{1}; Delete; }{ Surface{2}; Delete; };
If (sphere)
  Disk(4) = {0, 0, 0, R};
  Rectangle(5) = {-R, -R, 0, R, 2 * R};
  BooleanDifference(6) = { Surface{4}; Delete; }{ Surface{5}; Delete; };
Else
  Rectangle(6) = {0, -L / 2, 0, R, L};
EndIf
Rectangle(7) = {1, -T, 0, b - 1, 2 * T};
BooleanFragments{ Surface{3}; Delete; }{ Surface{6, 7}; Delete; }
e = 1e-6;
magnet() = Surface In BoundingBox{-e, -R - L - e, -e, R + e, R + L + e, e};
wall() = Surface In BoundingBox{1 - e, -T - e, -e, b + e, T + e, e};
all() = Surface{:};
air() = all();
air() -= magnet();
air() -= wall();
rim() = Curve In BoundingBox{-e, -D - e, -e, D + e, D + e, e};
Physical Surface("magnet", 1) = {magnet()};
Physical Surface("wall", 2) = {wall()};
Physical Surface("air", 3) = {air()};
outer() = {};
For i In {0 : #rim() - 1}
  box() = BoundingBox Curve{rim(i)};
  // The rim of the domain and the axis carry A = 0.
  If (box(3) < 1e-4 || box(3) > D - 1e-3)
    outer() += rim(i);
  EndIf
EndFor
Physical Curve("zero", 4) = {outer()};
Field[1] = MathEval;
// Fine at the magnet and in the wall near it, growing outwards; the wall keeps a size that resolves the skin depth.
Field[1].F = Sprintf("%g + 0.10 * Max(0, Sqrt(x*x + y*y) - 2.5)", h);
Field[2] = MathEval;
Field[2].F = Sprintf("%g + 0.03 * Max(0, Abs(y) - 3) + 0.5 * Max(0, x - %g) + 0.5 * Max(0, 1 - x)", Min(h, (b - 1) / 3), b);
Field[4] = MathEval;
// Straight edges cut a sphere's volume: fine along its surface (0.008 leaves 0.004 % of the moment out).
Field[4].F = Sprintf("%g + 0.15 * Abs(Sqrt(x*x + y*y) - %g)", sphere ? 0.008 : 1000, R);
Field[3] = Min;
Field[3].FieldsList = {1, 2, 4};
Background Field = 3;
Mesh.CharacteristicLengthExtendFromBoundary = 0;
Mesh.CharacteristicLengthFromPoints = 0;
Mesh.CharacteristicLengthFromCurvature = 0;
Mesh.ElementOrder = 1;

// An eighth of a tube's wall, x, y, z >= 0, bore radius 1 and outer radius b, to z = T; hexahedra.
// Set on the command line: b, layers through the wall nr, round it na, along it nz.
DefineConstant[ b = 1.2, T = 9, nr = 4, na = 24, nz = 70, grow = 1.03 ];
Point(1) = {0, 0, 0};
Point(2) = {1, 0, 0};
Point(3) = {b, 0, 0};
Point(4) = {0, 1, 0};
Point(5) = {0, b, 0};
Line(1) = {2, 3};
Circle(2) = {3, 1, 5};
Line(3) = {5, 4};
Circle(4) = {4, 1, 2};
Curve Loop(1) = {1, 2, 3, 4};
Plane Surface(1) = {1};
Transfinite Curve{1, 3} = nr + 1;
Transfinite Curve{2, 4} = na + 1;
Transfinite Surface{1};
Recombine Surface{1};
heights() = {};
ones() = {};
For i In {1 : nz}
  heights() += (grow^i - 1) / (grow^nz - 1);
  ones() += 1;
EndFor
wall() = Extrude{0, 0, T}{ Surface{1}; Layers{ ones(), heights() }; Recombine; };
e = 1e-6;
plane() = Surface In BoundingBox{-e, -e, -e, b + e, e, T + e};
Physical Volume("wall", 1) = {wall(1)};
Physical Surface("ground", 2) = {plane()};

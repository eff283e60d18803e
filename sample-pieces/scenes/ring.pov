// ring.pov: ring of 18 k yellow gold, six platinum claws, oval sapphire 8.0 x 6.5 mm,
//           a brilliant of 1.7 mm in a rim on each shoulder
//
// Unit: 1 = 1 mm.  Ring's own axes: centre of the finger at 0, head towards +y,
// finger along z.  Views: 1 from above in front, standing in a slit; 2 lying, seen
// through the finger, with the rule; 3 the head from the side.
// Wear (Moment 0): shank bottom 1.02 mm, two claw tips filed flat by wear, one claw
// bent off the stone, a crack at the old sizing seam.
// SPDX-License-Identifier: GPL-3.0-or-later
#version 3.7;
#ifndef (Ground) #declare Ground = 1; #end
#ifndef (View) #declare View = 1; #end
#include "camera.inc"
#ifndef (Rule) #declare Rule = (View = 2); #end
#include "light.inc"
#include "forms.inc"
#include "metals.inc"
#include "stones.inc"
#include "rule.inc"

// ---- sizes, mm
#declare R_In = 8.60;
#declare Shank_Left = (Moment = 0 ? 1.02 : 1.75);   // thickness at the bottom
#declare Shank_Made = 1.70;
#declare Stone_L = 8.0;  // along the finger
#declare Stone_W = 6.5;
#declare Girdle_Y = R_In + 3.75;
#declare How = (Moment = 0 ? 0.75 : 0.28);

// ---- pose
#switch (View)
  #case (1) #declare Pose = transform { rotate x * -4 rotate y * 28 translate y * (R_In + Shank_Left) } #break
  #case (2) #declare Pose = transform { rotate x * 90 rotate x * -8 translate <0, 3.0, 0> } #break
  #else #declare Pose = transform { rotate x * -3 rotate y * 64 translate y * (R_In + Shank_Left) }
#end
Set_Down (Pose)

// ---- shank: u round from the bottom (0) by the right side, v round the section
#declare Thick = function (x, y, z) {   // x = degrees from the bottom
  Shank_Made + 0.15 * Soft (abs (x), 70, 150)
  - (Shank_Made - Shank_Left) * exp (-pow (x / 46, 2) * 1.2) }
#declare Width = function (x, y, z) { 2.5 + 0.9 * Soft (abs (x), 60, 130) - 1.0 * Soft (abs (x), 142, 168) - 0.25 * exp (-pow (x / 40, 2)) }
#declare Deg = function (x, y, z) { (x - 0.5) * 360 }
#declare Rad_S = function (x, y, z) {  // x = deg, y = section angle
  R_In + Thick (x, 0, 0) * (0.5 + 0.5 * Sign_Pow (cos (y), select (cos (y), 0.25, 0.75))) }
#declare SX = function (x, y, z) { Rad_S (Deg (x, 0, 0), y * 2 * pi, 0) * sin (radians (Deg (x, 0, 0))) }
#declare SY = function (x, y, z) { -Rad_S (Deg (x, 0, 0), y * 2 * pi, 0) * cos (radians (Deg (x, 0, 0))) }
#declare SZ = function (x, y, z) { Width (Deg (x, 0, 0), 0, 0) / 2 * Sign_Pow (sin (y * 2 * pi), 0.72) }

// The old sizing seam, 34 degrees left of the bottom: a grey line, cracked from the edge.
#declare Seam_Deg = -34;
#declare Seam_At = <R_In * sin (radians (Seam_Deg)), -R_In * cos (radians (Seam_Deg)), 0>;

#macro Shank_Texture ()
  #if (Moment = 0)
    texture {
      function { min (0.999, abs (x + 0.05 * sin (z * 5) + 0.03 * sin (z * 13 + 1)) + max (0, y - 4)) }
      texture_map {
        [0.030 T_Grime]
        [0.040 Polish_Of (C_Au585_Yellow * <0.8, 0.8, 0.85>, 0.9)]
        [0.090 Polish_Of (C_Au585_Yellow * <0.8, 0.8, 0.85>, 0.9)]
        [0.130 Polish_Of (C_Au750_Yellow, How)]
      }
      rotate z * Seam_Deg
    }
  #else
    Polished (C_Au750_Yellow, How)
  #end
#end

union {
  object { Surface (SX, SY, SZ, 300, 56, 1, 1) Shank_Texture () }

  // ---- shoulders: a brilliant in a rim each side
  #declare Small = object { Brilliant () scale 1.7 Diamond_Look () }
  #for (S, -1, 1, 2)
    union {
      difference {
        cylinder { y * -1.2, y * 0.22, 1.12 }
        cylinder { y * -0.9, y * 0.3, 0.80 }
      }
      torus { 0.96, 0.17 translate y * 0.22 }
      Polished (C_Au750_Yellow, How)
      translate y * (R_In + 2.15) rotate z * -44 * S
    }
    object { Small rotate y * 20 translate y * (R_In + 2.25) rotate z * -44 * S }
  #end

  // ---- head: two rails and six claws of platinum
  #macro Rail (Y, F, D)
    #local P = spline { cubic_spline
      #for (I, -2, 38) I / 36, <(Stone_W / 2 * F) * cos (I * pi / 18), Y, (Stone_L / 2 * F) * sin (I * pi / 18)> #end }
    object { Plain_Wire (P, D / 2, y, 96, 16, 1) Polished (C_Platinum, How) }
  #end
  Rail (R_In + 0.75, 0.46, 1.1)
  Rail (Girdle_Y - 1.15, 0.80, 0.9)

  #declare Claw_A = array[6] { 32, 90, 148, 212, 270, 328 } // degrees from +x, turning to +z
  #for (I, 0, 5)
    #local A = radians (Claw_A[I]);
    #local E = <Stone_W / 2 * cos (A), 0, Stone_L / 2 * sin (A)>;
    #local O = vnormalize (<cos (A) / Stone_W, 0, sin (A) / Stone_L>);
    // worn flat: 1 and 2; bent off the stone: 5 (front right)
    #local Worn = (Moment = 0 & (I = 3 | I = 4));
    #local Bent = (Moment = 0 & I = 5);
    #local Tip = (Bent ? E * 1.06 + O * 0.55 + y * (Girdle_Y + 1.30) : E * 0.80 + y * (Girdle_Y + 1.02));
    #local Mid = (Bent ? E * 1.03 + O * 0.42 + y * (Girdle_Y + 0.70) : E + O * 0.14 + y * (Girdle_Y + 0.72));
    #local P = spline { natural_spline
      0.00, E * 0.42 + y * (R_In + 0.45)
      0.30, E * 0.66 + O * 0.10 + y * (R_In + 1.75)
      0.60, E * 0.92 + O * 0.24 + y * (Girdle_Y - 0.75)
      0.80, E + O * 0.30 + y * (Girdle_Y + 0.05)
      0.91, Mid
      1.00, Tip }
    #local RR = spline { natural_spline 0, <0.62, 0.62, 0> 0.7, <0.56, 0.56, 0> 0.9, <0.50, 0.52, 0> 1, <0.42, 0.46, 0> }
    #if (Worn)
      #declare Flat_N = vnormalize (y * 1 + O * 0.45);
      #declare Flat_D = vdot (E * 0.9 + y * (Girdle_Y + 0.78 - 0.10 * (I = 4)), Flat_N);
    #end
    object { Wire (P, RR, vnormalize (O + y * 0.2), 60, 26, 0, 1)
      Polished (C_Platinum, (Moment = 1 ? 0.15 : How)) }
    #declare Flat_D = 1e9;
    #if (I = 3) #declare Tip_3 = E * 0.88 + y * (Girdle_Y + 0.80); #end
    #if (I = 4) #declare Tip_4 = E * 0.88 + y * (Girdle_Y + 0.72); #end
    #if (I = 5)
      #declare Tip_5 = Tip + (Bent ? 0.1 : 0.35) * y;
    #end
  #end
  object { Brilliant () scale <Stone_W, Stone_W * 1.02, Stone_L> rotate y * 0 Sapphire_Look () translate y * Girdle_Y }
  transform { Lay }
}

// ---- places
Place ("claw_worn_1", Tip_3)
Place ("claw_worn_2", Tip_4)
Place ("claw_bent", Tip_5)
Place ("shank_bottom", <0, -(R_In + Shank_Left / 2), Width (0, 0, 0) / 2>)
Place ("seam", Seam_At + vnormalize (Seam_At) * Thick (Seam_Deg, 0, 0) * 0.5 + z * -Width (Seam_Deg, 0, 0) / 2)
// Seen through the finger: the inside edge far from the lens, the widest outline.
Span ("shank_bottom_thickness", <0, -R_In, Width (0, 0, 0) * 0.4>, <0, -(R_In + Shank_Left), 0>, Shank_Left)
Span ("shank_inside_diameter", <-R_In, 0, 0>, <R_In, 0, 0>, 2 * R_In)
Place ("stone", <0, Girdle_Y + 1.1, 0>)

#if (View != 2) // a lump of setter's wax holds the ring upright
  sphere { 0, 1 scale <2.6, 1.5, 2.2> translate <Piece_X, -0.15, Piece_Z>
    pigment { rgb <0.42, 0.12, 0.06> } normal { bumps 0.5 scale 0.7 }
    finish { ambient Fill diffuse 0.6 specular 0.25 roughness 0.03 } }
#end
#include "ground.inc"
#if (Rule) Steel_Rule (<-20, 0, -12.6>, 2, 40, 0, 40) #end

#switch (View)
  #case (1) Shoot (<0, 86, -66>, <0, 12.5, 0>, 21, 4.5, Laid (<0, Girdle_Y + 0.5, -2>)) #break
  #case (2) Shoot (<0, 1.5 + 420 * cos (radians (8)), -0.4 - 420 * sin (radians (8))>, <0, 1.5, -0.4>, 6.5, 1.2, Laid (<0, -R_In, -1>)) #break
  #else Shoot (<0, 58, -84>, <0, 19.6, 0>, 10.5, 3.0, Laid (<0, Girdle_Y + 0.3, -2>))
#end

// bangle.pov: hinged bangle of 14 k rose gold, oval 58 x 49 mm inside, aquamarine
//             7 x 5 mm between two brilliants on the front half
//
// Unit: 1 = 1 mm.  Lies flat; front half towards the viewer (z < 0), hinge left (-x),
// clasp right (+x).  Views: 1 whole front; 2 hinge from above, close, with the rule;
// 3 clasp from above, close.
// Wear (Moment 0): hinge pin walked out by 0.7 mm, halves 0.55 mm apart at the hinge,
// a dent in the front edge, tongue does not close (1.0 mm apart at the clasp).
// SPDX-License-Identifier: GPL-3.0-or-later
#version 3.7;
#include "camera.inc"
#ifndef (Ground) #declare Ground = 7; #end
#ifndef (Rule) #declare Rule = (View = 2); #end
#ifndef (Trace) #declare Trace = 8; #end
#include "light.inc"
#include "forms.inc"
#include "metals.inc"
#include "stones.inc"
#include "rule.inc"
#declare Pose = transform { translate y * 3.3 }
Set_Down (Pose)

// ---- sizes, mm
#declare A_In = 29; #declare B_In = 24.5;
#declare Band = 2.1;                              // thickness
#declare Hinge_Gap = (Moment = 0 ? 0.55 : 0.10);
#declare Clasp_Gap = (Moment = 0 ? 1.00 : 0.10);
#declare Pin_Out = (Moment = 0 ? 0.70 : 0.06);
#declare How = (Moment = 0 ? 0.75 : 0.35);
#declare C_Rose = C_Au750_Rose;

// A half: u along (0 at the hinge, 1 at the clasp), v round the section.
#declare Tall = function (x, y, z) { 4.6 + 1.8 * pow (sin (pi * x), 2) }
#declare Dent_Deep = (Moment = 0 ? 0.55 : 0);
#declare Dent = function (x, y, z) { Dent_Deep * exp (-pow ((x - 0.30) / 0.012, 2)) * max (0, sin (2 * pi * y)) }
#declare HA = function (x, y, z) { pi * (1 + x) }       // front half: pi .. 2 pi
#declare HR = function (x, y, z) { Band * (0.5 + 0.5 * Sign_Pow (cos (2 * pi * y), select (cos (2 * pi * y), 0.3, 0.85))) }
#declare FX = function (x, y, z) { (A_In + HR (x, y, 0)) * cos (HA (x, 0, 0)) }
#declare FZ = function (x, y, z) { (B_In + HR (x, y, 0)) * sin (HA (x, 0, 0)) }
#declare FY = function (x, y, z) { Tall (x, 0, 0) / 2 * Sign_Pow (sin (2 * pi * y), 0.75) - Dent (x, y, 0) }
#declare FY_Back = function (x, y, z) { (4.6 - 0.3 * sin (pi * x)) / 2 * Sign_Pow (sin (2 * pi * y), 0.75) }
#macro Rose () Polished (C_Rose, How) #end

// Flat end of a half: a D-shaped plate closing the open tube.
#macro End_Plate (X, Z, N)
  box { <-Band / 2 + 0.08, -2.1, -0.12>, <Band / 2 - 0.08, 2.1, 0.12> translate <X, 0, Z> Rose () }
#end

#declare Front = union {
  object { Surface (FX, FY, FZ, 260, 44, 0, 1) Rose () }
  End_Plate (-(A_In + Band / 2), -0.10, 0)
  End_Plate (A_In + Band / 2, -0.10, 0)
  // a beaded line along both edges of the front
  #for (K, 8, 92)
    #local U = K / 100;
    #if (abs (U - 0.30) > 0.014 | Moment = 1)
    #for (S, -1, 1, 2)
      #local Y = S * (Tall (U, 0, 0) / 2 - 0.62);
      sphere { <(A_In + Band * 0.93) * cos (HA (U, 0, 0)), Y, (B_In + Band * 0.93) * sin (HA (U, 0, 0))>, 0.33 Rose () }
    #end #end
  #end
  // stones: their tables face out (-z at the middle)
  #macro Setting (U, L, W, Kind, Lift)
    #local A = HA (U, 0, 0);
    #local P = <(A_In + Band) * cos (A), 0, (B_In + Band) * sin (A)>;
    union {
      #if (Kind = 1) object { Brilliant () scale <L, W * 0.9, W> Aqua_Look () translate y * Lift }
      #else object { Brilliant () scale L Diamond_Look () translate y * Lift } #end
      torus { 0.5, 0.09 scale <L * 0.80, 4.4, W * 0.80> translate y * (Lift - 0.9) Polished (C_Au750_White, How) }
      torus { 0.5, 0.07 scale <L * 0.98, 4.4, W * 0.98> translate y * (Lift - 0.25) Polished (C_Au750_White, How) }
      #for (K, 0, 3)
        #local B = radians (45 + 90 * K);
        #local O = <L / 2 * cos (B), 0, W / 2 * sin (B)>; #local V = vnormalize (O);
        #local S = spline { natural_spline
          0.0, O * 0.72 + y * -0.3
          0.5, O + V * 0.16 + y * (Lift - 0.3)
          0.8, O + V * 0.18 + y * (Lift + 0.35)
          1.0, O * 0.80 + y * (Lift + 0.42 + 0.07 * W) }
        #local RR = spline { linear_spline 0, <0.42, 0.42, 0> 0.8, <0.36, 0.38, 0> 1, <0.30, 0.34, 0> }
        object { Wire (S, RR, vnormalize (V + y * 0.3), 30, 16, 0, 1) Polished (C_Au750_White, How) }
      #end
      rotate x * -90 rotate y * (-degrees (A) - 90) translate P
    }
  #end
  Setting (0.5, 7.0, 5.0, 1, 2.2)
  Setting (0.425, 3.0, 3.0, 2, 1.2)
  Setting (0.575, 3.0, 3.0, 2, 1.2)
  // clasp: box mouth and thumb piece
  box { <-1.15, -0.9, -0.2>, <0.9, 0.9, 0.55> rotate 0 translate <A_In + Band / 2 + 0.1, 0, -0.3> Rose () }
}
#declare Back = union {
  object { Surface (FX, FY_Back, FZ, 200, 36, 0, 1) Rose () }
  End_Plate (-(A_In + Band / 2), -0.10, 0)
  End_Plate (A_In + Band / 2, -0.10, 0)
  scale <1, 1, -1>
}
// the hinge is the turning point of the back half
#declare Swing = degrees (Clasp_Gap / (2 * A_In + 2 * Band));
#declare Hinge = <-(A_In + Band + 0.75), 0, 0>;

union {
  object { Front }
  object { Back translate z * Hinge_Gap translate -Hinge rotate -y * (Swing) translate Hinge }
  // knuckles: three tubes on the pin, outer two on the front half
  #for (K, -1, 1)
    difference {
      union {
        cylinder { -y * 0.62, y * 0.62, 1.30 }
        cylinder { -y * 0.80, y * 0.80, 1.12 }
        torus { 1.12, 0.18 translate y * 0.62 }
        torus { 1.12, 0.18 translate y * -0.62 }
      }
      cylinder { -y * 0.9, y * 0.9, 0.50 }
      translate Hinge + y * K * 1.66 + z * (K = 0 ? Hinge_Gap * 0.6 : -0.1) Rose ()
    }
    // its arm to the half it belongs to
    superellipsoid { <0.18, 0.18> scale <1.0, 0.72, (K = 0 ? 1.35 : 1.1)>
      translate Hinge + <0.95, 1.66 * K, (K = 0 ? 1.1 + Hinge_Gap : -1.2)> Rose () }
  #end
  union {
    cylinder { y * -2.3, y * (2.5 + Pin_Out), 0.42 }
    sphere { 0, 0.42 scale <1, 0.4, 1> translate y * (2.5 + Pin_Out) }
    Polished (C_Steel, How)
    translate Hinge
  }
  // tongue, seen in the gap at the clasp; thumb piece on top
  box { <-0.75, -1.1, -1.2>, <0.75, 0.2, 1.8> translate <A_In + Band / 2, 0, 0.3> Polished (C_Au585_Yellow, How) }
  cylinder { -x * 0.9, x * 0.9, 0.75 scale <1, 0.8, 1> translate <A_In + Band + 0.7, 0.4, 1.25 + Clasp_Gap> Rose () }
  // safety: a figure eight of wire hinged on the front half
  #local E8 = spline { cubic_spline
    #for (K, -2, 50) #local Q = K / 48 * 2 * pi; K / 48, <0, 1.1 * sin (2 * Q), 2.7 * sin (Q)> #end }
  object { Plain_Wire (E8, 0.36, x, 90, 14, 1) rotate y * 4
    translate <A_In + Band + 0.55, -0.2, -1.2> Polished (C_Rose, How) }
  transform { Lay }
}

// ---- places
Place ("hinge_pin", Hinge + y * (2.5 + Pin_Out))
Span ("hinge_gap", <-(A_In + Band / 2), 2.0, 0.0>, <-(A_In + Band / 2), 2.0, Hinge_Gap>, Hinge_Gap)
Span ("pin_thickness", Hinge + <-0.42, 2.5 + Pin_Out, 0>, Hinge + <0.42, 2.5 + Pin_Out, 0>, 0.84)
Place ("knuckle_top", Hinge + <-1.3, 2.4, 0>)
Place ("clasp_gap", <A_In + Band / 2, 2.0, (Hinge_Gap + Clasp_Gap) / 2>)
Place ("thumb_piece", <A_In + Band + 0.7, 1.0, 1.25 + Clasp_Gap>)
Place ("safety_eight", <A_In + Band + 0.9, 0.6, -3.0>)
Place ("dent", <FX (0.30, 0.12, 0), FY (0.30, 0.22, 0), FZ (0.30, 0.12, 0)>)
Place ("aquamarine", <0, 0, -(B_In + Band + 3.0)>)
Place ("brilliant_left", <FX (0.425, 0, 0), 0, FZ (0.425, 0, 0) - 1.9>)
Place ("brilliant_right", <FX (0.575, 0, 0), 0, FZ (0.575, 0, 0) - 1.9>)
Span ("inside_width", <-A_In, 2.2, 0>, <A_In, 2.2, 0>, 2 * A_In)

#include "ground.inc"
#if (Rule) Steel_Rule (<-41.5, 0, -4.6>, 0.6, 20, 0, 20) #end
#switch (View)
  #case (1) Shoot (<0, 190, -230>, <0, 3.0, -2.5>, 13.2, 12.0, Laid (<0, 0, -B_In - 1>)) #break
  #case (2) Shoot (<-26, 320, -95>, <-32.0, 5.0, -0.8>, 3.3, 4.0, Laid (Hinge + y * 2)) #break
  #else Shoot (<60, 170, -120>, <A_In + Band - 0.5, 3.5, 0.2>, 6.0, 4.5, Laid (<A_In + Band, 2, 0>))
#end

// pendant.pov: silver pendant, oval amethyst 14 x 10 mm in a rubbed-over rim with a
//              beaded wire, tapered bail, jump ring, and its trace chain
//
// Unit: 1 = 1 mm.  The pendant lies on its back; bail towards the back (z > 0).
// Views: 1 whole front with the rule; 2 the bail and the jump ring, close, with the rule.
// Visit 1, 2, 3: the jump ring (wire 1.00 mm as made) is 0.84, 0.71, 0.55 mm at its
// worn place; Moment 1 (after visit 3): new ring of 1.10 mm wire, bail lined.
// SPDX-License-Identifier: GPL-3.0-or-later
#version 3.7;
#ifndef (Ground) #declare Ground = 3; #end
#include "camera.inc"
#ifndef (Rule) #declare Rule = 1; #end
#ifndef (Trace) #declare Trace = 12; #end
#include "light.inc"
#include "forms.inc"
#include "metals.inc"
#include "stones.inc"
#include "rule.inc"

// ---- sizes, mm
#declare Ring_Made = 1.00;
#declare Ring_D = (Moment = 0 ? Ring_Made : 1.10);
#declare Ring_Left = (Moment = 1 ? 1.10 : (Visit = 1 ? 0.84 : (Visit = 2 ? 0.71 : 0.55)));
#declare Bail_Left = (Moment = 1 ? 0.95 : (Visit = 1 ? 0.88 : (Visit = 2 ? 0.80 : 0.68)));
#declare Ring_In = 2.0;
#declare Worn_At = 24;   // degrees; the ring was turned so that the worn place shows
#declare Seam_At = 152;
#declare Squash = 1;
#declare How = (Moment = 1 ? 0.25 : 0.35 + 0.16 * Visit);
#declare Stone_L = 14; #declare Stone_W = 10;
#declare Rim_H = 3.0;           // rim's upper edge above the ground
Set_Down (transform { rotate y * 0 })

// The rim: wall and rubbed-over edge, one surface (u round, v up the section).
#declare Rim_R = function (x, y, z) { // outward offset along v
  0.55 - 0.25 * Soft (y, 0, 0.25) - 0.95 * Soft (y, 0.55, 1.0) }
#declare Rim_Y = function (x, y, z) { 0.35 + Rim_H * sin (min (1, y * 1.45) * pi / 2) - 0.28 * Soft (y, 0.72, 1) }
#declare RX = function (x, y, z) { (Stone_W / 2 + Rim_R (x, y, 0)) * cos (2 * pi * x) }
#declare RY = function (x, y, z) { Rim_Y (x, y, 0) + 0.03 * sin (2 * pi * x * 7) * Soft (y, 0.6, 1) }
#declare RZ = function (x, y, z) { (Stone_L / 2 + Rim_R (x, y, 0)) * sin (2 * pi * x) }

#declare Ring_Z = Stone_L / 2 + 1.9;     // small fixed loop on the rim
#declare Jump_Z = Ring_Z + Ring_In + 0.9; // centre of the jump ring
#declare Jump_Y = 1.45;
#declare Bail_Z = Jump_Z + Ring_In * Squash + 0.1;

union {
  object { Surface (RX, RY, RZ, 200, 48, 1, 0) Polished (C_Silver, How) }
  // base plate and beaded wire
  cylinder { 0, y * 0.4, 1 scale <Stone_W / 2 + 1.1, 1, Stone_L / 2 + 1.1> Polished (C_Silver, How) }
  #for (I, 0, 63)
    #local A = I / 64 * 2 * pi;
    sphere { <(Stone_W / 2 + 0.92) * cos (A), 0.72, (Stone_L / 2 + 0.92) * sin (A)>, 0.37
      scale <1, 1, 1> Polished (C_Silver, How) }
  #end
  object { Brilliant () scale <Stone_W - 0.5, Stone_W * 0.78, Stone_L - 0.5> Amethyst_Look () translate y * (Rim_H - 0.05) }
  // fixed loop on the rim, standing on edge
  object { Worn_Ring (0.75, 0.95, 0.95 - 0.12 * (Moment = 0) * Visit, 90, 35, 1)
    rotate y * 90 translate <0, 1.45, Ring_Z - 0.35> Polished (C_Silver, How) }
  // jump ring lies nearly flat; worn at the far side where the bail pulls
  #declare Jump_Tr = transform { rotate x * 90 rotate x * (Moment = 0 ? 4 : 6) translate <0, Jump_Y, Jump_Z> }
  object { Worn_Ring (Ring_In, Ring_D, Ring_Left, Worn_At, 26, Squash)
    #if (Moment = 0)
      texture { // open solder seam: dark line
        function { min (0.999, abs (y + 0.03 * sin (z * 9)) + max (0, x + 0.4)) }
        texture_map { [0.020 + 0.008 * Visit T_Grime] [0.030 + 0.010 * Visit Polish_Of (C_Silver, How)] }
        rotate z * (Seam_At - 180) }
    #else Polished (C_Silver, How) #end
    transform { Jump_Tr } }

  // bail: a tapered band folded over the chain, seen from its edge and front
  #declare BA = function (x, y, z) { radians (-128 + 256 * x) }
  #declare Bail_W = function (x, y, z) { 1.5 + 1.9 * cos (BA (x, 0, 0) / 2) }
  #declare Bail_T = 0.5;
  #declare BX = function (x, y, z) { Bail_W (x, 0, 0) / 2 * Sign_Pow (sin (2 * pi * y), 0.55) }
  #declare BR = function (x, y, z) { 2.15 + Bail_T * Sign_Pow (cos (2 * pi * y), 0.55) }
  #declare BY = function (x, y, z) { 2.3 + BR (x, y, 0) * sin (BA (x, 0, 0)) * 0.86 }
  #declare BZ = function (x, y, z) { BR (x, y, 0) * cos (BA (x, 0, 0)) * 1.25 }
  object { Surface (BX, BY, BZ, 120, 28, 0, 1) translate z * (Bail_Z + 2.15) Polished (C_Silver, How) }

  // trace chain: oval links, alternately flat and on edge, along a path through the bail
  #declare Chain = spline { natural_spline
    -0.1, <-30, 1.0, 6> 0.0, <-23, 0.9, 8> 0.15, <-17.5, 0.9, 14.5> 0.32, <-9, 1.2, 17.6> 0.46, <-2.2, 2.2, Bail_Z + 1.9>
    0.54, <2.2, 2.2, Bail_Z + 1.9> 0.68, <9, 1.2, 18.4> 0.85, <17.5, 0.9, 13.5> 1.0, <23, 0.9, 6> 1.1, <30, 1, 4> }
  #declare Link_L = 2.5;
  #declare LP = spline { cubic_spline
    #for (I, -2, 26) I / 24, <1.25 * cos (I * pi / 12) + 0.25 * cos (I * pi / 12), 0.78 * sin (I * pi / 12), 0> #end }
  #declare Link = object { Plain_Wire (LP, 0.27, z, 30, 10, 1) }
  #declare T = -0.09; #declare N = 0;
  #while (T < 1.09)
    #local P = Chain (T); #local D = vnormalize (Chain (T + 0.004) - Chain (T - 0.004));
    #local S = vnormalize (vcross (y, D)); #local U = vcross (D, S);
    object { Link rotate x * (mod (N, 2) = 0 ? 78 : 12)
      matrix <D.x, D.y, D.z, U.x, U.y, U.z, S.x, S.y, S.z, P.x, P.y, P.z>
      Polished (C_Silver, How * 0.8) }
    #local Go = 0;
    #while (Go < 2.02 & T < 1.1) #local T2 = T + 0.002; #local Go = Go + vlength (Chain (T2) - Chain (T)); #declare T = T2; #end
    #declare N = N + 1;
  #end
  transform { Lay }
}

// ---- places
#declare Jf = function { transform { Jump_Tr } }
#macro J_At (R, A) (Jf (R * cos (radians (A)), R * Squash * sin (radians (A)), 0)) #end
#declare In_R = Ring_In + (Ring_D - Ring_Left);
Place ("jump_ring_worn", J_At (In_R + Ring_Left / 2, Worn_At))
Place ("jump_ring_seam", J_At (Ring_In + Ring_D / 2, Seam_At))
Span ("jump_ring_thickness", J_At (In_R, Worn_At), J_At (Ring_In + Ring_D, Worn_At), Ring_Left)
Span ("jump_ring_side", J_At (Ring_In, 200), J_At (Ring_In + Ring_D, 200), Ring_D)
Place ("bail", <0, 2.3 + 2.3, Bail_Z + 2.15>)
Place ("fixed_loop", <0, 1.45 + 1.2, Ring_Z - 0.35>)
Place ("rim_top", <0, Rim_H + 0.1, Stone_L / 2>)
Place ("rim_left", <-Stone_W / 2, Rim_H + 0.1, 0>)
Place ("stone", <0, Rim_H + 1.5, 0>)
Place ("chain_left", Chain (0.22))
Place ("chain_right", Chain (0.80))
Span ("rim_length", <0, Rim_H * 0.8, -(Stone_L / 2 + 0.3)>, <0, Rim_H * 0.8, Stone_L / 2 + 0.3>, Stone_L + 0.6)

#include "ground.inc"
#if (Rule)
  #if (View = 1) Steel_Rule (<-20, 0, -9.6>, 1.2, 40, 0, 40)
  #else Steel_Rule (<6.4, 0, 4.0>, -88, 20, 0, 10) #end
#end
#switch (View)
  #case (1) Shoot (<0, 210, -62>, <0, 1, 3.6>, 13.4, 5.0, Laid (<0, 2.5, 3>)) #break
  #else Shoot (<0.4, 300, 8>, <0.6, 1.5, 11.4>, 3.7, 4.0, Laid (<0, 1.5, Jump_Z>))
#end

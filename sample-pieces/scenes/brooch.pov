// brooch.pov: crescent brooch of 18 k yellow gold, nine graduated garnets in claws on
//             the front; pin, hinge and hook catch on the back
//
// Unit: 1 = 1 mm.  Crescent in the x-z plane, horns up (z > 0), front towards y.
// Views: 1 front; 2 back with the pin and the rule; 3 the catch, close.
// Wear (Moment 0): hook opened from 1.1 to 2.0 mm, pin stem bent, one claw of the sixth
// garnet gone, side play in the hinge.
// SPDX-License-Identifier: GPL-3.0-or-later
#version 3.7;
#include "camera.inc"
#ifndef (Ground) #declare Ground = 5; #end
#ifndef (Rule) #declare Rule = (View = 2); #end
#include "light.inc"
#include "forms.inc"
#include "metals.inc"
#include "stones.inc"
#include "rule.inc"

// ---- sizes, mm
#declare Arc_R = 15.0;                        // middle line of the crescent
#declare Stem_D = 0.85;
#declare Gap = (Moment = 0 ? 2.0 : 1.15);     // mouth of the hook
#declare How = (Moment = 0 ? 0.7 : 0.35);
#declare Pose = transform { rotate z * (View = 1 ? 0 : 180) translate y * (View = 1 ? 4.9 : 2.6) }
Set_Down (Pose)

// Crescent body: a band that tapers to the horns (u along, v round the section).
#declare CA = function (x, y, z) { radians (-90 + (x - 0.5) * 244) }
#declare Half_Of = function (x, y, z) { 0.06 + 2.8 * pow (max (0, cos ((x - 0.5) * pi * 0.995)), 0.72) }
#declare CR = function (x, y, z) { Arc_R + Half_Of (x, 0, 0) * Sign_Pow (cos (2 * pi * y), 0.8) }
#declare BX = function (x, y, z) { CR (x, y, 0) * cos (CA (x, 0, 0)) }
#declare BZ = function (x, y, z) { CR (x, y, 0) * sin (CA (x, 0, 0)) + 5 }
#declare BY = function (x, y, z) { -1.0 + (0.08 + 0.75 * pow (max (0, cos ((x - 0.5) * pi * 0.995)), 0.4)) * Sign_Pow (sin (2 * pi * y), 0.7) }

#declare Stem_Y = -3.6;
#declare Hinge = <-14.7, Stem_Y, 4.4>;
#declare Catch = <14.7, Stem_Y, 4.4>;

#macro Gold () Polished (C_Au750_Yellow, How) #end
#declare Gem = object { Brilliant () Garnet_Look () }

union {
  object { Surface (BX, BY, BZ, 220, 40, 0, 1) Gold () }
  // a beaded gallery wire along the outer and inner edge of the front
  #for (K, 0, 46)
    #local U = 0.04 + 0.92 * K / 46;
    #for (S, -1, 1, 2)
      #local Q = Arc_R + S * (Half_Of (U, 0, 0) - 0.18);
      sphere { <Q * cos (CA (U, 0, 0)), -0.30, Q * sin (CA (U, 0, 0)) + 5>, 0.30 Gold () }
    #end
  #end
  #declare Dia = array[9] { 2.2, 2.8, 3.4, 4.0, 4.5, 4.0, 3.4, 2.8, 2.2 }
  #declare At_Deg = array[9] { -90 - 89, -90 - 71, -90 - 50.5, -90 - 26.5, -90, -90 + 26.5, -90 + 50.5, -90 + 71, -90 + 89 }
  #for (I, 0, 8)
    #local D = Dia[I]; #local A = radians (At_Deg[I]);
    #local C = <Arc_R * cos (A), 0.75 + 0.14 * D, Arc_R * sin (A) + 5>;
    object { Gem scale D rotate y * (I * 17) translate C }
    torus { D * 0.40, 0.30 translate C - y * 0.75 Gold () }
    #for (K, 0, 3)
      #local B = -A + radians (45 + 90 * K);
      #local O = <cos (B), 0, sin (B)>;
      #local Gone = (Moment = 0 & I = 5 & K = 2);
      #local P = spline { natural_spline
        0.0, C + O * D * 0.40 - y * 1.35
        0.5, C + O * (D * 0.49 + 0.10) - y * 0.35
        0.8, C + O * (D * 0.50 + (Gone ? 0.2 : 0.12)) + y * (Gone ? -0.2 : 0.22)
        1.0, C + O * D * (Gone ? 0.52 : 0.38) + y * (Gone ? -0.12 : 0.20 + 0.075 * D) }
      #local RR = spline { linear_spline 0, <0.36, 0.36, 0> 0.8, <0.34, 0.36, 0> 1, <0.26, 0.32, 0> }
      object { Wire (P, RR, vnormalize (O + y * 0.3), 30, 16, 0, 1) Gold () }
      #if (I = 5 & K = 2) #declare Lost_Claw = C + O * D * 0.46 + y * (Moment = 0 ? 0 : 0.4); #end
    #end
  #end

  // ---- back: hinge of three knuckles, pin stem, hook catch
  #for (K, -1, 1)
    difference {
      cylinder { -z * 0.62, z * 0.62, 1.05 }
      cylinder { -z * 0.7, z * 0.7, 0.40 }
      translate Hinge + z * K * (1.32 + 0.06 * (Moment = 0)) Gold ()
    }
  #end
  cylinder { Hinge - z * 2.05, Hinge + z * 2.05, 0.36 Polished (C_Au750_White, How) }
  sphere { 0, 0.5 scale <1, 1, 0.5> translate Hinge - z * 2.05 Gold () }
  sphere { 0, 0.5 scale <1, 1, 0.5> translate Hinge + z * 2.05 Gold () }
  box { <-0.75, 0, -2.0>, <0.75, 2.6, -0.72> translate Hinge Gold () }
  box { <-0.75, 0, 0.72>, <0.75, 2.6, 2.0> translate Hinge Gold () }
  // stem: from the middle knuckle to the catch; bent before
  #local Bow = (Moment = 0 ? 1.15 : 0);
  #declare Stem = spline { natural_spline
    0.00, Hinge + x * 0.7
    0.25, Hinge + <7.2, -0.15 * Bow, 0.55 * Bow>
    0.55, Hinge + <16.2, -0.5 * Bow, 1.0 * Bow>
    0.80, Hinge + <23.7, -0.3 * Bow, 0.45 * Bow>
    1.00, Hinge + <31.6, -0.1 * Bow, -0.35 * Bow> }
  #local RR = spline { linear_spline 0, <Stem_D / 2, Stem_D / 2, 0> 0.75, <Stem_D / 2, Stem_D / 2, 0> 0.97, <0.12, 0.12, 0> 1, <0.05, 0.05, 0> }
  object { Wire (Stem, RR, y, 120, 18, 0, 1) Polished (C_Au750_White, How) }
  // hook: a band bent to a C, open towards +z (the stem lies in it); ends Gap apart
  #local Open = degrees (asin (min (0.98, Gap / 2 / 1.25)));
  #declare Hook = spline { natural_spline
    #for (K, -1, 13)
      #local A = radians (-90 - (270 - Open - 10) * K / 12);
      K / 12, Catch + <0, -(1.25) * sin (A), 1.25 * cos (A)>
    #end }
  #local RR = spline { linear_spline 0, <0.34, 0.85, 0> 0.8, <0.32, 0.80, 0> 1, <0.28, 0.6, 0> }
  object { Wire (Hook, RR, z * 0.3 + y * 0.95, 60, 20, 0, 0.6) Gold () }
  cylinder { Catch + <0, 1.2, 0>, Catch + <0, 2.7, 0>, 0.9 Gold () }
  transform { Lay }
}

// ---- places
Place ("hook", Hook (0.98))
Span ("hook_mouth", Hook (1.0), Catch + <0, 1.25, 1.25 * 0.2>, Gap)
Place ("stem_bend", Stem (0.55))
Place ("stem_point", Stem (1.0))
Place ("hinge", Hinge - y * 1.0)
Place ("claw_lost", Lost_Claw)
Place ("garnet_5", <0, 2.2, 5 - Arc_R>)
Place ("garnet_6", <Arc_R * cos (radians (-63.5)), 2.0, Arc_R * sin (radians (-63.5)) + 5>)
Place ("horn_left", <BX (0.02, 0.25, 0), 0, BZ (0.02, 0.25, 0)>)
Place ("horn_right", <BX (0.98, 0.25, 0), 0, BZ (0.98, 0.25, 0)>)
Span ("stem_thickness", Stem (0.3) + z * Stem_D / 2, Stem (0.3) - z * Stem_D / 2, Stem_D)
Span ("hinge_to_point", Hinge, Stem (1.0), vlength (Stem (1.0) - Hinge))

#include "ground.inc"
#if (Rule) Steel_Rule (<-20, 0, -14.2>, -1, 40, 0, 40) #end
#switch (View)
  #case (1) Shoot (<0, 215, -62>, <0, 2, 0.3>, 11.0, 7.0, Laid (<0, 1.5, -9>)) #break
  #case (2) Shoot (<0, 330, -24>, <0, 3, -2.4>, 8.7, 3.0, Laid (Hinge)) #break
  #else Shoot (<-45, 170, -70>, Laid (Catch + <-2.5, 0.5, -0.5>), 5.8, 3.5, Laid (Catch - y * 0.8))
#end

// earrings.pov: a pair of drop earrings, step-cut green tourmalines 9 x 6.5 mm in four
//               claws of 18 k white gold, small brilliants above, ear wires
//
// Unit: 1 = 1 mm.  They lie face up, ear wires towards the back (z > 0), turned flat.
// Views: 1 the pair from the front; 2 the left ear wire and its eye, close, with the rule.
// Wear (Moment 0): left ear wire 0.52 mm at the bend (0.80 as made), eye ring of the
// left drop worn to half, right front claw lifted.
// SPDX-License-Identifier: GPL-3.0-or-later
#version 3.7;
#include "camera.inc"
#ifndef (Ground) #declare Ground = 4; #end
#ifndef (Rule) #declare Rule = (View = 2); #end
#include "light.inc"
#include "forms.inc"
#include "metals.inc"
#include "stones.inc"
#include "rule.inc"
#declare Pose = transform { translate 0 }
Set_Down (Pose)

#declare Wire_D = 0.80;
#declare Wire_Left = (Moment = 0 ? 0.52 : 0.80);
#declare How = (Moment = 0 ? 0.6 : 0.25);
#declare Gem = object { Step_Cut (6.5, 9.0, 1.15, 1.0) Tourmaline_Look () }
#declare Small = object { Brilliant () scale 2.6 Diamond_Look () }
#macro White () Polished (C_Au750_White, How) #end
#declare Girdle = 3.6;

// Ear wire in the plane of the table: from the eye (0, 0) up, over the bend, down behind.
#declare Hook = spline { natural_spline
  -0.05, <0.0, 0, -0.9> 0.00, <0, 0, 0.2> 0.16, <-0.2, 0, 3.4> 0.34, <0.5, 0.05, 7.6> 0.46, <2.1, 0.1, 10.2>
  0.56, <4.2, 0.1, 10.9> 0.66, <6.1, 0.1, 9.9> 0.80, <7.3, 0.05, 6.4> 0.92, <7.9, 0, 2.6> 1.00, <8.6, 0, 0.6> 1.05, <9, 0, 0> }
#declare Bend_T = 0.50;

#macro Earring (Left, Turn, At, Flip)
  #local Tr = transform { scale <Flip, 1, 1> rotate y * Turn translate At }
  union {
    // the drop: stone, rails, claws
    object { Gem translate y * Girdle }
    #for (R, 0, 1)
      #local F = (R = 0 ? 0.60 : 0.90); #local Y = Girdle - (R = 0 ? 2.3 : 0.75);
      #local S = spline { cubic_spline
        #for (I, -2, 50)
          #local A = I * pi / 24;
          I / 48, <3.25 * F * Sign_Pow (cos (A), 0.62), Y, 4.5 * F * Sign_Pow (sin (A), 0.62)>
        #end }
      object { Plain_Wire (S, 0.38, y, 120, 14, 1) White () }
    #end
    #for (K, 0, 3)
      #local SX = (K = 0 | K = 3 ? 1 : -1); #local SZ = (K < 2 ? 1 : -1);
      #local O = <SX * 2.72, 0, SZ * 3.97>; #local V = vnormalize (<SX, 0, SZ>);
      #local Up = (Moment = 0 & !Left & K = 3);
      #local S = spline { natural_spline
        0.0, O * 0.55 + y * (Girdle - 2.9)
        0.5, O * 0.94 + V * 0.05 + y * (Girdle - 0.8)
        0.8, O + V * (Up ? 0.38 : 0.22) + y * (Girdle + 0.35)
        1.0, O + V * (Up ? 0.30 : -0.42) + y * (Girdle + (Up ? 1.25 : 0.92)) }
      #local RR = spline { linear_spline 0, <0.45, 0.45, 0> 0.8, <0.42, 0.46, 0> 1, <0.34, 0.40, 0> }
      object { Wire (S, RR, vnormalize (V + y * 0.3), 40, 18, 0, 1) White () }
    #end
    // brilliant above the drop, in a rim
    difference {
      cylinder { y * 0.4, y * 2.7, 1.72 }
      cylinder { y * 0.2, y * 2.8, 1.24 }
      translate z * 8.1 White ()
    }
    torus { 1.48, 0.24 translate <0, 2.7, 8.1> White () }
    object { Small translate <0, 2.55, 8.1> }
    // eye rings: between drop and rim; between rim and wire (worn on the left one)
    object { Worn_Ring (0.62, 0.60, 0.60, 90, 40, 1) rotate y * 90 translate <0, 1.9, 5.75> White () }
    object { Worn_Ring (0.72, 0.66, (Moment = 0 & Left ? 0.33 : 0.66), 90, 42, 1)
      rotate x * 90 translate <0, 1.25, 10.45> White () }
    // ear wire
    #local Thin = (Left ? Wire_D - Wire_Left : 0.06);
    #local RR = spline { cubic_spline
      #for (I, -2, 42) I / 40, <Wire_D / 2, (Wire_D - Thin * exp (-pow ((I / 40 - Bend_T) / 0.10, 2) * 1.3)) / 2, 0> #end }
    object { Wire (Hook, RR, y, 160, 20, 0, 1) translate <0, 0.85, 11.4> White () }
    object { Worn_Ring (0.62, 0.72, 0.72, 0, 40, 1) rotate y * 90 rotate x * 20 translate <0, 1.0, 11.1> White () }
    transform { Tr }
  }
  #ifdef (Ef) #undef Ef #end
  #declare Ef = function { transform { Tr } }
#end

union {
  Earring (1, -7, <-9.6, 0, -6.5>, -1)
  #declare B = Hook (Bend_T) + <0, 0.85, 11.4>;
  #declare D = vnormalize (Hook (Bend_T + 0.01) - Hook (Bend_T - 0.01)); #declare S = vcross (D, y);
  #declare L_Bend = Ef (B.x, B.y, B.z);
  #declare Q = B + S * Wire_Left / 2; #declare L_A = Ef (Q.x, Q.y, Q.z);
  #declare Q = B - S * Wire_Left / 2; #declare L_B = Ef (Q.x, Q.y, Q.z);
  #declare L_Eye = Ef (0, 1.5, 11.3); #declare L_Stone = Ef (0, Girdle + 1, 0); #declare L_Small = Ef (0, 2.8, 8.1);
  Earring (0, 9, <9.2, 0, -6.2>, 1)
  #declare R_Claw = Ef (2.95, Girdle + 1.2, -4.2); #declare R_Stone = Ef (0, Girdle + 1, 0);
  #declare R_Bend = Ef (B.x, B.y, B.z);
  transform { Lay }
}

// ---- places
Place ("wire_bend_left", L_Bend)
Place ("wire_bend_right", R_Bend)
Span ("wire_bend_thickness", L_A, L_B, Wire_Left)
Place ("eye_left", L_Eye)
Place ("claw_right", R_Claw)
Place ("tourmaline_left", L_Stone)
Place ("tourmaline_right", R_Stone)
Place ("brilliant_left", L_Small)

#include "ground.inc"
#if (Rule) Steel_Rule (<-23.5, 0, 5.4>, 0, 20, 0, 10) #end
#switch (View)
  #case (1) Shoot (<0, 205, -72>, <0, 2, 3.0>, 12.2, 7.0, Laid (<0, Girdle, -6>)) #break
  #else Shoot (<-14, 300, 2>, <-14.6, 1, 11.2>, 4.1, 3.0, Laid (L_Bend))
#end

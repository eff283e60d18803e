// strand.pov: knotted strand of cultured pearls 6.8 to 7.2 mm, ball clasp of 14 k gold
//
// Unit: 1 = 1 mm.  Views: 1 the strand laid in a loop, clasp in front, with the rule;
// 2 the clasp end, close: last pearls, knots, thread and clasp.
// Wear (Moment 0): thread slack (pearls stand apart up to 1.85 mm near the clasp), grey
// and fuzzy at the clasp, one knot missing, end wire gone; after: re-threaded, a knot
// between every two pearls, new end wire of gold.
// SPDX-License-Identifier: GPL-3.0-or-later
#version 3.7;
#include "camera.inc"
#ifndef (Ground) #declare Ground = 8; #end
#ifndef (Rule) #declare Rule = (View = 1); #end
#ifndef (Trace) #declare Trace = 5; #end
#include "light.inc"
#include "forms.inc"
#include "metals.inc"
#include "stones.inc"
#include "rule.inc"
#declare Pose = transform { translate 0 }
Set_Down (Pose)

#declare How = (Moment = 0 ? 0.6 : 0.4);
#declare Rnd = seed (77);
#declare T_Thread = texture {
  pigment { rgb (Moment = 0 ? <0.42, 0.40, 0.36> : <0.88, 0.86, 0.80>) }
  normal { bumps 0.8 scale <0.06, 0.06, 0.06> }
  finish { ambient Fill * 0.6 diffuse 0.8 } }
#declare T_Pearl = array[4]
#for (I, 0, 3) #declare T_Pearl[I] = Pearl_Look (0.97 + 0.025 * I) #end

// The line on which the strand lies, seen from above; t = 0 at one clasp end.
#declare Line = spline { natural_spline
  -0.05, <-9.2, 3.4, -17.8> 0.00, <-6.0, 3.4, -17.2> 0.08, <-17, 3.5, -14.5> 0.20, <-31, 3.5, 2> 0.32, <-25, 3.5, 18>
  0.44, <-8, 3.5, 24> 0.56, <11, 3.5, 23> 0.68, <27, 3.5, 16> 0.80, <31, 3.5, 1> 0.92, <18, 3.5, -14.5>
  1.00, <6.4, 3.4, -17.4> 1.05, <9.8, 3.4, -18> }
#macro Go_On (T, Far) // the t that lies Far mm further along the line
  #local G = 0; #local Q = T;
  #while (G < Far & Q < 1.2)
    #local G = G + vlength (Line (Q + 0.0005) - Line (Q)); #local Q = Q + 0.0005;
  #end
  Q
#end

// the ball clasp hangs between the two ends of the line
#declare Ball = <(Line (0).x + Line (1).x) / 2, 3.7, (Line (0).z + Line (1).z) / 2 - 0.1>;
#declare Ring_L = <Ball.x - 4.55, 3.6, Ball.z>;
#declare Ring_R = <Ball.x + 4.55, 3.6, Ball.z>;
#declare Start = Ring_L - x * 0.95;   // the thread goes round the ring's wire here
#declare Finish = Ring_R + x * 0.95;

#declare Pearl_At = array[60]
#declare N = 0;
#declare Gap_1 = 0; #declare Gap_2 = 0; #declare Thread_Bare = 0; #declare Lost_Knot = 0;
union {
  #local T = 0.012; #local Last_D = 0; #local Old = Start;
  #while (T < 0.985)
    #local D = 6.8 + 0.4 * rand (Rnd);
    #local Loose = (Moment = 0 ? (N < 1 ? 0.95 : (N = 1 ? 1.85 : (N < 4 ? 0.75 : 0.20 + 0.3 * rand (Rnd)))) : 0.42);
    #local T = Go_On (T, D / 2 + Last_D / 2 + (N = 0 ? 1.0 : Loose));
    #if (T < 0.985)
      #local P = Line (T);
      #local P = <P.x, D / 2, P.z>;
      #declare Pearl_At[N] = P;
      sphere { 0, D / 2 scale <1, 0.97 + 0.03 * rand (Rnd), 1>
        texture { T_Pearl[int (rand (Rnd) * 3.99)] }
        rotate <rand (Rnd), rand (Rnd), rand (Rnd)> * 360 translate P }
      // thread from the last pearl, and the knot on it
      #local Along = vnormalize (P - Old);
      cylinder { Old, P, (Moment = 0 ? 0.17 : 0.21) texture { T_Thread } }
      #local Mid = (N = 0 ? P - Along * (D / 2 + 0.3) : (Old + Along * (Last_D / 2 + (vlength (P - Old) - D / 2 - Last_D / 2) * 0.5)));
      #if (!(Moment = 0 & N = 1))
        torus { 0.21, 0.17 rotate x * 90 rotate y * 15
          matrix <Along.z, 0, -Along.x, 0, 1, 0, Along.x, 0, Along.z, Mid.x, Mid.y, Mid.z> texture { T_Thread } }
        sphere { Mid, (Moment = 0 ? 0.30 : 0.36) texture { T_Thread } }
      #else #declare Lost_Knot = Mid; #end
      #if (N = 1) #declare Gap_A = Old + Along * Last_D / 2; #declare Gap_B = P - Along * D / 2; #end
      #if (N = 0) #declare Thread_Bare = P - Along * (D / 2 + 0.55); #end
      #local Old = P; #local Last_D = D; #declare N = N + 1;
    #end
  #end
  cylinder { Old, Finish, 0.19 texture { T_Thread } }
  // the loops round the rings
  #for (S, -1, 1, 2)
    torus { 0.38, 0.17 rotate z * 90 rotate x * 90 rotate y * 20
      translate (S < 0 ? Start : Finish) + x * S * -0.03 texture { T_Thread } }
    sphere { (S < 0 ? Start : Finish) + x * S * 0.55, 0.30 scale 1 texture { T_Thread } }
  #end

  // fuzz: broken fibres of the worn thread
  #if (Moment = 0)
    #for (K, 0, 60)
      #local B = Thread_Bare + <(rand (Rnd) - 0.6) * 1.3, 0, (rand (Rnd) - 0.5) * 0.2>;
      #local V = vnormalize (<rand (Rnd) - 0.5, rand (Rnd) * 0.9 - 0.2, rand (Rnd) - 0.5>);
      #local Bend = <rand (Rnd) - 0.5, rand (Rnd) - 0.75, rand (Rnd) - 0.5> * 0.55;
      #local Step_L = 0.10 + 0.14 * rand (Rnd);
      union {
        #for (J, 0, 5)
          #local C = B + V * Step_L;
          cylinder { B, C, 0.016 - 0.0015 * J } sphere { C, 0.016 - 0.0015 * J }
          #local B = C; #local V = vnormalize (V + Bend);
        #end
        texture { T_Thread } }
    #end
  #else
    // end wire: a fine coil of gold round the thread at both clasp ends
    #for (S, 0, 1)
      #local A = (S = 0 ? Start - x * 0.4 : Finish + x * 0.4); #local B = (S = 0 ? Thread_Bare - x * 0.6 : Pearl_At[N - 1]);
      #local V = vnormalize (B - A);
      #for (K, 0, 9)
        torus { 0.26, 0.085 rotate x * 90
          matrix <V.z, 0, -V.x, 0, 1, 0, V.x, 0, V.z, A.x, A.y, A.z> translate V * (0.16 * K)
          Polished (C_Au585_Yellow, 0.2) }
      #end
    #end
  #end

  // ---- ball clasp: ball, tongue slot, two end rings
  difference {
    sphere { Ball, 3.7 }
    torus { 3.72, 0.13 rotate z * 90 translate Ball + x * 0.9 }
    Polished (C_Au585_Yellow, How) }
  #for (K, 0, 15)  // fluting: small beads round the middle
    sphere { Ball + <-0.25, 3.62 * cos (K * pi / 8), 3.62 * sin (K * pi / 8)>, 0.28 Polished (C_Au585_Yellow, How) }
  #end
  superellipsoid { <0.5, 0.5> scale <0.75, 0.30, 0.95> rotate z * -32   // thumb piece
    translate Ball + <2.0, 3.25, 0> Polished (C_Au585_Yellow, How) }
  object { Worn_Ring (0.68, 0.55, (Moment = 0 ? 0.34 : 0.55), 180, 40, 1) rotate x * 55 translate Ring_L Polished (C_Au585_Yellow, How) }
  object { Worn_Ring (0.68, 0.55, 0.55, 0, 40, 1) rotate x * 65 translate Ring_R Polished (C_Au585_Yellow, How) }
  transform { Lay }
}

// ---- places
Place ("thread_frayed", Thread_Bare)
Place ("knot_lost", (Moment = 0 ? Lost_Knot : (Pearl_At[0] + Pearl_At[1]) / 2))
Span ("gap", Gap_A, Gap_B, vlength (Gap_B - Gap_A))
Place ("clasp_ring_worn", Ring_L - x * 0.95)
Place ("clasp_ball", Ball + <0, 3.7, 0>)
Place ("pearl_1", Pearl_At[0] + y * 3.4)
Place ("pearl_5", Pearl_At[4] + y * 3.4)
Place ("pearl_last", Pearl_At[N - 1] + y * 3.4)
Place ("pearl_mid", Pearl_At[int (N / 2)] + y * 3.4)
#debug concat ("pearls in view: ", str (N, 0, 0), "\n")

#include "ground.inc"
#if (Rule) Steel_Rule (<-30, 0, -24.6>, 0.8, 60, 0, 60) #end
#switch (View)
  #case (1) Shoot (<0, 330, -110>, <0, 3, -0.4>, 13.0, 9.0, Laid (<0, 3.5, -12>)) #break
  #else Shoot (<-8, 150, -80>, <-6.6, 3.2, -15.4>, 10.2, 5.0, Laid (Thread_Bare))
#end

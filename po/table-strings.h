/* table-strings.h: texts of src/trade/tables, for translators
 *
 * Made by "meson compile table-strings"; not to be edited by hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
/* advice.txt, advice hv_1: text */
N_("Formula: yield in MPa is about HV x 9.80665 / 3, that is HV x 3.27, with HV in kgf/mm²")
/* advice.txt, advice hv_1: source_note */
N_("R23: rule; calc: factor")
/* advice.txt, advice hv_2: text */
N_("Where it holds: fully work-hardened metal: within about 10 to 20 %")
/* advice.txt, advice hv_3: text */
N_("Where it misleads: annealed metal: it reads the stress after a few per cent of strain, not the start of yielding, so it comes out too high. Sterling wire annealed: HV 71 gives 232 MPa, but the listed yield is 124 MPa")
/* advice.txt, advice hv_4: text */
N_("Check, hard metal: sterling spring wire HV 140 gives 458 MPa; listed tensile strength 552 MPa")
/* advice.txt, advice hv_5: text */
N_("Safe planning rule: for annealed parts use half of HV/3; for hardened springs use HV/3")
/* advice.txt, advice hv_6: text */
N_("Hardness worth having: about HV 100 or more is a fair floor for jewellery that has to keep its shape")
/* advice.txt, advice hv_6: source_note */
N_("R24: a metallurgist's conference talk, reported at second hand")
/* advice.txt, advice wh_planish: text */
N_("Planish with a polished hammer on a stake: tongues, hoops, fibulas, flat springs")
/* advice.txt, advice wh_twist: text */
N_("Hold both ends and twist one to three turns: pin stems, earring posts and wires")
/* advice.txt, advice wh_draw: text */
N_("Pull or roll one or two steps after the last anneal: pins and wires made new (use the hard wire, join cold or by laser)")
/* advice.txt, advice wh_burnish: text */
N_("Burnish or pein: claw tips, rubbed-over edges, surface of shanks")
/* advice.txt, advice wh_tumble: text */
N_("Tumble with steel shot: chains, small findings without soft stones")
/* advice.txt, advice wh_bend: text */
N_("Bend and straighten a little, or curve tighter, to bring back spring: tired spring parts; first and simplest remedy")
/* advice.txt, advice wh_age: text */
N_("Low-temperature ageing in a small oven: sterling, deoxidised silver, many 14 to 18 k golds; no heat-shy stones")
/* advice.txt, advice s_step: text */
N_("Later joints take a solder that flows at a lower temperature than the joints already there")
/* advice.txt, advice s_margin_parent: text */
N_("The solder must be fully liquid at least 20 °C below the solidus of the metal it joins")
/* advice.txt, advice s_margin_parent_safe: text */
N_("Planning margin 50 °C where the part is thin or the flame is hard to see")
/* advice.txt, advice s_margin_step: text */
N_("Keep about 25 °C or more between two steps; 50 °C is comfortable")
/* advice.txt, advice s_old_unknown: text */
N_("On a piece of unknown make take every old joint for easy solder: heat-shield it, use the lowest solder that will serve, or use laser or pulse-arc")
/* advice.txt, advice s_mark: text */
N_("The fineness of the solder must meet the marking law: see the solder fineness")
/* advice.txt, advice s_names: text */
N_("Hard, medium and easy are relative names; each maker's set differs, and the same word in two karats is not the same temperature. Store the temperature, not the word")
/* advice.txt, advice s_rise: text */
N_("A solder that has flowed takes up parent metal and afterwards remelts somewhat higher")
/* advice.txt, advice s_fit: text */
N_("Close fit: solder fills a seam, not a gap")
/* advice.txt, advice s_lead: text */
N_("Old soft solder (tin-lead) is cleared away completely before any hot work: lead pits gold, silver and platinum")
/* advice.txt, advice s_colour: text */
N_("Match colour for visible seams: yellow, rose and white grades; on platinum all solders under the 1700 grade tend to leave a visible grey or dark line")
/* advice.txt, advice s_pt_gold: text */
N_("Joining platinum to gold: use the gold's own solder")
/* advice.txt, advice s_pt_gold_strength: text */
N_("Gold solder on platinum wets but takes little hold; for claw tips accepted with care, for shanks not advised (reports of joints that broke on the mandrel)")
/* advice.txt, advice s_pt_mix: text */
N_("Two different platinum alloys are not fused to each other with the torch; solder them with the 1500 or 1700 grade")
/* advice.txt, advice s_pt_stone: text */
N_("Every platinum solder flows hotter than any stone stands if the heat reaches it; but platinum leads heat slowly, so the back of a shank can often be soldered while the top stays cool")
/* advice.txt, advice mark_1: text */
N_("United Kingdom, legal standards: gold 375 585 750 916 990 999; silver 800 925 958 999; platinum 850 900 950 999; palladium 500 950 999")
/* advice.txt, advice mark_2: text */
N_("United Kingdom, weight under which no hallmark is needed: platinum 0.5 g; gold 1 g; palladium 1 g; silver 7.78 g")
/* advice.txt, advice mark_3: text */
N_("Finland, lowest legal: platinum 500; gold 375; palladium 500; silver 800")
/* advice.txt, advice mark_4: text */
N_("Rule: fineness is a minimum by mass; no minus tolerance: an alloy at 584 is not marked 585 but the next standard below that the country has")
/* advice.txt, advice mark_5: text */
N_("Scope note: ISO 9202 leaves solders out; national marking law comes first")
/* advice.txt, advice mark_6: text */
N_("Karat to parts per thousand: k/24 x 1000: 8 = 333.3, 9 = 375.0, 10 = 416.7, 14 = 583.3 (marked 585), 18 = 750.0, 20 = 833.3, 21 = 875.0, 22 = 916.7 (marked 916), 24 = 1000")
/* advice.txt, advice sf_1: text */
N_("Gold 999, 990, 916, 750: solder of at least 750 gold")
/* advice.txt, advice sf_1: source_note */
N_("United Kingdom; check the law in force and that of the customer's country")
/* advice.txt, advice sf_2: text */
N_("Gold 750, filigree or watch case: solder of at least 740 gold")
/* advice.txt, advice sf_3: text */
N_("Gold 750 white: solder of at least 500 gold")
/* advice.txt, advice sf_4: text */
N_("Gold 585 yellow or red: solder of at least 585 gold")
/* advice.txt, advice sf_5: text */
N_("Gold 585 white: solder of at least 500 gold")
/* advice.txt, advice sf_6: text */
N_("Gold 375: solder of at least 375 gold")
/* advice.txt, advice sf_7: text */
N_("Silver, all standards: solder of at least 650 silver")
/* advice.txt, advice sf_8: text */
N_("Platinum: solder in which gold, silver, platinum, palladium (two or more) together make 950")
/* advice.txt, advice f_ag: text */
N_("Silver, gold: flux: borax-type or low-temperature flux; fire-coat of boric acid in alcohol burnt off away from stock; flame: soft, slightly reducing; support: block, charcoal, tripod; titanium or steel pick; pickle: warm acid-salt or citric pickle; copper, plastic or titanium tongs, no iron")
/* advice.txt, advice f_pt: text */
N_("Platinum: flux: none; flux and fire-coat can harm it at high heat; flame: sharp, slightly oxidising; hydrogen or natural gas or propane with oxygen; no acetylene; support: fused silica or ceramic, no charcoal; tungsten or carbide pick; pickle: only for foreign dirt")
/* advice.txt, advice f_pd: text */
N_("Palladium 950: flux: none, no fire-coat; flame: as platinum, oxidising; support: ceramic; pickle: not needed")
/* advice.txt, advice f_pd: source_note */
N_("R9: no flux, no fire-coat")
/* advice.txt, advice f_corundum: text */
N_("Rubies, sapphires in the piece: flux: keep boric acid, borax and paste flux off the stone: they etch corundum")
/* advice.txt, advice f_diamond: text */
N_("Diamonds in the piece: flux: a skin of boric acid keeps air away from the diamond; flame: quick heat, slow cooling, no quench while hot; pickle: only when cool")
/* advice.txt, advice j_butt: text */
N_("Butt: strength 1 (base); shank sizing, jump ring seam")
/* advice.txt, advice j_scarf: text */
N_("Scarf (slanted): strength about 1.5 to 2 by area; thin shanks, bangles")
/* advice.txt, advice j_scarf: source_note */
N_("calc: area grows with 1/sin of the angle")
/* advice.txt, advice j_lap: text */
N_("Lap: strength about 2; tongue to plate, half-shank over old ends")
/* advice.txt, advice j_peg: text */
N_("Peg in drilled hole: strength high in shear; claw to gallery, post to cup, catch foot")
/* advice.txt, advice j_sleeve: text */
N_("Sleeve over or tube into tube: strength high; hinge repair, hoop repair, broken stem")
/* advice.txt, advice j_stitch: text */
N_("Wire stitch (staple) across the seam, let into both sides: strength high in bending; cracked shanks, gallery rails, broken link backs")
/* advice.txt, advice j_dove: text */
N_("Dovetail or step: strength high; shank inserts, signet repairs")
/* advice.txt, advice j_plate: text */
N_("Backing plate under a crack: strength high; thin galleries, lockets, brooch backs")
/* advice.txt, advice j_rivet: text */
N_("Rivet, cold: strength by rivet area; near pearls, opals, enamel; steel or titanium")
/* advice.txt, advice j_laser: text */
N_("Laser or pulse-arc weld, with filler: strength near parent metal where the weld goes through; beside heat-shy stones, hollow work, old solder")
/* advice.txt, advice plan_1: text */
N_("Clean, inspect again, photograph: dirt often holds a loose stone; look before and after cleaning")
/* advice.txt, advice plan_2: text */
N_("Decide stones: stay, stay protected, take out: the stone table; the worst stone decides")
/* advice.txt, advice plan_3: text */
N_("Cold work first that needs no heat: straighten, close links, true the ring")
/* advice.txt, advice plan_4: text */
N_("Hottest joint first: platinum before gold, hard before easy; structural before small")
/* advice.txt, advice plan_5: text */
N_("Reinforce while access is open: stitch, plate, sleeve")
/* advice.txt, advice plan_6: text */
N_("Finish hinges and springs after the last heat: pins and tongues are fitted hard and last")
/* advice.txt, advice plan_7: text */
N_("Harden what was annealed: see the tempers")
/* advice.txt, advice plan_8: text */
N_("Set and tighten stones, pre-polish, plate, final polish: plating last; heat after plating spoils it")
/* advice.txt, advice plan_9: text */
N_("Final tests: see the final tests")
/* advice.txt, advice heat_stay: text */
N_("May stay in its setting during ordinary gold or silver soldering if untreated, clean and little included; heat slowly, cool slowly, no quench")
/* advice.txt, advice heat_guard: text */
N_("Only with distance, a heat shield (wet sand, heat-stop paste, water bath, metal clamp) or laser; no flame on the stone")
/* advice.txt, advice heat_out: text */
N_("Take it out before torch work on the same piece, or work by laser away from it")
/* advice.txt, advice heat_never: text */
N_("No heat, no flame near; cold repair or stone out, also for laser work close by")
/* advice.txt, advice st_unknown: text */
N_("An unknown stone is treated as out, and as filled until shown otherwise")
/* advice.txt, advice st_rwb: text */
N_("The old bench rule that red, white and blue (ruby, diamond, sapphire) stand the torch no longer holds by itself: glass-filled rubies, filled diamonds and diffusion-treated sapphires are common")
/* advice.txt, advice st_clean: text */
N_("Burn-on dirt under a stone blackens it: clean before heat")
/* advice.txt, advice st_shock: text */
N_("Cracks come more from fast cooling than from heat: let the piece cool fully before pickle or water")
/* advice.txt, advice st_points: text */
N_("Stones with points (marquise, pear, princess) and stones in tight claws or tubes crack sooner: the metal moves, the stone does not")
/* advice.txt, advice st_big: text */
N_("Risk grows with size: garnets of 2 to 3 mm often live, larger ones break about half the time")
/* advice.txt, advice st_value: text */
N_("Never heat a stone that the workshop could not replace")
/* advice.txt, advice st_filled_dia: text */
N_("Fracture-filled or laser-drilled and filled diamond: no heat, no ultrasonic, no steam; the filling sweats out")
/* advice.txt, advice st_oil: text */
N_("Oiled or resin-filled emerald: no heat, no ultrasonic, no steam, no solvents; oil or resin runs out")
/* advice.txt, advice st_glassruby: text */
N_("Lead-glass-filled ruby: no heat, no acid pickle, no ultrasonic")
/* advice.txt, advice st_dye: text */
N_("Dyed stones, doublets, triplets, foil-backs: no ultrasonic, no steam, no soaking")
/* advice.txt, advice st_cold: text */
N_("If in doubt, the safe cleaning is warm soapy water and a soft brush")
/* advice.txt, advice st_article: text */
N_("Broad published survey: durability of 31 gem species at the bench, Gems & Gemology 1987")
/* advice.txt, advice st_article: source_note */
N_("R53: summary read")
/* advice.txt, advice pull_1: text */
N_("Toys, part up to 6 mm: 50 N for 10 s (reached within 5 s)")
/* advice.txt, advice pull_1: source_note */
N_("R77: EN 71-1")
/* advice.txt, advice pull_2: text */
N_("Toys, part over 6 mm: 90 N for 10 s")
/* advice.txt, advice pull_3: text */
N_("Toys, twist: 0.34 N m or 180 degrees, 10 s each way")
/* advice.txt, advice pull_4: text */
N_("Children's goods, 18 months and under: 10 lbf = 44.5 N")
/* advice.txt, advice pull_4: source_note */
N_("N: 16 CFR 1500.51")
/* advice.txt, advice pull_5: text */
N_("Children's goods, 18 months to 8 years: 15 lbf = 66.7 N")
/* advice.txt, advice pull_5: source_note */
N_("N: 16 CFR 1500.52 and .53")
/* advice.txt, advice pull_6: text */
N_("Children's necklaces, breakaway: must open at about 15 lbf or less")
/* advice.txt, advice pull_6: source_note */
N_("N: ASTM F2923; scope read R89, figure from memory")
/* advice.txt, advice pull_7: text */
N_("Our hand pull, fine chain or pendant: 5 N (about 0.5 kgf)")
/* advice.txt, advice pull_8: text */
N_("Our hand pull, necklace, earring wire, brooch catch: 10 N")
/* advice.txt, advice pull_9: text */
N_("Our hand pull, bracelet, bangle, watch bracelet: 15 to 20 N")
/* advice.txt, advice pull_10: text */
N_("Ceiling: never more than one third of the load worked out for the thinnest place")
/* blocks/any.txt, block ANY: name */
N_("General points for every piece")
/* blocks/any.txt, check an01: name */
N_("Hallmarks")
/* blocks/any.txt, check an01: fault */
N_("Mark at risk")
/* blocks/any.txt, check an01: look */
N_("Fineness, maker, town, date; photograph them")
/* blocks/any.txt, check an01: customer */
N_("The stamped marks were worn or lay close to the work")
/* blocks/any.txt, check an01: threshold */
N_("Record; keep flame, file and wheel away")
/* blocks/any.txt, check an02: name */
N_("Weight")
/* blocks/any.txt, check an02: fault */
N_("Weight not explained")
/* blocks/any.txt, check an02: look */
N_("Weigh to 0.01 g before and after")
/* blocks/any.txt, check an02: customer */
N_("The weight had changed without a reason we know")
/* blocks/any.txt, check an02: threshold */
N_("Write it down")
/* blocks/any.txt, check an03: name */
N_("Number of stones")
/* blocks/any.txt, check an03: fault */
N_("Stone missing from the count")
/* blocks/any.txt, check an03: look */
N_("Count with the customer present")
/* blocks/any.txt, check an03: customer */
N_("A stone was missing when we counted")
/* blocks/any.txt, check an03: threshold */
N_("Record with the customer present")
/* blocks/any.txt, check an04: name */
N_("No steel inside")
/* blocks/any.txt, check an04: fault */
N_("Steel inside")
/* blocks/any.txt, check an04: look */
N_("Pins and springs, magnet")
/* blocks/any.txt, check an04: customer */
N_("A steel part inside must not go into acid")
/* blocks/any.txt, check an04: threshold */
N_("Note: no acid pickle")
/* blocks/any.txt, check an05: name */
N_("No soft solder")
/* blocks/any.txt, check an05: fault */
N_("Soft solder found")
/* blocks/any.txt, check an05: look */
N_("Grey lumps at seams")
/* blocks/any.txt, check an05: customer */
N_("An old repair was made with soft solder")
/* blocks/any.txt, check an05: threshold */
N_("Note: no torch")
/* blocks/any.txt, check an06: name */
N_("No mercury stain")
/* blocks/any.txt, check an06: fault */
N_("Mercury stain")
/* blocks/any.txt, check an06: look */
N_("White or silvery stain on gold")
/* blocks/any.txt, check an06: customer */
N_("The gold was stained by mercury")
/* blocks/any.txt, check an06: threshold */
N_("Do not heat; see the cautions")
/* blocks/any.txt, check an07: name */
N_("No stress cracks")
/* blocks/any.txt, check an07: fault */
N_("Stress cracks")
/* blocks/any.txt, check an07: look */
N_("Dark spots, cracks near the water line; low-karat and nickel white gold")
/* blocks/any.txt, check an07: customer */
N_("Fine cracks had formed in the gold, as chlorine or sweat can cause")
/* blocks/any.txt, check an07: threshold */
N_("In claws: do not wear; elsewhere: repair")
/* blocks/any.txt, check an08: name */
N_("Plating and gilding")
/* blocks/any.txt, check an08: fault */
N_("Plating that heat would spoil")
/* blocks/any.txt, check an08: look */
N_("Plated or gilt, look at worn places")
/* blocks/any.txt, check an08: customer */
N_("The piece is plated, and heat would spoil the plating")
/* blocks/any.txt, check an08: threshold */
N_("Note")
/* blocks/any.txt, check an09: name */
N_("Earlier repairs")
/* blocks/any.txt, check an09: fault */
N_("Old repair")
/* blocks/any.txt, check an09: look */
N_("Old repairs, glue, odd screws")
/* blocks/any.txt, check an09: customer */
N_("An earlier repair showed")
/* blocks/any.txt, check an10: name */
N_("Fit for a child")
/* blocks/any.txt, check an10: fault */
N_("Unfit for a child")
/* blocks/any.txt, check an10: look */
N_("Child's piece: small parts, long chain, sharp ends, magnets")
/* blocks/any.txt, check an10: customer */
N_("Parts of it could harm a small child")
/* blocks/any.txt, check an10: threshold */
N_("See the cautions")
/* blocks/clasp_box.txt, block CLASP_BOX: name */
N_("Box and tongue with safety")
/* blocks/clasp_box.txt, check bx01: name */
N_("Tongue spring")
/* blocks/clasp_box.txt, check bx01: fault */
N_("Weak spring")
/* blocks/clasp_box.txt, check bx01: look */
N_("Opens by itself to rest height; click")
/* blocks/clasp_box.txt, check bx01: customer */
N_("The spring of the clasp had gone weak")
/* blocks/clasp_box.txt, check bx01: threshold */
N_("No clear click: repair; falls open: do not wear")
/* blocks/clasp_box.txt, check bx02: name */
N_("Tongue bend")
/* blocks/clasp_box.txt, check bx02: fault */
N_("Cracked tongue")
/* blocks/clasp_box.txt, check bx02: look */
N_("Tongue bend, loupe")
/* blocks/clasp_box.txt, check bx02: customer */
N_("The tongue of the clasp was cracked at its bend")
/* blocks/clasp_box.txt, check bx02: threshold */
N_("Any crack: do not wear")
/* blocks/clasp_box.txt, check bx03: name */
N_("Tongue step")
/* blocks/clasp_box.txt, check bx03: fault */
N_("Worn step")
/* blocks/clasp_box.txt, check bx03: look */
N_("Edge that locks, loupe from the side")
/* blocks/clasp_box.txt, check bx03: customer */
N_("The edge that locks the clasp had worn round")
/* blocks/clasp_box.txt, check bx03: threshold */
N_("Step under half its height: repair; slips: do not wear")
/* blocks/clasp_box.txt, check bx04: name */
N_("Thumb piece")
/* blocks/clasp_box.txt, check bx04: fault */
N_("Loose thumb piece")
/* blocks/clasp_box.txt, check bx04: look */
N_("Thumb piece loose or thin")
/* blocks/clasp_box.txt, check bx04: customer */
N_("The thumb piece of the clasp had come loose")
/* blocks/clasp_box.txt, check bx04: threshold */
N_("Repair")
/* blocks/clasp_box.txt, check bx05: name */
N_("Box mouth")
/* blocks/clasp_box.txt, check bx05: fault */
N_("Worn box")
/* blocks/clasp_box.txt, check bx05: look */
N_("Side play of the tongue, lip worn")
/* blocks/clasp_box.txt, check bx05: customer */
N_("The mouth of the clasp had worn wide")
/* blocks/clasp_box.txt, check bx05: threshold */
N_("Tongue moves sideways over 0.3 mm: repair")
/* blocks/clasp_box.txt, check bx06: name */
N_("Inside of the box")
/* blocks/clasp_box.txt, check bx06: fault */
N_("Dirty box")
/* blocks/clasp_box.txt, check bx06: look */
N_("Dirt and lint in the box")
/* blocks/clasp_box.txt, check bx06: customer */
N_("The clasp was stuck with dirt")
/* blocks/clasp_box.txt, check bx06: threshold */
N_("Sound after cleaning")
/* blocks/clasp_box.txt, check bx07: name */
N_("Walls of the box")
/* blocks/clasp_box.txt, check bx07: fault */
N_("Dented box")
/* blocks/clasp_box.txt, check bx07: look */
N_("Dents that press on the tongue")
/* blocks/clasp_box.txt, check bx07: customer */
N_("A dent in the clasp pressed on its tongue")
/* blocks/clasp_box.txt, check bx08: name */
N_("End ring")
/* blocks/clasp_box.txt, check bx08: fault */
N_("Worn end ring")
/* blocks/clasp_box.txt, check bx08: look */
N_("Ring between box and row, gauge")
/* blocks/clasp_box.txt, check bx08: customer */
N_("The ring that joins the clasp was worn thin")
/* blocks/clasp_box.txt, check bx09: name */
N_("Safety eight")
/* blocks/clasp_box.txt, check bx09: fault */
N_("Weak safety eight")
/* blocks/clasp_box.txt, check bx09: look */
N_("Snaps over the ball; spring and hinge")
/* blocks/clasp_box.txt, check bx09: customer */
N_("The safety catch no longer snapped shut")
/* blocks/clasp_box.txt, check bx09: threshold */
N_("Does not snap: repair")
/* blocks/clasp_box.txt, check bx10: name */
N_("Hinge of the eight")
/* blocks/clasp_box.txt, check bx10: fault */
N_("Unsoldered hinge wire")
/* blocks/clasp_box.txt, check bx10: look */
N_("Wire or pin of the eight, soldered?")
/* blocks/clasp_box.txt, check bx10: customer */
N_("The hinge wire of the safety catch was not soldered")
/* blocks/clasp_box.txt, check bx11: name */
N_("Safety chain")
/* blocks/clasp_box.txt, check bx11: fault */
N_("Worn safety chain")
/* blocks/clasp_box.txt, check bx11: look */
N_("Links and both end rings, gauge")
/* blocks/clasp_box.txt, check bx11: customer */
N_("The safety chain was worn thin")
/* blocks/clasp_box.txt, check bx11: threshold */
N_("As much as the remaining section says; missing where there was one: repair")
/* blocks/clasp_box.txt, check bx12: name */
N_("Second lock")
/* blocks/clasp_box.txt, check bx12: fault */
N_("No second lock")
/* blocks/clasp_box.txt, check bx12: look */
N_("Is there an eight or a chain at all")
/* blocks/clasp_box.txt, check bx12: customer */
N_("There was nothing to hold if the clasp opened")
/* blocks/clasp_box.txt, check bx12: threshold */
N_("Watch; with stones of value advise fitting one")
/* blocks/clasp_box.txt, check bx13: name */
N_("Clasp as a whole")
/* blocks/clasp_box.txt, check bx13: fault */
N_("Opens under a twist")
/* blocks/clasp_box.txt, check bx13: look */
N_("Close, pull, push sideways, twist")
/* blocks/clasp_box.txt, check bx13: customer */
N_("The clasp opened when it was twisted")
/* blocks/clasp_box.txt, check bx13: threshold */
N_("Do not wear")
/* blocks/clasp_small.txt, block CLASP_SMALL: name */
N_("Spring ring, lobster, toggle and hook")
/* blocks/clasp_small.txt, check cs01: name */
N_("Spring")
/* blocks/clasp_small.txt, check cs01: fault */
N_("Tired spring")
/* blocks/clasp_small.txt, check cs01: look */
N_("Closes fully by itself, ten times")
/* blocks/clasp_small.txt, check cs01: customer */
N_("The spring of the clasp was tired")
/* blocks/clasp_small.txt, check cs01: threshold */
N_("Slow: watch; stays open: do not wear")
/* blocks/clasp_small.txt, check cs02: name */
N_("Gate")
/* blocks/clasp_small.txt, check cs02: fault */
N_("Gaping gate")
/* blocks/clasp_small.txt, check cs02: look */
N_("Meets the nose without a gap")
/* blocks/clasp_small.txt, check cs02: customer */
N_("The gate of the clasp no longer closed")
/* blocks/clasp_small.txt, check cs02: threshold */
N_("A gap wider than the jump ring's wire: do not wear")
/* blocks/clasp_small.txt, check cs03: name */
N_("Clasp body")
/* blocks/clasp_small.txt, check cs03: fault */
N_("Worn clasp body")
/* blocks/clasp_small.txt, check cs03: look */
N_("Worn groove inside, gauge")
/* blocks/clasp_small.txt, check cs03: customer */
N_("The clasp was worn through from inside")
/* blocks/clasp_small.txt, check cs04: name */
N_("Fixed ring")
/* blocks/clasp_small.txt, check cs04: fault */
N_("Open fixed ring")
/* blocks/clasp_small.txt, check cs04: look */
N_("Seam and thickness of the ring on the clasp")
/* blocks/clasp_small.txt, check cs04: customer */
N_("The small ring on the clasp was open")
/* blocks/clasp_small.txt, check cs04: threshold */
N_("Open: do not wear; not soldered: repair")
/* blocks/clasp_small.txt, check cs05: name */
N_("Rivet of the lobster")
/* blocks/clasp_small.txt, check cs05: fault */
N_("Loose clasp rivet")
/* blocks/clasp_small.txt, check cs05: look */
N_("Pivot of the lever, side play")
/* blocks/clasp_small.txt, check cs05: customer */
N_("The pivot of the clasp was loose")
/* blocks/clasp_small.txt, check cs06: name */
N_("Toggle")
/* blocks/clasp_small.txt, check cs06: fault */
N_("Worn toggle")
/* blocks/clasp_small.txt, check cs06: look */
N_("Bar length against ring; wear of the ring")
/* blocks/clasp_small.txt, check cs06: customer */
N_("The bar of the clasp slipped through its ring")
/* blocks/clasp_small.txt, check cs06: threshold */
N_("Bar slips through when tilted: do not wear")
/* blocks/clasp_small.txt, check cs07: name */
N_("Hook")
/* blocks/clasp_small.txt, check cs07: fault */
N_("Opened hook")
/* blocks/clasp_small.txt, check cs07: look */
N_("Pulled open, loupe from the side")
/* blocks/clasp_small.txt, check cs07: customer */
N_("The hook of the clasp had been pulled open")
/* blocks/clasp_small.txt, check cs08: name */
N_("Extender")
/* blocks/clasp_small.txt, check cs08: fault */
N_("Open extender link")
/* blocks/clasp_small.txt, check cs08: look */
N_("Links and end charm")
/* blocks/clasp_small.txt, check cs08: customer */
N_("A link of the extension chain was open")
/* blocks/hinge.txt, block HINGE: name */
N_("Hinge")
/* blocks/hinge.txt, check hi01: name */
N_("Hinge pin")
/* blocks/hinge.txt, check hi01: fault */
N_("Worn pin of the hinge")
/* blocks/hinge.txt, check hi01: look */
N_("End play and side play")
/* blocks/hinge.txt, check hi01: customer */
N_("The pin of the hinge was worn")
/* blocks/hinge.txt, check hi01: threshold */
N_("Lifts up to 0.1 mm: sound; to 0.3 mm: watch; more: repair; the pin walks out: do not wear")
/* blocks/hinge.txt, check hi02: name */
N_("Pin ends")
/* blocks/hinge.txt, check hi02: fault */
N_("Unfixed pin")
/* blocks/hinge.txt, check hi02: look */
N_("Riveted, soldered or only pushed in")
/* blocks/hinge.txt, check hi02: customer */
N_("The pin of the hinge was only pushed in")
/* blocks/hinge.txt, check hi03: name */
N_("Knuckles")
/* blocks/hinge.txt, check hi03: fault */
N_("Worn knuckle")
/* blocks/hinge.txt, check hi03: look */
N_("Holes worn long, walls thin")
/* blocks/hinge.txt, check hi03: customer */
N_("The tubes of the hinge had worn")
/* blocks/hinge.txt, check hi03: threshold */
N_("Wall under half: repair")
/* blocks/hinge.txt, check hi04: name */
N_("Knuckle joints")
/* blocks/hinge.txt, check hi04: fault */
N_("Loose knuckle")
/* blocks/hinge.txt, check hi04: look */
N_("Joint of knuckle and plate, pick")
/* blocks/hinge.txt, check hi04: customer */
N_("A part of the hinge had come away from its plate")
/* blocks/hinge.txt, check hi04: threshold */
N_("Loose: repair; off: do not wear")
/* blocks/hinge.txt, check hi05: name */
N_("Number of knuckles")
/* blocks/hinge.txt, check hi05: fault */
N_("Missing knuckle")
/* blocks/hinge.txt, check hi05: look */
N_("Odd number, held alternately")
/* blocks/hinge.txt, check hi05: customer */
N_("A part of the hinge was missing")
/* blocks/hinge.txt, check hi06: name */
N_("Hinge stop")
/* blocks/hinge.txt, check hi06: fault */
N_("Over-opening hinge")
/* blocks/hinge.txt, check hi06: look */
N_("Stops at the right angle")
/* blocks/hinge.txt, check hi06: customer */
N_("The hinge opened too far")
/* blocks/hinge.txt, check hi06: threshold */
N_("Watch")
/* blocks/rings.txt, block RINGS: name */
N_("Jump rings and bails")
/* blocks/rings.txt, check jr01: name */
N_("Jump rings")
/* blocks/rings.txt, check jr01: fault */
N_("Worn jump ring")
/* blocks/rings.txt, check jr01: look */
N_("Thickness at the worn side, gauge")
/* blocks/rings.txt, check jr01: customer */
N_("A connecting ring was worn thin")
/* blocks/rings.txt, check jr01: threshold */
N_("As much as the remaining section says; half worn: replace, do not refill")
/* blocks/rings.txt, check jr01: source_note */
N_("Replace by a round soldered ring published; levels ours")
/* blocks/rings.txt, check jr02: name */
N_("Ring seams")
/* blocks/rings.txt, check jr02: fault */
N_("Unsoldered ring")
/* blocks/rings.txt, check jr02: look */
N_("Seam of each ring, loupe")
/* blocks/rings.txt, check jr02: customer */
N_("A connecting ring had never been soldered shut")
/* blocks/rings.txt, check jr02: threshold */
N_("Watch on light pieces; repair where it carries the load")
/* blocks/rings.txt, check jr03: name */
N_("Rings closed")
/* blocks/rings.txt, check jr03: fault */
N_("Open ring")
/* blocks/rings.txt, check jr03: look */
N_("Gap at the seam, light")
/* blocks/rings.txt, check jr03: customer */
N_("A connecting ring stood open")
/* blocks/rings.txt, check jr03: threshold */
N_("A gap seen: repair; wider than half the wire: do not wear")
/* blocks/rings.txt, check jr04: name */
N_("Rings round")
/* blocks/rings.txt, check jr04: fault */
N_("Stretched ring")
/* blocks/rings.txt, check jr04: look */
N_("Pulled oval")
/* blocks/rings.txt, check jr04: customer */
N_("A connecting ring had been pulled out of shape")
/* blocks/rings.txt, check jr04: threshold */
N_("Watch; thin as well: repair")
/* blocks/rings.txt, check jr05: name */
N_("Bail")
/* blocks/rings.txt, check jr05: fault */
N_("Worn bail")
/* blocks/rings.txt, check jr05: look */
N_("Thickness at the top inside, gauge")
/* blocks/rings.txt, check jr05: customer */
N_("The loop that the pendant hangs by was worn thin")
/* blocks/rings.txt, check jr06: name */
N_("Bail joint")
/* blocks/rings.txt, check jr06: fault */
N_("Cracked bail joint")
/* blocks/rings.txt, check jr06: look */
N_("Joint of bail and pendant, gentle twist")
/* blocks/rings.txt, check jr06: customer */
N_("The loop of the pendant had cracked where it joins")
/* blocks/rings.txt, check jr06: threshold */
N_("Cracked: repair; moves: do not wear")
/* blocks/rings.txt, check jr07: name */
N_("Ring under the bail")
/* blocks/rings.txt, check jr07: fault */
N_("Worn bail ring")
/* blocks/rings.txt, check jr07: look */
N_("Worn side, gauge")
/* blocks/rings.txt, check jr07: customer */
N_("The small ring under the loop was worn thin")
/* blocks/set_bead.txt, block SET_BEAD: name */
N_("Bead, pavé and channel")
/* blocks/set_bead.txt, check be01: name */
N_("Beads")
/* blocks/set_bead.txt, check be01: fault */
N_("Worn beads")
/* blocks/set_bead.txt, check be01: look */
N_("Each bead, loupe along the row")
/* blocks/set_bead.txt, check be01: customer */
N_("The small beads of metal that hold the stones had worn flat")
/* blocks/set_bead.txt, check be01: threshold */
N_("Each stone needs two good beads facing each other; one left: do not wear")
/* blocks/set_bead.txt, check be02: name */
N_("Every seat filled")
/* blocks/set_bead.txt, check be02: fault */
N_("Missing small stone")
/* blocks/set_bead.txt, check be02: look */
N_("Empty seats, against a count")
/* blocks/set_bead.txt, check be02: customer */
N_("A small stone was missing")
/* blocks/set_bead.txt, check be02: threshold */
N_("Repair; a sharp seat on the skin: do not wear")
/* blocks/set_bead.txt, check be03: name */
N_("Channel walls")
/* blocks/set_bead.txt, check be03: fault */
N_("Opened channel")
/* blocks/set_bead.txt, check be03: look */
N_("Cover on both sides of each stone")
/* blocks/set_bead.txt, check be03: customer */
N_("The walls that hold the stones had opened")
/* blocks/set_bead.txt, check be03: threshold */
N_("New work covers about 10 to 15 % of the stone's width in all; cover lost on one side: do not wear")
/* blocks/set_bead.txt, check be04: name */
N_("Room between stones")
/* blocks/set_bead.txt, check be04: fault */
N_("Touching stones")
/* blocks/set_bead.txt, check be04: look */
N_("Edges of neighbours, loupe")
/* blocks/set_bead.txt, check be04: customer */
N_("Two stones had moved until they touched")
/* blocks/set_bead.txt, check be04: threshold */
N_("Watch; chipped: repair")
/* blocks/set_bead.txt, check be05: name */
N_("Rails")
/* blocks/set_bead.txt, check be05: fault */
N_("Dented rail")
/* blocks/set_bead.txt, check be05: look */
N_("Bent inwards by a knock")
/* blocks/set_bead.txt, check be05: customer */
N_("A rail beside the stones had been knocked in")
/* blocks/set_bead.txt, check be05: threshold */
N_("Watch or repair")
/* blocks/set_claw.txt, block SET_CLAW: name */
N_("Stone in claws")
/* blocks/set_claw.txt, check cl01: name */
N_("Claw tips")
/* blocks/set_claw.txt, check cl01: fault */
N_("Worn claws")
/* blocks/set_claw.txt, check cl01: look */
N_("Height over the girdle, loupe from the side")
/* blocks/set_claw.txt, check cl01: customer */
N_("The claws that hold the stone had worn low")
/* blocks/set_claw.txt, check cl01: threshold */
N_("New work stands 60 to 80 % of the height from girdle to table and covers 30 to 50 % of that way. Two thirds of new or more: sound; half to two thirds: watch; a third to half: repair; under a third or flat with the stone: do not wear")
/* blocks/set_claw.txt, check cl01: source_note */
N_("New-work figures published; the levels are ours")
/* blocks/set_claw.txt, check cl02: name */
N_("Metal over the stone")
/* blocks/set_claw.txt, check cl02: fault */
N_("Thin claws")
/* blocks/set_claw.txt, check cl02: look */
N_("Thickness of the tip, gauge or eye")
/* blocks/set_claw.txt, check cl02: customer */
N_("The claw tips had worn thin")
/* blocks/set_claw.txt, check cl02: threshold */
N_("Under 0.5 mm: repair; under 0.3 mm: do not wear")
/* blocks/set_claw.txt, check cl02: source_note */
N_("0.5 mm published; 0.3 mm ours")
/* blocks/set_claw.txt, check cl03: name */
N_("Claws lie close")
/* blocks/set_claw.txt, check cl03: fault */
N_("Lifted claw")
/* blocks/set_claw.txt, check cl03: look */
N_("Gap between tip and crown, light and thread")
/* blocks/set_claw.txt, check cl03: customer */
N_("A claw had lifted from the stone and caught on cloth")
/* blocks/set_claw.txt, check cl03: threshold */
N_("Any gap that catches a thread: repair; the stone moves: do not wear")
/* blocks/set_claw.txt, check cl04: name */
N_("All claws there")
/* blocks/set_claw.txt, check cl04: fault */
N_("Lost claw")
/* blocks/set_claw.txt, check cl04: look */
N_("Count the claws of every stone")
/* blocks/set_claw.txt, check cl04: customer */
N_("A claw had broken off")
/* blocks/set_claw.txt, check cl04: threshold */
N_("One of four or fewer: do not wear; one of six or more: repair")
/* blocks/set_claw.txt, check cl05: name */
N_("Claw bends and seats")
/* blocks/set_claw.txt, check cl05: fault */
N_("Cracked claw")
/* blocks/set_claw.txt, check cl05: look */
N_("Bend and seat of each claw, loupe")
/* blocks/set_claw.txt, check cl05: customer */
N_("A claw had cracked")
/* blocks/set_claw.txt, check cl05: threshold */
N_("Any crack: repair; through half the width: do not wear")
/* blocks/set_claw.txt, check cl06: name */
N_("Claw seats")
/* blocks/set_claw.txt, check cl06: fault */
N_("Deep notch")
/* blocks/set_claw.txt, check cl06: look */
N_("Depth of the notch, seen from the side")
/* blocks/set_claw.txt, check cl06: customer */
N_("The notch that holds the stone was cut too deep into the claw")
/* blocks/set_claw.txt, check cl06: threshold */
N_("About 40 % of the thickness is cut away in good work, 50 % at most; more: watch; over 70 %: repair")
/* blocks/set_claw.txt, check cl06: source_note */
N_("40 and 50 % published; 70 % ours")
/* blocks/set_claw.txt, check cl07: name */
N_("Claw feet")
/* blocks/set_claw.txt, check cl07: fault */
N_("Unsoldered claw foot")
/* blocks/set_claw.txt, check cl07: look */
N_("Joint of claw and gallery, pick")
/* blocks/set_claw.txt, check cl07: customer */
N_("A claw had come loose at its foot")
/* blocks/set_claw.txt, check cl07: threshold */
N_("Not soldered: repair; moves: do not wear")
/* blocks/set_claw.txt, check cl08: name */
N_("Claw outline")
/* blocks/set_claw.txt, check cl08: fault */
N_("Bent claw")
/* blocks/set_claw.txt, check cl08: look */
N_("Leaning or unevenly spaced, from above")
/* blocks/set_claw.txt, check cl08: customer */
N_("A claw had been bent to one side")
/* blocks/set_claw.txt, check cl08: threshold */
N_("Watch; the edge of the stone is bare: repair")
/* blocks/set_claw.txt, check cl09: name */
N_("Corner claws")
/* blocks/set_claw.txt, check cl09: fault */
N_("Open point")
/* blocks/set_claw.txt, check cl09: look */
N_("Cover over each point, from above and the side")
/* blocks/set_claw.txt, check cl09: customer */
N_("The point of the stone was no longer covered")
/* blocks/set_claw.txt, check cl09: threshold */
N_("New work covers about 40 to 50 % along the edge and stands 90 to 110 % of the table height; a bare point: repair")
/* blocks/set_claw.txt, check cl09: source_note */
N_("New-work figures published; the level is ours")
/* blocks/set_claw.txt, check cl10: name */
N_("Stones sit firm")
/* blocks/set_claw.txt, check cl10: fault */
N_("Loose stone")
/* blocks/set_claw.txt, check cl10: look */
N_("Rock, tap, push with wood")
/* blocks/set_claw.txt, check cl10: customer */
N_("A stone had become loose in its setting")
/* blocks/set_claw.txt, check cl10: threshold */
N_("Just turns: repair; rattles or tilts: do not wear")
/* blocks/set_claw.txt, check cl11: name */
N_("Stone edges")
/* blocks/set_claw.txt, check cl11: fault */
N_("Chipped stone")
/* blocks/set_claw.txt, check cl11: look */
N_("Girdle, under the claws too, loupe")
/* blocks/set_claw.txt, check cl11: customer */
N_("A stone was chipped at its edge")
/* blocks/set_claw.txt, check cl11: threshold */
N_("Record always; watch; under a claw: repair before anything is tightened")
/* blocks/set_claw.txt, check cl12: name */
N_("Head on the shank")
/* blocks/set_claw.txt, check cl12: fault */
N_("Loose head")
/* blocks/set_claw.txt, check cl12: look */
N_("Joint of head and shank, gentle twist")
/* blocks/set_claw.txt, check cl12: customer */
N_("The setting had come loose from the ring")
/* blocks/set_claw.txt, check cl12: threshold */
N_("Not sound: repair; moves: do not wear")
/* blocks/set_claw.txt, check cl13: name */
N_("Gallery")
/* blocks/set_claw.txt, check cl13: fault */
N_("Cracked gallery")
/* blocks/set_claw.txt, check cl13: look */
N_("Rails and cross bars under the stone, loupe")
/* blocks/set_claw.txt, check cl13: customer */
N_("A bar under the stone had cracked")
/* blocks/set_claw.txt, check cl14: name */
N_("Setting as a whole")
/* blocks/set_claw.txt, check cl14: fault */
N_("Worn-out head")
/* blocks/set_claw.txt, check cl14: look */
N_("Number of worn claws")
/* blocks/set_claw.txt, check cl14: customer */
N_("Too many claws were worn for mending one by one")
/* blocks/set_claw.txt, check cl14: threshold */
N_("More than 2 of 4 or 3 of 6 to be renewed: replace the head")
/* blocks/set_claw.txt, check cl15: name */
N_("Under the stone")
/* blocks/set_claw.txt, check cl15: fault */
N_("Packed dirt")
/* blocks/set_claw.txt, check cl15: look */
N_("Under the stone, before and after cleaning")
/* blocks/set_claw.txt, check cl15: customer */
N_("Dirt had packed under the stone")
/* blocks/set_claw.txt, check cl15: threshold */
N_("Sound; clean, then look again")
/* blocks/set_rim.txt, block SET_RIM: name */
N_("Rubbed-over rim")
/* blocks/set_rim.txt, check ri01: name */
N_("Rim lies close")
/* blocks/set_rim.txt, check ri01: fault */
N_("Opened rim")
/* blocks/set_rim.txt, check ri01: look */
N_("Contact all round, against the light")
/* blocks/set_rim.txt, check ri01: customer */
N_("The rim that holds the stone had opened")
/* blocks/set_rim.txt, check ri01: threshold */
N_("A gap over a quarter of the round: repair")
/* blocks/set_rim.txt, check ri02: name */
N_("Rim edge")
/* blocks/set_rim.txt, check ri02: fault */
N_("Thin rim")
/* blocks/set_rim.txt, check ri02: look */
N_("Thickness of the edge, gauge")
/* blocks/set_rim.txt, check ri02: customer */
N_("The rim that holds the stone had worn thin")
/* blocks/set_rim.txt, check ri02: threshold */
N_("New 0.3 to 0.5 mm; under 0.2 mm: repair; too thin to rub over: renew")
/* blocks/set_rim.txt, check ri02: source_note */
N_("Too thin to rub over published; figures from memory")
/* blocks/set_rim.txt, check ri03: name */
N_("Rim whole")
/* blocks/set_rim.txt, check ri03: fault */
N_("Split rim")
/* blocks/set_rim.txt, check ri03: look */
N_("Splits and nicks, thread")
/* blocks/set_rim.txt, check ri03: customer */
N_("The rim that holds the stone had split")
/* blocks/set_rim.txt, check ri04: name */
N_("Rim foot")
/* blocks/set_rim.txt, check ri04: fault */
N_("Unsoldered rim")
/* blocks/set_rim.txt, check ri04: look */
N_("Seam of rim and base, loupe")
/* blocks/set_rim.txt, check ri04: customer */
N_("The rim was not soldered down all round")
/* blocks/set_rim.txt, check ri05: name */
N_("Stone sits firm")
/* blocks/set_rim.txt, check ri05: fault */
N_("Loose stone in its rim")
/* blocks/set_rim.txt, check ri05: look */
N_("Push with wood, pull with wax")
/* blocks/set_rim.txt, check ri05: customer */
N_("The stone had become loose in its rim")
/* blocks/set_rim.txt, check ri05: threshold */
N_("Moves: repair; turns freely: do not wear")
/* cautions.txt, caution hz_boric: name */
N_("Boric acid, borax, boric oxide (flux, fire-coat)")
/* cautions.txt, caution hz_boric: caution */
N_("Keep from skin, food and lungs; not for anyone pregnant or hoping for a child; look for boron-free fluxes")
/* cautions.txt, caution hz_boric: figure */
N_("EU CLP: toxic for reproduction, category 1B, H360FD; since 17 December 2022 mixtures from 0.3 % are classed the same way (the older, higher limit for boric acid was 5.5 %)")
/* cautions.txt, caution hz_ipa: name */
N_("Isopropyl alcohol, ethanol (with fire-coat, cleaning)")
/* cautions.txt, caution hz_ipa: caution */
N_("Never near the flame or hot work; small closed jar; burn-off only away from stock; know where the lid is")
/* cautions.txt, caution hz_ipa: figure */
N_("Flash point of isopropyl alcohol about 12 °C, highly flammable liquid and vapour (H225)")
/* cautions.txt, caution hz_ipa: source_note */
N_("N: CLP, safety data sheets")
/* cautions.txt, caution hz_cd: name */
N_("Cadmium in old and cheap solders")
/* cautions.txt, caution hz_cd: caution */
N_("Do not heat unknown old solder without local extraction; brown-orange fume or yellow smoke means stop; fume can kill hours later")
/* cautions.txt, caution hz_cd: figure */
N_("EU: solders for brazing and metal parts of jewellery under 0.01 % by weight; use of cadmium solder barred with few exceptions (antiques have their own rule)")
/* cautions.txt, caution hz_cd: source_note */
N_("N: health effect")
/* cautions.txt, caution hz_pb: name */
N_("Lead in old soft solder, base castings, crystal, enamel")
/* cautions.txt, caution hz_pb: caution */
N_("No torch on unknown base metal; wash hands; keep from children")
/* cautions.txt, caution hz_pb: figure */
N_("EU: under 0.05 % by weight in any single part of jewellery, with listed exceptions")
/* cautions.txt, caution hz_ni: name */
N_("Nickel in white gold, steel, plating, posts")
/* cautions.txt, caution hz_ni: caution */
N_("Ask about allergy; after repair do not leave nickel-bearing metal against a sore place")
/* cautions.txt, caution hz_ni: figure */
N_("EU: under 0.2 micrograms per cm² per week for posts in pierced parts; not over 0.5 for other long contact; coatings must hold the limit for two years")
/* cautions.txt, caution hz_ni_test: name */
N_("Judgement in the test standard")
/* cautions.txt, caution hz_ni_test: caution */
N_("A laboratory matter; a spot test only warns")
/* cautions.txt, caution hz_ni_test: figure */
N_("EN 1811:2011 with amendment of 2015: result taken as fail above 0.35 (posts) and above 0.88 (other); check the edition in force")
/* cautions.txt, caution hz_acid: name */
N_("Pickle: warm acid salt (sodium bisulphate), dilute sulphuric, citric")
/* cautions.txt, caution hz_acid: caution */
N_("Goggles, gloves, lid, air; acid into water, never water into acid; no red-hot quench (spray); no iron in the bath; neutralise before rinsing to drain, by local rules")
/* cautions.txt, caution hz_acid: source_note */
N_("N: safety data sheets")
/* cautions.txt, caution hz_nitric: name */
N_("Nitric acid, aqua regia, test acids")
/* cautions.txt, caution hz_nitric: caution */
N_("Fume cupboard and training; not near cyanide, ever")
/* cautions.txt, caution hz_cyanide: name */
N_("Cyanide baths and stripping")
/* cautions.txt, caution hz_cyanide: caution */
N_("Licensed plants only")
/* cautions.txt, caution hz_hg: name */
N_("Mercury on gold (white stain)")
/* cautions.txt, caution hz_hg: caution */
N_("Do not heat: the vapour is poisonous; do not polish; hand to a licensed service")
/* cautions.txt, caution hz_hg: source_note */
N_("R83: stain")
/* cautions.txt, caution hz_radium: name */
N_("Luminous paint on old watches")
/* cautions.txt, caution hz_radium: caution */
N_("Do not open, brush or heat")
/* cautions.txt, caution hz_asbestos: name */
N_("Old soldering boards and mats")
/* cautions.txt, caution hz_asbestos: caution */
N_("Replace; do not break or saw")
/* cautions.txt, caution hz_fluoride: name */
N_("Fluoride fluxes (steel, low-temperature)")
/* cautions.txt, caution hz_fluoride: caution */
N_("Extraction; burns of fluoride need special first aid")
/* cautions.txt, caution hz_dust: name */
N_("Polishing dust, investment powder (silica), malachite, shell, bone")
/* cautions.txt, caution hz_dust: caution */
N_("Extraction and mask; wet work")
/* cautions.txt, caution hz_be: name */
N_("Beryllium or unknown spring alloys")
/* cautions.txt, caution hz_be: caution */
N_("Do not grind dry")
/* cautions.txt, caution hz_glare: name */
N_("Platinum and palladium at white heat")
/* cautions.txt, caution hz_glare: caution */
N_("Welding shade 5 or 6 (palladium 5 or darker); sunglasses are no protection; the light harms the eye for good")
/* cautions.txt, caution hz_gas: name */
N_("Fuel gas and oxygen")
/* cautions.txt, caution hz_gas: caution */
N_("Flash-back arrestors, leak test, no oil or grease on oxygen, cylinders upright and chained, the local fire rules")
/* cautions.txt, caution hz_fire: name */
N_("Hot work")
/* cautions.txt, caution hz_fire: caution */
N_("Clear bench, extinguisher, no synthetic sleeves, wait and look again after closing")
/* cautions.txt, caution hz_hollow: name */
N_("Closed hollow work")
/* cautions.txt, caution hz_hollow: caution */
N_("Drill or keep a vent before heat; trapped water or air bursts")
/* cautions.txt, caution hz_laser: name */
N_("Laser and pulse-arc")
/* cautions.txt, caution hz_laser: caution */
N_("Closed chamber or filter, training, argon in a small room")
/* cautions.txt, caution hz_quench: name */
N_("Quench")
/* cautions.txt, caution hz_quench: caution */
N_("Not while glowing with stones; steam and splash")
/* cautions.txt, caution hz_ti: name */
N_("Titanium, magnesium chips")
/* cautions.txt, caution hz_ti: caution */
N_("Fine chips burn; dry sand, no water")
/* cautions.txt, caution hz_us: name */
N_("Ultrasonic bath")
/* cautions.txt, caution hz_us: caution */
N_("See the stone table; loose stones fall: use a basket and count; no hands in the bath; cover")
/* cautions.txt, caution hz_steam: name */
N_("Steam jet")
/* cautions.txt, caution hz_steam: caution */
N_("Hold in tongs, not fingers; no heat-shy stones")
/* cautions.txt, caution hz_wheel: name */
N_("Polishing lathe")
/* cautions.txt, caution hz_wheel: caution */
N_("Never a free chain or bracelet on the wheel: hold it on a board or do it by hand; hair and sleeves tied")
/* cautions.txt, caution hz_mill: name */
N_("Rolling mill, drawbench")
/* cautions.txt, caution hz_mill: caution */
N_("No gloves, no loose hair")
/* cautions.txt, caution hz_spring: name */
N_("Spring bars and springs under load")
/* cautions.txt, caution hz_spring: caution */
N_("They fly: eye shield, cover with a cloth")
/* cautions.txt, caution hz_small: name */
N_("Small parts for children under three")
/* cautions.txt, caution hz_small: caution */
N_("Jewellery is not advised for very young children without an adult close by; say so on the report")
/* cautions.txt, caution hz_small: figure */
N_("Parts that fit a cylinder 31.7 mm wide and 25.4 to 57.1 mm deep count as small")
/* cautions.txt, caution hz_small: source_note */
N_("R89: advice; N: 16 CFR 1501.4, figure")
/* cautions.txt, caution hz_neck: name */
N_("Necklaces for children")
/* cautions.txt, caution hz_neck: caution */
N_("Breakaway clasp; not in bed or on playgrounds")
/* cautions.txt, caution hz_neck: figure */
N_("About 15 lbf or less")
/* cautions.txt, caution hz_neck: source_note */
N_("N: ASTM F2923")
/* cautions.txt, caution hz_magnet: name */
N_("Magnetic clasps")
/* cautions.txt, caution hz_magnet: caution */
N_("Swallowed magnets do grave harm; keep from small children; keep from pacemakers and some implants")
/* cautions.txt, caution hz_magnet: source_note */
N_("R89: topic")
/* cautions.txt, caution hz_edge: name */
N_("Sharp points and edges")
/* cautions.txt, caution hz_edge: caution */
N_("Fingertip and cotton test")
/* cautions.txt, caution hz_pb_child: name */
N_("Lead in children's jewellery")
/* cautions.txt, caution hz_pb_child: caution */
N_("Stricter limits hold in many places")
/* cautions.txt, caution hz_pb_child: figure */
N_("United States: 100 ppm total lead in accessible parts")
/* cautions.txt, caution hz_pb_child: source_note */
N_("N: CPSIA")
/* checklists/bangle.txt, type bangle: name */
N_("Bangle")
/* checklists/bangle.txt, type bangle: your */
N_("Your bangle")
/* checklists/bangle.txt, type bangle: datum */
N_("Clasp to the right, hinge to the left")
/* checklists/bangle.txt, block more_bangle: name */
N_("Further points of a bangle")
/* checklists/bangle.txt, check bg01: name */
N_("Body")
/* checklists/bangle.txt, check bg01: fault */
N_("Dented bangle")
/* checklists/bangle.txt, check bg01: look */
N_("Dents, hollow walls")
/* checklists/bangle.txt, check bg01: customer */
N_("The bangle was dented")
/* checklists/bangle.txt, check bg01: threshold */
N_("Watch; pierced: repair")
/* checklists/bangle.txt, check bg02: name */
N_("Ends at hinge and clasp")
/* checklists/bangle.txt, check bg02: fault */
N_("Cracked end")
/* checklists/bangle.txt, check bg02: look */
N_("Cracks, loupe")
/* checklists/bangle.txt, check bg02: customer */
N_("The bangle had cracked near its hinge or clasp")
/* checklists/bangle.txt, check bg02: threshold */
N_("Repair; through: do not wear")
/* checklists/bangle.txt, check bg03: name */
N_("Halves meet")
/* checklists/bangle.txt, check bg03: fault */
N_("Sprung bangle")
/* checklists/bangle.txt, check bg03: look */
N_("Out of oval, ends do not meet")
/* checklists/bangle.txt, check bg03: customer */
N_("The two halves no longer met")
/* checklists/bangle.txt, check bg03: threshold */
N_("Halves miss by over 0.5 mm: repair")
/* checklists/bangle.txt, check bg06: name */
N_("Safety")
/* checklists/bangle.txt, check bg06: fault */
N_("Missing safety")
/* checklists/bangle.txt, check bg06: look */
N_("Chain or eight there and sound")
/* checklists/bangle.txt, check bg06: customer */
N_("The safety chain or catch was missing")
/* checklists/bangle.txt, check bg07: name */
N_("Spring of an open bangle")
/* checklists/bangle.txt, check bg07: fault */
N_("Soft bangle")
/* checklists/bangle.txt, check bg07: look */
N_("Ends and springiness")
/* checklists/bangle.txt, check bg07: customer */
N_("The open bangle had lost its spring")
/* checklists/bangle.txt, check bg07: threshold */
N_("Opens by hand with no spring: repair")
/* checklists/bangle.txt, check bg08: name */
N_("Back of an open bangle")
/* checklists/bangle.txt, check bg08: fault */
N_("Fatigue at the back")
/* checklists/bangle.txt, check bg08: look */
N_("Fine cracks where it bends to and fro")
/* checklists/bangle.txt, check bg08: customer */
N_("Fine cracks had formed at the back")
/* checklists/bangle.txt, check bg08: threshold */
N_("Fine cracks: do not wear")
/* checklists/bangle.txt, check bg09: name */
N_("Fit on the wrist")
/* checklists/bangle.txt, check bg09: fault */
N_("Too wide")
/* checklists/bangle.txt, check bg09: look */
N_("Slips over the hand, marks inside")
/* checklists/bangle.txt, check bg09: customer */
N_("The bangle was too wide")
/* checklists/bangle.txt, check bg09: threshold */
N_("Slips over the hand unaided when hinged: watch")
/* checklists/bangle.txt, check bg10: name */
N_("Screw closure")
/* checklists/bangle.txt, check bg10: fault */
N_("Worn screw")
/* checklists/bangle.txt, check bg10: look */
N_("Thread and head")
/* checklists/bangle.txt, check bg10: customer */
N_("The screw that closes the bangle was worn")
/* checklists/bangle.txt, check bg10: threshold */
N_("Turns loose: repair; missing: do not wear")
/* checklists/bangle.txt, check bg11: name */
N_("Edges of the bangle")
/* checklists/bangle.txt, check bg11: fault */
N_("Sharp edge")
/* checklists/bangle.txt, check bg11: look */
N_("Edge and burr, fingertip and cotton")
/* checklists/bangle.txt, check bg11: customer */
N_("An edge of the bangle was sharp")
/* checklists/bangle.txt, check bg12: name */
N_("Seams of hollow work")
/* checklists/bangle.txt, check bg12: fault */
N_("Open seam")
/* checklists/bangle.txt, check bg12: look */
N_("Seam all along, loupe")
/* checklists/bangle.txt, check bg12: customer */
N_("A seam of the hollow bangle had opened")
/* checklists/bangle.txt, check bg12: threshold */
N_("Repair; pickle and water inside: dry out")
/* checklists/brooch.txt, type brooch: name */
N_("Brooch")
/* checklists/brooch.txt, type brooch: your */
N_("Your brooch")
/* checklists/brooch.txt, type brooch: datum */
N_("Face up, catch to the right")
/* checklists/brooch.txt, block more_brooch: name */
N_("Further points of a brooch")
/* checklists/brooch.txt, check br01: name */
N_("Pin joint")
/* checklists/brooch.txt, check br01: fault */
N_("Slack joint")
/* checklists/brooch.txt, check br01: look */
N_("Moves easily without rattling")
/* checklists/brooch.txt, check br01: customer */
N_("The pin of the brooch rattled in its joint")
/* checklists/brooch.txt, check br01: threshold */
N_("Rattles: watch; sideways over 1 mm at the point: repair")
/* checklists/brooch.txt, check br02: name */
N_("Opening of the pin")
/* checklists/brooch.txt, check br02: fault */
N_("Stiff joint")
/* checklists/brooch.txt, check br02: look */
N_("Opens to 90 degrees or more")
/* checklists/brooch.txt, check br02: customer */
N_("The pin of the brooch was stiff")
/* checklists/brooch.txt, check br02: threshold */
N_("Under 90 degrees: repair")
/* checklists/brooch.txt, check br03: name */
N_("Spring of the pin")
/* checklists/brooch.txt, check br03: fault */
N_("No spring")
/* checklists/brooch.txt, check br03: look */
N_("Rests above the catch when open")
/* checklists/brooch.txt, check br03: customer */
N_("The pin of the brooch had lost its spring")
/* checklists/brooch.txt, check br03: threshold */
N_("Lies slack: repair")
/* checklists/brooch.txt, check br04: name */
N_("Pin stem")
/* checklists/brooch.txt, check br04: fault */
N_("Bent or blunt stem")
/* checklists/brooch.txt, check br04: look */
N_("Straight, sharp, polished, point just past the catch")
/* checklists/brooch.txt, check br04: customer */
N_("The pin of the brooch was bent or blunt")
/* checklists/brooch.txt, check br04: threshold */
N_("Repair; the point stands out: do not wear")
/* checklists/brooch.txt, check br05: name */
N_("Joint rivet")
/* checklists/brooch.txt, check br05: fault */
N_("Loose joint rivet")
/* checklists/brooch.txt, check br05: look */
N_("Tight, both heads")
/* checklists/brooch.txt, check br05: customer */
N_("The rivet of the pin was loose")
/* checklists/brooch.txt, check br05: threshold */
N_("Repair; never use the old rivet wire again")
/* checklists/brooch.txt, check br06: name */
N_("Joint foot")
/* checklists/brooch.txt, check br06: fault */
N_("Loose joint")
/* checklists/brooch.txt, check br06: look */
N_("Solder of joint and back plate")
/* checklists/brooch.txt, check br06: customer */
N_("The joint of the pin had come away from the brooch")
/* checklists/brooch.txt, check br07: name */
N_("Catch")
/* checklists/brooch.txt, check br07: fault */
N_("Open catch")
/* checklists/brooch.txt, check br07: look */
N_("Hook not opened, holds the stem")
/* checklists/brooch.txt, check br07: customer */
N_("The catch of the brooch had opened")
/* checklists/brooch.txt, check br07: threshold */
N_("Repair; the stem slips out: do not wear")
/* checklists/brooch.txt, check br08: name */
N_("Roller of the catch")
/* checklists/brooch.txt, check br08: fault */
N_("Free-turning catch")
/* checklists/brooch.txt, check br08: look */
N_("Turns and stops")
/* checklists/brooch.txt, check br08: customer */
N_("The safety roller turned too freely")
/* checklists/brooch.txt, check br09: name */
N_("Catch foot")
/* checklists/brooch.txt, check br09: fault */
N_("Loose catch")
/* checklists/brooch.txt, check br09: look */
N_("Solder of the catch, pick")
/* checklists/brooch.txt, check br09: customer */
N_("The catch had come away from the brooch")
/* checklists/brooch.txt, check br10: name */
N_("Safety chain and pin")
/* checklists/brooch.txt, check br10: fault */
N_("Worn safety chain of the brooch")
/* checklists/brooch.txt, check br10: look */
N_("All links, the small pin, gauge")
/* checklists/brooch.txt, check br10: customer */
N_("The safety chain of the brooch was worn")
/* checklists/brooch.txt, check br11: name */
N_("Back plate")
/* checklists/brooch.txt, check br11: fault */
N_("Cracked back")
/* checklists/brooch.txt, check br11: look */
N_("Cracks and thin places round the fittings")
/* checklists/brooch.txt, check br11: customer */
N_("The back of the brooch had cracked")
/* checklists/brooch.txt, check br12: name */
N_("Tube clasp")
/* checklists/brooch.txt, check br12: fault */
N_("Loose tube")
/* checklists/brooch.txt, check br12: look */
N_("Slides and locks")
/* checklists/brooch.txt, check br12: customer */
N_("The tube of the clasp was loose")
/* checklists/brooch.txt, check br13: name */
N_("Double clip frame")
/* checklists/brooch.txt, check br13: fault */
N_("Weak clip frame")
/* checklists/brooch.txt, check br13: look */
N_("Hinges and springs")
/* checklists/brooch.txt, check br13: customer */
N_("The spring of the clip frame was weak")
/* checklists/brooch.txt, check br14: name */
N_("Old work")
/* checklists/brooch.txt, check br14: fault */
N_("Soft solder in old work")
/* checklists/brooch.txt, check br14: look */
N_("Soft solder, glue, foil")
/* checklists/brooch.txt, check br14: customer */
N_("Old soft solder or glue showed in the work")
/* checklists/brooch.txt, check br14: threshold */
N_("Note before any heat")
/* checklists/brooch.txt, check br15: name */
N_("How it hangs")
/* checklists/brooch.txt, check br15: fault */
N_("Top-heavy")
/* checklists/brooch.txt, check br15: look */
N_("Heavy top turns over")
/* checklists/brooch.txt, check br15: customer */
N_("The brooch tipped forward when worn")
/* checklists/brooch.txt, check br15: threshold */
N_("Advise")
/* checklists/cufflinks.txt, type cufflinks: name */
N_("Cufflinks")
/* checklists/cufflinks.txt, type cufflinks: your */
N_("Your cufflinks")
/* checklists/cufflinks.txt, type cufflinks: datum */
N_("Faces up, left and right as marked")
/* checklists/cufflinks.txt, check cu01: name */
N_("Toggle bar")
/* checklists/cufflinks.txt, check cu01: fault */
N_("Slack toggle")
/* checklists/cufflinks.txt, check cu01: look */
N_("Swings and stays where it is put")
/* checklists/cufflinks.txt, check cu01: customer */
N_("The swing bar was slack")
/* checklists/cufflinks.txt, check cu01: threshold */
N_("Watch; does not stay closed: repair")
/* checklists/cufflinks.txt, check cu02: name */
N_("Toggle spring")
/* checklists/cufflinks.txt, check cu02: fault */
N_("Weak toggle spring")
/* checklists/cufflinks.txt, check cu02: look */
N_("Two firm stops")
/* checklists/cufflinks.txt, check cu02: customer */
N_("The spring of the swing bar was weak")
/* checklists/cufflinks.txt, check cu03: name */
N_("Toggle rivet")
/* checklists/cufflinks.txt, check cu03: fault */
N_("Loose toggle rivet")
/* checklists/cufflinks.txt, check cu03: look */
N_("Both heads tight")
/* checklists/cufflinks.txt, check cu03: customer */
N_("The rivet of the swing bar was loose")
/* checklists/cufflinks.txt, check cu03: threshold */
N_("Repair; missing: do not wear")
/* checklists/cufflinks.txt, check cu04: name */
N_("Bar post")
/* checklists/cufflinks.txt, check cu04: fault */
N_("Bent bar post")
/* checklists/cufflinks.txt, check cu04: look */
N_("Straight; joint to the face")
/* checklists/cufflinks.txt, check cu04: customer */
N_("The post of the cufflink was bent")
/* checklists/cufflinks.txt, check cu05: name */
N_("Foot of the post")
/* checklists/cufflinks.txt, check cu05: fault */
N_("Cracked foot")
/* checklists/cufflinks.txt, check cu05: look */
N_("Solder or cup, loupe")
/* checklists/cufflinks.txt, check cu05: customer */
N_("The post had cracked where it joins the face")
/* checklists/cufflinks.txt, check cu06: name */
N_("Chain")
/* checklists/cufflinks.txt, check cu06: fault */
N_("Worn cufflink chain")
/* checklists/cufflinks.txt, check cu06: look */
N_("Wear of the links, both ends, gauge")
/* checklists/cufflinks.txt, check cu06: customer */
N_("The small chain of the cufflink was worn")
/* checklists/cufflinks.txt, check cu07: name */
N_("Length of the chain")
/* checklists/cufflinks.txt, check cu07: fault */
N_("Chain too short or pulled")
/* checklists/cufflinks.txt, check cu07: look */
N_("Passes the cuff")
/* checklists/cufflinks.txt, check cu07: customer */
N_("The chain of the cufflink was too short or pulled")
/* checklists/cufflinks.txt, check cu08: name */
N_("Snap pair")
/* checklists/cufflinks.txt, check cu08: fault */
N_("Weak snap pair")
/* checklists/cufflinks.txt, check cu08: look */
N_("Spring fingers hold")
/* checklists/cufflinks.txt, check cu08: customer */
N_("The snap of the cufflink had gone weak")
/* checklists/cufflinks.txt, check cu09: name */
N_("Enamel")
/* checklists/cufflinks.txt, check cu09: fault */
N_("Chipped enamel")
/* checklists/cufflinks.txt, check cu09: look */
N_("Chips and cracks, light")
/* checklists/cufflinks.txt, check cu09: customer */
N_("The enamel was chipped")
/* checklists/cufflinks.txt, check cu10: name */
N_("Stone or inlay")
/* checklists/cufflinks.txt, check cu10: fault */
N_("Loose inlay")
/* checklists/cufflinks.txt, check cu10: look */
N_("Stone, onyx plate, glue; push with wood")
/* checklists/cufflinks.txt, check cu10: customer */
N_("The inlay had come loose")
/* checklists/cufflinks.txt, check cu11: name */
N_("Rim")
/* checklists/cufflinks.txt, check cu11: fault */
N_("Sharp rim")
/* checklists/cufflinks.txt, check cu11: look */
N_("Fingertip and cotton")
/* checklists/cufflinks.txt, check cu11: customer */
N_("The rim was sharp")
/* checklists/cufflinks.txt, check cu12: name */
N_("Both halves")
/* checklists/cufflinks.txt, check cu12: fault */
N_("Unlike halves")
/* checklists/cufflinks.txt, check cu12: look */
N_("Match; marks on both halves")
/* checklists/cufflinks.txt, check cu12: customer */
N_("The two cufflinks did not match")
/* checklists/earrings.txt, type earrings: name */
N_("Earrings")
/* checklists/earrings.txt, type earrings: your */
N_("Your earrings")
/* checklists/earrings.txt, type earrings: datum */
N_("Right ear first, seen from the front")
/* checklists/earrings.txt, block more_earrings: name */
N_("Further points of earrings")
/* checklists/earrings.txt, check er01: name */
N_("Post")
/* checklists/earrings.txt, check er01: fault */
N_("Thin post")
/* checklists/earrings.txt, check er01: look */
N_("Diameter at the notch, gauge")
/* checklists/earrings.txt, check er01: customer */
N_("The post of the earring was worn thin")
/* checklists/earrings.txt, check er01: threshold */
N_("New 0.8 to 0.9 mm; under 0.75 watch; under 0.65 repair; under 0.5 do not wear")
/* checklists/earrings.txt, check er02: name */
N_("Post straight")
/* checklists/earrings.txt, check er02: fault */
N_("Bent post")
/* checklists/earrings.txt, check er02: look */
N_("Straightness")
/* checklists/earrings.txt, check er02: customer */
N_("The post of the earring was bent")
/* checklists/earrings.txt, check er03: name */
N_("Post foot")
/* checklists/earrings.txt, check er03: fault */
N_("Loose post")
/* checklists/earrings.txt, check er03: look */
N_("Joint of the post, wiggle")
/* checklists/earrings.txt, check er03: customer */
N_("The post of the earring had come loose")
/* checklists/earrings.txt, check er03: threshold */
N_("Any movement: do not wear")
/* checklists/earrings.txt, check er04: name */
N_("Post end")
/* checklists/earrings.txt, check er04: fault */
N_("Sharp post end")
/* checklists/earrings.txt, check er04: look */
N_("Rounded, smooth, no burr")
/* checklists/earrings.txt, check er04: customer */
N_("The end of the post was sharp")
/* checklists/earrings.txt, check er05: name */
N_("Post notch")
/* checklists/earrings.txt, check er05: fault */
N_("Worn notch")
/* checklists/earrings.txt, check er05: look */
N_("Notch still holds the back")
/* checklists/earrings.txt, check er05: customer */
N_("The notch that keeps the back on had worn away")
/* checklists/earrings.txt, check er06: name */
N_("Back on the post")
/* checklists/earrings.txt, check er06: fault */
N_("Slack back")
/* checklists/earrings.txt, check er06: look */
N_("Grip on the post, shake")
/* checklists/earrings.txt, check er06: customer */
N_("The back of the earring no longer gripped")
/* checklists/earrings.txt, check er06: threshold */
N_("Falls off under its own weight when shaken: do not wear")
/* checklists/earrings.txt, check er07: name */
N_("Screw thread")
/* checklists/earrings.txt, check er07: fault */
N_("Worn thread")
/* checklists/earrings.txt, check er07: look */
N_("Clean and deep, nut holds")
/* checklists/earrings.txt, check er07: customer */
N_("The screw thread of the earring was worn")
/* checklists/earrings.txt, check er08: name */
N_("Clip")
/* checklists/earrings.txt, check er08: fault */
N_("Weak clip")
/* checklists/earrings.txt, check er08: look */
N_("Spring and hinge")
/* checklists/earrings.txt, check er08: customer */
N_("The clip of the earring had gone weak")
/* checklists/earrings.txt, check er09: name */
N_("Pressure of the clip")
/* checklists/earrings.txt, check er09: fault */
N_("Too hard clip")
/* checklists/earrings.txt, check er09: look */
N_("Pressure on the ear")
/* checklists/earrings.txt, check er09: customer */
N_("The clip pressed too hard on the ear")
/* checklists/earrings.txt, check er10: name */
N_("Hoop catch")
/* checklists/earrings.txt, check er10: fault */
N_("No click")
/* checklists/earrings.txt, check er10: look */
N_("Clicks shut; post bent")
/* checklists/earrings.txt, check er10: customer */
N_("The hoop no longer clicked shut")
/* checklists/earrings.txt, check er11: name */
N_("Hoop hinge")
/* checklists/earrings.txt, check er11: fault */
N_("Worn hoop hinge")
/* checklists/earrings.txt, check er11: look */
N_("Hinge pin, side play")
/* checklists/earrings.txt, check er11: customer */
N_("The hinge of the hoop was worn")
/* checklists/earrings.txt, check er11: threshold */
N_("As for hinges: up to 0.1 mm sound; to 0.3 mm watch; more repair")
/* checklists/earrings.txt, check er12: name */
N_("Ear wire")
/* checklists/earrings.txt, check er12: fault */
N_("Thin ear wire")
/* checklists/earrings.txt, check er12: look */
N_("Springy; thin at the bend, gauge")
/* checklists/earrings.txt, check er12: customer */
N_("The ear wire had worn thin")
/* checklists/earrings.txt, check er12: threshold */
N_("Under 0.6 mm: repair")
/* checklists/earrings.txt, check er13: name */
N_("Lever back")
/* checklists/earrings.txt, check er13: fault */
N_("Open lever")
/* checklists/earrings.txt, check er13: look */
N_("Lever spring and catch")
/* checklists/earrings.txt, check er13: customer */
N_("The lever of the earring no longer caught")
/* checklists/earrings.txt, check er14: name */
N_("Drops")
/* checklists/earrings.txt, check er14: fault */
N_("Worn drop ring")
/* checklists/earrings.txt, check er14: look */
N_("Rings and eyes of the drops, gauge")
/* checklists/earrings.txt, check er14: customer */
N_("A small ring that carries a drop was worn")
/* checklists/earrings.txt, check er15: name */
N_("Pair")
/* checklists/earrings.txt, check er15: fault */
N_("Unlike pair")
/* checklists/earrings.txt, check er15: look */
N_("Length, colour, both worn alike")
/* checklists/earrings.txt, check er15: customer */
N_("The two earrings did not match")
/* checklists/earrings.txt, check er16: name */
N_("Skin side")
/* checklists/earrings.txt, check er16: fault */
N_("Skin irritation")
/* checklists/earrings.txt, check er16: look */
N_("Nickel, rough plating; ask")
/* checklists/earrings.txt, check er16: customer */
N_("The metal irritated the skin")
/* checklists/earrings.txt, check er16: threshold */
N_("Watch; sore ear: do not wear")
/* checklists/earrings.txt, check er16: source_note */
N_("EN 1811")
/* checklists/line_bracelet.txt, type line_bracelet: name */
N_("Line bracelet")
/* checklists/line_bracelet.txt, type line_bracelet: your */
N_("Your line bracelet")
/* checklists/line_bracelet.txt, type line_bracelet: datum */
N_("Clasp to the left, face up, stone 1 next to the box")
/* checklists/line_bracelet.txt, block more_line_bracelet: name */
N_("Further points of a line bracelet")
/* checklists/line_bracelet.txt, check lb01: fault */
N_("Too long")
/* checklists/line_bracelet.txt, check lb01: look */
N_("One finger's width between wrist and bracelet")
/* checklists/line_bracelet.txt, check lb01: customer */
N_("The bracelet hung too free on the wrist")
/* checklists/line_bracelet.txt, check lb01: threshold */
N_("One finger: sound; hangs free: advise shortening")
/* checklists/line_bracelet.txt, check lb02: name */
N_("Length")
/* checklists/line_bracelet.txt, check lb02: fault */
N_("Stretched row")
/* checklists/line_bracelet.txt, check lb02: look */
N_("Length against nominal and earlier visits")
/* checklists/line_bracelet.txt, check lb02: customer */
N_("The bracelet had grown longer with wear")
/* checklists/line_bracelet.txt, check lb02: threshold */
N_("Up to 1 % sound; 1 to 3 % watch; over 3 % repair (rows stretched by over 12 mm have been met)")
/* checklists/line_bracelet.txt, check lb02: source_note */
N_("12 mm published; the percentages are ours")
/* checklists/line_bracelet.txt, check lb03: name */
N_("Even gaps")
/* checklists/line_bracelet.txt, check lb03: fault */
N_("Wide gap")
/* checklists/line_bracelet.txt, check lb03: look */
N_("Gaps between links, loupe along the row")
/* checklists/line_bracelet.txt, check lb03: customer */
N_("One gap between the links had opened")
/* checklists/line_bracelet.txt, check lb03: threshold */
N_("One gap twice the others: repair")
/* checklists/line_bracelet.txt, check lb04: name */
N_("Hinge pins")
/* checklists/line_bracelet.txt, check lb04: fault */
N_("Worn hinge pin")
/* checklists/line_bracelet.txt, check lb04: look */
N_("Bent, thin or missing; droop test")
/* checklists/line_bracelet.txt, check lb04: customer */
N_("A hinge pin had worn and left a gap")
/* checklists/line_bracelet.txt, check lb04: threshold */
N_("As much as the remaining section of the pin says; missing: do not wear")
/* checklists/line_bracelet.txt, check lb05: name */
N_("Hinge wire ends")
/* checklists/line_bracelet.txt, check lb05: look */
N_("Soldered end on each side, loupe")
/* checklists/line_bracelet.txt, check lb05: customer */
N_("A hinge wire had never been soldered")
/* checklists/line_bracelet.txt, check lb05: threshold */
N_("One: repair; several: do not wear")
/* checklists/line_bracelet.txt, check lb06: name */
N_("Link ears")
/* checklists/line_bracelet.txt, check lb06: fault */
N_("Torn ear")
/* checklists/line_bracelet.txt, check lb06: look */
N_("Holes worn long or torn, loupe")
/* checklists/line_bracelet.txt, check lb06: customer */
N_("The eye that joins two links had torn")
/* checklists/line_bracelet.txt, check lb06: threshold */
N_("Crack or tear: do not wear; wall under half: repair")
/* checklists/line_bracelet.txt, check lb07: name */
N_("Links in line")
/* checklists/line_bracelet.txt, check lb07: fault */
N_("Twisted link")
/* checklists/line_bracelet.txt, check lb07: look */
N_("Turned against its neighbours")
/* checklists/line_bracelet.txt, check lb07: customer */
N_("A link had twisted out of line")
/* checklists/line_bracelet.txt, check lb07: threshold */
N_("Watch; stones touch: repair")
/* checklists/line_bracelet.txt, check lb08: name */
N_("Links bend freely")
/* checklists/line_bracelet.txt, check lb08: fault */
N_("Stiff link")
/* checklists/line_bracelet.txt, check lb08: look */
N_("Move each joint")
/* checklists/line_bracelet.txt, check lb08: customer */
N_("A link did not bend freely")
/* checklists/line_bracelet.txt, check lb08: threshold */
N_("Watch after cleaning; repair if still stiff")
/* checklists/line_bracelet.txt, check lb09: name */
N_("Under side")
/* checklists/line_bracelet.txt, check lb09: fault */
N_("Broken cross bar")
/* checklists/line_bracelet.txt, check lb09: look */
N_("Cracked seats, broken bars underneath")
/* checklists/line_bracelet.txt, check lb09: customer */
N_("A bar under the links was broken")
/* checklists/line_bracelet.txt, check lb10: name */
N_("First and last links")
/* checklists/line_bracelet.txt, check lb10: fault */
N_("Worn end link")
/* checklists/line_bracelet.txt, check lb10: look */
N_("Compare with the middle of the row")
/* checklists/line_bracelet.txt, check lb10: customer */
N_("The last link, which bears the most, was worn")
/* checklists/line_bracelet.txt, check lb11: name */
N_("Every stone there")
/* checklists/line_bracelet.txt, check lb11: fault */
N_("Missing stone")
/* checklists/line_bracelet.txt, check lb11: look */
N_("Count the stones; record empty seats")
/* checklists/line_bracelet.txt, check lb11: customer */
N_("A stone was missing")
/* checklists/line_bracelet.txt, check lb11: threshold */
N_("One: repair; two or more: do not wear")
/* checklists/line_bracelet.txt, check lb12: name */
N_("Seams")
/* checklists/line_bracelet.txt, check lb12: fault */
N_("Poor old solder")
/* checklists/line_bracelet.txt, check lb12: look */
N_("Grey joints, pits")
/* checklists/line_bracelet.txt, check lb12: customer */
N_("An old solder joint was poor")
/* checklists/line_bracelet.txt, check lb12: threshold */
N_("Watch; cracked: repair")
/* checklists/line_bracelet.txt, check lb13: name */
N_("Bends in a loop")
/* checklists/line_bracelet.txt, check lb13: fault */
N_("Kinked row")
/* checklists/line_bracelet.txt, check lb13: look */
N_("Hold a loop of 40 mm; every link follows")
/* checklists/line_bracelet.txt, check lb13: customer */
N_("The row kinked when it was bent")
/* checklists/line_bracelet.txt, check lb14: name */
N_("Edges")
/* checklists/line_bracelet.txt, check lb14: fault */
N_("Snagging edge")
/* checklists/line_bracelet.txt, check lb14: look */
N_("Sharp claws to skin or sleeve, thread")
/* checklists/line_bracelet.txt, check lb14: customer */
N_("An edge caught on the sleeve")
/* checklists/locket.txt, type locket: name */
N_("Locket")
/* checklists/locket.txt, type locket: your */
N_("Your locket")
/* checklists/locket.txt, type locket: datum */
N_("Front up, hinge to the left")
/* checklists/locket.txt, check lo01: name */
N_("Closing lip")
/* checklists/locket.txt, check lo01: fault */
N_("Worn lip")
/* checklists/locket.txt, check lo01: look */
N_("Snaps; even gap all round")
/* checklists/locket.txt, check lo01: customer */
N_("The locket no longer closed firmly")
/* checklists/locket.txt, check lo01: threshold */
N_("Falls open: repair")
/* checklists/locket.txt, check lo02: name */
N_("Snap bead")
/* checklists/locket.txt, check lo02: fault */
N_("Worn snap")
/* checklists/locket.txt, check lo02: look */
N_("Small bead and its seat")
/* checklists/locket.txt, check lo02: customer */
N_("The small bead that snaps the locket shut was worn")
/* checklists/locket.txt, check lo04: name */
N_("Halves in line")
/* checklists/locket.txt, check lo04: fault */
N_("Twisted halves")
/* checklists/locket.txt, check lo04: look */
N_("Meet without a twist")
/* checklists/locket.txt, check lo04: customer */
N_("The two halves were twisted against each other")
/* checklists/locket.txt, check lo04: threshold */
N_("Over 0.3 mm: repair")
/* checklists/locket.txt, check lo05: name */
N_("Inner rings")
/* checklists/locket.txt, check lo05: fault */
N_("Lost inner ring")
/* checklists/locket.txt, check lo05: look */
N_("Ring that holds the picture")
/* checklists/locket.txt, check lo05: customer */
N_("The ring that holds the picture was missing")
/* checklists/locket.txt, check lo06: name */
N_("Glass")
/* checklists/locket.txt, check lo06: fault */
N_("Cracked glass")
/* checklists/locket.txt, check lo06: look */
N_("Cracked or loose")
/* checklists/locket.txt, check lo06: customer */
N_("The glass inside was cracked")
/* checklists/locket.txt, check lo06: threshold */
N_("Repair; sharp: do not wear")
/* checklists/locket.txt, check lo07: name */
N_("Contents")
/* checklists/locket.txt, check lo07: fault */
N_("Contents in place")
/* checklists/locket.txt, check lo07: look */
N_("Photograph, hair: take out before wet or hot work")
/* checklists/locket.txt, check lo07: customer */
N_("The keepsake inside was taken out and kept safe")
/* checklists/locket.txt, check lo07: threshold */
N_("Note at take-in")
/* checklists/locket.txt, check lo08: name */
N_("Cover")
/* checklists/locket.txt, check lo08: fault */
N_("Thin cover")
/* checklists/locket.txt, check lo08: look */
N_("Dents, thin places, worn engraving")
/* checklists/locket.txt, check lo08: customer */
N_("The cover of the locket had worn thin")
/* checklists/locket.txt, check lo08: threshold */
N_("As much as the remaining section says; do not polish engraving away")
/* checklists/locket.txt, check lo09: name */
N_("Rolled gold skin")
/* checklists/locket.txt, check lo09: fault */
N_("Worn through")
/* checklists/locket.txt, check lo09: look */
N_("Base metal showing")
/* checklists/locket.txt, check lo09: customer */
N_("The gold skin had worn through")
/* checklists/locket.txt, check lo09: threshold */
N_("Watch; no torch")
/* checklists/locket.txt, check lo10: name */
N_("Loop at the top")
/* checklists/locket.txt, check lo10: fault */
N_("Worn loop")
/* checklists/locket.txt, check lo10: look */
N_("Wear inside the loop, gauge")
/* checklists/locket.txt, check lo10: customer */
N_("The loop of the locket was worn thin")
/* checklists/locket.txt, check lo11: name */
N_("Neck of the loop")
/* checklists/locket.txt, check lo11: fault */
N_("Cracked neck")
/* checklists/locket.txt, check lo11: look */
N_("Crack where the loop joins")
/* checklists/locket.txt, check lo11: customer */
N_("The loop of the locket had cracked at its neck")
/* checklists/locket.txt, check lo12: name */
N_("Thumb nick")
/* checklists/locket.txt, check lo12: fault */
N_("Worn nick")
/* checklists/locket.txt, check lo12: look */
N_("Edge for the thumbnail")
/* checklists/locket.txt, check lo12: customer */
N_("The nick for opening was worn")
/* checklists/locket.txt, check lo12: threshold */
N_("Sound")
/* checklists/locket.txt, check lo13: fault */
N_("Open locket seam")
/* checklists/locket.txt, check lo13: look */
N_("Open seam, pin holes")
/* checklists/locket.txt, check lo13: customer */
N_("A seam of the locket had opened")
/* checklists/pendant_chain.txt, type pendant_chain: name */
N_("Pendant and chain")
/* checklists/pendant_chain.txt, type pendant_chain: your */
N_("Your pendant and chain")
/* checklists/pendant_chain.txt, type pendant_chain: datum */
N_("Pendant face up, clasp at the top")
/* checklists/pendant_chain.txt, block more_pendant_chain: name */
N_("Further points of a pendant and chain")
/* checklists/pendant_chain.txt, check pc01: name */
N_("Chain links")
/* checklists/pendant_chain.txt, check pc01: fault */
N_("Worn links")
/* checklists/pendant_chain.txt, check pc01: look */
N_("Where links touch, every 5 cm, gauge")
/* checklists/pendant_chain.txt, check pc01: customer */
N_("The links had worn thin where they touch")
/* checklists/pendant_chain.txt, check pc01: threshold */
N_("As much as the remaining section says; worn all along: replace the chain, not one link")
/* checklists/pendant_chain.txt, check pc02: name */
N_("Chain ends")
/* checklists/pendant_chain.txt, check pc02: fault */
N_("Worn chain end")
/* checklists/pendant_chain.txt, check pc02: look */
N_("Last three links and end caps")
/* checklists/pendant_chain.txt, check pc02: customer */
N_("The last links of the chain were worn")
/* checklists/pendant_chain.txt, check pc03: name */
N_("Chain length")
/* checklists/pendant_chain.txt, check pc03: fault */
N_("Stretched chain")
/* checklists/pendant_chain.txt, check pc03: look */
N_("Length against earlier visits")
/* checklists/pendant_chain.txt, check pc03: customer */
N_("The chain had stretched")
/* checklists/pendant_chain.txt, check pc03: threshold */
N_("Over 2 %: watch; over 5 %: repair")
/* checklists/pendant_chain.txt, check pc04: name */
N_("Chain runs freely")
/* checklists/pendant_chain.txt, check pc04: fault */
N_("Kinked chain")
/* checklists/pendant_chain.txt, check pc04: look */
N_("Stiff place; snake, herringbone and rope above all")
/* checklists/pendant_chain.txt, check pc04: customer */
N_("The chain was kinked")
/* checklists/pendant_chain.txt, check pc05: name */
N_("Old solder")
/* checklists/pendant_chain.txt, check pc05: fault */
N_("Solder-filled links")
/* checklists/pendant_chain.txt, check pc05: look */
N_("Lumps and stiff spots")
/* checklists/pendant_chain.txt, check pc05: customer */
N_("Old solder had filled some links")
/* checklists/pendant_chain.txt, check pc06: name */
N_("Hollow links")
/* checklists/pendant_chain.txt, check pc06: fault */
N_("Collapsed link")
/* checklists/pendant_chain.txt, check pc06: look */
N_("Dents, holes, thin skin")
/* checklists/pendant_chain.txt, check pc06: customer */
N_("A hollow link had collapsed")
/* checklists/pendant_chain.txt, check pc06: threshold */
N_("Repair; no solder with flux inside")
/* checklists/pendant_chain.txt, check pc07: name */
N_("Plating")
/* checklists/pendant_chain.txt, check pc07: fault */
N_("Worn plating of the chain")
/* checklists/pendant_chain.txt, check pc07: look */
N_("Bare base metal")
/* checklists/pendant_chain.txt, check pc07: customer */
N_("The plating of the chain had worn off")
/* checklists/pendant_chain.txt, check pc08: name */
N_("Back of the pendant")
/* checklists/pendant_chain.txt, check pc08: fault */
N_("Rubbed back")
/* checklists/pendant_chain.txt, check pc08: look */
N_("Sharp edges, worn by rubbing")
/* checklists/pendant_chain.txt, check pc08: customer */
N_("The back of the pendant had rubbed sharp")
/* checklists/pendant_chain.txt, check pc09: name */
N_("Chain and weight")
/* checklists/pendant_chain.txt, check pc09: fault */
N_("Chain too light")
/* checklists/pendant_chain.txt, check pc09: look */
N_("Weight of the pendant against the chain")
/* checklists/pendant_chain.txt, check pc09: customer */
N_("The chain was too light for the pendant")
/* checklists/pendant_chain.txt, check pc09: threshold */
N_("Advise a heavier chain")
/* checklists/pendant_chain.txt, check pc10: name */
N_("Pendant loop")
/* checklists/pendant_chain.txt, check pc10: fault */
N_("Worn pendant loop")
/* checklists/pendant_chain.txt, check pc10: look */
N_("Axis and wear of the loop, gauge")
/* checklists/pendant_chain.txt, check pc10: customer */
N_("The loop of the pendant was worn thin")
/* checklists/pendant_chain.txt, check pc11: name */
N_("Drops and moving parts")
/* checklists/pendant_chain.txt, check pc11: fault */
N_("Worn eye")
/* checklists/pendant_chain.txt, check pc11: look */
N_("Wire eyes and links, gauge")
/* checklists/pendant_chain.txt, check pc11: customer */
N_("A small eye that carries a drop was worn")
/* checklists/pendant_chain.txt, check pc12: name */
N_("Glued parts")
/* checklists/pendant_chain.txt, check pc12: fault */
N_("Loose glue")
/* checklists/pendant_chain.txt, check pc12: look */
N_("Pearl cups and caps, gentle turn")
/* checklists/pendant_chain.txt, check pc12: customer */
N_("A glued part had come loose")
/* checklists/ring_claw.txt, type ring_claw: name */
N_("Ring with claws")
/* checklists/ring_claw.txt, type ring_claw: your */
N_("Your ring")
/* checklists/ring_claw.txt, type ring_claw: datum */
N_("Hallmark towards you, shank down")
/* checklists/ring_claw.txt, type ring_claw: source_note */
N_("Six months and yearly published; six is the middle and the default")
/* checklists/ring_claw.txt, block more_ring_claw: name */
N_("Further points of a ring")
/* checklists/ring_claw.txt, check rg01: name */
N_("Shank at the bottom")
/* checklists/ring_claw.txt, check rg01: fault */
N_("Thin shank")
/* checklists/ring_claw.txt, check rg01: look */
N_("Thickness of the thinnest place, gauge")
/* checklists/ring_claw.txt, check rg01: customer */
N_("The band had worn thin at the bottom")
/* checklists/ring_claw.txt, check rg01: threshold */
N_("1.5 mm and more sound; 1.2 to 1.5 watch; 0.8 to 1.2 repair; under 0.8 do not wear. Platinum and nickel white gold may go 0.1 mm lower")
/* checklists/ring_claw.txt, check rg01: source_note */
N_("Ways of mending published; the millimetres are common practice and ours")
/* checklists/ring_claw.txt, check rg02: name */
N_("Width at the bottom")
/* checklists/ring_claw.txt, check rg02: fault */
N_("Narrow shank")
/* checklists/ring_claw.txt, check rg02: look */
N_("Width, gauge")
/* checklists/ring_claw.txt, check rg02: customer */
N_("The band had worn narrow at the bottom")
/* checklists/ring_claw.txt, check rg02: threshold */
N_("Under 1.5 mm wide: watch; under 1.2 mm: repair")
/* checklists/ring_claw.txt, check rg03: name */
N_("Old sizing seam")
/* checklists/ring_claw.txt, check rg03: fault */
N_("Cracked seam")
/* checklists/ring_claw.txt, check rg03: look */
N_("Cracks, most at the old seam, loupe")
/* checklists/ring_claw.txt, check rg03: customer */
N_("The band had cracked at an old joint")
/* checklists/ring_claw.txt, check rg04: look */
N_("Seam sunk or grey")
/* checklists/ring_claw.txt, check rg04: customer */
N_("An old joint in the band was poor")
/* checklists/ring_claw.txt, check rg05: name */
N_("Round")
/* checklists/ring_claw.txt, check rg05: fault */
N_("Bent shank")
/* checklists/ring_claw.txt, check rg05: look */
N_("Out of round on the mandrel")
/* checklists/ring_claw.txt, check rg05: customer */
N_("The band had been bent out of round")
/* checklists/ring_claw.txt, check rg05: threshold */
N_("Watch; stones have moved: repair")
/* checklists/ring_claw.txt, check rg06: name */
N_("Shoulders")
/* checklists/ring_claw.txt, check rg06: fault */
N_("Cracked shoulder")
/* checklists/ring_claw.txt, check rg06: look */
N_("Cracks under the head, loupe")
/* checklists/ring_claw.txt, check rg06: customer */
N_("The shoulder of the ring had cracked")
/* checklists/ring_claw.txt, check rg07: name */
N_("Stones in the shoulders")
/* checklists/ring_claw.txt, check rg07: fault */
N_("Worn beads in the shoulders")
/* checklists/ring_claw.txt, check rg07: look */
N_("Beads of the accent stones, loupe")
/* checklists/ring_claw.txt, check rg07: customer */
N_("The beads that hold the small stones had worn")
/* checklists/ring_claw.txt, check rg07: threshold */
N_("As for beads: each stone needs two good ones facing each other")
/* checklists/ring_claw.txt, check rg08: name */
N_("Point of the stone")
/* checklists/ring_claw.txt, check rg08: fault */
N_("Bare point under the stone")
/* checklists/ring_claw.txt, check rg08: look */
N_("Culet below the inside line")
/* checklists/ring_claw.txt, check rg08: customer */
N_("The point of the stone reached the finger")
/* checklists/ring_claw.txt, check rg09: name */
N_("Room beside the ring")
/* checklists/ring_claw.txt, check rg09: fault */
N_("Rubbing ring")
/* checklists/ring_claw.txt, check rg09: look */
N_("Marks of a neighbouring ring")
/* checklists/ring_claw.txt, check rg09: customer */
N_("A neighbouring ring had rubbed a groove")
/* checklists/ring_claw.txt, check rg09: threshold */
N_("Watch; deep groove: repair")
/* checklists/ring_claw.txt, check rg10: name */
N_("Marks inside")
/* checklists/ring_claw.txt, check rg10: fault */
N_("Worn mark")
/* checklists/ring_claw.txt, check rg10: look */
N_("Fineness, maker, engraving readable")
/* checklists/ring_claw.txt, check rg10: customer */
N_("The marks inside had worn faint")
/* checklists/ring_claw.txt, check rg10: threshold */
N_("Record; keep away from them when sizing")
/* checklists/ring_claw.txt, check rg11: name */
N_("Inside of the band")
/* checklists/ring_claw.txt, check rg11: fault */
N_("Sharp inside")
/* checklists/ring_claw.txt, check rg11: look */
N_("Rough edge, split, pit")
/* checklists/ring_claw.txt, check rg11: customer */
N_("A rough place inside hurt the finger")
/* checklists/ring_claw.txt, check rg12: name */
N_("Fit")
/* checklists/ring_claw.txt, check rg12: fault */
N_("Wrong size")
/* checklists/ring_claw.txt, check rg12: look */
N_("Passes the knuckle and holds")
/* checklists/ring_claw.txt, check rg12: customer */
N_("The ring did not fit the finger")
/* checklists/ring_claw.txt, check rg12: threshold */
N_("Slips over the knuckle freely: watch; falls off: do not wear")
/* checklists/ring_claw.txt, check rg13: name */
N_("Rhodium")
/* checklists/ring_claw.txt, check rg13: fault */
N_("Worn plating")
/* checklists/ring_claw.txt, check rg13: look */
N_("Colour at the bottom of the band")
/* checklists/ring_claw.txt, check rg13: customer */
N_("The plating had worn off at the bottom")
/* checklists/ring_claw.txt, check rg13: threshold */
N_("Watch; nickel beneath can irritate skin")
/* checklists/ring_claw.txt, check rg14: name */
N_("Hollow shank")
/* checklists/ring_claw.txt, check rg14: fault */
N_("Holed shank")
/* checklists/ring_claw.txt, check rg14: look */
N_("Dents and holes")
/* checklists/ring_claw.txt, check rg14: customer */
N_("The hollow band had a hole")
/* checklists/strand.txt, type strand: name */
N_("Necklace or bead strand")
/* checklists/strand.txt, type strand: your */
N_("Your necklace")
/* checklists/strand.txt, type strand: datum */
N_("Clasp at the top, largest bead at the bottom")
/* checklists/strand.txt, type strand: source_note */
N_("For looking over; re-threading usually 12 to 24 months if worn daily, about 60 if seldom")
/* checklists/strand.txt, block more_strand: name */
N_("Further points of a strand")
/* checklists/strand.txt, check st01: name */
N_("Thread tight")
/* checklists/strand.txt, check st01: fault */
N_("Slack thread")
/* checklists/strand.txt, check st01: look */
N_("Beads slide between knots")
/* checklists/strand.txt, check st01: customer */
N_("The thread had gone slack")
/* checklists/strand.txt, check st01: threshold */
N_("Bead moves 1 mm or more: repair")
/* checklists/strand.txt, check st02: name */
N_("Thread whole")
/* checklists/strand.txt, check st02: fault */
N_("Frayed thread")
/* checklists/strand.txt, check st02: look */
N_("Grey, fuzzy, stiff, loupe")
/* checklists/strand.txt, check st02: customer */
N_("The thread was fraying")
/* checklists/strand.txt, check st02: threshold */
N_("Fuzzy: repair; a strand seen broken: do not wear")
/* checklists/strand.txt, check st03: name */
N_("Knots")
/* checklists/strand.txt, check st03: fault */
N_("Lost knots")
/* checklists/strand.txt, check st03: look */
N_("Missing or soft, pulled into holes")
/* checklists/strand.txt, check st03: customer */
N_("Some knots had gone")
/* checklists/strand.txt, check st04: name */
N_("Ends at the clasp")
/* checklists/strand.txt, check st04: fault */
N_("Worn end wire")
/* checklists/strand.txt, check st04: look */
N_("French wire or thimble, last knots")
/* checklists/strand.txt, check st04: customer */
N_("The thread lay bare at the clasp")
/* checklists/strand.txt, check st04: threshold */
N_("Thread bare: repair")
/* checklists/strand.txt, check st05: name */
N_("Ring that holds the thread")
/* checklists/strand.txt, check st05: fault */
N_("Sharp clasp ring")
/* checklists/strand.txt, check st05: look */
N_("Sharp edge, loupe")
/* checklists/strand.txt, check st05: customer */
N_("A sharp ring on the clasp cut the thread")
/* checklists/strand.txt, check st06: name */
N_("Strand length")
/* checklists/strand.txt, check st06: fault */
N_("Stretched strand")
/* checklists/strand.txt, check st06: customer */
N_("The necklace had stretched")
/* checklists/strand.txt, check st06: threshold */
N_("Over 2 %: watch; over 4 %: repair")
/* checklists/strand.txt, check st07: name */
N_("Drill holes")
/* checklists/strand.txt, check st07: fault */
N_("Cutting hole")
/* checklists/strand.txt, check st07: look */
N_("Chipped or cutting edges, loupe")
/* checklists/strand.txt, check st07: customer */
N_("The edge of a hole cut into the thread")
/* checklists/strand.txt, check st08: name */
N_("Pearl skin")
/* checklists/strand.txt, check st08: fault */
N_("Worn nacre")
/* checklists/strand.txt, check st08: look */
N_("Chalky, worn to the bead, cracks")
/* checklists/strand.txt, check st08: customer */
N_("The skin of a pearl had worn")
/* checklists/strand.txt, check st08: threshold */
N_("Note; keep from acids")
/* checklists/strand.txt, check st09: name */
N_("Number of beads")
/* checklists/strand.txt, check st09: fault */
N_("Wrong count")
/* checklists/strand.txt, check st09: look */
N_("Count and sizes, before and after")
/* checklists/strand.txt, check st09: customer */
N_("The number of beads did not agree")
/* checklists/strand.txt, check st09: threshold */
N_("Write it down always")
/* checklists/strand.txt, check st10: name */
N_("Beads whole")
/* checklists/strand.txt, check st10: fault */
N_("Cracked bead")
/* checklists/strand.txt, check st10: look */
N_("Chips, cracks, glued halves")
/* checklists/strand.txt, check st10: customer */
N_("A bead was cracked")
/* checklists/strand.txt, check st11: name */
N_("Cable or wire")
/* checklists/strand.txt, check st11: fault */
N_("Kinked cable")
/* checklists/strand.txt, check st11: look */
N_("Broken strands, crushed crimp")
/* checklists/strand.txt, check st11: customer */
N_("The cable was kinked or broken")
/* checklists/strand.txt, check st11: threshold */
N_("Any broken strand: repair")
/* checklists/strand.txt, check st12: name */
N_("Elastic")
/* checklists/strand.txt, check st12: fault */
N_("Tired elastic")
/* checklists/strand.txt, check st12: look */
N_("Slack or perished")
/* checklists/strand.txt, check st12: customer */
N_("The elastic had tired")
/* checklists/strand.txt, check st13: name */
N_("Metal beads")
/* checklists/strand.txt, check st13: fault */
N_("Holed bead")
/* checklists/strand.txt, check st13: look */
N_("Dents, thin skins")
/* checklists/strand.txt, check st13: customer */
N_("A metal bead had a hole")
/* checklists/strand.txt, check st14: name */
N_("Spacers of several rows")
/* checklists/strand.txt, check st14: fault */
N_("Worn spacer")
/* checklists/strand.txt, check st14: look */
N_("Holes worn, rows uneven")
/* checklists/strand.txt, check st14: customer */
N_("A spacer between the rows was worn")
/* checklists/watch_bracelet.txt, type watch_bracelet: name */
N_("Watch bracelet")
/* checklists/watch_bracelet.txt, type watch_bracelet: your */
N_("Your watch bracelet")
/* checklists/watch_bracelet.txt, type watch_bracelet: datum */
N_("Dial up, crown to the right; case and movement stay closed")
/* checklists/watch_bracelet.txt, check wb01: name */
N_("Spring bars")
/* checklists/watch_bracelet.txt, check wb01: fault */
N_("Bent spring bar")
/* checklists/watch_bracelet.txt, check wb01: look */
N_("Straight, tips springy, no rust")
/* checklists/watch_bracelet.txt, check wb01: customer */
N_("A spring bar that holds the bracelet was bent")
/* checklists/watch_bracelet.txt, check wb01: threshold */
N_("Repair; tip short or rusted: do not wear")
/* checklists/watch_bracelet.txt, check wb02: name */
N_("Lug holes")
/* checklists/watch_bracelet.txt, check wb02: fault */
N_("Worn lug hole")
/* checklists/watch_bracelet.txt, check wb02: look */
N_("Worn long or cracked")
/* checklists/watch_bracelet.txt, check wb02: customer */
N_("A hole in the watch case was worn")
/* checklists/watch_bracelet.txt, check wb03: name */
N_("End links")
/* checklists/watch_bracelet.txt, check wb03: fault */
N_("Loose end link")
/* checklists/watch_bracelet.txt, check wb03: look */
N_("Play against the case")
/* checklists/watch_bracelet.txt, check wb03: customer */
N_("The end link moved against the case")
/* checklists/watch_bracelet.txt, check wb03: threshold */
N_("Watch; over 0.5 mm: repair")
/* checklists/watch_bracelet.txt, check wb04: name */
N_("Link pins")
/* checklists/watch_bracelet.txt, check wb04: fault */
N_("Walking pin")
/* checklists/watch_bracelet.txt, check wb04: look */
N_("Flush, split pins tight, sleeves there")
/* checklists/watch_bracelet.txt, check wb04: customer */
N_("A pin between the links was working its way out")
/* checklists/watch_bracelet.txt, check wb04: threshold */
N_("Stands out: repair; missing: do not wear")
/* checklists/watch_bracelet.txt, check wb05: name */
N_("Link screws")
/* checklists/watch_bracelet.txt, check wb05: fault */
N_("Loose screw")
/* checklists/watch_bracelet.txt, check wb05: look */
N_("Heads flush, thread lock")
/* checklists/watch_bracelet.txt, check wb05: customer */
N_("A screw between the links was loose")
/* checklists/watch_bracelet.txt, check wb06: fault */
N_("Stretched bracelet")
/* checklists/watch_bracelet.txt, check wb06: look */
N_("Droop test sideways, angle over 5 links")
/* checklists/watch_bracelet.txt, check wb06: customer */
N_("The bracelet had stretched with wear")
/* checklists/watch_bracelet.txt, check wb06: threshold */
N_("Over about 20 degrees for 5 links: watch; over 35: repair")
/* checklists/watch_bracelet.txt, check wb07: name */
N_("Centre pin")
/* checklists/watch_bracelet.txt, check wb07: fault */
N_("Loose centre pin")
/* checklists/watch_bracelet.txt, check wb07: look */
N_("Centre pin and hinge ends")
/* checklists/watch_bracelet.txt, check wb07: customer */
N_("The centre pin of the clasp was loose")
/* checklists/watch_bracelet.txt, check wb07: threshold */
N_("Repair; pin out: do not wear")
/* checklists/watch_bracelet.txt, check wb08: name */
N_("Snap")
/* checklists/watch_bracelet.txt, check wb08: fault */
N_("Weak snap")
/* checklists/watch_bracelet.txt, check wb08: look */
N_("Snap force and fold-over")
/* checklists/watch_bracelet.txt, check wb08: customer */
N_("The clasp no longer snapped shut")
/* checklists/watch_bracelet.txt, check wb08: threshold */
N_("No snap: repair")
/* checklists/watch_bracelet.txt, check wb09: name */
N_("Push buttons")
/* checklists/watch_bracelet.txt, check wb09: fault */
N_("Sticking button")
/* checklists/watch_bracelet.txt, check wb09: look */
N_("Spring back")
/* checklists/watch_bracelet.txt, check wb09: customer */
N_("A push button of the clasp stuck")
/* checklists/watch_bracelet.txt, check wb09: threshold */
N_("Repair after cleaning")
/* checklists/watch_bracelet.txt, check wb10: name */
N_("Safety flap")
/* checklists/watch_bracelet.txt, check wb10: fault */
N_("Slack flap")
/* checklists/watch_bracelet.txt, check wb10: look */
N_("Holds closed")
/* checklists/watch_bracelet.txt, check wb10: customer */
N_("The safety flap no longer held")
/* checklists/watch_bracelet.txt, check wb11: name */
N_("Mesh")
/* checklists/watch_bracelet.txt, check wb11: fault */
N_("Broken mesh")
/* checklists/watch_bracelet.txt, check wb11: look */
N_("Broken wires, stretched edge")
/* checklists/watch_bracelet.txt, check wb11: customer */
N_("Wires of the mesh were broken")
/* checklists/watch_bracelet.txt, check wb12: name */
N_("Sliding clasp")
/* checklists/watch_bracelet.txt, check wb12: fault */
N_("Slipping clamp")
/* checklists/watch_bracelet.txt, check wb12: look */
N_("Tooth of the clamp worn")
/* checklists/watch_bracelet.txt, check wb12: customer */
N_("The sliding clasp slipped")
/* checklists/watch_bracelet.txt, check wb13: name */
N_("Gold and hollow links")
/* checklists/watch_bracelet.txt, check wb13: fault */
N_("Worn link")
/* checklists/watch_bracelet.txt, check wb13: look */
N_("Worn plating, thin hollow links")
/* checklists/watch_bracelet.txt, check wb13: customer */
N_("The links had worn thin")
/* checklists/watch_bracelet.txt, check wb14: name */
N_("Between the links")
/* checklists/watch_bracelet.txt, check wb14: fault */
N_("Dirty links")
/* checklists/watch_bracelet.txt, check wb14: look */
N_("Dirt and sweat packed")
/* checklists/watch_bracelet.txt, check wb14: customer */
N_("Dirt had packed between the links")
/* checklists/watch_bracelet.txt, check wb14: threshold */
N_("Clean off the watch head, look again")
/* checklists/watch_bracelet.txt, check wb15: name */
N_("Leather strap")
/* checklists/watch_bracelet.txt, check wb15: fault */
N_("Cracked strap")
/* checklists/watch_bracelet.txt, check wb15: look */
N_("Cracks at the bar and the holes")
/* checklists/watch_bracelet.txt, check wb15: customer */
N_("The strap was cracked")
/* consequences.txt, consequence SL: name */
N_("stone loss")
/* consequences.txt, consequence SL: customer */
N_("A stone can be lost")
/* consequences.txt, consequence SL: had */
N_("a stone could have been lost")
/* consequences.txt, consequence PL: name */
N_("loss of the piece")
/* consequences.txt, consequence PL: customer */
N_("The piece can be lost")
/* consequences.txt, consequence PL: had */
N_("the piece could have been lost")
/* consequences.txt, consequence BR: name */
N_("breakage or spreading damage")
/* consequences.txt, consequence BR: customer */
N_("It can break or grow, and cost more to mend later")
/* consequences.txt, consequence BR: had */
N_("the damage could have spread")
/* consequences.txt, consequence SC: name */
N_("scratching and snagging")
/* consequences.txt, consequence SC: customer */
N_("It can scratch or catch on clothes")
/* consequences.txt, consequence SC: had */
N_("it could have scratched or torn something")
/* consequences.txt, consequence SK: name */
N_("skin injury or irritation")
/* consequences.txt, consequence SK: customer */
N_("It can hurt or irritate the skin")
/* consequences.txt, consequence SK: had */
N_("it could have hurt the skin")
/* consequences.txt, consequence ST: name */
N_("mechanism sticks or stops")
/* consequences.txt, consequence ST: customer */
N_("It can stick or stop working")
/* consequences.txt, consequence ST: had */
N_("it could have stuck fast")
/* consequences.txt, consequence VA: name */
N_("loss of value")
/* consequences.txt, consequence VA: customer */
N_("Marks, engraving or value can be lost")
/* consequences.txt, consequence VA: had */
N_("value could have been lost")
/* consequences.txt, consequence LK: name */
N_("looks only")
/* consequences.txt, consequence LK: customer */
N_("It only spoils the looks")
/* consequences.txt, consequence LK: had */
N_("only the looks would have suffered")
/* cuts.txt, cut round: name */
N_("Round brilliant")
/* cuts.txt, cut round_old: name */
N_("Round, older full cut")
/* cuts.txt, cut round_old: source_note */
N_("formula of 1931")
/* cuts.txt, cut oval: name */
N_("Oval")
/* cuts.txt, cut emerald: name */
N_("Emerald cut")
/* cuts.txt, cut marquise: name */
N_("Marquise")
/* cuts.txt, cut marquise: source_note */
N_("0.0017: R61; 0.0016: R61a")
/* cuts.txt, cut pear: name */
N_("Pear")
/* cuts.txt, cut princess: name */
N_("Princess (square)")
/* cuts.txt, cut heart: name */
N_("Heart")
/* cuts.txt, cut triangle: name */
N_("Triangle")
/* cuts.txt, cut baguette: name */
N_("Straight baguette")
/* cuts.txt, cut baguette_tapered: name */
N_("Tapered baguette")
/* cuts.txt, cut rectangle: name */
N_("Rectangle")
/* cuts.txt, cut square: name */
N_("Square")
/* cuts.txt, cut square: source_note */
N_("0.0025: R61; 0.0023: R61a")
/* cuts.txt, cut cabochon: name */
N_("Cabochon")
/* cuts.txt, cut cabochon: source_note */
N_("0.0027: R61a; 0.0026 from memory")
/* cuts.txt, cut sphere: name */
N_("Sphere, pearl or bead")
/* faults.txt, fault f_worn_claw: name */
N_("Worn claw")
/* faults.txt, fault f_unsoldered: name */
N_("Unsoldered ring, wire or foot")
/* faults.txt, fault f_worn_loop: name */
N_("Worn loop or bail")
/* faults.txt, fault f_stretched: name */
N_("Stretched row or chain")
/* faults.txt, fault f_worn_hinge: name */
N_("Worn hinge")
/* faults.txt, fault f_loose_rivet: name */
N_("Loose rivet")
/* faults.txt, fault f_thin_post: name */
N_("Thin or loose post")
/* faults.txt, fault f_dent: name */
N_("Dent or hole")
/* fineness.txt, fineness gold: name */
N_("Gold")
/* fineness.txt, fineness gold: source_note */
N_("ISO 9202, 2014 or later; check the list in force")
/* fineness.txt, fineness silver: name */
N_("Silver")
/* fineness.txt, fineness platinum: name */
N_("Platinum")
/* fineness.txt, fineness palladium: name */
N_("Palladium")
/* intervals.txt, reason k_watch: reason */
N_("Any mark at level watch")
/* intervals.txt, reason k_repairfresh: reason */
N_("A repaired hinge, clasp or setting")
/* intervals.txt, reason k_refused: reason */
N_("A repair was advised and not done")
/* intervals.txt, reason k_hands: reason */
N_("Work with the hands, sport, gym, climbing")
/* intervals.txt, reason k_sleep: reason */
N_("Worn day and night")
/* intervals.txt, reason k_pool: reason */
N_("Pools, hot tubs, bleach (low-karat and nickel white golds crack)")
/* intervals.txt, reason k_stack: reason */
N_("Worn next to another bracelet, ring or a watch")
/* intervals.txt, reason k_soft: reason */
N_("Soft metal: fine gold, 22 k, fine silver, Pt 950 with iridium 5 or palladium")
/* intervals.txt, reason k_pave: reason */
N_("Many very small stones")
/* intervals.txt, reason k_big: reason */
N_("Tall setting or stone over about 1.5 ct")
/* intervals.txt, reason k_old: reason */
N_("Over 30 years old, or thinner than 80 % of new")
/* intervals.txt, reason k_hollow: reason */
N_("Hollow links or hollow body")
/* intervals.txt, reason k_nosafety: reason */
N_("No second lock on a clasp")
/* intervals.txt, reason floor: reason */
N_("Never sooner than this")
/* limits.txt, measure remaining: name */
N_("share left of the thickness as made")
/* limits.txt, measure height_share: name */
N_("share left of the height as made")
/* limits.txt, measure cut_share: name */
N_("share of the thickness cut away")
/* limits.txt, measure round_share: name */
N_("share of the round that gapes")
/* limits.txt, measure thickness_mm: name */
N_("thickness")
/* limits.txt, measure width_mm: name */
N_("width")
/* limits.txt, measure gap_mm: name */
N_("gap")
/* limits.txt, measure play_mm: name */
N_("play")
/* limits.txt, measure gap_wire: name */
N_("gap against the thickness of the wire")
/* limits.txt, measure gap_ratio: name */
N_("gap against the others")
/* limits.txt, measure stretch_percent: name */
N_("growth in length")
/* limits.txt, measure angle_deg: name */
N_("angle")
/* limits.txt, measure missing_count: name */
N_("number missing")
/* limits.txt, limits remaining: threshold */
N_("80 % left and more: sound; 60 to 80 %: watch; 40 to 60 %: repair; under 40 % or any crack: do not wear")
/* limits.txt, limits remaining_strict: threshold */
N_("One level stricter than elsewhere, because it bears the most: 80 % left and more: sound; 60 to 80 %: repair; under 60 % or any crack: do not wear")
/* metals.txt, metal pt: source_note */
N_("hardness: working lists say about 60; R5: density, modulus, HV; R4: 60; N: 1768.2, CRC Handbook")
/* metals.txt, metal pd: source_note */
N_("N: 1554.8, CRC Handbook; R5 of 1972 prints 1552")
/* metals.txt, metal ir: name */
N_("Iridium")
/* metals.txt, metal ir: source_note */
N_("density: R5 of 1972 prints 22.65")
/* metals.txt, metal ru: name */
N_("Ruthenium")
/* metals.txt, metal ru: source_note */
N_("R5: density, modulus")
/* metals.txt, metal au: source_note */
N_("R45: point; R16: modulus; R17: density")
/* metals.txt, metal ag: source_note */
N_("density: lists print 10.5; R45: point; R17: HV; M: modulus")
/* metals.txt, metal cu: name */
N_("Copper")
/* metals.txt, metal cu: source_note */
N_("R45: point; N: CRC Handbook")
/* metals.txt, metal ni: name */
N_("Nickel")
/* metals.txt, metal ni: source_note */
N_("N: CRC Handbook")
/* metals.txt, metal zn: name */
N_("Zinc")
/* metals.txt, metal zn: source_note */
N_("R45: point")
/* metals.txt, metal co: name */
N_("Cobalt")
/* metals.txt, metal ti: name */
N_("Titanium")
/* metals.txt, metal pt950ru: name */
N_("Platinum-ruthenium")
/* metals.txt, metal pt950ru: yield_note */
N_("from the hardness by HV/3; annealed metal yields at about half of it")
/* metals.txt, metal pt950ru: source_note */
N_("R1: HV; M: melting range, modulus")
/* metals.txt, metal pt950co: name */
N_("Platinum-cobalt")
/* metals.txt, metal pt950co: source_note */
N_("density: lists 20.0 to 20.8; R2: HV; M: melting range, modulus")
/* metals.txt, metal pt950ir: name */
N_("Platinum-iridium 5")
/* metals.txt, metal pt950ir: source_note */
N_("R6: 80; M: rest")
/* metals.txt, metal pt950cu: name */
N_("Platinum-copper")
/* metals.txt, metal pt950pd: name */
N_("Platinum-palladium")
/* metals.txt, metal pt900ir: name */
N_("Platinum-iridium 10")
/* metals.txt, metal pt900ir: yield_note */
N_("hard: tensile strength 550")
/* metals.txt, metal pt900ir: source_note */
N_("melting range: one list prints liquidus 1830; R1: 110; R7: E, 550, 1830; M: rest")
/* metals.txt, metal pt850ir: name */
N_("Platinum-iridium 15")
/* metals.txt, metal pt850ir: yield_note */
N_("annealed: tensile strength 560")
/* metals.txt, metal pt850ir: source_note */
N_("M: HV")
/* metals.txt, metal au999: name */
N_("Fine gold")
/* metals.txt, metal au916y: name */
N_("22 k yellow gold")
/* metals.txt, metal au750y: name */
N_("18 k yellow gold")
/* metals.txt, metal au750y: source_note */
N_("melting range: one page: 895 to 930 typical; R15: 895-930; R18: about 913")
/* metals.txt, metal au750r: name */
N_("18 k rose gold")
/* metals.txt, metal au750wn: name */
N_("18 k white gold, nickel")
/* metals.txt, metal au750wp: name */
N_("18 k white gold, palladium")
/* metals.txt, metal au750wp: source_note */
N_("density: copper-bearing kinds 15.5 to 16; melting range: wide spread; R19: make-up")
/* metals.txt, metal au585y: name */
N_("14 k yellow gold")
/* metals.txt, metal au585y: source_note */
N_("density: with zinc 13.0 to 13.4; R18: about 843")
/* metals.txt, metal au585r: name */
N_("14 k rose gold")
/* metals.txt, metal au585wn: name */
N_("14 k white gold, nickel")
/* metals.txt, metal au585wp: name */
N_("14 k white gold, palladium")
/* metals.txt, metal au585wp: source_note */
N_("R20: make-up, near")
/* metals.txt, metal au417y: name */
N_("10 k yellow gold")
/* metals.txt, metal au375y: name */
N_("9 k yellow gold")
/* metals.txt, metal au375r: name */
N_("9 k rose gold")
/* metals.txt, metal au375w: name */
N_("9 k white gold, palladium-silver")
/* metals.txt, metal ag999: name */
N_("Fine silver")
/* metals.txt, metal ag999: source_note */
N_("R10: 54; 89-108; R17: 26")
/* metals.txt, metal ag925: name */
N_("Sterling silver")
/* metals.txt, metal ag925: yield_note */
N_("tensile strength 496 when hard, 552 as spring wire")
/* metals.txt, metal ag925: source_note */
N_("melting range: other lists 802/893; work-hardened: spring wire 140; R8 prints the two temperatures under swapped labels")
/* metals.txt, metal ag935d: name */
N_("Deoxidised silver 935 (germanium-bearing class)")
/* metals.txt, metal ag935d: source_note */
N_("R10: HV")
/* metals.txt, metal pd950ru: name */
N_("Palladium-ruthenium")
/* metals.txt, metal pd950ru: source_note */
N_("melting range: gallium- or copper-bearing casting kinds about 1340/1390; hardness: as cast about 130; R21: 130 as cast; cast near 1350")
/* metals.txt, metal ss316l: name */
N_("Stainless steel 316L")
/* metals.txt, metal ss316l: source_note */
N_("annealed hardness in HB, at most; work-hardened: spring wire tensile 1300 to 2200 MPa; R7: annealed row; R22: spring wire; M: hard")
/* metals.txt, metal tigr2: name */
N_("Titanium grade 2")
/* metals.txt, metal tigr2: yield_note */
N_("annealed: the least the standard asks")
/* metals.txt, metal tigr2: source_note */
N_("N: ASTM B265/B348")
/* parts.txt, part clasp: name */
N_("Box and tongue")
/* parts.txt, part fastening: name */
N_("Clasp")
/* parts.txt, part rings: name */
N_("Rings and bails")
/* parts.txt, part claws: name */
N_("Stones and claws")
/* parts.txt, part rim: name */
N_("Rim of the setting")
/* parts.txt, part beads: name */
N_("Beads and channels")
/* parts.txt, part row: name */
N_("Row and hinges")
/* parts.txt, part shank: name */
N_("Shank")
/* parts.txt, part head: name */
N_("Head and shoulders")
/* parts.txt, part pendant: name */
N_("Pendant")
/* parts.txt, part post: name */
N_("Post and back")
/* parts.txt, part fitting: name */
N_("Clip, hoop and wire")
/* parts.txt, part pin: name */
N_("Pin and joint")
/* parts.txt, part catch: name */
N_("Catch and safety")
/* parts.txt, part back: name */
N_("Open bangle")
/* parts.txt, part thread: name */
N_("Thread and knots")
/* parts.txt, part beadrow: name */
N_("Beads and pearls")
/* parts.txt, part case: name */
N_("At the watch case")
/* parts.txt, part links: name */
N_("Links")
/* parts.txt, part folding: name */
N_("Folding clasp")
/* parts.txt, part toggle: name */
N_("Toggle and chain")
/* parts.txt, part face: name */
N_("Face of the cufflink")
/* parts.txt, part cover: name */
N_("Cover and lip")
/* parts.txt, part inside: name */
N_("Inside")
/* parts.txt, part loop: name */
N_("Loop")
/* parts.txt, part whole: name */
N_("The whole piece")
/* phrases.txt, phrase tx_wear: text */
N_("Please keep this piece off until it is mended: a part that holds it, or a stone, could give way.")
/* phrases.txt, phrase tx_watch: text */
N_("Nothing needs doing today. We measured it, and would like to see it again by the date above.")
/* phrases.txt, phrase tx_heat: text */
N_("Some stones in this piece do not stand heat. They were taken out, or the repair was planned without flame.")
/* phrases.txt, phrase tx_limit: text */
N_("A look through the loupe shows what can be seen. It is no promise against loss, knocks or hidden flaws.")
/* phrases.txt, phrase tx_pool: text */
N_("Chlorine and bleach crack some golds. Take the piece off for pools and cleaning.")
/* remedies.txt, remedy retip: name */
N_("retip the claws")
/* remedies.txt, remedy retip: done */
N_("We built the claw tips up again")
/* remedies.txt, remedy replace_claw: name */
N_("new claw")
/* remedies.txt, remedy replace_claw: done */
N_("We fitted a new claw")
/* remedies.txt, remedy new_head: name */
N_("new head")
/* remedies.txt, remedy new_head: done */
N_("We fitted a new setting for the stone")
/* remedies.txt, remedy tighten: name */
N_("tighten the claws")
/* remedies.txt, remedy tighten: done */
N_("We tightened the claws on the stone")
/* remedies.txt, remedy burnish_claw: name */
N_("burnish the claw down")
/* remedies.txt, remedy burnish_claw: done */
N_("We pressed the claw down and polished it")
/* remedies.txt, remedy straighten_claw: name */
N_("straighten the claw, once")
/* remedies.txt, remedy straighten_claw: done */
N_("We straightened the claw")
/* remedies.txt, remedy rebuild_seat: name */
N_("rebuild the seat")
/* remedies.txt, remedy rebuild_seat: done */
N_("We rebuilt the seat of the stone")
/* remedies.txt, remedy rebuild_vclaw: name */
N_("rebuild the corner claw")
/* remedies.txt, remedy rebuild_vclaw: done */
N_("We rebuilt the claw over the point of the stone")
/* remedies.txt, remedy reseat_stone: name */
N_("seat the stone anew")
/* remedies.txt, remedy reseat_stone: done */
N_("We set the stone firmly again")
/* remedies.txt, remedy reset_stones: name */
N_("reset the stones")
/* remedies.txt, remedy reset_stones: done */
N_("We reset the stones with room between them")
/* remedies.txt, remedy turn_stone: name */
N_("turn the stone")
/* remedies.txt, remedy turn_stone: done */
N_("We turned the stone so that its claw covers a sound edge")
/* remedies.txt, remedy recut_stone: name */
N_("have the stone recut")
/* remedies.txt, remedy recut_stone: done */
N_("The stone was recut")
/* remedies.txt, remedy replace_stone: name */
N_("match and set a stone")
/* remedies.txt, remedy replace_stone: done */
N_("We matched and set a new stone")
/* remedies.txt, remedy raise_bead: name */
N_("raise new beads")
/* remedies.txt, remedy raise_bead: done */
N_("We raised new beads to hold the stones")
/* remedies.txt, remedy close_wall: name */
N_("close the channel wall")
/* remedies.txt, remedy close_wall: done */
N_("We closed the wall that holds the stones")
/* remedies.txt, remedy rub_over: name */
N_("rub the rim over")
/* remedies.txt, remedy rub_over: done */
N_("We rubbed the rim down over the stone again")
/* remedies.txt, remedy new_rim: name */
N_("new rim")
/* remedies.txt, remedy new_rim: done */
N_("We made a new rim for the stone")
/* remedies.txt, remedy raise_head: name */
N_("raise the head")
/* remedies.txt, remedy raise_head: done */
N_("We raised the setting")
/* remedies.txt, remedy clean: name */
N_("clean and look again")
/* remedies.txt, remedy clean: done */
N_("We cleaned it and looked again")
/* remedies.txt, remedy resolder: name */
N_("solder again")
/* remedies.txt, remedy resolder: done */
N_("We soldered the joint again")
/* remedies.txt, remedy peg: name */
N_("peg and solder")
/* remedies.txt, remedy peg: done */
N_("We pegged the joint and soldered it")
/* remedies.txt, remedy stitch: name */
N_("wire stitch across the crack")
/* remedies.txt, remedy stitch: done */
N_("We bridged the crack with let-in wire")
/* remedies.txt, remedy plate: name */
N_("plate behind the crack")
/* remedies.txt, remedy plate: done */
N_("We backed the crack with a plate")
/* remedies.txt, remedy laser: name */
N_("laser or pulse-arc weld")
/* remedies.txt, remedy laser: done */
N_("We welded it with the laser")
/* remedies.txt, remedy laser_patch: name */
N_("weld a patch")
/* remedies.txt, remedy laser_patch: done */
N_("We closed the hole with a welded patch")
/* remedies.txt, remedy insert: name */
N_("let in a new piece")
/* remedies.txt, remedy insert: done */
N_("We let in a new piece of metal")
/* remedies.txt, remedy replace_part: name */
N_("replace the part")
/* remedies.txt, remedy replace_part: done */
N_("We replaced the cracked part")
/* remedies.txt, remedy smooth: name */
N_("smooth and polish")
/* remedies.txt, remedy smooth: done */
N_("We smoothed and polished the edge")
/* remedies.txt, remedy replate: name */
N_("prepare and plate again")
/* remedies.txt, remedy replate: done */
N_("We prepared the surface and plated it again")
/* remedies.txt, remedy refill: name */
N_("refill the worn place")
/* remedies.txt, remedy refill: done */
N_("We filled the worn place with new metal")
/* remedies.txt, remedy respring: name */
N_("bring back the spring")
/* remedies.txt, remedy respring: done */
N_("We gave the spring its force again")
/* remedies.txt, remedy respring_lever: name */
N_("re-spring or replace the lever")
/* remedies.txt, remedy respring_lever: done */
N_("We gave the lever its spring again")
/* remedies.txt, remedy new_tongue: name */
N_("new tongue")
/* remedies.txt, remedy new_tongue: done */
N_("We made a new tongue for the clasp")
/* remedies.txt, remedy build_up_step: name */
N_("build up the step")
/* remedies.txt, remedy build_up_step: done */
N_("We built up the edge that locks the clasp")
/* remedies.txt, remedy close_box: name */
N_("close the box mouth or fit a new lip")
/* remedies.txt, remedy close_box: done */
N_("We closed the mouth of the clasp to fit its tongue")
/* remedies.txt, remedy rebuild_clasp: name */
N_("rebuild the clasp")
/* remedies.txt, remedy rebuild_clasp: done */
N_("We rebuilt the clasp")
/* remedies.txt, remedy replace_clasp: name */
N_("new clasp")
/* remedies.txt, remedy replace_clasp: done */
N_("We fitted a new clasp")
/* remedies.txt, remedy close_gate: name */
N_("close the gate")
/* remedies.txt, remedy close_gate: done */
N_("We closed the gate of the clasp")
/* remedies.txt, remedy raise_dent: name */
N_("raise the dent")
/* remedies.txt, remedy raise_dent: done */
N_("We raised the dent")
/* remedies.txt, remedy reshape_eight: name */
N_("re-shape the safety eight")
/* remedies.txt, remedy reshape_eight: done */
N_("We re-shaped the safety catch so that it snaps")
/* remedies.txt, remedy new_eight: name */
N_("new safety eight")
/* remedies.txt, remedy new_eight: done */
N_("We fitted a new safety catch")
/* remedies.txt, remedy new_safety_chain: name */
N_("new safety chain")
/* remedies.txt, remedy new_safety_chain: done */
N_("We fitted a new safety chain")
/* remedies.txt, remedy fit_safety: name */
N_("fit an eight or a safety chain")
/* remedies.txt, remedy fit_safety: done */
N_("We fitted a safety that holds if the clasp opens")
/* remedies.txt, remedy new_bar: name */
N_("new bar or smaller ring")
/* remedies.txt, remedy new_bar: done */
N_("We fitted a bar that cannot slip through")
/* remedies.txt, remedy reshape_hook: name */
N_("re-shape and harden the hook")
/* remedies.txt, remedy reshape_hook: done */
N_("We re-shaped the hook and hardened it")
/* remedies.txt, remedy new_ring: name */
N_("new ring, round, soldered")
/* remedies.txt, remedy new_ring: done */
N_("We made a new round ring and soldered it shut")
/* remedies.txt, remedy close_ring: name */
N_("close and solder the ring")
/* remedies.txt, remedy close_ring: done */
N_("We closed the ring and soldered it shut")
/* remedies.txt, remedy line_tube: name */
N_("line with tube")
/* remedies.txt, remedy line_tube: done */
N_("We lined the loop with a tube")
/* remedies.txt, remedy new_bail: name */
N_("new bail")
/* remedies.txt, remedy new_bail: done */
N_("We fitted a new loop")
/* remedies.txt, remedy new_pin: name */
N_("new pin, fixed at one end")
/* remedies.txt, remedy new_pin: done */
N_("We fitted a new hinge pin and fixed it")
/* remedies.txt, remedy fix_pin: name */
N_("rivet, solder or weld the pin end")
/* remedies.txt, remedy fix_pin: done */
N_("We fixed the end of the pin")
/* remedies.txt, remedy rebush: name */
N_("rebush with tube")
/* remedies.txt, remedy rebush: done */
N_("We lined the worn hole with a tube")
/* remedies.txt, remedy new_knuckle: name */
N_("new knuckle")
/* remedies.txt, remedy new_knuckle: done */
N_("We fitted a new hinge tube")
/* remedies.txt, remedy resolder_knuckle: name */
N_("solder the knuckle with heat stop")
/* remedies.txt, remedy resolder_knuckle: done */
N_("We soldered the hinge tube in its place again")
/* remedies.txt, remedy add_stop: name */
N_("add a stop")
/* remedies.txt, remedy add_stop: done */
N_("We added a stop")
/* remedies.txt, remedy shorten: name */
N_("shorten")
/* remedies.txt, remedy shorten: done */
N_("We shortened it")
/* remedies.txt, remedy close_links: name */
N_("close the links")
/* remedies.txt, remedy close_links: done */
N_("We closed the links together")
/* remedies.txt, remedy straighten_link: name */
N_("straighten the link")
/* remedies.txt, remedy straighten_link: done */
N_("We straightened the link")
/* remedies.txt, remedy free_link: name */
N_("free the link, take off the burr")
/* remedies.txt, remedy free_link: done */
N_("We freed the link")
/* remedies.txt, remedy rebuild_ear: name */
N_("rebuild or sleeve the ear")
/* remedies.txt, remedy rebuild_ear: done */
N_("We rebuilt the eye of the link")
/* remedies.txt, remedy new_link: name */
N_("new link")
/* remedies.txt, remedy new_link: done */
N_("We made a new link")
/* remedies.txt, remedy half_shank: name */
N_("quarter or half shank")
/* remedies.txt, remedy half_shank: done */
N_("We replaced the worn part of the band")
/* remedies.txt, remedy new_shank: name */
N_("new shank")
/* remedies.txt, remedy new_shank: done */
N_("We made a new band")
/* remedies.txt, remedy resolder_seam: name */
N_("open, clean and solder the seam")
/* remedies.txt, remedy resolder_seam: done */
N_("We opened the seam, cleaned it and soldered it again")
/* remedies.txt, remedy true_ring: name */
N_("true the ring, then check every stone")
/* remedies.txt, remedy true_ring: done */
N_("We made the ring round again and checked every stone")
/* remedies.txt, remedy refill_groove: name */
N_("refill the groove")
/* remedies.txt, remedy refill_groove: done */
N_("We filled the groove with new metal")
/* remedies.txt, remedy join_pair: name */
N_("join the pair or fit a spacer")
/* remedies.txt, remedy join_pair: done */
N_("We joined the two rings so that they no longer rub")
/* remedies.txt, remedy size_ring: name */
N_("size the ring")
/* remedies.txt, remedy size_ring: done */
N_("We sized the ring")
/* remedies.txt, remedy fit_beads: name */
N_("sizing beads or spring insert")
/* remedies.txt, remedy fit_beads: done */
N_("We fitted beads inside so that the ring holds")
/* remedies.txt, remedy replace_chain_part: name */
N_("replace part of the chain")
/* remedies.txt, remedy replace_chain_part: done */
N_("We replaced the worn part of the chain")
/* remedies.txt, remedy replace_chain: name */
N_("replace the chain")
/* remedies.txt, remedy replace_chain: done */
N_("We replaced the chain")
/* remedies.txt, remedy change_chain: name */
N_("heavier chain")
/* remedies.txt, remedy change_chain: done */
N_("We hung the pendant on a heavier chain")
/* remedies.txt, remedy cut_back: name */
N_("cut back and finish anew")
/* remedies.txt, remedy cut_back: done */
N_("We cut the worn end back and finished it anew")
/* remedies.txt, remedy work_out: name */
N_("work out the kink")
/* remedies.txt, remedy work_out: done */
N_("We worked the kink out")
/* remedies.txt, remedy peg_cement: name */
N_("clean, peg and cement")
/* remedies.txt, remedy peg_cement: done */
N_("We cleaned the part, pegged and cemented it")
/* remedies.txt, remedy new_post: name */
N_("new post in a cup")
/* remedies.txt, remedy new_post: done */
N_("We fitted a new post")
/* remedies.txt, remedy straighten_post: name */
N_("straighten the post, once")
/* remedies.txt, remedy straighten_post: done */
N_("We straightened the post")
/* remedies.txt, remedy close_scrolls: name */
N_("close the scrolls")
/* remedies.txt, remedy close_scrolls: done */
N_("We closed the back so that it grips")
/* remedies.txt, remedy new_back: name */
N_("new back")
/* remedies.txt, remedy new_back: done */
N_("We gave the earring a new back")
/* remedies.txt, remedy reshape_clip: name */
N_("re-shape and harden the clip")
/* remedies.txt, remedy reshape_clip: done */
N_("We gave the clip its force again")
/* remedies.txt, remedy adjust_clip: name */
N_("ease the clip")
/* remedies.txt, remedy adjust_clip: done */
N_("We eased the clip")
/* remedies.txt, remedy bend_post: name */
N_("bend the post a little")
/* remedies.txt, remedy bend_post: done */
N_("We bent the post a little so that it clicks")
/* remedies.txt, remedy new_catch: name */
N_("new catch")
/* remedies.txt, remedy new_catch: done */
N_("We fitted a new catch")
/* remedies.txt, remedy new_wire: name */
N_("new ear wire")
/* remedies.txt, remedy new_wire: done */
N_("We made a new ear wire")
/* remedies.txt, remedy nickel_free: name */
N_("nickel-free post or fitting")
/* remedies.txt, remedy nickel_free: done */
N_("We fitted a part without nickel")
/* remedies.txt, remedy tighten_joint: name */
N_("close the joint")
/* remedies.txt, remedy tighten_joint: done */
N_("We closed the joint of the pin")
/* remedies.txt, remedy free_joint: name */
N_("free the joint")
/* remedies.txt, remedy free_joint: done */
N_("We freed the joint of the pin")
/* remedies.txt, remedy new_rivet: name */
N_("new rivet of the same gauge")
/* remedies.txt, remedy new_rivet: done */
N_("We set a new rivet")
/* remedies.txt, remedy rivet: name */
N_("rivet")
/* remedies.txt, remedy rivet: done */
N_("We riveted it")
/* remedies.txt, remedy harden_stem: name */
N_("bend and twist-harden the stem")
/* remedies.txt, remedy harden_stem: done */
N_("We hardened the pin so that it springs")
/* remedies.txt, remedy straighten_stem: name */
N_("straighten and point the stem")
/* remedies.txt, remedy straighten_stem: done */
N_("We straightened the pin and gave it a new point")
/* remedies.txt, remedy new_stem: name */
N_("new stem")
/* remedies.txt, remedy new_stem: done */
N_("We made a new pin")
/* remedies.txt, remedy close_catch: name */
N_("close the catch")
/* remedies.txt, remedy close_catch: done */
N_("We closed the catch")
/* remedies.txt, remedy tighten_roller: name */
N_("tighten the roller")
/* remedies.txt, remedy tighten_roller: done */
N_("We tightened the safety roller")
/* remedies.txt, remedy move_joint: name */
N_("second catch or higher joint")
/* remedies.txt, remedy move_joint: done */
N_("We moved the joint so that it hangs upright")
/* remedies.txt, remedy clear_solder: name */
N_("clear away the soft solder")
/* remedies.txt, remedy clear_solder: done */
N_("We cleared the soft solder away")
/* remedies.txt, remedy true_oval: name */
N_("true on the oval stake")
/* remedies.txt, remedy true_oval: done */
N_("We shaped it so that the halves meet")
/* remedies.txt, remedy harden: name */
N_("harden or thicken")
/* remedies.txt, remedy harden: done */
N_("We hardened it so that it springs")
/* remedies.txt, remedy new_screw: name */
N_("new screw, bush or thread lock")
/* remedies.txt, remedy new_screw: done */
N_("We fitted a new screw")
/* remedies.txt, remedy solder_vent: name */
N_("solder with a vent")
/* remedies.txt, remedy solder_vent: done */
N_("We soldered the seam with a vent and dried it out")
/* remedies.txt, remedy rethread: name */
N_("thread anew and knot")
/* remedies.txt, remedy rethread: done */
N_("We threaded it anew and knotted it")
/* remedies.txt, remedy new_end_wire: name */
N_("new end wire")
/* remedies.txt, remedy new_end_wire: done */
N_("We covered the thread at the clasp anew")
/* remedies.txt, remedy ream_hole: name */
N_("ream or line the hole")
/* remedies.txt, remedy ream_hole: done */
N_("We smoothed the hole")
/* remedies.txt, remedy replace_bead: name */
N_("replace the bead")
/* remedies.txt, remedy replace_bead: done */
N_("We replaced the bead")
/* remedies.txt, remedy new_cable: name */
N_("new cable and crimps")
/* remedies.txt, remedy new_cable: done */
N_("We strung it on new cable")
/* remedies.txt, remedy new_bars: name */
N_("new spring bars of the right length")
/* remedies.txt, remedy new_bars: done */
N_("We fitted new spring bars")
/* remedies.txt, remedy bush_lug: name */
N_("bush or weld the lug")
/* remedies.txt, remedy bush_lug: done */
N_("We bushed the hole in the lug")
/* remedies.txt, remedy adjust_end_link: name */
N_("adjust or replace the end link")
/* remedies.txt, remedy adjust_end_link: done */
N_("We fitted the end link to the case")
/* remedies.txt, remedy new_link_pin: name */
N_("new pin and sleeve")
/* remedies.txt, remedy new_link_pin: done */
N_("We fitted a new pin and sleeve")
/* remedies.txt, remedy refit_screw: name */
N_("refit with thread lock")
/* remedies.txt, remedy refit_screw: done */
N_("We refitted the screw so that it stays")
/* remedies.txt, remedy new_centre_pin: name */
N_("new centre pin, both ends flared")
/* remedies.txt, remedy new_centre_pin: done */
N_("We fitted a new centre pin")
/* remedies.txt, remedy adjust_snap: name */
N_("adjust the snap")
/* remedies.txt, remedy adjust_snap: done */
N_("We adjusted the clasp so that it snaps")
/* remedies.txt, remedy new_button_spring: name */
N_("new button spring")
/* remedies.txt, remedy new_button_spring: done */
N_("We fitted a new spring to the button")
/* remedies.txt, remedy new_strap: name */
N_("new strap")
/* remedies.txt, remedy new_strap: done */
N_("We fitted a new strap")
/* remedies.txt, remedy tighten_toggle: name */
N_("tighten the rivet")
/* remedies.txt, remedy tighten_toggle: done */
N_("We tightened the swing bar")
/* remedies.txt, remedy new_toggle: name */
N_("new toggle")
/* remedies.txt, remedy new_toggle: done */
N_("We fitted a new swing bar")
/* remedies.txt, remedy sleeve: name */
N_("sleeve the joint")
/* remedies.txt, remedy sleeve: done */
N_("We sleeved the joint and soldered it")
/* remedies.txt, remedy add_link: name */
N_("add a link")
/* remedies.txt, remedy add_link: done */
N_("We added a link")
/* remedies.txt, remedy close_fingers: name */
N_("close the spring fingers")
/* remedies.txt, remedy close_fingers: done */
N_("We closed the spring fingers")
/* remedies.txt, remedy cold_fill: name */
N_("cold fill; re-firing is specialist work")
/* remedies.txt, remedy cold_fill: done */
N_("We filled the enamel without heat")
/* remedies.txt, remedy recement: name */
N_("cement or set again")
/* remedies.txt, remedy recement: done */
N_("We set the inlay firmly again")
/* remedies.txt, remedy mend_lip: name */
N_("raise the lip, burnish")
/* remedies.txt, remedy mend_lip: done */
N_("We raised the lip so that it closes")
/* remedies.txt, remedy new_snap_bead: name */
N_("new snap bead")
/* remedies.txt, remedy new_snap_bead: done */
N_("We raised a new bead that snaps")
/* remedies.txt, remedy true_locket: name */
N_("true the halves")
/* remedies.txt, remedy true_locket: done */
N_("We brought the halves in line")
/* remedies.txt, remedy new_inner_ring: name */
N_("new inner ring")
/* remedies.txt, remedy new_inner_ring: done */
N_("We made a new ring for the picture")
/* remedies.txt, remedy new_glass: name */
N_("new glass")
/* remedies.txt, remedy new_glass: done */
N_("We fitted new glass")
/* remedies.txt, remedy keep_contents: name */
N_("keep apart, labelled")
/* remedies.txt, remedy keep_contents: done */
N_("We kept the contents apart and put them back")
/* remedies.txt, remedy new_nick: name */
N_("file a new nick")
/* remedies.txt, remedy new_nick: done */
N_("We cut a new nick for the thumbnail")
/* remedies.txt, remedy keep_clear: name */
N_("keep flame, file and wheel away")
/* remedies.txt, remedy keep_clear: done */
N_("We kept the marks clear of the work")
/* remedies.txt, remedy note_only: name */
N_("write it down")
/* remedies.txt, remedy note_only: done */
N_("We wrote it down")
/* remedies.txt, remedy licensed_help: name */
N_("hand to a licensed service")
/* remedies.txt, remedy licensed_help: done */
N_("We handed it to a licensed service")
/* remedies.txt, remedy advise_pool: name */
N_("advise against pools and bleach")
/* remedies.txt, remedy advise_pool: done */
N_("We advised to take it off for pools and cleaning")
/* remedies.txt, remedy advise_child: name */
N_("advise the parents")
/* remedies.txt, remedy advise_child: done */
N_("We advised about its use by a child")
/* solders.txt, solder ag_enam: name */
N_("Silver solder, enamelling")
/* solders.txt, solder ag_enam: grade */
N_("enamelling")
/* solders.txt, solder ag_enam: fineness_text */
N_("Ag 800 class")
/* solders.txt, solder ag_xh: name */
N_("Silver solder, extra hard")
/* solders.txt, solder ag_xh: grade */
N_("extra hard")
/* solders.txt, solder ag_xh: fineness_text */
N_("Ag 800 Cu 160 Zn 40")
/* solders.txt, solder ag_xh: source_note */
N_("flow: printed as melt point; R31: another page says 740 for the 80 % kind: R32")
/* solders.txt, solder ag_h: name */
N_("Silver solder, hard")
/* solders.txt, solder ag_h: grade */
N_("hard")
/* solders.txt, solder ag_h: fineness_text */
N_("Ag 750 Cu 220 Zn 30")
/* solders.txt, solder ag_h: source_note */
N_("solidus: 741 on another page; R33: melt; M: flow")
/* solders.txt, solder ag_m: name */
N_("Silver solder, medium")
/* solders.txt, solder ag_m: grade */
N_("medium")
/* solders.txt, solder ag_m: fineness_text */
N_("Ag 700 Cu 200 Zn 100")
/* solders.txt, solder ag_m: source_note */
N_("R31: 691")
/* solders.txt, solder ag_e: name */
N_("Silver solder, easy")
/* solders.txt, solder ag_e: grade */
N_("easy")
/* solders.txt, solder ag_e: fineness_text */
N_("Ag 650 Cu 200 Zn 150")
/* solders.txt, solder ag_e: source_note */
N_("R31: 670")
/* solders.txt, solder ag_xe: name */
N_("Silver solder, extra easy")
/* solders.txt, solder ag_xe: grade */
N_("extra easy")
/* solders.txt, solder ag_xe: fineness_text */
N_("Ag 560 to 580, Cu, Zn (Sn)")
/* solders.txt, solder ag_xe: source_note */
N_("R31: 629; R32: 618")
/* solders.txt, solder ag_xe2: name */
N_("Silver solder, very low, old repair kind")
/* solders.txt, solder ag_xe2: grade */
N_("very low")
/* solders.txt, solder ag_xe2: fineness_text */
N_("Ag 450 to 500 with zinc, once with cadmium")
/* solders.txt, solder au22_h: name */
N_("22 k yellow gold solder, hard")
/* solders.txt, solder au22_h: fineness_text */
N_("916 or 750 plumb")
/* solders.txt, solder au18_h: name */
N_("18 k yellow gold solder, hard")
/* solders.txt, solder au18_h: fineness_text */
N_("750")
/* solders.txt, solder au18_m: name */
N_("18 k yellow gold solder, medium")
/* solders.txt, solder au18_e: name */
N_("18 k yellow gold solder, easy")
/* solders.txt, solder au18w_h: name */
N_("18 k white gold solder, hard")
/* solders.txt, solder au18w_h: fineness_text */
N_("750 or 500 rule")
/* solders.txt, solder au18w_e: name */
N_("18 k white gold solder, easy")
/* solders.txt, solder au18r_m: name */
N_("18 k rose gold solder, medium")
/* solders.txt, solder au14_h: name */
N_("14 k yellow gold solder, hard")
/* solders.txt, solder au14_h: fineness_text */
N_("585")
/* solders.txt, solder au14_m: name */
N_("14 k yellow gold solder, medium")
/* solders.txt, solder au14_e: name */
N_("14 k yellow gold solder, easy")
/* solders.txt, solder au14w_h: name */
N_("14 k white gold solder, hard")
/* solders.txt, solder au14w_h: fineness_text */
N_("585 or 500 rule")
/* solders.txt, solder au14w_e: name */
N_("14 k white gold solder, easy")
/* solders.txt, solder au14r_m: name */
N_("14 k rose gold solder, medium")
/* solders.txt, solder au09_h: name */
N_("9 k yellow gold solder, hard")
/* solders.txt, solder au09_h: fineness_text */
N_("375")
/* solders.txt, solder au09_m: name */
N_("9 k yellow gold solder, medium")
/* solders.txt, solder au09_e: name */
N_("9 k yellow gold solder, easy")
/* solders.txt, solder au09_xe: name */
N_("9 k yellow gold solder, extra easy")
/* solders.txt, solder pt1700: name */
N_("Platinum solder, flow 1700 °C")
/* solders.txt, solder pt1700: grade */
N_("flow 1700 °C")
/* solders.txt, solder pt1700: fineness_text */
N_("platinum-rich, near seamless")
/* solders.txt, solder pt1700: source_note */
N_("R3: use; M: solidus")
/* solders.txt, solder pt1600: name */
N_("Platinum solder, flow 1600 °C")
/* solders.txt, solder pt1600: grade */
N_("flow 1600 °C")
/* solders.txt, solder pt1600: fineness_text */
N_("platinum-gold-palladium")
/* solders.txt, solder pt1500: name */
N_("Platinum solder, flow 1500 °C")
/* solders.txt, solder pt1500: grade */
N_("flow 1500 °C")
/* solders.txt, solder pt1500: fineness_text */
N_("palladium-gold or palladium-silver rich")
/* solders.txt, solder pt1500: source_note */
N_("R2: use")
/* solders.txt, solder pt1400: name */
N_("Platinum solder, flow 1400 °C")
/* solders.txt, solder pt1400: grade */
N_("flow 1400 °C")
/* solders.txt, solder pt1400: fineness_text */
N_("as above")
/* solders.txt, solder pt1300: name */
N_("Platinum solder, flow 1300 °C")
/* solders.txt, solder pt1300: grade */
N_("flow 1300 °C")
/* solders.txt, solder pt1300: fineness_text */
N_("gold-palladium rich")
/* solders.txt, solder pt1300: source_note */
N_("R9: use on palladium")
/* solders.txt, solder pt1200: name */
N_("Platinum solder, flow 1200 °C")
/* solders.txt, solder pt1200: grade */
N_("flow 1200 °C")
/* solders.txt, solder pt1100: name */
N_("Platinum solder, flow 1100 °C")
/* solders.txt, solder pt1100: grade */
N_("flow 1100 °C")
/* solders.txt, solder pt1100: fineness_text */
N_("gold-palladium-silver")
/* solders.txt, solder pt1000: name */
N_("Platinum solder, flow 1000 °C")
/* solders.txt, solder pt1000: grade */
N_("flow 1000 °C")
/* solders.txt, solder pt1000: fineness_text */
N_("gold- or silver-rich, poor colour; for findings only")
/* solders.txt, solder pd_h: name */
N_("Palladium solder, hard")
/* solders.txt, solder pd_h: source_note */
N_("flow: 2365 F")
/* solders.txt, solder pd_m: name */
N_("Palladium solder, medium")
/* solders.txt, solder pd_m: source_note */
N_("flow: 2210 F")
/* solders.txt, solder pd_e: name */
N_("Palladium solder, easy")
/* solders.txt, solder pd_e: source_note */
N_("flow: 2005 F")
/* sources.txt, source N: words */
N_("named standard or law, cited from memory")
/* sources.txt, source C: words */
N_("common practice, no source")
/* sources.txt, source M: words */
N_("from memory, unverified")
/* sources.txt, source P: words */
N_("our own proposal")
/* sources.txt, source calc: words */
N_("computed")
/* sources.txt, source R1: words */
N_("published source")
/* stones.txt, stone diamond: name */
N_("Diamond, untreated")
/* stones.txt, stone diamond: trouble */
N_("About 700 to 850 °C in air (bench trial: burnt look after 1 h at 725 °C)")
/* stones.txt, stone diamond: happens */
N_("Surface oxidises to a milky skin (can be repolished with weight loss); burns near 900 and above in oxygen; without air stable far higher")
/* stones.txt, stone diamond: shock */
N_("Low to moderate, higher if included")
/* stones.txt, stone diamond: caveat */
N_("Flat open culets, thin girdles and heavy inclusions raise the risk; pickle: yes, when cool")
/* stones.txt, stone diamond_ff: name */
N_("Diamond, fracture-filled")
/* stones.txt, stone diamond_ff: trouble */
N_("About 400 °C")
/* stones.txt, stone diamond_ff: happens */
N_("Filling melts, clouds or runs")
/* stones.txt, stone diamond_ff: shock */
N_("High")
/* stones.txt, stone diamond_ff: caveat */
N_("Flash effect under the loupe; ask the owner")
/* stones.txt, stone diamond_lab: name */
N_("Diamond, laboratory-grown")
/* stones.txt, stone diamond_lab: trouble */
N_("As natural")
/* stones.txt, stone diamond_lab: happens */
N_("As natural; some colours made after growth may change")
/* stones.txt, stone diamond_lab: shock */
N_("Low to moderate")
/* stones.txt, stone ruby: name */
N_("Ruby, untreated or simply heated")
/* stones.txt, stone ruby: trouble */
N_("Melts about 2040 °C; colour may shift while hot and come back")
/* stones.txt, stone ruby: happens */
N_("Flux and boric acid etch the surface")
/* stones.txt, stone ruby: shock */
N_("Moderate")
/* stones.txt, stone ruby: caveat */
N_("Star stones and cabochons split sooner; fillings; pickle: yes, no flux left")
/* stones.txt, stone ruby_gf: name */
N_("Ruby, glass-filled")
/* stones.txt, stone ruby_gf: trouble */
N_("About 500 to 700 °C")
/* stones.txt, stone ruby_gf: happens */
N_("Glass bubbles, whitens")
/* stones.txt, stone ruby_gf: caveat */
N_("Very common in cheap goods")
/* stones.txt, stone sapphire: name */
N_("Sapphire, blue and most colours")
/* stones.txt, stone sapphire: trouble */
N_("As ruby")
/* stones.txt, stone sapphire: caveat */
N_("Yellow and orange ones may bleach: treat as out; water-filled inclusions burst in unheated stones")
/* stones.txt, stone sapphire_y: name */
N_("Sapphire, yellow, orange, padparadscha")
/* stones.txt, stone sapphire_y: trouble */
N_("300 to 600 °C")
/* stones.txt, stone sapphire_y: happens */
N_("May turn colourless")
/* stones.txt, stone sapphire_y: caveat */
N_("One report of a whole ring gone white")
/* stones.txt, stone corundum_syn: name */
N_("Synthetic corundum")
/* stones.txt, stone chrysoberyl: name */
N_("Chrysoberyl, cat's-eye, alexandrite")
/* stones.txt, stone chrysoberyl: trouble */
N_("Above 900 °C")
/* stones.txt, stone chrysoberyl: happens */
N_("Little change")
/* stones.txt, stone chrysoberyl: caveat */
N_("Price alone says take it out")
/* stones.txt, stone spinel: name */
N_("Spinel")
/* stones.txt, stone spinel: trouble */
N_("About 900 °C; reds may brown then come back")
/* stones.txt, stone spinel: happens */
N_("Included stones crack")
/* stones.txt, stone spinel: caveat */
N_("Synthetic spinel stands heat well")
/* stones.txt, stone topaz: name */
N_("Topaz")
/* stones.txt, stone topaz: trouble */
N_("250 to 450 °C; irradiated blue fades from about 500 °C")
/* stones.txt, stone topaz: happens */
N_("Brown fades, pink comes or goes, cleaves")
/* stones.txt, stone topaz: shock */
N_("Very high, perfect cleavage")
/* stones.txt, stone topaz: caveat */
N_("Coated stones lose the coating")
/* stones.txt, stone emerald: name */
N_("Emerald")
/* stones.txt, stone emerald: trouble */
N_("About 100 °C for oil, 300 °C and up for the stone")
/* stones.txt, stone emerald: happens */
N_("Fractures open, oil runs, whitens")
/* stones.txt, stone emerald: shock */
N_("Very high")
/* stones.txt, stone emerald: caveat */
N_("Nearly all are filled")
/* stones.txt, stone aqua: name */
N_("Aquamarine")
/* stones.txt, stone aqua: trouble */
N_("400 to 450 °C is the treatment heat; above it dulls")
/* stones.txt, stone aqua: happens */
N_("Goes greenish or pale when overheated")
/* stones.txt, stone morganite: name */
N_("Morganite, heliodor")
/* stones.txt, stone morganite: happens */
N_("Loses orange or yellow part")
/* stones.txt, stone tourmaline: name */
N_("Tourmaline, all")
/* stones.txt, stone tourmaline: trouble */
N_("300 to 550 °C")
/* stones.txt, stone tourmaline: happens */
N_("Colour shifts; liquid inclusions burst")
/* stones.txt, stone garnet_alm: name */
N_("Garnet, almandine, pyrope, rhodolite")
/* stones.txt, stone garnet_alm: trouble */
N_("500 to 700 °C")
/* stones.txt, stone garnet_alm: happens */
N_("Darkens, fractures inside")
/* stones.txt, stone garnet_alm: caveat */
N_("Heat: guard under 3 mm")
/* stones.txt, stone garnet_gro: name */
N_("Garnet, tsavorite, hessonite")
/* stones.txt, stone garnet_gro: happens */
N_("As above")
/* stones.txt, stone garnet_dem: name */
N_("Garnet, demantoid")
/* stones.txt, stone garnet_dem: trouble */
N_("400 to 700 °C")
/* stones.txt, stone garnet_dem: happens */
N_("As above; softer")
/* stones.txt, stone zircon: name */
N_("Zircon, blue, white, brown")
/* stones.txt, stone zircon: trouble */
N_("200 to 400 °C")
/* stones.txt, stone zircon: happens */
N_("Colour goes back or turns; facet edges chip")
/* stones.txt, stone zircon: caveat */
N_("Keep from strong light after treatment")
/* stones.txt, stone amethyst: name */
N_("Amethyst")
/* stones.txt, stone amethyst: trouble */
N_("Violet lost from about 420 °C; citrine colour above 440 °C, best yellow about 560 °C")
/* stones.txt, stone amethyst: happens */
N_("Goes green-grey, then yellow; quartz changes form at 573")
/* stones.txt, stone amethyst: caveat */
N_("Fades in long sun")
/* stones.txt, stone citrine: name */
N_("Citrine, ametrine")
/* stones.txt, stone citrine: trouble */
N_("About 500 to 575 °C")
/* stones.txt, stone citrine: happens */
N_("Deepens, then milky")
/* stones.txt, stone quartz: name */
N_("Rock crystal, smoky, rose")
/* stones.txt, stone quartz: trouble */
N_("Smoky about 250 to 400 °C; 573 °C inversion")
/* stones.txt, stone quartz: happens */
N_("Bleaches, cracks")
/* stones.txt, stone quartz: caveat */
N_("Rutilated and included stones never")
/* stones.txt, stone quartz: source_note */
N_("N: 573 °C, any mineralogy handbook")
/* stones.txt, stone chalced: name */
N_("Chalcedony, carnelian, agate, onyx, jasper")
/* stones.txt, stone chalced: trouble */
N_("250 to 400 °C")
/* stones.txt, stone chalced: happens */
N_("Dyes change, whitens, crazes")
/* stones.txt, stone chalced: shock */
N_("Moderate to high")
/* stones.txt, stone chalced: caveat */
N_("Most are dyed; pickle: care (dyed: no); ultrasonic: yes (dyed: no); steam: yes (dyed: no)")
/* stones.txt, stone opal: name */
N_("Opal, solid")
/* stones.txt, stone opal: trouble */
N_("About 60 to 100 °C")
/* stones.txt, stone opal: happens */
N_("Loses water, crazes, play of colour goes")
/* stones.txt, stone opal: shock */
N_("Extreme")
/* stones.txt, stone opal: caveat */
N_("Never let it dry hot or freeze")
/* stones.txt, stone opal_dt: name */
N_("Opal doublet, triplet")
/* stones.txt, stone opal_dt: trouble */
N_("About 60 °C")
/* stones.txt, stone opal_dt: happens */
N_("Glue lets go, clouds")
/* stones.txt, stone opal_dt: caveat */
N_("Also keep from soaking")
/* stones.txt, stone opal_syn: name */
N_("Synthetic or imitation opal")
/* stones.txt, stone opal_syn: trouble */
N_("100 to 250 °C")
/* stones.txt, stone opal_syn: happens */
N_("Browns, crazes")
/* stones.txt, stone tanzanite: name */
N_("Tanzanite (zoisite)")
/* stones.txt, stone tanzanite: trouble */
N_("Treatment heat is about 400 to 600 °C, but it cracks long before from uneven heat")
/* stones.txt, stone tanzanite: happens */
N_("Fractures, cleaves")
/* stones.txt, stone tanzanite: caveat */
N_("Laboratories keep seeing stones broken in the ultrasonic")
/* stones.txt, stone peridot: name */
N_("Peridot")
/* stones.txt, stone peridot: trouble */
N_("300 to 500 °C")
/* stones.txt, stone peridot: happens */
N_("Cracks; acid etches")
/* stones.txt, stone spodumene: name */
N_("Kunzite, hiddenite")
/* stones.txt, stone spodumene: trouble */
N_("200 to 500 °C")
/* stones.txt, stone spodumene: happens */
N_("Bleaches, cleaves")
/* stones.txt, stone spodumene: caveat */
N_("Fades in light")
/* stones.txt, stone iolite: name */
N_("Iolite")
/* stones.txt, stone iolite: trouble */
N_("400 °C and up")
/* stones.txt, stone iolite: happens */
N_("Dulls, cleaves")
/* stones.txt, stone moonst: name */
N_("Moonstone, labradorite, sunstone")
/* stones.txt, stone moonst: trouble */
N_("200 °C and up")
/* stones.txt, stone moonst: happens */
N_("Cleaves")
/* stones.txt, stone diopside: name */
N_("Diopside, chrome")
/* stones.txt, stone diopside: trouble */
N_("300 °C and up")
/* stones.txt, stone apatite: name */
N_("Apatite")
/* stones.txt, stone apatite: happens */
N_("Fades, cracks; acid eats it")
/* stones.txt, stone jade_j: name */
N_("Jadeite")
/* stones.txt, stone jade_j: trouble */
N_("200 to 400 °C, far lower if resin-treated")
/* stones.txt, stone jade_j: happens */
N_("Resin browns")
/* stones.txt, stone jade_j: caveat */
N_("Wax finish lost")
/* stones.txt, stone jade_j: source_note */
N_("R50: stricter")
/* stones.txt, stone jade_n: name */
N_("Nephrite")
/* stones.txt, stone jade_n: happens */
N_("Whitens")
/* stones.txt, stone turquoise: name */
N_("Turquoise")
/* stones.txt, stone turquoise: trouble */
N_("About 100 to 250 °C")
/* stones.txt, stone turquoise: happens */
N_("Greens, browns, cracks; stabiliser burns")
/* stones.txt, stone turquoise: caveat */
N_("Oils and soap stain it")
/* stones.txt, stone lapis: name */
N_("Lapis lazuli")
/* stones.txt, stone lapis: happens */
N_("Dye and wax go, cracks; acid eats its calcite, smells of sulphur")
/* stones.txt, stone malachite: name */
N_("Malachite, azurite")
/* stones.txt, stone malachite: trouble */
N_("About 200 °C")
/* stones.txt, stone malachite: happens */
N_("Blackens; dissolves in acid")
/* stones.txt, stone malachite: caveat */
N_("Dust is harmful")
/* stones.txt, stone coral: name */
N_("Coral")
/* stones.txt, stone coral: trouble */
N_("About 150 to 300 °C")
/* stones.txt, stone coral: happens */
N_("Bleaches, chars; fizzes in acid")
/* stones.txt, stone pearl: name */
N_("Pearl, cultured and natural, mother-of-pearl")
/* stones.txt, stone pearl: happens */
N_("Nacre cracks, yellows, chars; any acid dissolves it")
/* stones.txt, stone pearl: caveat */
N_("Keep from perfume and solvents; glue in cups softens with heat")
/* stones.txt, stone amber: name */
N_("Amber, copal")
/* stones.txt, stone amber: trouble */
N_("Softens about 150 °C, spoils from about 200 °C")
/* stones.txt, stone amber: happens */
N_("Crazes, melts, burns; alcohol attacks copal")
/* stones.txt, stone amber: source_note */
N_("N: gemmology handbooks")
/* stones.txt, stone ivory: name */
N_("Ivory, bone, horn, tortoiseshell, jet")
/* stones.txt, stone ivory: trouble */
N_("About 80 to 150 °C")
/* stones.txt, stone ivory: happens */
N_("Warps, chars")
/* stones.txt, stone ivory: caveat */
N_("Trade in several of these is restricted by law")
/* stones.txt, stone shell: name */
N_("Shell cameo")
/* stones.txt, stone shell: trouble */
N_("About 100 °C")
/* stones.txt, stone shell: happens */
N_("Whitens, cracks; acid eats it")
/* stones.txt, stone shell: caveat */
N_("Hold to the light to see cracks")
/* stones.txt, stone shell: source_note */
N_("R51: care")
/* stones.txt, stone hematite: name */
N_("Haematite, marcasite (pyrite)")
/* stones.txt, stone hematite: happens */
N_("Tarnishes, sulphurs")
/* stones.txt, stone hematite: caveat */
N_("R51 calls both safe; marcasite is often glued, hence care")
/* stones.txt, stone cz: name */
N_("Cubic zirconia")
/* stones.txt, stone cz: trouble */
N_("800 °C and up if uneven")
/* stones.txt, stone cz: happens */
N_("Goes milky or cracks if quenched or red-hot in a tight tube")
/* stones.txt, stone cz: caveat */
N_("Heat and cool slowly; pickle: yes, cold")
/* stones.txt, stone moissanite: name */
N_("Synthetic moissanite")
/* stones.txt, stone moissanite: trouble */
N_("About 1100 °C and up")
/* stones.txt, stone moissanite: happens */
N_("Turns yellow while hot and comes back; surface spoils after repeated torching")
/* stones.txt, stone moissanite: shock */
N_("Low")
/* stones.txt, stone glass: name */
N_("Glass, paste, crystal, foil-back")
/* stones.txt, stone glass: happens */
N_("Cracks, softens, foil dies")
/* stones.txt, stone glass: caveat */
N_("Old paste may hold lead")
/* stones.txt, stone enamel: name */
N_("Enamel on the piece")
/* stones.txt, stone enamel: trouble */
N_("500 to 750 °C (fired at 700 to 850 °C)")
/* stones.txt, stone enamel: happens */
N_("Crazes, flakes near the flame")
/* stones.txt, stone enamel: caveat */
N_("Hot re-firing is specialist work")
/* tempers.txt, temper h_pt: name */
N_("Platinum alloys")
/* tempers.txt, temper h_pt: anneal */
N_("Relieve stress about 600 °C; soften about 1000 °C (bright orange), hold briefly, not longer than needed or grain grows")
/* tempers.txt, temper h_pt: cooling */
N_("Air or water")
/* tempers.txt, temper h_pt: hardening */
N_("Cold work only for most; do not reduce by more than about 70 % between anneals")
/* tempers.txt, temper h_pt: note */
N_("Clean first: any gold, silver or steel on the surface alloys in; no carbon block, no reducing flame; soft ceramics and tungsten or carbide points")
/* tempers.txt, temper h_ptco: anneal */
N_("As platinum; oxidises lightly when heated above about 1000 °C")
/* tempers.txt, temper h_ptco: cooling */
N_("Air")
/* tempers.txt, temper h_ptco: hardening */
N_("Cold work")
/* tempers.txt, temper h_ptco: note */
N_("Slightly magnetic: a magnet tells it; light oxide wipes off or leaves with a fire-coat and pickle")
/* tempers.txt, temper h_auy: name */
N_("Yellow gold 14 to 18 k")
/* tempers.txt, temper h_auy: anneal */
N_("550 to 650 °C, dull red, 5 to 15 min")
/* tempers.txt, temper h_auy: cooling */
N_("Quench after the red has gone")
/* tempers.txt, temper h_auy: hardening */
N_("Cold work; many kinds also age-harden at 250 to 300 °C")
/* tempers.txt, temper h_auy: note */
N_("Over-reduction without annealing cracks edges")
/* tempers.txt, temper h_aur: name */
N_("Rose gold")
/* tempers.txt, temper h_aur: anneal */
N_("600 to 650 °C")
/* tempers.txt, temper h_aur: cooling */
N_("Quench promptly from about 500 °C; slow cooling orders and embrittles high-copper golds")
/* tempers.txt, temper h_aur: hardening */
N_("Age-hardens strongly")
/* tempers.txt, temper h_aur: note */
N_("Never leave to cool slowly on the block")
/* tempers.txt, temper h_auwn: name */
N_("Nickel white gold")
/* tempers.txt, temper h_auwn: anneal */
N_("About 760 °C; reduce 40 to 50 % before annealing, since small reductions crack")
/* tempers.txt, temper h_auwn: cooling */
N_("One maker's note: cool in air, do not quench; bench talk on 18 k: let the red fade, then quench, else it age-hardens. Follow the alloy's own sheet")
/* tempers.txt, temper h_auwn: hardening */
N_("Cold work; age")
/* tempers.txt, temper h_auwn: note */
N_("Fire-cracking on sudden heat; spring-hard in use, good for tongues and claws")
/* tempers.txt, temper h_auwn: source_note */
N_("R26: the two disagree")
/* tempers.txt, temper h_auwp: name */
N_("Palladium white gold")
/* tempers.txt, temper h_auwp: anneal */
N_("650 to 750 °C")
/* tempers.txt, temper h_auwp: note */
N_("Softer, sticky under the file; no nickel question")
/* tempers.txt, temper h_ag: name */
N_("Sterling")
/* tempers.txt, temper h_ag: hardening */
N_("Cold work; solution-treat about 750 °C then 300 °C for 1 h lifts annealed silver to about 110 to 120 HV, up to about 150 HV in the best case")
/* tempers.txt, temper h_ag: note */
N_("Solution treatment melts silver solders, so it is only for unsoldered parts")
/* tempers.txt, temper h_ag: source_note */
N_("R27: 110-120; R28: 150")
/* tempers.txt, temper h_agd: name */
N_("Deoxidised silver 935")
/* tempers.txt, temper h_agd: anneal */
N_("580 to 620 °C, it shows little colour")
/* tempers.txt, temper h_agd: cooling */
N_("Air first, it is weak when red; then quench")
/* tempers.txt, temper h_agd: hardening */
N_("Age about 300 °C, 45 to 60 min, also after soldering")
/* tempers.txt, temper h_agd: note */
N_("Keep supported when hot")
/* tempers.txt, temper h_pd: name */
N_("Palladium 950")
/* tempers.txt, temper h_pd: anneal */
N_("800 to 1000 °C by kind")
/* tempers.txt, temper h_pd: cooling */
N_("By the alloy's sheet")
/* tempers.txt, temper h_pd: note */
N_("Takes up gases; no flux, no fire-coat; eye shade 5 or darker")
/* tempers.txt, temper h_pd: source_note */
N_("M: anneal")
/* tempers.txt, temper h_ss: name */
N_("Stainless 316L")
/* tempers.txt, temper h_ss: anneal */
N_("Not usual at the bench (about 1050 °C, protective gas)")
/* tempers.txt, temper h_ss: note */
N_("Soldering needs special flux; heat tint; laser or pulse-arc weld preferred")
/* tempers.txt, temper h_ti: anneal */
N_("Not usual at the bench")
/* tempers.txt, temper h_ti: note */
N_("No torch soldering in air; weld under argon or mend cold; fine chips burn")
/* tests.txt, test t01: test */
N_("Close ten times and listen; then pull in line, sideways and with a quarter twist")
/* tests.txt, test t01: passes */
N_("Clear click each time; stays shut; opens only by the thumb piece")
/* tests.txt, test t01: customer */
N_("Closed ten times, pulled by hand in line and sideways")
/* tests.txt, test t02: mechanism */
N_("Spring of the tongue")
/* tests.txt, test t02: test */
N_("Press flat 20 times; measure the rest height before and after")
/* tests.txt, test t02: passes */
N_("Rest height changes by less than 5 %")
/* tests.txt, test t02: customer */
N_("Pressed flat 20 times, rest height measured")
/* tests.txt, test t03: test */
N_("Snap on and off ten times")
/* tests.txt, test t03: passes */
N_("Snaps over the ball, no free swing")
/* tests.txt, test t03: customer */
N_("Snapped on and off ten times")
/* tests.txt, test t04: test */
N_("Pull gently; check that the end rings are closed")
/* tests.txt, test t04: passes */
N_("All rings soldered; chain shorter than the way needed to pass the hand")
/* tests.txt, test t04: customer */
N_("Pulled gently, all rings closed")
/* tests.txt, test t05: mechanism */
N_("Spring ring and lobster")
/* tests.txt, test t05: test */
N_("Open fully ten times")
/* tests.txt, test t05: passes */
N_("Shuts by itself, no gap")
/* tests.txt, test t05: customer */
N_("Opened fully ten times, shuts by itself")
/* tests.txt, test t06: mechanism */
N_("Jump ring and bail")
/* tests.txt, test t06: test */
N_("Loupe at the seam; try to turn the seam with plastic-jawed pliers")
/* tests.txt, test t06: passes */
N_("Seam closed all through, no line opens")
/* tests.txt, test t06: customer */
N_("Seam closed under the loupe")
/* tests.txt, test t07: test */
N_("Open and close the full way ten times; side play by gauge")
/* tests.txt, test t07: passes */
N_("Even friction, play under 0.1 mm, pin flush")
/* tests.txt, test t07: customer */
N_("Opened and closed ten times, play measured")
/* tests.txt, test t08: test */
N_("Drape over a finger, both ways; droop test sideways; run along a nylon cloth")
/* tests.txt, test t08: passes */
N_("Every link bends freely, small sideways sag, no thread caught")
/* tests.txt, test t08: customer */
N_("Draped over a finger both ways, no thread caught")
/* tests.txt, test t09: mechanism */
N_("Claw or bead setting")
/* tests.txt, test t09: test */
N_("Push with wood, rock, tap, thread, against the light")
/* tests.txt, test t09: passes */
N_("No movement, no tick, no catch, no gap")
/* tests.txt, test t09: customer */
N_("Pushed, tapped and drawn over cloth: firm")
/* tests.txt, test t10: mechanism */
N_("Rim setting")
/* tests.txt, test t10: test */
N_("Push with wood, sticky wax")
/* tests.txt, test t10: passes */
N_("No turn")
/* tests.txt, test t10: customer */
N_("Pushed and pulled with wax: firm")
/* tests.txt, test t11: mechanism */
N_("Ring shank")
/* tests.txt, test t11: test */
N_("Mandrel for round and size; loupe at the seam; light flex between fingers")
/* tests.txt, test t11: passes */
N_("Round, right size, no line in the seam")
/* tests.txt, test t11: customer */
N_("Round and in size on the mandrel, seam whole")
/* tests.txt, test t12: mechanism */
N_("Retipped claw")
/* tests.txt, test t12: test */
N_("Loupe for full contact, height and cover")
/* tests.txt, test t12: passes */
N_("60 to 80 % height, 30 to 50 % cover, smooth")
/* tests.txt, test t12: customer */
N_("Height and cover of the claws checked under the loupe")
/* tests.txt, test t13: mechanism */
N_("Earring post")
/* tests.txt, test t13: test */
N_("Bend sideways by a hair and let go; wiggle; pull")
/* tests.txt, test t13: passes */
N_("Springs back, no movement at the foot")
/* tests.txt, test t13: customer */
N_("Bent, wiggled and pulled: firm")
/* tests.txt, test t14: mechanism */
N_("Earring back")
/* tests.txt, test t14: test */
N_("Slide on; shake; pull")
/* tests.txt, test t14: passes */
N_("Needs a clear pull, does not fall")
/* tests.txt, test t14: customer */
N_("Shaken and pulled: stays on")
/* tests.txt, test t15: mechanism */
N_("Hinged hoop and lever back")
/* tests.txt, test t15: test */
N_("Click ten times")
/* tests.txt, test t15: passes */
N_("Clicks and holds")
/* tests.txt, test t15: customer */
N_("Clicked shut ten times")
/* tests.txt, test t16: mechanism */
N_("Brooch pin")
/* tests.txt, test t16: test */
N_("Open to 90 degrees; let go near the catch; shake")
/* tests.txt, test t16: passes */
N_("No rattle, lies with spring, point just past the catch")
/* tests.txt, test t16: customer */
N_("Opened wide and shaken: no rattle")
/* tests.txt, test t17: mechanism */
N_("Brooch safety catch")
/* tests.txt, test t17: test */
N_("Turn to the stop")
/* tests.txt, test t17: passes */
N_("Turns with friction and stops")
/* tests.txt, test t17: customer */
N_("Turned to its stop")
/* tests.txt, test t18: test */
N_("Run through the fingers, both ways; pull by section")
/* tests.txt, test t18: passes */
N_("No stiff place, no catch, no open link")
/* tests.txt, test t18: customer */
N_("Run through the fingers both ways and pulled")
/* tests.txt, test t19: mechanism */
N_("Strand")
/* tests.txt, test t19: test */
N_("Try to slide each bead; hang by the clasp for a minute")
/* tests.txt, test t19: passes */
N_("No bead slides by 1 mm; knots do not pull in")
/* tests.txt, test t19: customer */
N_("Each bead tried, hung by its clasp")
/* tests.txt, test t20: test */
N_("Pull each spring bar, bend the clasp, shake")
/* tests.txt, test t20: passes */
N_("Bars stay, clasp snaps, pins flush")
/* tests.txt, test t20: customer */
N_("Each bar pulled, clasp snapped, shaken")
/* tests.txt, test t21: mechanism */
N_("Cufflink toggle")
/* tests.txt, test t21: test */
N_("Swing ten times")
/* tests.txt, test t21: customer */
N_("Swung ten times")
/* tests.txt, test t22: test */
N_("Close, shake, turn over")
/* tests.txt, test t22: passes */
N_("Stays shut, even line")
/* tests.txt, test t22: customer */
N_("Shaken and turned over: stays shut")
/* tests.txt, test t23: mechanism */
N_("Acid left over")
/* tests.txt, test t23: test */
N_("Rinse, neutralise with bicarbonate water, rinse, dry warm; damp indicator paper on seams and hollows")
/* tests.txt, test t23: passes */
N_("Paper neutral; no frost or green after a night")
/* tests.txt, test t23: customer */
N_("Rinsed and tested free of acid")
/* tests.txt, test t24: mechanism */
N_("Hollow work")
/* tests.txt, test t24: test */
N_("Weigh, warm, weigh again until it stays the same")
/* tests.txt, test t24: passes */
N_("No more loss than 0.01 g")
/* tests.txt, test t24: customer */
N_("Dried out and weighed")
/* tests.txt, test t25: test */
N_("Fingertip and cotton wool over all edges")
/* tests.txt, test t25: passes */
N_("No thread left behind")
/* tests.txt, test t25: customer */
N_("All edges felt, smooth")
/* tests.txt, test t26: test */
N_("Compare with the photograph of arrival")
/* tests.txt, test t26: passes */
N_("All marks still readable")
/* tests.txt, test t26: customer */
N_("Marks compared with the photograph")
/* tests.txt, test t27: mechanism */
N_("Stones and weight")
/* tests.txt, test t27: test */
N_("Count; weigh against arrival plus metal added minus removed")
/* tests.txt, test t27: passes */
N_("Explained to 0.05 g")
/* tests.txt, test t27: customer */
N_("Stones counted, weight explained")
/* tests.txt, test t28: mechanism */
N_("Colour and plating")
/* tests.txt, test t28: test */
N_("Daylight, both sides")
/* tests.txt, test t28: passes */
N_("Even, no bare place")
/* tests.txt, test t28: customer */
N_("Looked at in daylight, even")
/* tests.txt, test t29: mechanism */
N_("Springs near the flame")
/* tests.txt, test t29: test */
N_("Test every spring near the heat again after cooling")
/* tests.txt, test t29: passes */
N_("As for the box, spring ring, hinge or catch it belongs to")
/* tests.txt, test t29: customer */
N_("Springs near the work tested again")
/* views.txt, view top: name */
N_("Top")
/* views.txt, view side_hallmark: name */
N_("Side with the hallmark")
/* views.txt, view side_right: name */
N_("Right side")
/* views.txt, view side_back: name */
N_("Side opposite the hallmark")
/* views.txt, view side_left: name */
N_("Left side")
/* views.txt, view through_finger: name */
N_("Through the finger")
/* views.txt, view inside_marks: name */
N_("Inside, the marks")
/* views.txt, view whole_front: name */
N_("Whole, front")
/* views.txt, view whole_back: name */
N_("Whole, back")
/* views.txt, view edge_droop: name */
N_("Held edge-on, droop")
/* views.txt, view edge_oval: name */
N_("Edge, the oval")
/* views.txt, view clasp_closed: name */
N_("Clasp closed")
/* views.txt, view clasp_open: name */
N_("Clasp open")
/* views.txt, view tongue_side: name */
N_("Tongue from the side")
/* views.txt, view links_tens: name */
N_("Links, ten by ten")
/* views.txt, view front: name */
N_("Front")
/* views.txt, view back: name */
N_("Back side")
/* views.txt, view side: name */
N_("Side")
/* views.txt, view edge: name */
N_("Edge")
/* views.txt, view bail_both: name */
N_("Bail, both sides")
/* views.txt, view chain_straight: name */
N_("Chain laid straight, with scale")
/* views.txt, view end_rings: name */
N_("End rings")
/* views.txt, view pair_front: name */
N_("Pair, front")
/* views.txt, view pair_back: name */
N_("Pair, back")
/* views.txt, view pair_side: name */
N_("Pair, side")
/* views.txt, view post_each: name */
N_("Each post")
/* views.txt, view fitting_open: name */
N_("Fittings open")
/* views.txt, view fitting_closed: name */
N_("Fittings closed")
/* views.txt, view pin_shut: name */
N_("Pin shut")
/* views.txt, view pin_open: name */
N_("Pin open at 90 degrees")
/* views.txt, view whole_scale: name */
N_("Whole, with scale")
/* views.txt, view beads_ends: name */
N_("First ten beads from each end")
/* views.txt, view drill_holes: name */
N_("Drill holes and knots")
/* views.txt, view largest_bead: name */
N_("Largest bead")
/* views.txt, view pins: name */
N_("Pins")
/* views.txt, view case_number: name */
N_("Number on the case back")
/* views.txt, view crown: name */
N_("Crown")
/* views.txt, view toggle_open: name */
N_("Toggle across")
/* views.txt, view toggle_closed: name */
N_("Toggle in line")
/* views.txt, view open_contents: name */
N_("Open, contents in place")
/* ways.txt, way w_loupe: name */
N_("loupe x10")
/* ways.txt, way w_loupe: how */
N_("Turn the piece under one lamp; look across and along every claw, seam and hole")
/* ways.txt, way w_gauge: name */
N_("gauge")
/* ways.txt, way w_gauge: how */
N_("Measure the thinnest place, twice, to 0.05 mm; write the place down")
/* ways.txt, way w_tap: name */
N_("tap test")
/* ways.txt, way w_tap: how */
N_("Tap lightly near the ear, or tap the finger that wears it; a loose stone ticks")
/* ways.txt, way w_probe: name */
N_("push with wood")
/* ways.txt, way w_probe: how */
N_("Soft wooden point against the stone from several sides")
/* ways.txt, way w_rock: name */
N_("rock the stone")
/* ways.txt, way w_rock: how */
N_("Fine tweezers at the girdle, gentle turn; watch the light on the table")
/* ways.txt, way w_wax: name */
N_("pull with wax")
/* ways.txt, way w_wax: how */
N_("Sticky wax on the table, try to turn the stone")
/* ways.txt, way w_vib: name */
N_("shake")
/* ways.txt, way w_vib: how */
N_("Hold against a running handpiece sleeve; a loose stone jumps")
/* ways.txt, way w_snag: name */
N_("thread test")
/* ways.txt, way w_snag: how */
N_("Draw a nylon stocking or cotton over the setting; a raised claw catches")
/* ways.txt, way w_pick: name */
N_("pick at the claw")
/* ways.txt, way w_pick: how */
N_("Blunt pick under the tip, no lifting force")
/* ways.txt, way w_tug: name */
N_("tug test")
/* ways.txt, way w_tug: how */
N_("Pull by hand in the line of wear, slowly, over a soft tray")
/* ways.txt, way w_flex: name */
N_("flex test")
/* ways.txt, way w_flex: how */
N_("Let the piece hang and move each joint; feel for stiff or slack ones")
/* ways.txt, way w_hang: name */
N_("droop test")
/* ways.txt, way w_hang: how */
N_("Hold a bracelet edge-on by one end; it should stay nearly straight sideways; big sideways sag means worn pins")
/* ways.txt, way w_click: name */
N_("click test")
/* ways.txt, way w_click: how */
N_("Close slowly, hear and feel the stop; open by the trigger only")
/* ways.txt, way w_light: name */
N_("against the light")
/* ways.txt, way w_light: how */
N_("Gaps between stone and claw, cracks in cameos and enamel show")
/* ways.txt, way w_mag: name */
N_("magnet")
/* ways.txt, way w_mag: how */
N_("Finds steel pins and springs, cobalt platinum")
/* ways.txt, way w_weigh: name */
N_("weigh")
/* ways.txt, way w_weigh: how */
N_("Compare with the intake weight and with earlier visits")
/* words.txt, word jewellery: source_note */
N_("R49: French")
/* words.txt, word setter: source_note */
N_("R99: German")
/* words.txt, word lobster: source_note */
N_("R99a: German")
/* words.txt, word pickle: source_note */
N_("R99: German verb abbeizen")
/* words.txt, word fineness: source_note */
N_("R49: French; R99: German")

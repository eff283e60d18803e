/* action-table.c: every action of the window, once
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/action-table.h"

#include <glib/gi18n.h>
#include <string.h>

/* Number keys with Alt are the moments in their order; plain number keys are left
 * to the severities, which the other hand types on the keypad. */
static const WmActionRow table[] = {
  { "app.help", N_ ("All keys"), "F1 <Control>question", WM_GROUP_PROGRAM,
    WM_PLACE_WINDOW, WM_MENU_PROGRAM },
  { "app.about", N_ ("About Wearmark"), "<Control>F1", WM_GROUP_PROGRAM, WM_PLACE_WINDOW,
    WM_MENU_PROGRAM },
  { "win.menu", N_ ("Menu"), "F10", WM_GROUP_PROGRAM, WM_PLACE_WINDOW, WM_MENU_NONE },
  { "win.full-screen", N_ ("Full screen"), "F11", WM_GROUP_PROGRAM, WM_PLACE_WINDOW,
    WM_MENU_NONE },
  { "win.now-working", N_ ("Who is working now"), "F4", WM_GROUP_PROGRAM, WM_PLACE_WINDOW,
    WM_MENU_SHOP },
  { "app.preferences", N_ ("Settings of the shop"), "<Control>comma", WM_GROUP_PROGRAM,
    WM_PLACE_WINDOW, WM_MENU_SHOP },
  { "app.open-archive", N_ ("Open another archive"), "<Control><Shift>o",
    WM_GROUP_PROGRAM, WM_PLACE_WINDOW, WM_MENU_SHOP },
  { "app.quit", N_ ("Quit"), "<Control>q", WM_GROUP_PROGRAM, WM_PLACE_WINDOW,
    WM_MENU_PROGRAM },

  { "win.new-piece", N_ ("Take in a new piece"), "<Control>n", WM_GROUP_PIECES,
    WM_PLACE_WINDOW, WM_MENU_TAKE_IN },
  { "win.new-visit", N_ ("New visit of this piece"), "<Control><Shift>n", WM_GROUP_PIECES,
    WM_PLACE_WINDOW, WM_MENU_TAKE_IN },
  { "win.pieces", N_ ("Show or hide the pieces"), "F9", WM_GROUP_PIECES, WM_PLACE_WINDOW,
    WM_MENU_NONE },
  { "win.search", N_ ("Search pieces"), "<Control>f", WM_GROUP_PIECES, WM_PLACE_WINDOW,
    WM_MENU_NONE },
  { "win.diary", N_ ("Diary"), "<Control>d", WM_GROUP_PIECES, WM_PLACE_WINDOW,
    WM_MENU_NONE },
  { "win.earlier-visit", N_ ("Earlier visit"), "<Alt>Left", WM_GROUP_PIECES,
    WM_PLACE_WINDOW, WM_MENU_NONE },
  { "win.later-visit", N_ ("Later visit"), "<Alt>Right", WM_GROUP_PIECES, WM_PLACE_WINDOW,
    WM_MENU_NONE },

  { "win.moment::take-in", N_ ("Take-in"), "<Alt>1", WM_GROUP_MOMENTS, WM_PLACE_WINDOW,
    WM_MENU_NONE },
  { "win.moment::inspection", N_ ("Inspection"), "<Alt>2", WM_GROUP_MOMENTS,
    WM_PLACE_WINDOW, WM_MENU_NONE },
  { "win.moment::work", N_ ("Bench work"), "<Alt>3", WM_GROUP_MOMENTS, WM_PLACE_WINDOW,
    WM_MENU_NONE },
  { "win.moment::proof", N_ ("Proof"), "<Alt>4", WM_GROUP_MOMENTS, WM_PLACE_WINDOW,
    WM_MENU_NONE },
  { "win.moment::hand-back", N_ ("Hand-back"), "<Alt>5", WM_GROUP_MOMENTS,
    WM_PLACE_WINDOW, WM_MENU_NONE },

  { "take-in.add-photo", N_ ("Add photo"), "<Control>o", WM_GROUP_PHOTOS,
    WM_PLACE_TAKE_IN, WM_MENU_NONE },
  { "take-in.add-stones", N_ ("Add stones"), "<Control><Alt>s", WM_GROUP_PIECES,
    WM_PLACE_TAKE_IN, WM_MENU_NONE },
  { "take-in.other-owner", N_ ("Another owner"), "<Control><Alt>o", WM_GROUP_PIECES,
    WM_PLACE_TAKE_IN, WM_MENU_NONE },
  { "take-in.to-inspection", N_ ("Move on to the inspection"), "<Control>Return",
    WM_GROUP_MOMENTS, WM_PLACE_TAKE_IN, WM_MENU_NONE },

  { "win.counter-view", N_ ("Counter view for the customer"), "F8", WM_GROUP_COUNTER,
    WM_PLACE_WINDOW, WM_MENU_PAPERS },
  { "counter.next", N_ ("Next finding"), "Right space Page_Down Return KP_Enter KP_Add",
    WM_GROUP_COUNTER, WM_PLACE_COUNTER, WM_MENU_NONE },
  { "counter.previous", N_ ("Finding before"), "Left BackSpace Page_Up KP_Subtract",
    WM_GROUP_COUNTER, WM_PLACE_COUNTER, WM_MENU_NONE },
  { "counter.leave", N_ ("Leave the counter view (or hold Escape for a second)"),
    "<Control><Shift>q", WM_GROUP_COUNTER, WM_PLACE_COUNTER, WM_MENU_NONE },

  { "work.show::remedies", N_ ("Remedies"), "<Control>1", WM_GROUP_MOMENTS, WM_PLACE_WORK,
    WM_MENU_NONE },
  { "work.show::plan", N_ ("Heat plan"), "<Control>2", WM_GROUP_MOMENTS, WM_PLACE_WORK,
    WM_MENU_NONE },
  { "work.show::quote", N_ ("Quote"), "<Control>3", WM_GROUP_MOMENTS, WM_PLACE_WORK,
    WM_MENU_NONE },
  { "work.print::plan", N_ ("Print heat plan"), "<Control><Alt>h", WM_GROUP_PAPERS,
    WM_PLACE_WORK, WM_MENU_NONE },
  { "work.print::quote", N_ ("Print quote"), "<Control><Alt>q", WM_GROUP_PAPERS,
    WM_PLACE_WORK, WM_MENU_NONE },
  { "work.to-proof", N_ ("Move on to the proof"), "<Control>Return", WM_GROUP_MOMENTS,
    WM_PLACE_WORK, WM_MENU_NONE },
  { "work.to-hand-back", N_ ("Straight to hand-back"), "<Control><Shift>Return",
    WM_GROUP_MOMENTS, WM_PLACE_WORK, WM_MENU_NONE },
  { "proof.add-photo", N_ ("Add photos after the work"), "<Control>o", WM_GROUP_PHOTOS,
    WM_PLACE_PROOF, WM_MENU_NONE },
  { "proof.to-hand-back", N_ ("Move on to hand-back"), "<Control>Return",
    WM_GROUP_MOMENTS, WM_PLACE_PROOF, WM_MENU_NONE },
  { "hand-back.give-back", N_ ("Hand the piece back"), "<Control>Return",
    WM_GROUP_MOMENTS, WM_PLACE_HAND_BACK, WM_MENU_NONE },
  { "hand-back.take-date", N_ ("Take the suggested date"), "<Control>t", WM_GROUP_MOMENTS,
    WM_PLACE_HAND_BACK, WM_MENU_NONE },
  { "hand-back.open-again", N_ ("Not handed back after all"), "<Control><Shift>Return",
    WM_GROUP_MOMENTS, WM_PLACE_HAND_BACK, WM_MENU_NONE },

  { "win.show-report", N_ ("Report of this visit"), "<Control>r", WM_GROUP_PAPERS,
    WM_PLACE_WINDOW, WM_MENU_NONE },
  { "win.print-report", N_ ("Print report"), "<Control>p", WM_GROUP_PAPERS,
    WM_PLACE_WINDOW, WM_MENU_PAPERS },
  { "win.save-report", N_ ("Save report as PDF"), "<Control><Shift>p", WM_GROUP_PAPERS,
    WM_PLACE_WINDOW, WM_MENU_PAPERS },

  { "win.scale-sheet", N_ ("Scale sheet to print"), "<Control><Alt>p", WM_GROUP_PAPERS,
    WM_PLACE_WINDOW, WM_MENU_PAPERS },
  { "win.reckon", N_ ("At the bench: reckon"), "F7", WM_GROUP_PIECES, WM_PLACE_WINDOW,
    WM_MENU_EDIT },
  { "reckon.to-note", N_ ("Put what was reckoned into the note"), "<Control>Return",
    WM_GROUP_PIECES, WM_PLACE_RECKON, WM_MENU_NONE },
  { "win.wear", N_ ("Wear over the years"), "F6", WM_GROUP_PIECES, WM_PLACE_WINDOW,
    WM_MENU_EDIT },

  { "win.undo", N_ ("Undo"), "<Control>z", WM_GROUP_EDIT, WM_PLACE_WINDOW, WM_MENU_EDIT },
  { "win.redo", N_ ("Do again"), "<Control><Shift>z <Control>y", WM_GROUP_EDIT,
    WM_PLACE_WINDOW, WM_MENU_EDIT },
  { "shop.undo", N_ ("Undo in the settings"), "<Control>z", WM_GROUP_EDIT,
    WM_PLACE_SETTINGS, WM_MENU_NONE },
  { "shop.redo", N_ ("Do again in the settings"), "<Control><Shift>z <Control>y",
    WM_GROUP_EDIT, WM_PLACE_SETTINGS, WM_MENU_NONE },
  { "win.history", N_ ("History of this piece"), "<Control>h", WM_GROUP_EDIT,
    WM_PLACE_WINDOW, WM_MENU_EDIT },

  /* Numbers answer, on either row of keys, with or without Num Lock: the other hand
   * holds the piece. */
  { "inspection.answer::sound", N_ ("Sound"), "1 KP_1 KP_End", WM_GROUP_CHECKLIST,
    WM_PLACE_CHECKLIST, WM_MENU_NONE },
  { "inspection.answer::watch", N_ ("Watch"), "2 KP_2 KP_Down", WM_GROUP_CHECKLIST,
    WM_PLACE_CHECKLIST, WM_MENU_NONE },
  { "inspection.answer::repair", N_ ("Repair"), "3 KP_3 KP_Page_Down", WM_GROUP_CHECKLIST,
    WM_PLACE_CHECKLIST, WM_MENU_NONE },
  { "inspection.answer::no-wear", N_ ("Do not wear"), "4 KP_4 KP_Left",
    WM_GROUP_CHECKLIST, WM_PLACE_CHECKLIST, WM_MENU_NONE },
  { "inspection.answer::not-present", N_ ("Not present"), "0 KP_0 KP_Insert",
    WM_GROUP_CHECKLIST, WM_PLACE_CHECKLIST, WM_MENU_NONE },
  { "inspection.answer::not-looked-at", N_ ("Take the answer back"),
    "period KP_Decimal KP_Delete KP_Separator", WM_GROUP_CHECKLIST, WM_PLACE_CHECKLIST,
    WM_MENU_NONE },
  { "inspection.take-suggestion", N_ ("The word the numbers point to"), "5 KP_5 KP_Begin",
    WM_GROUP_CHECKLIST, WM_PLACE_CHECKLIST, WM_MENU_NONE },
  { "inspection.other-word", N_ ("Why another word than the numbers"), "y",
    WM_GROUP_CHECKLIST, WM_PLACE_CHECKLIST, WM_MENU_NONE },
  { "inspection.next-open", N_ ("Next not looked at"), "Return KP_Enter ISO_Enter",
    WM_GROUP_CHECKLIST, WM_PLACE_CHECKLIST, WM_MENU_NONE },
  { "inspection.next-check", N_ ("Next check"), "plus KP_Add", WM_GROUP_CHECKLIST,
    WM_PLACE_CHECKLIST, WM_MENU_NONE },
  { "inspection.previous-check", N_ ("Check before"), "minus KP_Subtract",
    WM_GROUP_CHECKLIST, WM_PLACE_CHECKLIST, WM_MENU_NONE },
  { "inspection.note", N_ ("Note"), "n KP_Divide", WM_GROUP_CHECKLIST, WM_PLACE_CHECKLIST,
    WM_MENU_NONE },
  { "inspection.conclude", N_ ("Call it inspected, or open it again"),
    "<Control>Return asterisk KP_Multiply", WM_GROUP_CHECKLIST, WM_PLACE_CHECKLIST,
    WM_MENU_NONE },
  { "inspection.cancel", N_ ("Take back: drawing, waiting mark, open check"), "Escape",
    WM_GROUP_CHECKLIST, WM_PLACE_CHECKLIST, WM_MENU_NONE },

  { "photo.add::before", N_ ("Add photos before the work"), "<Control>o", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.add::during", N_ ("Add photos of the work"), "<Control><Alt>o",
    WM_GROUP_PHOTOS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.add::after", N_ ("Add photos after the work"), "<Alt>o", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.paste", N_ ("Paste photos"), "<Control>v", WM_GROUP_PHOTOS, WM_PLACE_PHOTOS,
    WM_MENU_NONE },
  { "photo.tray-take", N_ ("Take in the chosen new photos"), "<Control>t",
    WM_GROUP_PHOTOS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.tray-aside", N_ ("Put the new photos aside"), "<Control><Alt>t",
    WM_GROUP_PHOTOS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.tray-back", N_ ("Offer again what was put aside"), "<Control><Shift>t",
    WM_GROUP_PHOTOS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.focus-tint", N_ ("Show where the photo is sharp"), "f", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.save-picture", N_ ("Save marked picture"), "<Control>e", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.copy-picture", N_ ("Copy marked picture"), "<Control><Shift>e",
    WM_GROUP_PHOTOS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.stack", N_ ("Merge a focus stack"), "<Control>m", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.frames", N_ ("Show or fold the frames of stacks"), "<Control><Shift>m",
    WM_GROUP_PHOTOS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.next", N_ ("Next photo"), "<Control>Page_Down", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.previous", N_ ("Photo before"), "<Control>Page_Up", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.step::earlier", N_ ("Move photo earlier"), "<Control><Shift>Page_Up",
    WM_GROUP_PHOTOS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.step::later", N_ ("Move photo later"), "<Control><Shift>Page_Down",
    WM_GROUP_PHOTOS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.describe", N_ ("View, caption and moment of the photo"), "F2", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "photo.remove", N_ ("Remove photo"), "<Control>Delete", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "canvas.zoom-in", N_ ("Larger"), "<Control>plus <Control>equal <Control>KP_Add",
    WM_GROUP_PHOTOS, WM_PLACE_PHOTOS | WM_PLACE_COMPARE, WM_MENU_NONE },
  { "canvas.zoom-out", N_ ("Smaller"), "<Control>minus <Control>KP_Subtract",
    WM_GROUP_PHOTOS, WM_PLACE_PHOTOS | WM_PLACE_COMPARE, WM_MENU_NONE },
  { "canvas.fit", N_ ("Whole photo"), "<Control>0 <Control>KP_0", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS | WM_PLACE_COMPARE, WM_MENU_NONE },
  { "canvas.true-pixels", N_ ("True pixels"), "<Control>1 <Control>KP_1", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS | WM_PLACE_COMPARE, WM_MENU_NONE },
  { "canvas.loupe", N_ ("Loupe; held, only while it is held"), "l", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS | WM_PLACE_COMPARE, WM_MENU_NONE },
  { "canvas.turn-left", N_ ("Turn photo to the left"), "bracketleft", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "canvas.turn-right", N_ ("Turn photo to the right"), "bracketright", WM_GROUP_PHOTOS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },

  { "canvas.tool::spot", N_ ("Mark a spot"), "s", WM_GROUP_MARKS, WM_PLACE_PHOTOS,
    WM_MENU_NONE },
  { "canvas.tool::line", N_ ("Mark a line"), "i", WM_GROUP_MARKS, WM_PLACE_PHOTOS,
    WM_MENU_NONE },
  { "canvas.tool::outline", N_ ("Mark an outline"), "o", WM_GROUP_MARKS, WM_PLACE_PHOTOS,
    WM_MENU_NONE },
  { "canvas.tool::span", N_ ("Measure a width"), "m", WM_GROUP_MARKS, WM_PLACE_PHOTOS,
    WM_MENU_NONE },
  { "canvas.tool::ruler", N_ ("Scale of the photo: two points"), "r", WM_GROUP_MARKS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "canvas.tool::corners", N_ ("Scale of the photo: a rectangle"), "<Shift>r",
    WM_GROUP_MARKS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "canvas.place", N_ ("Place it in the middle, for the arrow keys"), "Insert",
    WM_GROUP_MARKS, WM_PLACE_CANVAS, WM_MENU_NONE },
  { "inspection.find-sheet", N_ ("Scale of the photo: find our scale sheet"), "h",
    WM_GROUP_MARKS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "inspection.use-scale", N_ ("Use this scale"), "<Shift>v", WM_GROUP_MARKS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "inspection.remove-scale", N_ ("Remove the scale"), "<Shift>Delete", WM_GROUP_MARKS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "inspection.snap", N_ ("Ends go to the edge of the metal, or stay"), "e",
    WM_GROUP_MARKS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "inspection.unworn", N_ ("Measure an unworn place: as made"), "w", WM_GROUP_MARKS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "inspection.by-gauge", N_ ("Measure by gauge, or on the photo"), "g", WM_GROUP_MARKS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "inspection.take-value", N_ ("Take this value"), "v", WM_GROUP_MARKS, WM_PLACE_PHOTOS,
    WM_MENU_NONE },
  { "inspection.leave-measuring", N_ ("Back to the checklist"), "x", WM_GROUP_MARKS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "canvas.move::left", N_ ("Mark or photo to the left"), "Left", WM_GROUP_MARKS,
    WM_PLACE_CANVAS, WM_MENU_NONE },
  { "canvas.move::right", N_ ("Mark or photo to the right"), "Right", WM_GROUP_MARKS,
    WM_PLACE_CANVAS, WM_MENU_NONE },
  { "canvas.move::up", N_ ("Mark or photo up"), "Up", WM_GROUP_MARKS, WM_PLACE_CANVAS,
    WM_MENU_NONE },
  { "canvas.move::down", N_ ("Mark or photo down"), "Down", WM_GROUP_MARKS,
    WM_PLACE_CANVAS, WM_MENU_NONE },
  { "canvas.move-far::left", N_ ("Ten pixels to the left"), "<Shift>Left", WM_GROUP_MARKS,
    WM_PLACE_CANVAS, WM_MENU_NONE },
  { "canvas.move-far::right", N_ ("Ten pixels to the right"), "<Shift>Right",
    WM_GROUP_MARKS, WM_PLACE_CANVAS, WM_MENU_NONE },
  { "canvas.move-far::up", N_ ("Ten pixels up"), "<Shift>Up", WM_GROUP_MARKS,
    WM_PLACE_CANVAS, WM_MENU_NONE },
  { "canvas.move-far::down", N_ ("Ten pixels down"), "<Shift>Down", WM_GROUP_MARKS,
    WM_PLACE_CANVAS, WM_MENU_NONE },
  { "canvas.next-point", N_ ("Next point of the form"), "Page_Down", WM_GROUP_MARKS,
    WM_PLACE_CANVAS, WM_MENU_NONE },
  { "canvas.previous-point", N_ ("Point before"), "Page_Up", WM_GROUP_MARKS,
    WM_PLACE_CANVAS, WM_MENU_NONE },
  { "canvas.remove", N_ ("Delete mark, or the chosen point of its form"),
    "Delete BackSpace", WM_GROUP_MARKS, WM_PLACE_CANVAS, WM_MENU_NONE },
  { "canvas.unpin", N_ ("Let the disc find its place"), "u", WM_GROUP_MARKS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "canvas.menu", N_ ("Menu of the mark"), "Menu <Shift>F10", WM_GROUP_MARKS,
    WM_PLACE_CANVAS, WM_MENU_NONE },
  { "inspection.accept", N_ ("Accept the mark of the last visit and go to the next"), "a",
    WM_GROUP_MARKS, WM_PLACE_PHOTOS, WM_MENU_NONE },
  { "inspection.re-tie", N_ ("Tie the mark to another check"), "t", WM_GROUP_MARKS,
    WM_PLACE_PHOTOS, WM_MENU_NONE },

  { "compare.mode::side", N_ ("Side by side"), "s", WM_GROUP_COMPARE, WM_PLACE_COMPARE,
    WM_MENU_NONE },
  { "compare.mode::seam", N_ ("Seam"), "m", WM_GROUP_COMPARE, WM_PLACE_COMPARE,
    WM_MENU_NONE },
  { "compare.mode::blink", N_ ("Blink"), "b", WM_GROUP_COMPARE, WM_PLACE_COMPARE,
    WM_MENU_NONE },
  { "compare.mode::difference", N_ ("Difference"), "d", WM_GROUP_COMPARE,
    WM_PLACE_COMPARE, WM_MENU_NONE },
  { "compare.flip", N_ ("Blink by hand: the other photo"), "x", WM_GROUP_COMPARE,
    WM_PLACE_COMPARE, WM_MENU_NONE },
  { "compare.seam::left", N_ ("Seam to the left"), "Left", WM_GROUP_COMPARE,
    WM_PLACE_SEAM, WM_MENU_NONE },
  { "compare.seam::right", N_ ("Seam to the right"), "Right", WM_GROUP_COMPARE,
    WM_PLACE_SEAM, WM_MENU_NONE },
  { "compare.seam::far-left", N_ ("Seam far to the left"), "<Shift>Left Page_Up",
    WM_GROUP_COMPARE, WM_PLACE_SEAM, WM_MENU_NONE },
  { "compare.seam::far-right", N_ ("Seam far to the right"), "<Shift>Right Page_Down",
    WM_GROUP_COMPARE, WM_PLACE_SEAM, WM_MENU_NONE },
  { "desk.pair::next", N_ ("Next pair of photos"), "<Control>Page_Down", WM_GROUP_COMPARE,
    WM_PLACE_COMPARE, WM_MENU_NONE },
  { "desk.pair::previous", N_ ("Pair of photos before"), "<Control>Page_Up",
    WM_GROUP_COMPARE, WM_PLACE_COMPARE, WM_MENU_NONE },
  { "desk.finding::next", N_ ("Next finding"), "plus KP_Add", WM_GROUP_COMPARE,
    WM_PLACE_COMPARE, WM_MENU_NONE },
  { "desk.finding::previous", N_ ("Finding before"), "minus KP_Subtract",
    WM_GROUP_COMPARE, WM_PLACE_COMPARE, WM_MENU_NONE },
  { "desk.accept", N_ ("Accept the carried mark and go to the next"), "a",
    WM_GROUP_COMPARE, WM_PLACE_COMPARE, WM_MENU_NONE },
  { "desk.carry", N_ ("Carry the marks over"), "k", WM_GROUP_COMPARE, WM_PLACE_COMPARE,
    WM_MENU_NONE },
  { "desk.choose", N_ ("Choose the photos to compare"), "p", WM_GROUP_COMPARE,
    WM_PLACE_COMPARE, WM_MENU_NONE },
  { "desk.by-hand", N_ ("Place points by hand"), "h", WM_GROUP_COMPARE, WM_PLACE_COMPARE,
    WM_MENU_NONE },
  { "desk.refine", N_ ("Refine from the points"), "r", WM_GROUP_COMPARE, WM_PLACE_COMPARE,
    WM_MENU_NONE },
  { "desk.confirm", N_ ("Confirm how the photos meet, or keep the points"), "c",
    WM_GROUP_COMPARE, WM_PLACE_COMPARE, WM_MENU_NONE },
  { "desk.again", N_ ("Let the program look again"), "g", WM_GROUP_COMPARE,
    WM_PLACE_COMPARE, WM_MENU_NONE },
  { "desk.stop", N_ ("Stop aligning, or leave the points"), "Escape", WM_GROUP_COMPARE,
    WM_PLACE_COMPARE, WM_MENU_NONE },
};

static const char *const group_titles[WM_N_GROUPS] = {
  N_ ("Program"),      N_ ("Pieces"), N_ ("Moments"),
  N_ ("Changes"),      N_ ("Papers"), N_ ("Checklist (also on the number pad)"),
  N_ ("Photos"),       N_ ("Marks"),  N_ ("Before and after"),
  N_ ("Counter view"),
};

const WmActionRow *
wm_action_table (guint *n_rows)
{
  *n_rows = G_N_ELEMENTS (table);
  return table;
}

const WmActionRow *
wm_action_find (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    if (g_str_equal (table[i].name, name))
      return &table[i];
  return NULL;
}

gboolean
wm_action_places_meet (guint a, guint b)
{
  guint inspection = WM_PLACE_PHOTOS | WM_PLACE_CHECKLIST | WM_PLACE_CANVAS;

  guint proof = WM_PLACE_PROOF | WM_PLACE_COMPARE | WM_PLACE_CANVAS;

  /* The main window's actions are not those of the settings' own window. */
  if (((a ^ b) & (WM_PLACE_SETTINGS | WM_PLACE_RECKON)) != 0)
    return FALSE;
  if (((a | b) & WM_PLACE_WINDOW) != 0)
    return TRUE;
  /* Canvas, strip and checklist are on one page. */
  if ((a & inspection) != 0 && (b & inspection) != 0)
    return TRUE;
  /* So are the compared photos and the proof; the seam's handle takes keys from both. */
  if ((a & proof) != 0 && (b & proof) != 0)
    return TRUE;
  return (a & b) != 0;
}

static char *
describe_key (const char *key)
{
  guint keyval;
  GdkModifierType modifiers;

  if (!gtk_accelerator_parse (key, &keyval, &modifiers))
    return NULL;
  return gtk_accelerator_get_label (keyval, modifiers);
}

char *
wm_action_describe (const char *name)
{
  const WmActionRow *row = wm_action_find (name);
  g_auto (GStrv) keys = NULL;
  g_autofree char *key = NULL;

  g_return_val_if_fail (row != NULL, g_strdup (name));

  keys = g_strsplit (row->keys, " ", -1);
  key = describe_key (keys[0]);
  return g_strdup_printf ("%s (%s)", _ (row->label), key);
}

void
wm_action_name_widget (GtkWidget *widget, const char *name)
{
  const WmActionRow *row = wm_action_find (name);
  g_autofree char *text = wm_action_describe (name);

  gtk_widget_set_tooltip_text (widget, text);
  if (row != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (widget),
                                    GTK_ACCESSIBLE_PROPERTY_LABEL, _ (row->label), -1);
}

void
wm_action_add_window_keys (GtkApplication *application)
{
  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    if ((table[i].places & WM_PLACE_WINDOW) != 0)
      {
        g_auto (GStrv) keys = g_strsplit (table[i].keys, " ", -1);

        gtk_application_set_accels_for_action (application, table[i].name,
                                               (const char *const *)keys);
      }
}

static GtkShortcut *
make_shortcut (const WmActionRow *row, const char *key)
{
  GtkShortcut *shortcut;
  GtkShortcutTrigger *trigger = gtk_shortcut_trigger_parse_string (key);
  g_autofree char *action_name = NULL;
  g_autoptr (GVariant) target = NULL;

  if (trigger == NULL
      || !g_action_parse_detailed_name (row->name, &action_name, &target, NULL))
    g_error ("action table: %s: %s", row->name, key);

  shortcut = gtk_shortcut_new (trigger, gtk_named_action_new (action_name));
  gtk_shortcut_set_arguments (shortcut, target);
  return shortcut;
}

void
wm_action_add_keys (GtkWidget *widget, WmActionPlace place)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    if ((table[i].places & place) != 0)
      {
        g_auto (GStrv) keys = g_strsplit (table[i].keys, " ", -1);

        for (guint k = 0; keys[k] != NULL; k++)
          gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (controller),
                                                make_shortcut (&table[i], keys[k]));
      }

  gtk_widget_add_controller (widget, controller);
}

GMenuModel *
wm_action_make_menu (void)
{
  GMenu *menu = g_menu_new ();

  for (guint m = WM_MENU_NONE + 1; m < WM_N_MENUS; m++)
    {
      g_autoptr (GMenu) section = g_menu_new ();

      for (guint i = 0; i < G_N_ELEMENTS (table); i++)
        if (table[i].menu == m)
          g_menu_append (section, _ (table[i].label), table[i].name);
      if (g_menu_model_get_n_items (G_MENU_MODEL (section)) > 0)
        g_menu_append_section (menu, NULL, G_MENU_MODEL (section));
    }

  return G_MENU_MODEL (menu);
}

/* The keys to show: those of the number pad go without saying where another key has the
 * same sign on it. */
static char *
pick_shown_keys (const char *keys)
{
  g_auto (GStrv) words = g_strsplit (keys, " ", -1);
  GString *shown = g_string_new (words[0]);

  for (guint i = 1; words[0] != NULL && words[i] != NULL; i++)
    if (strstr (words[i], "KP_") == NULL && strstr (words[i], "ISO_") == NULL)
      g_string_append_printf (shown, " %s", words[i]);
  return g_string_free (shown, FALSE);
}

/* The overlay has no call for adding groups in GTK 4.8: only a builder fills it. */
static void
append_help_group (GString *xml, WmActionGroup group)
{
  g_autofree char *title = g_markup_escape_text (_ (group_titles[group]), -1);

  g_string_append_printf (xml,
                          "<child><object class='GtkShortcutsGroup'>"
                          "<property name='title'>%s</property>",
                          title);
  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    if (table[i].group == group)
      {
        g_autofree char *picked = pick_shown_keys (table[i].keys);
        g_autofree char *keys = g_markup_escape_text (picked, -1);
        g_autofree char *label = g_markup_escape_text (_ (table[i].label), -1);

        g_string_append_printf (xml,
                                "<child><object class='GtkShortcutsShortcut'>"
                                "<property name='accelerator'>%s</property>"
                                "<property name='title'>%s</property>"
                                "</object></child>",
                                keys, label);
      }
  g_string_append (xml, "</object></child>");
}

static gboolean
is_group_used (WmActionGroup group)
{
  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    if (table[i].group == group)
      return TRUE;
  return FALSE;
}

GtkWindow *
wm_action_make_help (void)
{
  g_autoptr (GString) xml =
      g_string_new ("<interface><object class='GtkShortcutsWindow' id='help'>"
                    "<property name='modal'>1</property>"
                    "<child><object class='GtkShortcutsSection'>"
                    "<property name='section-name'>all</property>"
                    "<property name='max-height'>14</property>");
  g_autoptr (GtkBuilder) builder = NULL;
  GtkWindow *window;

  for (guint group = 0; group < WM_N_GROUPS; group++)
    if (is_group_used (group))
      append_help_group (xml, group);
  g_string_append (xml, "</object></child></object></interface>");

  builder = gtk_builder_new_from_string (xml->str, -1);
  window = GTK_WINDOW (gtk_builder_get_object (builder, "help"));
  /* A toplevel belongs to GTK's list of windows, not to its builder. */
  return window;
}

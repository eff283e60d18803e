/* blocks.h: the pieces a report is made of, in the order of the page
 *
 * A block is as high as it measures and is never broken over two pages. place ()
 * draws it at @y_mm (or only measures, if the sheet has no context) and returns
 * its height.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/outlook.h"
#include "report/photo-box.h"
#include "report/sheet.h"
#include "report/visit-data.h"

typedef struct
{
  WmVisitData *data;
  WmPhotoBoxes *boxes;
  WmSheet *sheet;
  const WmOutlook *outlook; /* (nullable) */
  gboolean finished; /* there is an after: "Before and after", else "What we found" */
} WmPageContext;

typedef double (*WmPlaceBlock) (const WmPageContext *context, gconstpointer item,
                                double y_mm);

typedef struct
{
  WmPlaceBlock place;
  gconstpointer item;
  gboolean keep_with_next; /* a heading never ends a page */
  gboolean own_page;       /* begins a page */
} WmBlockUse;

/* Page one, top to bottom. @item is not used. */
double wm_block_title (const WmPageContext *context, gconstpointer item, double y_mm);
double wm_block_facts (const WmPageContext *context, gconstpointer item, double y_mm);
double wm_block_overview (const WmPageContext *context, gconstpointer item, double y_mm);
double wm_block_in_short (const WmPageContext *context, gconstpointer item, double y_mm);
double wm_block_come_back (const WmPageContext *context, gconstpointer item, double y_mm);
double
wm_block_good_to_know (const WmPageContext *context, gconstpointer item, double y_mm);
double
wm_block_signatures (const WmPageContext *context, gconstpointer item, double y_mm);

/* One finding; @item: WmFinding. */
double wm_block_finding (const WmPageContext *context, gconstpointer item, double y_mm);

/* Its column "Measured", and its wear over the years (0 high without two readings). */
double wm_block_measured (const WmPageContext *context, const WmFinding *finding,
                          double x_mm, double y_mm, double width_mm);
double
wm_block_wear (const WmPageContext *context, const WmFinding *finding, double y_mm);

/* One row of "In short"; @item: WmFinding. */
double wm_block_short_row (const WmPageContext *context, gconstpointer item, double y_mm);

/* The whole checklist: its heading, then a part's heading and each check. @item:
 * WmCheck. */
double
wm_block_list_heading (const WmPageContext *context, gconstpointer item, double y_mm);
double wm_block_list_part (const WmPageContext *context, gconstpointer item, double y_mm);
double
wm_block_list_check (const WmPageContext *context, gconstpointer item, double y_mm);

/* Final tests of the whole piece; @item: WmProof. */
double
wm_block_tests_heading (const WmPageContext *context, gconstpointer item, double y_mm);
double wm_block_test (const WmPageContext *context, gconstpointer item, double y_mm);

/* Texts that the counter view shows too; newly allocated. */
char *wm_finding_sentence (WmLanguage *language, const WmFinding *finding);
char *
wm_finding_found (WmLanguage *language, WmVisitData *data, const WmFinding *finding);
char *wm_finding_done (WmLanguage *language, const WmFinding *finding);
char *wm_finding_tested (WmLanguage *language, const WmFinding *finding);

/* A table's or a person's words about the piece. */
char *wm_piece_metal_words (WmLanguage *language, WmVisitData *data);
char *wm_piece_stone_words (WmLanguage *language, WmVisitData *data);
const char *wm_piece_type_words (WmLanguage *language, WmVisitData *data);

/* fixture.h: an archive with one invented piece, two photos and three findings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"
#include "trade/trade.h"

typedef struct
{
  char *folder; /* everything of the test */
  WmArchive *archive;
  WmTrade *trade;
  WmPiece *piece;
  WmPerson *owner;
  WmVisit *visit;
  WmPhoto *before;
  WmPhoto *after;
  GPtrArray *checks; /* WmCheck */
} Fixture;

void fixture_set_up (Fixture *f, gconstpointer unused);
void fixture_tear_down (Fixture *f, gconstpointer unused);

/* Puts one record; aborts the test if it is refused. */
void fixture_put (Fixture *f, gpointer record);

/* Runs a program and gives what it wrote, or fails the test with its errors. */
char *fixture_run (const char *const *argv);

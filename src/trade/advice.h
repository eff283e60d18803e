/* advice.h: final tests, cautions, faults, reasons and words of the tables
 *
 * Rows belong to their WmTrade; see checklist.h for the rules of texts and lists.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "trade/checklist.h"

G_BEGIN_DECLS

/**
 * WmFinalTest:
 * @mechanism: what is tested ("Box and tongue")
 * @test: what to do
 * @passes: when it has passed
 * @customer: the test as done, for the counter and the report
 */
typedef struct
{
  const char *key;
  const char *mechanism;
  const char *test;
  const char *passes;
  const char *customer;
  const char *const *sources;
} WmFinalTest;

typedef enum
{
  WM_CAUTION_SUBSTANCE,
  WM_CAUTION_HEAT,
  WM_CAUTION_MACHINE,
  WM_CAUTION_CHILD
} WmCautionGroup;

/**
 * WmCaution:
 * @figure: a legal or published figure in words, or NULL
 *
 * A reminder: data sheets, local rules and licensed practice come first.
 */
typedef struct
{
  const char *key;
  const char *name;
  const char *caution;
  const char *figure;
  WmCautionGroup group;
  const char *const *sources;
  const char *source_note;
} WmCaution;

/* A fault with its usual remedies, for pick lists. */
typedef struct
{
  const char *key;
  const char *name;
  const char *const *remedies;
  const char *const *sources;
} WmFault;

/**
 * WmIntervalReason:
 * @factor: what the months are multiplied by; NAN when @months is given
 * @months: first check after so many months; NAN when @factor is given
 */
typedef struct
{
  const char *key;
  const char *reason;
  double factor;
  double months;
  const char *const *sources;
} WmIntervalReason;

/* A rule of the bench in one sentence: soldering, stones, heat plan, pull loads. */
typedef struct
{
  const char *key;
  const char *topic;
  const char *text;
  const char *const *sources;
  const char *source_note;
} WmAdvice;

/* A ready sentence for report and counter. */
typedef struct
{
  const char *key;
  const char *text;
  const char *const *sources;
} WmPhrase;

/* A word of the trade in five languages; not translated further. */
typedef struct
{
  const char *key;
  const char *en;
  const char *de;
  const char *fr;
  const char *it;
  const char *es;
  const char *confidence;
  const char *const *sources;
  const char *source_note;
} WmWord;

/* A gauge of the old British wire scale, which has no formula. */
typedef struct
{
  const char *key;
  double mm;
  const char *const *sources;
} WmWireGauge;

G_END_DECLS

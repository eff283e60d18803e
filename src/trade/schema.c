/* schema.c: which kinds of section the tables have, and which fields
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/schema.h"

#include <string.h>

#include "trade/advice.h"
#include "trade/material.h"

/* The lists below read as tables, one row a line. */
/* clang-format off */

/* A row of a field list: NEED or MAY, its type, the struct and its member. */
#define FIELD(need, type_, owner, member)                                               \
  { .field = #member, .type = WM_FIELD_##type_, .is_needed = need,                      \
    .offset = G_STRUCT_OFFSET (owner, member) }
#define REFER(need, type_, owner, member, ref_)                                         \
  { .field = #member, .type = WM_FIELD_##type_, .is_needed = need,                      \
    .offset = G_STRUCT_OFFSET (owner, member), .ref = WM_KIND_##ref_ }
#define CHOOSE(owner, member, words)                                                    \
  { .field = #member, .type = WM_FIELD_CHOICE, .is_needed = TRUE,                       \
    .offset = G_STRUCT_OFFSET (owner, member), .choice = words }
#define SOURCES(owner) REFER (TRUE, KEYS, owner, sources, SOURCE)
#define NOTE(owner) FIELD (FALSE, TEXT, owner, source_note)
#define END { .field = NULL }

#define NEED TRUE
#define MAY FALSE

/* The levels of a check or of named limits stand in a WmLimits member. */
#define LIMITS(owner)                                                                   \
  { .field = "measure", .type = WM_FIELD_KEY, .ref = WM_KIND_MEASURE,                   \
    .offset = G_STRUCT_OFFSET (owner, limits.measure) },                                \
  { .field = "watch_if", .type = WM_FIELD_BOUND,                                        \
    .offset = G_STRUCT_OFFSET (owner, limits.watch) },                                  \
  { .field = "repair_if", .type = WM_FIELD_BOUND,                                       \
    .offset = G_STRUCT_OFFSET (owner, limits.repair) },                                 \
  { .field = "no_wear_if", .type = WM_FIELD_BOUND,                                      \
    .offset = G_STRUCT_OFFSET (owner, limits.no_wear) }

static const WmFieldSpec source_fields[] = {
  FIELD (NEED, TEXT, WmSource, words),
  FIELD (MAY, PLAIN, WmSource, title),
  CHOOSE (WmSource, kind, "read standard practice memory ours computed"),
  END
};

static const WmFieldSpec measure_fields[] = {
  FIELD (NEED, TEXT, WmMeasure, name),
  FIELD (NEED, PLAIN, WmMeasure, unit),
  END
};

static const WmFieldSpec limits_fields[] = {
  FIELD (NEED, TEXT, WmLimitsRow, threshold),
  LIMITS (WmLimitsRow),
  SOURCES (WmLimitsRow),
  END
};

static const WmFieldSpec part_fields[] = {
  FIELD (NEED, TEXT, WmPart, name),
  END
};

static const WmFieldSpec view_fields[] = {
  FIELD (NEED, TEXT, WmView, name),
  END
};

static const WmFieldSpec way_fields[] = {
  FIELD (NEED, TEXT, WmWay, name),
  FIELD (NEED, TEXT, WmWay, how),
  SOURCES (WmWay),
  END
};

static const WmFieldSpec consequence_fields[] = {
  FIELD (NEED, TEXT, WmConsequence, name),
  FIELD (NEED, TEXT, WmConsequence, customer),
  FIELD (NEED, TEXT, WmConsequence, had),
  SOURCES (WmConsequence),
  END
};

static const WmFieldSpec remedy_fields[] = {
  FIELD (NEED, TEXT, WmRemedyRow, name),
  FIELD (NEED, TEXT, WmRemedyRow, done),
  CHOOSE (WmRemedyRow, heat, "cold heat other"),
  REFER (MAY, KEYS, WmRemedyRow, tests, TEST),
  REFER (MAY, KEYS, WmRemedyRow, cautions, CAUTION),
  SOURCES (WmRemedyRow),
  END
};

static const WmFieldSpec check_fields[] = {
  REFER (NEED, KEY, WmChecklistItem, part, PART),
  FIELD (NEED, TEXT, WmChecklistItem, name),
  FIELD (NEED, TEXT, WmChecklistItem, fault),
  FIELD (NEED, TEXT, WmChecklistItem, look),
  FIELD (NEED, TEXT, WmChecklistItem, customer),
  FIELD (MAY, TEXT, WmChecklistItem, threshold),
  REFER (MAY, KEYS, WmChecklistItem, ways, WAY),
  REFER (NEED, KEYS, WmChecklistItem, left, CONSEQUENCE),
  REFER (NEED, KEYS, WmChecklistItem, remedies, REMEDY),
  REFER (MAY, KEYS, WmChecklistItem, tests, TEST),
  FIELD (NEED, LEVEL, WmChecklistItem, level),
  REFER (MAY, KEY, WmChecklistItem, rule, LIMITS),
  LIMITS (WmChecklistItem),
  SOURCES (WmChecklistItem),
  NOTE (WmChecklistItem),
  END
};

static const WmFieldSpec block_fields[] = {
  FIELD (NEED, TEXT, WmBlock, name),
  REFER (NEED, KEYS, WmBlock, checks, CHECK),
  END
};

static const WmFieldSpec type_fields[] = {
  FIELD (NEED, TEXT, WmPieceType, name),
  FIELD (NEED, TEXT, WmPieceType, your),
  FIELD (NEED, PLAIN, WmPieceType, icon),
  FIELD (MAY, TEXT, WmPieceType, datum),
  REFER (NEED, KEYS, WmPieceType, views, VIEW),
  FIELD (NEED, CHECKS, WmPieceType, checks),
  FIELD (MAY, CHECKS, WmPieceType, add),
  REFER (MAY, KEYS, WmPieceType, also, BLOCK),
  FIELD (NEED, RANGE, WmPieceType, months_daily),
  FIELD (NEED, RANGE, WmPieceType, months_often),
  FIELD (NEED, RANGE, WmPieceType, months_seldom),
  SOURCES (WmPieceType),
  NOTE (WmPieceType),
  END
};

static const WmFieldSpec fault_fields[] = {
  FIELD (NEED, TEXT, WmFault, name),
  REFER (NEED, KEYS, WmFault, remedies, REMEDY),
  SOURCES (WmFault),
  END
};

static const WmFieldSpec test_fields[] = {
  FIELD (NEED, TEXT, WmFinalTest, mechanism),
  FIELD (NEED, TEXT, WmFinalTest, test),
  FIELD (NEED, TEXT, WmFinalTest, passes),
  FIELD (NEED, TEXT, WmFinalTest, customer),
  SOURCES (WmFinalTest),
  END
};

static const WmFieldSpec caution_fields[] = {
  FIELD (NEED, TEXT, WmCaution, name),
  FIELD (NEED, TEXT, WmCaution, caution),
  FIELD (MAY, TEXT, WmCaution, figure),
  CHOOSE (WmCaution, group, "substance heat machine child"),
  SOURCES (WmCaution),
  NOTE (WmCaution),
  END
};

static const WmFieldSpec metal_fields[] = {
  FIELD (NEED, TEXT, WmMetal, name),
  FIELD (NEED, PLAIN, WmMetal, family),
  { .field = "pure", .type = WM_FIELD_FLAG,
    .offset = G_STRUCT_OFFSET (WmMetal, is_pure) },
  FIELD (MAY, NUMBER, WmMetal, fineness),
  FIELD (MAY, PLAIN, WmMetal, makeup),
  FIELD (NEED, RANGE, WmMetal, density),
  FIELD (NEED, RANGE, WmMetal, solidus_c),
  FIELD (NEED, RANGE, WmMetal, liquidus_c),
  FIELD (MAY, RANGE, WmMetal, modulus_gpa),
  FIELD (MAY, RANGE, WmMetal, hv_annealed),
  FIELD (MAY, RANGE, WmMetal, hv_hard),
  FIELD (MAY, RANGE, WmMetal, yield_annealed_mpa),
  FIELD (MAY, RANGE, WmMetal, yield_hard_mpa),
  FIELD (MAY, TEXT, WmMetal, yield_note),
  REFER (MAY, KEY, WmMetal, temper, TEMPER),
  SOURCES (WmMetal),
  NOTE (WmMetal),
  END
};

static const WmFieldSpec temper_fields[] = {
  FIELD (NEED, TEXT, WmTemper, name),
  FIELD (NEED, TEXT, WmTemper, anneal),
  FIELD (MAY, TEXT, WmTemper, cooling),
  FIELD (NEED, TEXT, WmTemper, hardening),
  FIELD (MAY, TEXT, WmTemper, note),
  SOURCES (WmTemper),
  NOTE (WmTemper),
  END
};

static const WmFieldSpec solder_fields[] = {
  FIELD (NEED, TEXT, WmSolder, name),
  FIELD (NEED, WORDS, WmSolder, families),
  FIELD (MAY, PLAIN, WmSolder, colour),
  FIELD (NEED, TEXT, WmSolder, grade),
  FIELD (MAY, NUMBER, WmSolder, fineness),
  FIELD (MAY, TEXT, WmSolder, fineness_text),
  FIELD (MAY, RANGE, WmSolder, solidus_c),
  FIELD (NEED, RANGE, WmSolder, flow_c),
  FIELD (NEED, NUMBER, WmSolder, step),
  { .field = "barred", .type = WM_FIELD_FLAG,
    .offset = G_STRUCT_OFFSET (WmSolder, is_barred) },
  SOURCES (WmSolder),
  NOTE (WmSolder),
  END
};

static const WmFieldSpec stone_fields[] = {
  FIELD (NEED, TEXT, WmStone, name),
  FIELD (NEED, RANGE, WmStone, mohs),
  FIELD (MAY, RANGE, WmStone, sg),
  CHOOSE (WmStone, heat, "stay guard out never"),
  FIELD (MAY, RANGE, WmStone, trouble_c),
  FIELD (NEED, TEXT, WmStone, trouble),
  FIELD (NEED, TEXT, WmStone, happens),
  FIELD (NEED, TEXT, WmStone, shock),
  CHOOSE (WmStone, pickle, "yes care no"),
  CHOOSE (WmStone, ultrasonic, "yes care no"),
  CHOOSE (WmStone, steam, "yes care no"),
  FIELD (MAY, TEXT, WmStone, caveat),
  SOURCES (WmStone),
  NOTE (WmStone),
  END
};

static const WmFieldSpec cut_fields[] = {
  FIELD (NEED, TEXT, WmCut, name),
  FIELD (MAY, PLAIN, WmCut, diamond_formula),
  FIELD (MAY, PLAIN, WmCut, stone_formula),
  SOURCES (WmCut),
  NOTE (WmCut),
  END
};

static const WmFieldSpec fineness_fields[] = {
  FIELD (NEED, TEXT, WmFinenessRow, name),
  FIELD (NEED, WORDS, WmFinenessRow, values),
  SOURCES (WmFinenessRow),
  NOTE (WmFinenessRow),
  END
};

static const WmFieldSpec reason_fields[] = {
  FIELD (NEED, TEXT, WmIntervalReason, reason),
  FIELD (MAY, NUMBER, WmIntervalReason, factor),
  FIELD (MAY, NUMBER, WmIntervalReason, months),
  SOURCES (WmIntervalReason),
  END
};

static const WmFieldSpec advice_fields[] = {
  FIELD (NEED, PLAIN, WmAdvice, topic),
  FIELD (NEED, TEXT, WmAdvice, text),
  SOURCES (WmAdvice),
  NOTE (WmAdvice),
  END
};

static const WmFieldSpec phrase_fields[] = {
  FIELD (NEED, TEXT, WmPhrase, text),
  SOURCES (WmPhrase),
  END
};

static const WmFieldSpec word_fields[] = {
  FIELD (NEED, PLAIN, WmWord, en),
  FIELD (NEED, PLAIN, WmWord, de),
  FIELD (NEED, PLAIN, WmWord, fr),
  FIELD (NEED, PLAIN, WmWord, it),
  FIELD (NEED, PLAIN, WmWord, es),
  FIELD (NEED, PLAIN, WmWord, confidence),
  SOURCES (WmWord),
  NOTE (WmWord),
  END
};

static const WmFieldSpec wire_fields[] = {
  FIELD (NEED, NUMBER, WmWireGauge, mm),
  SOURCES (WmWireGauge),
  END
};

static const WmKindSpec kinds[WM_N_KINDS] = {
  [WM_KIND_SOURCE] = { "source", sizeof (WmSource), source_fields },
  [WM_KIND_MEASURE] = { "measure", sizeof (WmMeasure), measure_fields },
  [WM_KIND_LIMITS] = { "limits", sizeof (WmLimitsRow), limits_fields },
  [WM_KIND_PART] = { "part", sizeof (WmPart), part_fields },
  [WM_KIND_VIEW] = { "view", sizeof (WmView), view_fields },
  [WM_KIND_WAY] = { "way", sizeof (WmWay), way_fields },
  [WM_KIND_CONSEQUENCE] = { "consequence", sizeof (WmConsequence), consequence_fields },
  [WM_KIND_REMEDY] = { "remedy", sizeof (WmRemedyRow), remedy_fields },
  [WM_KIND_TEST] = { "test", sizeof (WmFinalTest), test_fields },
  [WM_KIND_CAUTION] = { "caution", sizeof (WmCaution), caution_fields },
  [WM_KIND_CHECK] = { "check", sizeof (WmChecklistItem), check_fields },
  [WM_KIND_BLOCK] = { "block", sizeof (WmBlock), block_fields },
  [WM_KIND_TYPE] = { "type", sizeof (WmPieceType), type_fields },
  [WM_KIND_FAULT] = { "fault", sizeof (WmFault), fault_fields },
  [WM_KIND_METAL] = { "metal", sizeof (WmMetal), metal_fields },
  [WM_KIND_TEMPER] = { "temper", sizeof (WmTemper), temper_fields },
  [WM_KIND_SOLDER] = { "solder", sizeof (WmSolder), solder_fields },
  [WM_KIND_STONE] = { "stone", sizeof (WmStone), stone_fields },
  [WM_KIND_CUT] = { "cut", sizeof (WmCut), cut_fields },
  [WM_KIND_FINENESS] = { "fineness", sizeof (WmFinenessRow), fineness_fields },
  [WM_KIND_REASON] = { "reason", sizeof (WmIntervalReason), reason_fields },
  [WM_KIND_ADVICE] = { "advice", sizeof (WmAdvice), advice_fields },
  [WM_KIND_PHRASE] = { "phrase", sizeof (WmPhrase), phrase_fields },
  [WM_KIND_WORD] = { "word", sizeof (WmWord), word_fields },
  [WM_KIND_WIRE] = { "wire", sizeof (WmWireGauge), wire_fields },
};
/* clang-format on */

const WmKindSpec *
wm_schema_kind (WmKind kind)
{
  return &kinds[kind];
}

gboolean
wm_schema_find_kind (const char *word, WmKind *out_kind)
{
  for (guint i = 0; i < WM_N_KINDS; i++)
    if (strcmp (kinds[i].word, word) == 0)
      {
        *out_kind = i;
        return TRUE;
      }
  return FALSE;
}

const WmFieldSpec *
wm_schema_find_field (WmKind kind, const char *field)
{
  for (const WmFieldSpec *spec = kinds[kind].fields; spec->field != NULL; spec++)
    if (strcmp (spec->field, field) == 0)
      return spec;
  return NULL;
}

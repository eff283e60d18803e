/* judge-words.c: a judgement in words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/judge.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  WmReason reason;
  const char *code;
  const char *words;  /* N_() */
  const char *advice; /* N_() */
} ReasonWords;

/* The worst first: the summary begins with it. */
static const ReasonWords reasons[] = {
  { WM_REASON_BLURRED, "blurred", N_ ("out of focus"),
    N_ ("Focus on the part itself, or step back and crop, and take it again.") },
  { WM_REASON_SHAKEN, "shaken", N_ ("shaken"),
    N_ ("Rest the phone or camera on something and take it again.") },
  { WM_REASON_BLOWN, "blown", N_ ("burnt out by glare"),
    N_ ("Turn the light aside or put tracing paper before it, and take it again.") },
  { WM_REASON_BLOCKED, "blocked", N_ ("lost in shadow"),
    N_ ("Bring light in from the dark side, a white card is enough.") },
  { WM_REASON_SOFT, "soft", N_ ("a little soft"),
    N_ ("If the fault is small, focus on it and take it again.") },
  { WM_REASON_SMALL, "small", N_ ("few pixels"),
    N_ ("Use the camera's full size, or go closer.") },
  { WM_REASON_NO_DETAIL, "no-detail", N_ ("nothing to judge the focus by"),
    N_ ("Look at it at true pixels yourself.") }
};

const char *
wm_verdict_code (WmVerdict verdict)
{
  static const char *const codes[] = { "good", "usable", "retake" };

  return codes[verdict];
}

char *
wm_judgement_summary (const WmJudgement *judgement)
{
  g_autoptr (GString) words = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (reasons); i++)
    if (judgement->reasons & (guint)reasons[i].reason)
      {
        if (words->len > 0)
          g_string_append (words, _ (", "));
        g_string_append (words, _ (reasons[i].words));
      }

  if (words->len == 0)
    g_string_append (words, _ ("sharp, well lit"));
  return g_string_free (g_steal_pointer (&words), FALSE);
}

const char **
wm_judgement_reason_codes (const WmJudgement *judgement)
{
  const char **codes = g_new0 (const char *, G_N_ELEMENTS (reasons) + 1);
  int count = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (reasons); i++)
    if (judgement->reasons & (guint)reasons[i].reason)
      codes[count++] = reasons[i].code;

  return codes;
}

static const ReasonWords *
find_reason (WmReason reason)
{
  for (gsize i = 0; i < G_N_ELEMENTS (reasons); i++)
    if (reasons[i].reason == reason)
      return &reasons[i];

  return NULL;
}

const char *
wm_reason_words (WmReason reason)
{
  const ReasonWords *found = find_reason (reason);

  return found != NULL ? _ (found->words) : "";
}

const char *
wm_reason_advice (WmReason reason)
{
  const ReasonWords *found = find_reason (reason);

  return found != NULL ? _ (found->advice) : "";
}

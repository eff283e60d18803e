/* verb-photo.c: photo FILE [-o UPRIGHT.png]: what a photo file is and how good it is
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "command/json-out.h"
#include "command/verbs.h"
#include "photo/judge.h"
#include "photo/load.h"
#include "photo/png-write.h"
#include "photo/probe.h"

static void
print_json (WmCall *call, const WmPhotoFacts *facts, const WmJudgement *judgement)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autofree const char **codes = wm_judgement_reason_codes (judgement);

  json_builder_begin_object (builder);
  wm_json_add_text (builder, "format", wm_photo_format_name (facts->format));
  wm_json_add_int (builder, "width", facts->width);
  wm_json_add_int (builder, "height", facts->height);
  wm_json_add_int (builder, "orientation", facts->orientation);
  wm_json_add_real (builder, "focus", judgement->focus);
  wm_json_add_real (builder, "clipped_bright", judgement->clipped_bright);
  wm_json_add_real (builder, "clipped_dark", judgement->clipped_dark);
  wm_json_add_text (builder, "verdict", wm_verdict_code (judgement->verdict));
  json_builder_set_member_name (builder, "reasons");
  json_builder_begin_array (builder);
  for (guint i = 0; codes[i] != NULL; i++)
    json_builder_add_string_value (builder, codes[i]);
  json_builder_end_array (builder);
  json_builder_end_object (builder);
  wm_call_print_json (call, json_builder_get_root (builder));
}

static void
print_text (WmCall *call, const WmPhotoFacts *facts, const WmJudgement *judgement)
{
  g_autofree char *summary = wm_judgement_summary (judgement);

  wm_call_print (call, _ ("%s, %d x %d pixels upright (EXIF orientation %d)\n%s\n"),
                 wm_photo_format_name (facts->format), facts->width, facts->height,
                 facts->orientation, summary);
  for (guint bit = 1; bit <= judgement->reasons; bit <<= 1)
    if ((judgement->reasons & bit) != 0)
      wm_call_print (call, "%s %s\n", wm_reason_words (bit), wm_reason_advice (bit));
}

static WmExit
run (WmCall *call)
{
  const char *path = wm_call_get_operand (call, 0);
  const char *dest = wm_call_get_option (call, "output");
  g_autoptr (WmPhotoFacts) facts = NULL;
  g_autoptr (GError) error = NULL;
  WmPictureOptions options = { 0 };
  WmJudgement judgement;

  if (!wm_call_spares (call, path, dest))
    return WM_EXIT_FAILED;
  /* Read whole first, in a process of its own: no byte of a stranger's file is looked
   * at here before. */
  if (!wm_photo_check_whole (path, NULL, &error)
      || (facts = wm_photo_probe_file (path, &error)) == NULL
      || !wm_photo_judge (path, &judgement, NULL, &error)
      || (dest != NULL && !wm_picture_write_png (path, dest, &options, NULL, &error)))
    return wm_call_fail_with (call, error);

  if (wm_call_wants_json (call))
    print_json (call, facts, &judgement);
  else
    print_text (call, facts, &judgement);
  return WM_EXIT_DONE;
}

static const WmVerbOption verb_options[] = {
  { "output", 'o', N_ ("UPRIGHT.png"),
    N_ ("write it as the window shows it: upright, sRGB") },
  { NULL },
};

const WmVerb wm_verb_photo = {
  .name = "photo",
  .operands = N_ ("FILE"),
  .min_operands = 1,
  .max_operands = 1,
  .summary = N_ ("format, size, orientation and quality of a photo"),
  .options = verb_options,
  .run = run,
};

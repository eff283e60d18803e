/* verb-align.c: align BEFORE AFTER [-o WARPED.png]: two photos of a piece in register
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "command/json-out.h"
#include "command/verbs.h"
#include "photo/align.h"
#include "photo/load.h"
#include "photo/warp.h"

static void
print_json (WmCall *call, const WmAlignment *alignment)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  json_builder_set_member_name (builder, "aligned");
  json_builder_add_boolean_value (builder, alignment->aligned);
  json_builder_set_member_name (builder, "matrix");
  json_builder_begin_array (builder);
  for (int i = 0; i < 9; i++)
    json_builder_add_double_value (builder, alignment->matrix[i]);
  json_builder_end_array (builder);
  wm_json_add_real (builder, "residual_px", alignment->residual_px);
  wm_json_add_real (builder, "overlap", alignment->overlap);
  wm_json_add_text (builder, "reason", wm_align_reason_name (alignment->reason));
  json_builder_end_object (builder);
  wm_call_print_json (call, json_builder_get_root (builder));
}

static void
print_text (WmCall *call, const WmAlignment *alignment)
{
  const double *m = alignment->matrix;

  wm_call_print (call, "%s\n", _ (wm_align_reason_text (alignment->reason)));
  if (alignment->aligned)
    wm_call_print (
        call,
        _ ("After to before: %.6g %.6g %.6g / %.6g %.6g %.6g / %.6g %.6g %.6g\n"
           "Residual %.2f pixels, overlap %.0f %%\n"),
        m[0], m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8], alignment->residual_px,
        100 * alignment->overlap);
}

static WmExit
run (WmCall *call)
{
  const char *before = wm_call_get_operand (call, 0);
  const char *after = wm_call_get_operand (call, 1);
  const char *dest = wm_call_get_option (call, "output");
  g_autoptr (GError) error = NULL;
  WmAlignment alignment;

  if (!wm_call_spares (call, before, dest) || !wm_call_spares (call, after, dest))
    return WM_EXIT_FAILED;
  if (!wm_photo_check_whole (before, NULL, &error)
      || !wm_photo_check_whole (after, NULL, &error)
      || !wm_align_photos (before, after, NULL, NULL, NULL, &alignment, &error))
    return wm_call_fail_with (call, error);

  /* An honest no is an answer, but then there is nothing to write. */
  if (dest != NULL && alignment.aligned
      && !wm_warp_photo (before, after, alignment.matrix, dest, NULL, &error))
    return wm_call_fail_with (call, error);

  if (wm_call_wants_json (call))
    print_json (call, &alignment);
  else
    print_text (call, &alignment);
  if (dest != NULL && !alignment.aligned)
    return wm_call_fail (call,
                         _ ("The photos could not be aligned, so nothing was written."));
  return WM_EXIT_DONE;
}

static const WmVerbOption verb_options[] = {
  { "output", 'o', N_ ("WARPED.png"),
    N_ ("write the after photo laid on the before photo") },
  { NULL },
};

const WmVerb wm_verb_align = {
  .name = "align",
  .operands = N_ ("BEFORE AFTER"),
  .min_operands = 2,
  .max_operands = 2,
  .summary = N_ ("bring two photos of a piece into register"),
  .options = verb_options,
  .run = run,
};

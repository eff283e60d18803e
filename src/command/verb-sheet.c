/* verb-sheet.c: sheet -o FILE.pdf: the scale sheet to be printed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "command/verbs.h"
#include "report/scale-sheet.h"

static void
print_result (WmCall *call, const char *path, WmPaper paper)
{
  g_autofree char *shown = wm_shown_path (path);

  if (wm_call_wants_json (call))
    {
      g_autoptr (JsonBuilder) builder = json_builder_new ();

      json_builder_begin_object (builder);
      json_builder_set_member_name (builder, "file");
      json_builder_add_string_value (builder, shown);
      json_builder_set_member_name (builder, "paper");
      json_builder_add_string_value (builder, paper == WM_PAPER_A4 ? "a4" : "letter");
      json_builder_end_object (builder);
      wm_call_print_json (call, json_builder_get_root (builder));
    }
  else
    {
      wm_call_print (call,
                     _ ("Scale sheet written to %s. Print it at 100 %%, then check its "
                        "100 mm with a rule.\n"),
                     shown);
    }
}

static WmExit
run (WmCall *call)
{
  const char *path = wm_call_get_option (call, "output");
  const char *paper = wm_call_get_option (call, "paper");
  const char *tag = wm_call_get_option (call, "language");
  WmPaper chosen = WM_PAPER_A4;
  g_autoptr (WmLanguage) language = NULL;
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    return wm_call_misused (call, _ ("say where to with -o FILE.pdf"));
  if (g_strcmp0 (paper, "letter") == 0)
    chosen = WM_PAPER_LETTER;
  else if (paper != NULL && g_strcmp0 (paper, "a4") != 0)
    return wm_call_misused (call, _ ("--paper is a4 or letter"));

  /* The sheet is for the bench: in the language of those who work here. */
  language = wm_language_new (tag != NULL ? tag : g_get_language_names ()[0]);
  if (!wm_scale_sheet_write_pdf (chosen, language, path, &error))
    return wm_call_fail_with (call, error);
  print_result (call, path, chosen);
  return WM_EXIT_DONE;
}

static const WmVerbOption options[] = {
  { "output", 'o', N_ ("FILE.pdf"), N_ ("where to") },
  { "paper", 0, N_ ("PAPER"), N_ ("a4 or letter (default: a4)") },
  { "language", 0, N_ ("TAG"), N_ ("en, de ... (default: the system's)") },
  { NULL },
};

const WmVerb wm_verb_sheet = {
  .name = "sheet",
  .operands = "",
  .summary = N_ ("write the scale sheet to be printed, as PDF"),
  .options = options,
  .run = run,
};

/* block-measured.c: what was measured at a finding, what is left, and how it wears
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "reckon/section.h"
#include "report/blocks.h"
#include "report/wear-plot.h"
#include "report/words.h"

/* The drawing beside its sentence: as wide as a close-up (look book, section 6). */
#define WM_PLOT_WIDTH_MM 85.0
#define WM_PLOT_HEIGHT_MM 30.0

/* The measurement of the visit's arrival; the last one taken. */
static WmMeasurement *
find_measurement (const WmFinding *finding, const char *moment)
{
  WmMeasurement *last = NULL;

  for (guint i = 0; i < finding->measurements->len; i++)
    {
      WmMeasurement *measurement = g_ptr_array_index (finding->measurements, i);

      if (g_strcmp0 (measurement->moment, moment) == 0
          && isfinite (measurement->value_mm))
        last = measurement;
    }
  return last;
}

/* "0.52 ± 0.04 mm": the uncertainty expanded, coverage factor 2 (JCGM 100:2008, 6.2). */
static char *
describe_value (WmLanguage *language, double mm, double u_mm)
{
  return u_mm > 0 ? wm_words_mm_within (language, mm, 2 * u_mm)
                  : wm_words_mm (language, mm, 2);
}

static gboolean
is_thinned (WmMeasurement *reading)
{
  return reading->as_made_mm > 0 && reading->value_mm <= reading->as_made_mm;
}

/* As-made and worn section of a reading; FALSE when its shape is not said or does not
 * give both. A wire that is worn by its mate has the mate's bow taken as tight as the
 * wire is thick when it was not measured (reckon/section.h). */
static gboolean
make_sections (WmMeasurement *reading, WmSection *made, WmSection *worn)
{
  WmValue now = { reading->value_mm, MAX (reading->uncertainty_mm, 0) };
  WmValue new = { reading->as_made_mm, MAX (reading->as_made_uncertainty_mm, 0) };
  WmValue width = { reading->width_mm, 0 };

  if (isnan (now.u))
    now.u = 0;
  if (isnan (new.u))
    new.u = 0;
  *made = *worn = (WmSection) { WM_SECTION_ROUND, new, new, { 0, 0 } };
  worn->height_mm = now;
  if (g_strcmp0 (reading->section, "round") == 0)
    worn->shape = WM_SECTION_FLATTED;
  else if (g_strcmp0 (reading->section, "ring-in-ring") == 0)
    {
      worn->shape = WM_SECTION_SADDLE;
      worn->extra_mm = (WmValue) { new.value, 0 };
    }
  else if (width.value > 0
           && (g_strcmp0 (reading->section, "rectangle") == 0
               || g_strcmp0 (reading->section, "oval") == 0))
    {
      made->shape = worn->shape =
          reading->section[0] == 'r' ? WM_SECTION_RECTANGLE : WM_SECTION_OVAL;
      made->width_mm = worn->width_mm = width;
    }
  else
    return FALSE;
  return TRUE;
}

static const char *
say_shape (WmLanguage *language, WmSectionShape shape)
{
  switch (shape)
    {
    case WM_SECTION_FLATTED:
      return wm_say (language, N_ ("for a round wire worn flat"));
    case WM_SECTION_SADDLE:
      return wm_say (language, N_ ("for a round wire worn by the ring in it"));
    case WM_SECTION_RECTANGLE:
      return wm_say (language, N_ ("for a flat strip"));
    default:
      return wm_say (language, N_ ("for an oval wire"));
    }
}

static int
percent (double share)
{
  return (int)lround (100 * share);
}

/* A sentence begins with a capital, the words of reckon/ do not. */
static char *
capitalise (const char *words)
{
  g_autofree char *first = NULL;

  if (*words == '\0')
    return g_strdup ("");
  first = g_utf8_strup (words, g_utf8_next_char (words) - words);
  return g_strconcat (first, g_utf8_next_char (words), NULL);
}

/* What is left in words, with where it comes from; NULL where nothing was worn off. */
static char *
describe_left (WmLanguage *language, WmMeasurement *reading)
{
  WmSection made, worn;
  WmSectionLeft left;
  const char *which = NULL;
  g_autofree char *gone = NULL;
  GString *text;

  if (!is_thinned (reading))
    return NULL;
  if (!make_sections (reading, &made, &worn)
      || wm_section_left (&made, &worn, wm_exact (0), &left, &which) != WM_OK)
    return NULL;
  gone = capitalise (wm_say (language, wm_section_words (left.area_left.value)));
  text = g_string_new (gone);
  g_string_append (text, ". ");
  /* Translators: three percentages, then "for a round wire worn flat" */
  g_string_append_printf (
      text,
      wm_say (language, N_ ("Left of its strength: pull %d %%, bending %d %%, stiffness "
                            "%d %%, %s (strength of materials).")),
      percent (left.area_left.value), percent (left.bending_left.value),
      percent (left.stiff_left.value), say_shape (language, worn.shape));
  return g_string_free (text, FALSE);
}

static char *
describe_made (WmLanguage *language, WmMeasurement *reading)
{
  g_autofree char *made = NULL;

  if (!(reading->as_made_mm > 0))
    return NULL;
  made = describe_value (language, reading->as_made_mm, reading->as_made_uncertainty_mm);
  if (!is_thinned (reading))
    return g_strdup_printf (wm_say (language, N_ ("as made: %s")), made);
  return g_strdup_printf (wm_say (language, N_ ("of %s as made: %d %% left")), made,
                          percent (reading->value_mm / reading->as_made_mm));
}

/* What the numbers point to, and the jeweller's other word with its reason. */
static char *
describe_word (WmLanguage *language, WmCheck *check)
{
  GString *text;

  if (check->suggested == WM_SEVERITY_NOT_LOOKED_AT)
    return NULL;
  text = g_string_new (NULL);
  if (check->suggested == check->severity)
    g_string_append_printf (text,
                            wm_say (language, N_ ("The numbers point to the same: %s.")),
                            wm_words_severity (language, (WmSeverity)check->suggested));
  else
    g_string_append_printf (
        text,
        wm_say (language, N_ ("The numbers alone point to: %s; the jeweller says: "
                              "%s.")),
        wm_words_severity (language, (WmSeverity)check->suggested),
        wm_words_severity (language, (WmSeverity)check->severity));
  if (check->suggested_reason != NULL)
    g_string_append_printf (text, " %s", wm_say (language, check->suggested_reason));
  if (check->other_word_note != NULL && check->suggested != check->severity)
    g_string_append_printf (text, " %s", check->other_word_note);
  return g_string_free (text, FALSE);
}

static const WmWear *
find_wear (const WmPageContext *context, const WmFinding *finding)
{
  return context->outlook != NULL ? wm_outlook_find (
             context->outlook, wm_record_get_id (WM_RECORD (finding->check)))
                                  : NULL;
}

/* Lines under the reading, each only if there is something to say. Returns: height */
static double
place_lines (WmSheet *sheet, double x_mm, double y_mm, double width_mm, char **lines)
{
  double height = 0;

  for (int i = 0; i < 2; i++)
    if (lines[i] != NULL)
      height +=
          wm_sheet_text (sheet, x_mm, y_mm + height, width_mm, WM_TEXT_SMALL, lines[i]);
  return height;
}

double
wm_block_measured (const WmPageContext *context, const WmFinding *finding, double x_mm,
                   double y_mm, double width_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmMeasurement *reading = find_measurement (finding, WM_PHOTO_BEFORE);
  g_autofree char *value = NULL, *made = NULL, *word = NULL;
  g_autofree char *left = NULL;
  char *lines[2];
  double text_x = x_mm + 15;
  double height;

  word = describe_word (language, finding->check);
  if (reading == NULL)
    {
      height = wm_sheet_text (sheet, x_mm, y_mm, width_mm, WM_TEXT_BODY,
                              wm_say (language, N_ ("Judged by eye under the loupe.")));
      return word == NULL ? height
                          : height
                                + wm_sheet_text (sheet, x_mm, y_mm + height, width_mm,
                                                 WM_TEXT_SMALL, word);
    }

  value = describe_value (language, reading->value_mm, reading->uncertainty_mm);
  made = describe_made (language, reading);
  left = describe_left (language, reading);
  if (is_thinned (reading))
    wm_sheet_section (sheet, x_mm + 6, y_mm + 6.6, 5.8,
                      reading->value_mm / reading->as_made_mm);
  else
    text_x = x_mm;
  height = wm_sheet_text (sheet, text_x, y_mm, width_mm - (text_x - x_mm), WM_TEXT_STRONG,
                          value);
  if (made != NULL)
    height += wm_sheet_text (sheet, text_x, y_mm + height, width_mm - (text_x - x_mm),
                             WM_TEXT_SMALL, made);
  height = is_thinned (reading) ? MAX (height, 13.5) : height;
  lines[0] = left;
  lines[1] = word;
  return height + place_lines (sheet, x_mm, y_mm + height, width_mm, lines);
}

/* ---- over the years ------------------------------------------------------------- */

static void
draw_plot (WmSheet *sheet, const WmWear *wear, double y_mm)
{
  const WmPlotColour ink = { 0.10, 0.10, 0.10, 1 }, dim = { 0.29, 0.29, 0.29, 1 };
  const WmPlotColour grey = { 0.82, 0.82, 0.82, 1 }, paper = { 1, 1, 1, 1 };
  WmPlotLook look = { .width = WM_PLOT_WIDTH_MM * WM_POINTS_PER_MM,
                      .height = WM_PLOT_HEIGHT_MM * WM_POINTS_PER_MM,
                      .font = 7,
                      .line = 0.4,
                      .context = sheet->context,
                      .language = sheet->language,
                      .text = ink,
                      .dim = dim,
                      .band = sheet->grey ? grey : (WmPlotColour) { 0.69, 0.83, 0.91, 1 },
                      .accent = sheet->grey ? ink : (WmPlotColour) { 0, 0.447, 0.698, 1 },
                      .limit = sheet->grey ? ink : (WmPlotColour) { 0.72, 0.31, 0, 1 },
                      .ground = paper };

  if (sheet->cr == NULL)
    return;
  cairo_save (sheet->cr);
  cairo_translate (sheet->cr, sheet->left_mm * WM_POINTS_PER_MM, y_mm * WM_POINTS_PER_MM);
  wm_wear_plot_draw (sheet->cr, wear, &look);
  cairo_restore (sheet->cr);
}

double
wm_block_wear (const WmPageContext *context, const WmFinding *finding, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  const WmWear *wear = find_wear (context, finding);
  const double right = WM_PLOT_WIDTH_MM + WM_SHEET_GUTTER_MM;
  g_autofree char *since = NULL, *pace = NULL, *sentence = NULL;
  double height;

  if (wear == NULL || (wear->is_renewed && !wear->has_forecast))
    return 0;
  if (!wear->has_forecast)
    return 1.5
           + wm_sheet_text (
               sheet, 0, y_mm + 1.5, WM_SHEET_WIDTH_MM, WM_TEXT_SMALL,
               wm_say (language,
                       N_ ("First reading of this place: how fast it wears is not "
                           "known yet; the usual time to the next check is "
                           "assumed to do.")));
  since = wm_wear_since_last (wear, language);
  pace = wm_wear_sentence (wear, language);
  sentence = since != NULL ? g_strdup_printf ("%s. %s", since, pace) : g_strdup (pace);
  y_mm += 3;
  wm_sheet_tag (sheet, "Figure");
  draw_plot (sheet, wear, y_mm);
  wm_sheet_tag_end (sheet, "Figure");
  wm_sheet_tag (sheet, "P");
  height = wm_sheet_text (sheet, right, y_mm + 1, 0, WM_TEXT_SMALL_STRONG,
                          wm_say (language, N_ ("Over the years")));
  height += 0.4;
  height += wm_sheet_text (sheet, right, y_mm + 1 + height, WM_PLOT_WIDTH_MM,
                           WM_TEXT_BODY, sentence);
  wm_sheet_text (
      sheet, right, y_mm + 1 + height + 0.6, WM_PLOT_WIDTH_MM, WM_TEXT_SMALL,
      wm_say (language, N_ ("Straight line through the readings of all visits with its "
                            "95 % band (weighted least squares); steady wear assumed.")));
  wm_sheet_tag_end (sheet, "P");
  return WM_PLOT_HEIGHT_MM + 3;
}

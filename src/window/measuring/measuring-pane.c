/* measuring-pane.c: a reading, what is left, what it points to, where it comes from
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/measuring/measuring-pane.h"

#include <glib/gi18n.h>
#include <math.h>

#include "photo/mark-look.h"
#include "window/action-table.h"
#include "window/glyph.h"
#include "window/inspection/wire-section.h"
#include "window/measuring/gauge-readings.h"
#include "window/measuring/measure-field.h"
#include "window/resource.h"

/* Diameter of the wire section, view px (look book, picture 3). */
#define SECTION_PX 92

struct _WmMeasuringPane
{
  AdwBin parent_instance;

  GtkWidget *back, *unworn, *other_scale, *other_way, *take;
  GtkLabel *title, *second, *status;
  WmWireSection *section;
  GtkLabel *value, *expanded, *left;
  GtkWidget *readings_row, *readings, *gauge_row;
  GtkLabel *readings_remark;
  GtkDropDown *gauge, *basis, *kind;
  GtkWidget *as_made, *width_row, *width, *inside_row, *inside;
  GtkLabel *as_made_remark, *width_name, *width_remark, *inside_remark;
  GtkWidget *left_title, *left_card, *points_title, *points_card, *source_title,
      *source_card;
  GtkProgressBar *pull_bar, *bending_bar, *stiffness_bar;
  GtkLabel *pull_text, *bending_text, *stiffness_text;
  GtkLabel *words, *severity, *reason, *stays, *warning;
  WmGlyph *glyph;
  GtkLabel *source_scale, *source_pixel, *source_ends, *source_depth;

  WmWornInput input;
  WmWorn wear;
  WmValue measured_mm; /* on the photo; value NaN: not yet */
  gboolean all_by_edge;
  gboolean by_gauge;
  gboolean has_wrong; /* a field says something that can not be */
  WmValue unworn_mm;  /* the as-made value as it was measured, with its uncertainty */
  char *own_basis;    /* words of the record that are in no table */
  char *metal;
  int number;
  gboolean is_filling;
};

G_DEFINE_FINAL_TYPE (WmMeasuringPane, wm_measuring_pane, ADW_TYPE_BIN)

/* Words the record keeps (record/measurement.h). */
static const char *const bases[] = { N_ ("nominal"), N_ ("unworn place"),
                                     N_ ("earlier visit") };

/* ---- what the fields say -------------------------------------------------------------
 */

static WmValue
read_gauge (WmMeasuringPane *self, GArray **out_readings)
{
  g_autoptr (GArray) readings = NULL;
  g_autofree char *remark = NULL;
  guint n;
  const WmGauge *gauges = wm_gauges (&n);
  guint chosen = MIN (gtk_drop_down_get_selected (self->gauge), n - 1);
  WmFieldVerdict verdict = wm_gauge_readings_parse (
      gtk_editable_get_text (GTK_EDITABLE (self->readings)), &readings, &remark);

  wm_measure_field_remark (self->readings, self->readings_remark, remark,
                           verdict == WM_FIELD_WRONG);
  if (verdict == WM_FIELD_WRONG)
    self->has_wrong = TRUE;
  if (readings == NULL || readings->len == 0)
    return wm_value (NAN, 0);
  if (out_readings != NULL)
    *out_readings = g_array_ref (readings);
  return wm_gauge_readings_value ((const double *)readings->data, readings->len,
                                  gauges[chosen].u_mm);
}

static double
read_field (WmMeasuringPane *self, GtkWidget *entry, GtkLabel *remark)
{
  double mm = NAN;

  if (!wm_measure_field_read (entry, remark, &mm))
    self->has_wrong = TRUE;
  return mm;
}

/* The as-made value carries its uncertainty only while it is the one measured. */
static WmValue
read_as_made (WmMeasuringPane *self)
{
  double mm = read_field (self, self->as_made, self->as_made_remark);

  if (isfinite (mm) && fabs (mm - self->unworn_mm.value) < 0.0006)
    return self->unworn_mm;
  return wm_exact (mm);
}

static const WmSectionKind *
get_kind (WmMeasuringPane *self)
{
  guint n;
  const WmSectionKind *kinds = wm_section_kinds (&n);

  return &kinds[MIN (gtk_drop_down_get_selected (self->kind), n - 1)];
}

static void
read_fields (WmMeasuringPane *self)
{
  const WmSectionKind *kind = get_kind (self);
  gboolean is_round =
      g_str_equal (kind->key, "round") || g_str_equal (kind->key, "ring-in-ring");

  self->has_wrong = FALSE;
  self->input.value_mm = self->by_gauge ? read_gauge (self, NULL) : self->measured_mm;
  self->input.as_made_mm = read_as_made (self);
  self->input.section = kind->key;
  gtk_widget_set_visible (self->width_row, kind->width_name != NULL);
  gtk_widget_set_visible (self->inside_row, is_round);
  if (kind->width_name != NULL)
    {
      gtk_label_set_text (self->width_name, _ (kind->width_name));
      wm_measure_field_name (self->width, _ (kind->width_name));
    }
  self->input.width_mm =
      kind->width_name != NULL ? read_field (self, self->width, self->width_remark) : NAN;
  self->input.inside_mm =
      is_round ? read_field (self, self->inside, self->inside_remark) : NAN;
}

/* ---- showing
 * ---------------------------------------------------------------------------- */

static void
show_share (GtkProgressBar *bar, GtkLabel *text, const char *name, WmValue share)
{
  g_autofree char *percent = g_strdup_printf (_ ("%.0f %%"), 100 * share.value);
  g_autofree char *spoken = g_strdup_printf ("%s, %s", name, percent);

  gtk_progress_bar_set_fraction (bar, CLAMP (share.value, 0, 1));
  gtk_label_set_text (text, percent);
  gtk_accessible_update_property (GTK_ACCESSIBLE (bar), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  spoken, -1);
}

static void
show_value (WmMeasuringPane *self)
{
  WmValue mm = self->input.value_mm;
  gboolean has = isfinite (mm.value);
  g_autofree char *number = NULL, *expanded = NULL, *value = NULL, *shown = NULL;
  g_autofree char *left = NULL;

  value = has ? wm_worn_value_text (mm.value, mm.u) : g_strdup (_ ("not measured yet"));
  if (has && mm.u > 0)
    {
      double rounded;
      int decimals = wm_length_decimals (WM_COVERAGE_FACTOR * mm.u, &rounded);

      number = g_strdup_printf (_ ("%.*f mm"), decimals, mm.value);
      expanded = wm_worn_expanded_text (mm.value, mm.u);
      shown = g_strdup_printf (_ ("%s, covers about 95 %%"), expanded);
    }
  else
    number = g_strdup (has ? value : "–");
  gtk_label_set_text (self->value, number);
  gtk_label_set_text (self->expanded, shown != NULL ? shown : has ? "" : value);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->value),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, value, -1);
  if (self->wear.has_left)
    left = g_strdup_printf (_ ("%.0f %% of the thickness left"),
                            100 * self->wear.thickness_left.value);
  else if (has)
    left = wm_worn_refusal (&self->wear);
  gtk_label_set_text (self->left, left != NULL ? left : "");
  gtk_widget_set_visible (GTK_WIDGET (self->left), left != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->section), self->wear.has_left);
  if (self->wear.has_left)
    wm_wire_section_set_ratio (self->section, self->wear.thickness_left.value);
}

static void
show_left (WmMeasuringPane *self)
{
  gboolean has = self->wear.has_left;
  g_autofree char *words = wm_worn_words (&self->input, &self->wear);
  g_autofree char *whole = NULL;

  gtk_widget_set_visible (self->left_title, has);
  gtk_widget_set_visible (self->left_card, has);
  if (has)
    {
      show_share (self->pull_bar, self->pull_text, _ ("Pull"), self->wear.pull_left);
      show_share (self->bending_bar, self->bending_text, _ ("Bending"),
                  self->wear.bending_left);
      show_share (self->stiffness_bar, self->stiffness_text, _ ("Stiffness"),
                  self->wear.stiffness_left);
    }
  if (has && self->metal != NULL && self->input.yield_mpa.value > 0)
    whole = g_strdup_printf (_ ("%s Newtons are for %s as soldering leaves it, soft; a "
                                "guide, not a promise."),
                             words, self->metal);
  gtk_label_set_text (self->words, whole != NULL ? whole : words);
  gtk_widget_set_visible (GTK_WIDGET (self->words), *words != '\0');
}

static void
show_suggestion (WmMeasuringPane *self)
{
  g_autofree char *reason = wm_worn_reason (&self->wear);
  g_autofree char *stays = wm_worn_stays (&self->input, &self->wear);
  gboolean has = reason != NULL;

  gtk_widget_set_visible (self->points_title, has);
  gtk_widget_set_visible (self->points_card, has);
  if (!has)
    return;
  wm_glyph_set_severity (self->glyph, self->wear.severity);
  wm_glyph_set_number (self->glyph, self->number);
  gtk_label_set_text (self->severity, wm_severity_word (self->wear.severity));
  gtk_label_set_text (self->reason, reason);
  gtk_label_set_text (self->stays, stays);
}

static void
show (WmMeasuringPane *self)
{
  if (self->is_filling)
    return;
  read_fields (self);
  wm_worn_reckon (&self->input, &self->wear);
  gtk_widget_set_visible (self->readings_row, self->by_gauge);
  gtk_widget_set_visible (self->gauge_row, self->by_gauge);
  gtk_widget_set_visible (GTK_WIDGET (self->readings_remark),
                          self->by_gauge
                              && *gtk_label_get_text (self->readings_remark) != '\0');
  gtk_widget_set_visible (self->unworn, !self->by_gauge);
  gtk_widget_set_visible (self->source_title, !self->by_gauge);
  gtk_widget_set_visible (self->source_card, !self->by_gauge);
  gtk_button_set_label (GTK_BUTTON (self->other_way), self->by_gauge
                                                          ? _ ("On the photo instead")
                                                          : _ ("By gauge instead"));
  show_value (self);
  show_left (self);
  show_suggestion (self);
  gtk_widget_set_sensitive (self->take,
                            isfinite (self->input.value_mm.value) && !self->has_wrong);
}

static void
on_entered (WmMeasuringPane *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "inspection.take-value", NULL);
}

/* A value typed over a measured one is nominal from then on. */
static void
on_as_made_changed (WmMeasuringPane *self)
{
  if (!self->is_filling && gtk_drop_down_get_selected (self->basis) != 0
      && fabs (read_as_made (self).value - self->unworn_mm.value) > 0.0006)
    gtk_drop_down_set_selected (self->basis, 0);
  show (self);
}

/* ---- widget ---------------------------------------------------------------------------
 */

static void
wm_measuring_pane_dispose (GObject *object)
{
  /* Before the template takes its child away behind the bin. */
  adw_bin_set_child (ADW_BIN (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), WM_TYPE_MEASURING_PANE);
  G_OBJECT_CLASS (wm_measuring_pane_parent_class)->dispose (object);
}

static void
wm_measuring_pane_finalize (GObject *object)
{
  g_free (WM_MEASURING_PANE (object)->own_basis);
  g_free (WM_MEASURING_PANE (object)->metal);
  G_OBJECT_CLASS (wm_measuring_pane_parent_class)->finalize (object);
}

#define BIND(member)                                                                     \
  gtk_widget_class_bind_template_child (widget_class, WmMeasuringPane, member)

static void
bind_fields (GtkWidgetClass *widget_class)
{
  BIND (readings_row);
  BIND (readings);
  BIND (gauge_row);
  BIND (readings_remark);
  BIND (gauge);
  BIND (basis);
  BIND (kind);
  BIND (as_made);
  BIND (width_row);
  BIND (width);
  BIND (inside_row);
  BIND (inside);
  BIND (as_made_remark);
  BIND (width_name);
  BIND (width_remark);
  BIND (inside_remark);
}

static void
bind_results (GtkWidgetClass *widget_class)
{
  BIND (left_title);
  BIND (left_card);
  BIND (points_title);
  BIND (points_card);
  BIND (source_title);
  BIND (source_card);
  BIND (pull_bar);
  BIND (bending_bar);
  BIND (stiffness_bar);
  BIND (pull_text);
  BIND (bending_text);
  BIND (stiffness_text);
  BIND (words);
  BIND (severity);
  BIND (reason);
  BIND (stays);
  BIND (warning);
  BIND (glyph);
  BIND (source_scale);
  BIND (source_pixel);
  BIND (source_ends);
  BIND (source_depth);
}

static void
wm_measuring_pane_class_init (WmMeasuringPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_measuring_pane_dispose;
  G_OBJECT_CLASS (klass)->finalize = wm_measuring_pane_finalize;
  g_type_ensure (WM_TYPE_WIRE_SECTION);
  g_type_ensure (WM_TYPE_GLYPH);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "measuring-pane.ui");
  BIND (back);
  BIND (unworn);
  BIND (other_scale);
  BIND (other_way);
  BIND (take);
  BIND (title);
  BIND (second);
  BIND (status);
  BIND (section);
  BIND (value);
  BIND (expanded);
  BIND (left);
  bind_fields (widget_class);
  bind_results (widget_class);
}

static void
fill_choices (WmMeasuringPane *self)
{
  g_autoptr (GtkStringList) gauge_names = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) basis_names = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) kind_names = gtk_string_list_new (NULL);
  guint n;
  const WmGauge *gauges = wm_gauges (&n);
  const WmSectionKind *kinds;

  for (guint i = 0; i < n; i++)
    gtk_string_list_append (gauge_names, _ (gauges[i].name));
  for (guint i = 0; i < G_N_ELEMENTS (bases); i++)
    gtk_string_list_append (basis_names, _ (bases[i]));
  kinds = wm_section_kinds (&n);
  for (guint i = 0; i < n; i++)
    gtk_string_list_append (kind_names, _ (kinds[i].name));
  gtk_drop_down_set_model (self->gauge, G_LIST_MODEL (gauge_names));
  gtk_drop_down_set_model (self->basis, G_LIST_MODEL (basis_names));
  gtk_drop_down_set_model (self->kind, G_LIST_MODEL (kind_names));
}

static void
name_widgets (WmMeasuringPane *self)
{
  wm_action_name_widget (self->back, "inspection.leave-measuring");
  wm_action_name_widget (self->unworn, "inspection.unworn");
  wm_action_name_widget (self->other_scale, "canvas.tool::ruler");
  wm_action_name_widget (self->other_way, "inspection.by-gauge");
  wm_action_name_widget (self->take, "inspection.take-value");
  wm_measure_field_name (self->readings, _ ("Readings of the gauge, mm"));
  wm_measure_field_name (GTK_WIDGET (self->gauge), _ ("Gauge"));
  wm_measure_field_name (self->as_made, _ ("Thickness as made, mm"));
  wm_measure_field_name (GTK_WIDGET (self->basis), _ ("Known from"));
  wm_measure_field_name (GTK_WIDGET (self->kind), _ ("Section"));
  wm_measure_field_name (self->width, _ ("Width, mm"));
  wm_measure_field_name (self->inside, _ ("Inside of the ring, mm"));
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->readings), _ ("0.61 0.59 0.60"));
}

static void
wm_measuring_pane_init (WmMeasuringPane *self)
{
  GtkWidget *entries[4], *drops[3];

  self->is_filling = TRUE;
  wm_worn_input_init (&self->input);
  self->measured_mm = self->unworn_mm = wm_value (NAN, 0);
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_wire_section_set_diameter (self->section, SECTION_PX);
  wm_glyph_set_radius (self->glyph, WM_MARK_R_ROW);
  fill_choices (self);
  name_widgets (self);
  entries[0] = self->readings;
  entries[1] = self->width;
  entries[2] = self->inside;
  entries[3] = self->as_made;
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      g_signal_connect_swapped (entries[i], "activate", G_CALLBACK (on_entered), self);
      g_signal_connect_swapped (entries[i], "changed",
                                entries[i] == self->as_made
                                    ? G_CALLBACK (on_as_made_changed)
                                    : G_CALLBACK (show),
                                self);
    }
  drops[0] = GTK_WIDGET (self->gauge);
  drops[1] = GTK_WIDGET (self->kind);
  drops[2] = GTK_WIDGET (self->basis);
  for (guint i = 0; i < G_N_ELEMENTS (drops); i++)
    g_signal_connect_swapped (drops[i], "notify::selected", G_CALLBACK (show), self);
  self->is_filling = FALSE;
}

/* ---- what is measured
 * ------------------------------------------------------------------- */

static guint
find_basis (const char *words)
{
  for (guint i = 0; i < G_N_ELEMENTS (bases); i++)
    if (g_strcmp0 (words, bases[i]) == 0)
      return i;
  return 0;
}

static double
known_u (double u)
{
  return isfinite (u) && u > 0 ? u : 0;
}

/* As made, section and its second size as an earlier reading has them. */
static void
take_from (WmMeasuringPane *self, WmMeasurement *reading, const char *basis)
{
  const WmSectionKind *kind =
      wm_section_kind_find (reading != NULL ? reading->section : NULL);
  guint n;

  gtk_drop_down_set_selected (self->kind, kind - wm_section_kinds (&n));
  self->unworn_mm = reading != NULL ? wm_value (reading->as_made_mm,
                                                known_u (reading->as_made_uncertainty_mm))
                                    : wm_value (NAN, 0);
  wm_measure_field_set (self->as_made, self->unworn_mm.value);
  gtk_drop_down_set_selected (self->basis, find_basis (basis));
  wm_measure_field_set (self->width, reading != NULL ? reading->width_mm : NAN);
}

void
wm_measuring_pane_open (WmMeasuringPane *self, const WmMeasuringSubject *subject)
{
  WmMeasurement *kept = subject->kept;

  self->is_filling = TRUE;
  gtk_label_set_text (self->title, subject->title);
  gtk_label_set_text (self->second, subject->second != NULL ? subject->second : "");
  self->number = subject->number;
  self->input.limits = subject->limits;
  self->input.yield_mpa = subject->yield_mpa;
  self->input.quantity = kept != NULL ? kept->quantity : NULL;
  self->measured_mm = wm_value (NAN, 0);
  self->all_by_edge = FALSE;
  g_free (self->metal);
  self->metal = g_strdup (subject->metal);
  g_free (self->own_basis);
  self->own_basis = g_strdup (kept != NULL ? kept->as_made_basis : NULL);
  if (kept != NULL)
    take_from (self, kept, kept->as_made_basis);
  else
    take_from (self, subject->earlier, subject->earlier != NULL ? bases[2] : bases[0]);
  wm_measure_field_set (self->inside, NAN);
  gtk_editable_set_text (GTK_EDITABLE (self->readings),
                         kept != NULL && kept->readings != NULL ? kept->readings : "");
  self->by_gauge = FALSE;
  self->is_filling = FALSE;
  show (self);
}

static void
show_source (WmMeasuringPane *self, const WmMeasuringSource *source)
{
  gtk_label_set_text (self->source_scale, source->scale);
  gtk_label_set_text (self->source_pixel, source->pixel);
  gtk_label_set_text (self->source_ends, source->ends != NULL ? source->ends : "–");
  gtk_label_set_text (self->source_depth, source->depth != NULL ? source->depth : "–");
  gtk_label_set_text (self->warning, source->warning != NULL ? source->warning : "");
  gtk_widget_set_visible (GTK_WIDGET (self->warning), source->warning != NULL);
}

void
wm_measuring_pane_show_length (WmMeasuringPane *self, const WmLength *length,
                               const WmMeasuringSource *source, gboolean all_by_edge)
{
  self->measured_mm =
      length != NULL ? wm_value (length->value_mm, length->u_mm) : wm_value (NAN, 0);
  self->all_by_edge = all_by_edge;
  show_source (self, source);
  show (self);
}

void
wm_measuring_pane_show_kept (WmMeasuringPane *self, WmMeasurement *kept)
{
  self->measured_mm = wm_value (kept->value_mm, known_u (kept->uncertainty_mm));
  self->all_by_edge = g_strcmp0 (kept->ends, "edge") == 0;
  show (self);
}

void
wm_measuring_pane_say (WmMeasuringPane *self, const char *text)
{
  gtk_label_set_text (self->status, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->status), text != NULL);
}

void
wm_measuring_pane_set_as_made (WmMeasuringPane *self, WmValue mm, const char *basis)
{
  self->is_filling = TRUE;
  self->unworn_mm = mm;
  wm_measure_field_set (self->as_made, mm.value);
  gtk_drop_down_set_selected (self->basis, find_basis (basis));
  self->is_filling = FALSE;
  show (self);
}

void
wm_measuring_pane_set_by_gauge (WmMeasuringPane *self, gboolean by_gauge)
{
  self->by_gauge = by_gauge;
  show (self);
  if (by_gauge)
    gtk_widget_grab_focus (self->readings);
}

gboolean
wm_measuring_pane_is_by_gauge (WmMeasuringPane *self)
{
  return self->by_gauge;
}

gboolean
wm_measuring_pane_fill (WmMeasuringPane *self, WmMeasurement *reading)
{
  g_autoptr (GArray) readings = NULL;
  g_autofree char *text = NULL;
  guint basis = gtk_drop_down_get_selected (self->basis);
  gboolean has_made = FALSE;

  read_fields (self);
  if (self->has_wrong || !isfinite (self->input.value_mm.value))
    return FALSE;
  if (self->by_gauge)
    {
      read_gauge (self, &readings);
      text = wm_gauge_readings_format ((const double *)readings->data, readings->len);
    }
  has_made = isfinite (self->input.as_made_mm.value);
  reading->value_mm = self->input.value_mm.value;
  reading->uncertainty_mm = self->input.value_mm.u > 0 ? self->input.value_mm.u : NAN;
  reading->as_made_mm = self->input.as_made_mm.value;
  reading->as_made_uncertainty_mm =
      has_made && self->input.as_made_mm.u > 0 ? self->input.as_made_mm.u : NAN;
  reading->width_mm = self->input.width_mm;
  wm_record_set_text (WM_RECORD (reading), "as-made-basis",
                      !has_made ? NULL
                      : basis == 0 && self->own_basis != NULL
                              && self->input.as_made_mm.value == self->unworn_mm.value
                          ? self->own_basis
                          : bases[MIN (basis, G_N_ELEMENTS (bases) - 1)]);
  wm_record_set_text (WM_RECORD (reading), "section",
                      has_made ? self->input.section : NULL);
  wm_record_set_text (WM_RECORD (reading), "method", self->by_gauge ? "gauge" : "photo");
  wm_record_set_text (WM_RECORD (reading), "readings", text);
  wm_record_set_text (WM_RECORD (reading), "ends",
                      self->by_gauge      ? NULL
                      : self->all_by_edge ? "edge"
                                          : "hand");
  if (reading->quantity == NULL)
    wm_record_set_text (WM_RECORD (reading), "quantity", "thickness");
  return TRUE;
}

const WmWorn *
wm_measuring_pane_get_worn (WmMeasuringPane *self)
{
  return &self->wear;
}

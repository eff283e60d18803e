/* scale-pane.c: the scale of the photo, beside it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/measuring/scale-pane.h"

#include <glib/gi18n.h>
#include <math.h>

#include "record/points.h"
#include "report/photo-scale.h"
#include "window/action-table.h"
#include "window/measuring/measure-field.h"
#include "window/measuring/scale-basis.h"
#include "window/measuring/snap-task.h"
#include "window/resource.h"

struct _WmScalePane
{
  AdwBin parent_instance;

  GtkWidget *back, *by_points, *by_rectangle, *methods;
  GtkLabel *title, *second, *status, *pixel;
  GtkWidget *length_row, *width_row, *height_row;
  GtkWidget *length, *width, *height, *known, *camera;
  GtkLabel *length_remark, *known_remark, *camera_remark;
  GtkDropDown *basis, *depth;
  GtkWidget *find_sheet, *remove, *gauge, *use;

  WmPoint points[4];
  guint n_points;
  gboolean is_rectangle;
  double zoom;
  double photo_width, photo_height; /* upright px */
  char *own_basis;                  /* words of the record that are in no table */
};

G_DEFINE_FINAL_TYPE (WmScalePane, wm_scale_pane, ADW_TYPE_BIN)

/* ---- what is typed ----------------------------------------------------------------- */

static gboolean
read_lengths (WmScalePane *self, double *first, double *second)
{
  *second = NAN;
  if (!self->is_rectangle)
    return wm_measure_field_read (self->length, self->length_remark, first)
           && isfinite (*first);
  return wm_measure_field_read (self->width, self->length_remark, first)
         && isfinite (*first)
         && wm_measure_field_read (self->height, self->length_remark, second)
         && isfinite (*second);
}

/* What the record would say; FALSE: not all is there. */
static gboolean
fill (WmScalePane *self, WmPhoto *photo)
{
  double first, second, known, placed_u_mm, mm_per_px;
  guint n;
  const WmScaleBasis *bases = wm_scale_bases (&n);
  guint chosen = gtk_drop_down_get_selected (self->basis);
  g_autofree char *plane = NULL;

  if (self->n_points == 0 || !read_lengths (self, &first, &second)
      || !wm_measure_field_read (self->known, self->known_remark, &known))
    return FALSE;
  /* Reckoned with 1 px an end; what the hand was worse than that counts to the length. */
  mm_per_px = first
              / hypot (self->points[1].x - self->points[0].x,
                       self->points[1].y - self->points[0].y);
  placed_u_mm =
      mm_per_px
      * sqrt (
          2 * (pow (wm_snap_hand_u_px (self->zoom), 2) - pow (WM_PLACED_POINT_U_PX, 2)));
  photo->scale_u_mm =
      hypot (isfinite (known) ? known / WM_COVERAGE_FACTOR : 0, placed_u_mm);
  photo->scale_depth_mm = wm_scale_depth_u (gtk_drop_down_get_selected (self->depth));
  wm_record_set_text (WM_RECORD (photo), "scale-kind",
                      self->is_rectangle ? "rectangle" : "points");
  wm_record_set_text (WM_RECORD (photo), "scale-basis",
                      chosen < n ? bases[chosen].words : self->own_basis);
  if (self->is_rectangle)
    plane = wm_points_format (self->points, 4);
  wm_record_set_text (WM_RECORD (photo), "scale-plane", plane);
  photo->scale_width_mm = self->is_rectangle ? first : NAN;
  photo->scale_height_mm = second;
  photo->scale_mm = self->is_rectangle ? NAN : first;
  photo->scale_x1 = self->is_rectangle ? NAN : self->points[0].x;
  photo->scale_y1 = self->is_rectangle ? NAN : self->points[0].y;
  photo->scale_x2 = self->is_rectangle ? NAN : self->points[1].x;
  photo->scale_y2 = self->is_rectangle ? NAN : self->points[1].y;
  return TRUE;
}

/* ---- showing ------------------------------------------------------------------------
 */

static void
show_pixel (WmScalePane *self)
{
  g_autoptr (WmPhoto) photo = wm_photo_new ();
  g_autofree char *text = NULL;
  WmPhotoScale scale;
  gboolean is_whole, is_right;

  photo->width = self->photo_width;
  photo->height = self->photo_height;
  is_whole = fill (self, photo);
  is_right = is_whole && wm_photo_scale_read (photo, &scale);
  if (is_right && !scale.is_plane)
    text = g_strdup_printf (_ ("One pixel of the photo is %.4f mm."),
                            wm_photo_scale_mm_per_px (&scale));
  else if (is_right)
    text =
        g_strdup_printf (_ ("One pixel in the middle of the photo is %.4f mm. The tilt "
                            "of the rectangle is taken out."),
                         wm_photo_scale_mm_per_px (&scale));
  else if (is_whole)
    text = g_strdup (self->is_rectangle
                         ? _ ("These corners make no rectangle seen from above. Put them "
                              "in order round it, none over another.")
                         : _ ("These points are too near each other. Take them farther "
                              "apart: the whole length of the rule is best."));
  gtk_label_set_text (self->pixel, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->pixel), text != NULL);
  gtk_widget_set_sensitive (self->use, is_right);
}

static void
show_status (WmScalePane *self)
{
  const char *text;

  if (self->n_points > 0)
    text =
        _ ("Now write what that is in millimetres. A point is moved by dragging it, or "
           "by Page Down and the arrow keys.");
  else if (self->is_rectangle)
    text = _ ("Click the four corners of a flat rectangle, one after the other round it: "
              "a card, a block, a square of graph paper.");
  else
    text = _ ("Click two points a known distance apart, as far apart as they go: two "
              "lines of a rule, the jaws of a calliper.");
  gtk_label_set_text (self->status, text);
  gtk_widget_set_visible (self->length_row, !self->is_rectangle);
  gtk_widget_set_visible (self->width_row, self->is_rectangle);
  gtk_widget_set_visible (self->height_row, self->is_rectangle);
}

static void
on_changed (WmScalePane *self)
{
  show_pixel (self);
}

static void
on_basis_chosen (GtkDropDown *drop, GParamSpec *pspec, WmScalePane *self)
{
  guint n;
  const WmScaleBasis *bases = wm_scale_bases (&n);
  guint chosen = gtk_drop_down_get_selected (drop);

  if (chosen < n)
    wm_measure_field_set (self->known, WM_COVERAGE_FACTOR * bases[chosen].u_mm);
}

static void
on_entered (GtkEntry *entry, WmScalePane *self)
{
  if (self->is_rectangle && GTK_WIDGET (entry) == self->width)
    gtk_widget_grab_focus (self->height);
  else
    gtk_widget_activate_action (GTK_WIDGET (self), "inspection.use-scale", NULL);
}

/* ---- widget ---------------------------------------------------------------------------
 */

static void
wm_scale_pane_dispose (GObject *object)
{
  /* Before the template takes its child away behind the bin. */
  adw_bin_set_child (ADW_BIN (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), WM_TYPE_SCALE_PANE);
  G_OBJECT_CLASS (wm_scale_pane_parent_class)->dispose (object);
}

static void
wm_scale_pane_finalize (GObject *object)
{
  g_free (WM_SCALE_PANE (object)->own_basis);
  G_OBJECT_CLASS (wm_scale_pane_parent_class)->finalize (object);
}

#define BIND(member)                                                                     \
  gtk_widget_class_bind_template_child (widget_class, WmScalePane, member)

static void
wm_scale_pane_class_init (WmScalePaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_scale_pane_dispose;
  G_OBJECT_CLASS (klass)->finalize = wm_scale_pane_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "scale-pane.ui");
  BIND (back);
  BIND (by_points);
  BIND (by_rectangle);
  BIND (methods);
  BIND (title);
  BIND (second);
  BIND (status);
  BIND (pixel);
  BIND (length_row);
  BIND (width_row);
  BIND (height_row);
  BIND (length);
  BIND (width);
  BIND (height);
  BIND (known);
  BIND (camera);
  BIND (length_remark);
  BIND (known_remark);
  BIND (camera_remark);
  BIND (basis);
  BIND (depth);
  BIND (find_sheet);
  BIND (remove);
  BIND (gauge);
  BIND (use);
}

static void
fill_choices (WmScalePane *self)
{
  g_autoptr (GtkStringList) basis = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) depth = gtk_string_list_new (NULL);
  guint n;
  const WmScaleBasis *bases = wm_scale_bases (&n);
  const double *depths;

  for (guint i = 0; i < n; i++)
    gtk_string_list_append (basis, _ (bases[i].words));
  gtk_drop_down_set_model (self->basis, G_LIST_MODEL (basis));
  depths = wm_scale_depths (&n);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *text =
          depths[i] > 0 ? g_strdup_printf (_ ("%g mm"), depths[i]) : NULL;

      gtk_string_list_append (depth, text != NULL ? text : _ ("not at all"));
    }
  gtk_drop_down_set_model (self->depth, G_LIST_MODEL (depth));
}

static void
name_widgets (WmScalePane *self)
{
  wm_action_name_widget (self->back, "inspection.leave-measuring");
  wm_action_name_widget (self->by_points, "canvas.tool::ruler");
  wm_action_name_widget (self->by_rectangle, "canvas.tool::corners");
  wm_action_name_widget (self->find_sheet, "inspection.find-sheet");
  wm_action_name_widget (self->remove, "inspection.remove-scale");
  wm_action_name_widget (self->gauge, "inspection.by-gauge");
  wm_action_name_widget (self->use, "inspection.use-scale");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->methods),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What the scale is taken from"), -1);
  wm_measure_field_name (self->length, _ ("Distance of the two points, mm"));
  wm_measure_field_name (self->width, _ ("Side 1 to 2, mm"));
  wm_measure_field_name (self->height, _ ("Side 2 to 3, mm"));
  wm_measure_field_name (self->known, _ ("Known to, mm either way"));
  wm_measure_field_name (self->camera, _ ("Camera away about, mm"));
  wm_measure_field_name (GTK_WIDGET (self->basis), _ ("Taken from"));
  wm_measure_field_name (GTK_WIDGET (self->depth),
                         _ ("The place lies higher or lower by up to"));
}

static void
wm_scale_pane_init (WmScalePane *self)
{
  GtkWidget *entries[5];

  gtk_widget_init_template (GTK_WIDGET (self));
  entries[0] = self->length;
  entries[1] = self->width;
  entries[2] = self->height;
  entries[3] = self->known;
  entries[4] = self->camera;
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      g_signal_connect_swapped (entries[i], "changed", G_CALLBACK (on_changed), self);
      g_signal_connect (entries[i], "activate", G_CALLBACK (on_entered), self);
    }
  fill_choices (self);
  name_widgets (self);
  g_signal_connect (self->basis, "notify::selected", G_CALLBACK (on_basis_chosen), self);
  on_basis_chosen (self->basis, NULL, self);
}

void
wm_scale_pane_open (WmScalePane *self, WmPhoto *photo, double camera_mm)
{
  int basis = wm_scale_basis_find (photo->scale_basis);
  guint n;

  wm_scale_bases (&n);
  g_free (self->own_basis);
  self->own_basis = g_strdup (photo->scale_basis);
  self->photo_width = photo->width;
  self->photo_height = photo->height;
  gtk_drop_down_set_selected (self->basis, MAX (basis, 0));
  if (isfinite (photo->scale_u_mm) && photo->scale_u_mm > 0)
    wm_measure_field_set (self->known, WM_COVERAGE_FACTOR * photo->scale_u_mm);
  else
    on_basis_chosen (self->basis, NULL, self);
  gtk_drop_down_set_selected (self->depth, wm_scale_depth_find (photo->scale_depth_mm));
  wm_measure_field_set (self->length, photo->scale_mm);
  wm_measure_field_set (self->width, photo->scale_width_mm);
  wm_measure_field_set (self->height, photo->scale_height_mm);
  wm_measure_field_set (self->camera, camera_mm);
  gtk_widget_set_visible (self->remove,
                          isfinite (photo->scale_mm) || photo->scale_plane != NULL);
}

void
wm_scale_pane_place (WmScalePane *self, const WmPoint *points, gboolean is_rectangle,
                     double zoom)
{
  self->is_rectangle = is_rectangle;
  self->zoom = zoom;
  self->n_points = points == NULL ? 0 : is_rectangle ? 4 : 2;
  for (guint i = 0; i < self->n_points; i++)
    self->points[i] = points[i];
  show_status (self);
  show_pixel (self);
}

void
wm_scale_pane_ask (WmScalePane *self)
{
  gtk_widget_grab_focus (self->is_rectangle ? self->width : self->length);
}

gboolean
wm_scale_pane_fill (WmScalePane *self, WmPhoto *photo)
{
  if (fill (self, photo))
    return TRUE;
  wm_scale_pane_ask (self);
  return FALSE;
}

double
wm_scale_pane_get_camera (WmScalePane *self)
{
  double mm = NAN;

  return wm_measure_field_read (self->camera, self->camera_remark, &mm) && isfinite (mm)
             ? mm
             : WM_CAMERA_MM;
}

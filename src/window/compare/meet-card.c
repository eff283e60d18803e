/* meet-card.c: how two photos meet, and what to do when they do not
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/compare/meet-card.h"

#include <glib/gi18n.h>
#include <math.h>

#include "window/action-table.h"
#include "window/resource.h"
#include "window/template.h"

struct _WmMeetCard
{
  GtkWidget parent_instance;

  GtkWidget *progress_row, *facts, *buttons, *waiting_row;
  GtkProgressBar *progress;
  GtkLabel *words, *fit, *overlap_label, *overlap, *found, *waiting;
  GtkWidget *stop, *accept, *by_hand, *again, *leave, *refine, *confirm;
};

G_DEFINE_FINAL_TYPE (WmMeetCard, wm_meet_card, GTK_TYPE_WIDGET)

/* The engine's word for a refusal back to its sentence. */
static const char *
get_reason_text (const char *name)
{
  for (int reason = WM_ALIGN_FOUND; reason <= WM_ALIGN_START_KEPT; reason++)
    if (g_strcmp0 (wm_align_reason_name (reason), name) == 0)
      return _ (wm_align_reason_text (reason));
  return _ ("These two photos could not be aligned.");
}

static const char *
get_words (const WmMeeting *meeting)
{
  if (meeting->is_by_hand_now)
    {
      if (meeting->note != NULL)
        return meeting->note;
      if (!meeting->is_aligned)
        return _ ("Place at least three points that are on both photos, far apart.");
      return _ ("Look at the seam: if the photos meet, keep the points.");
    }
  if (meeting->is_aligned || meeting->state == WM_PAIRER_AT_WORK)
    return NULL;
  if (meeting->state == WM_PAIRER_WAITING)
    return _ ("These photos are aligned next.");
  if (meeting->state == WM_PAIRER_STOPPED)
    return _ ("Stopped. Let the program look again, or place points by hand.");
  if (meeting->state == WM_PAIRER_FAILED)
    return _ ("One of the photos can not be read. Add it again from its file.");
  if (meeting->pairing != NULL)
    return get_reason_text (meeting->pairing->reason);
  return meeting->can_write ? _ ("The program looks at these photos in a moment.")
                            : _ ("These photos are not aligned.");
}

static const char *
get_found (const WmMeeting *meeting)
{
  const char *by = meeting->pairing != NULL ? meeting->pairing->made_by : NULL;

  if (meeting->is_by_hand_now)
    return meeting->is_refined ? _ ("from your points, refined") : _ ("from your points");
  if (g_strcmp0 (by, WM_PAIRING_REFINED) == 0)
    return _ ("by hand, refined");
  if (g_strcmp0 (by, WM_PAIRING_BY_HAND) == 0)
    return _ ("by hand");
  if (meeting->pairing != NULL
      && g_strcmp0 (meeting->pairing->reason, WM_PAIRING_CONFIRMED) == 0)
    return _ ("by the program, confirmed");
  return _ ("by the program");
}

static void
show_facts (WmMeetCard *self, const WmMeeting *meeting)
{
  guint n = MIN (meeting->n_before, meeting->n_after);
  g_autofree char *fit = NULL, *overlap = NULL;

  gtk_widget_set_visible (self->facts, meeting->is_aligned);
  if (!meeting->is_aligned)
    return;
  /* Three points fit a shift, a turn, a slant always, four a tilt: that says nothing. */
  if (meeting->is_by_hand_now && !meeting->is_refined)
    fit = g_strdup_printf (ngettext ("%u pair of points", "%u pairs of points", n), n);
  else if (isfinite (meeting->fit_px))
    fit = g_strdup_printf (_ ("%.1f pixels"), meeting->fit_px);
  overlap = isfinite (meeting->overlap)
                ? g_strdup_printf (_ ("%.0f %%"), meeting->overlap * 100)
                : NULL;
  gtk_label_set_text (self->fit, fit != NULL ? fit : _ ("not known"));
  gtk_label_set_text (self->overlap, overlap != NULL ? overlap : "");
  gtk_widget_set_visible (GTK_WIDGET (self->overlap), overlap != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->overlap_label), overlap != NULL);
  gtk_label_set_text (self->found, get_found (meeting));
}

static void
show_progress (WmMeetCard *self, const WmMeeting *meeting)
{
  gboolean at_work = meeting->state == WM_PAIRER_AT_WORK;

  gtk_widget_set_visible (self->progress_row, at_work);
  if (!at_work)
    return;
  gtk_progress_bar_set_fraction (self->progress, meeting->progress);
  gtk_progress_bar_set_text (self->progress, meeting->is_refining
                                                 ? _ ("Refining from your points")
                                                 : _ ("Aligning the photos"));
}

static void
show_buttons (WmMeetCard *self, const WmMeeting *meeting)
{
  gboolean hand = meeting->pairing != NULL && wm_pairing_is_by_hand (meeting->pairing);
  gboolean now = meeting->is_by_hand_now;

  gtk_widget_set_visible (self->buttons, meeting->can_write);
  gtk_widget_set_visible (self->by_hand, !now);
  gtk_widget_set_visible (self->again, !now && !meeting->is_aligned
                                           && meeting->state == WM_PAIRER_STOPPED);
  gtk_widget_set_visible (self->leave, now);
  gtk_widget_set_visible (self->refine, now && meeting->is_aligned);
  gtk_widget_set_visible (self->confirm, meeting->is_aligned && (now || !hand));
  gtk_button_set_label (GTK_BUTTON (self->confirm), now ? _ ("Keep") : _ ("Confirm"));
  gtk_button_set_label (GTK_BUTTON (self->leave), now && meeting->is_aligned
                                                      ? _ ("Leave")
                                                      : _ ("Leave the points"));
}

static void
show_waiting (WmMeetCard *self, const WmMeeting *meeting)
{
  gboolean some = meeting->n_waiting > 0 && !meeting->is_by_hand_now;
  g_autofree char *text = g_strdup_printf (
      ngettext ("%u carried mark to accept, move or delete",
                "%u carried marks to accept, move or delete", meeting->n_waiting),
      meeting->n_waiting);

  gtk_label_set_text (self->waiting, text);
  gtk_widget_set_visible (self->waiting_row, some);
  gtk_widget_set_visible (self->accept, meeting->can_write);
}

void
wm_meet_card_show (WmMeetCard *self, const WmMeeting *meeting)
{
  const char *words;

  gtk_widget_set_visible (GTK_WIDGET (self), meeting->has_pair);
  if (!meeting->has_pair)
    return;
  words = get_words (meeting);
  gtk_label_set_text (self->words, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->words), words != NULL);
  show_progress (self, meeting);
  show_facts (self, meeting);
  show_waiting (self, meeting);
  show_buttons (self, meeting);
}

static void
wm_meet_card_dispose (GObject *object)
{
  wm_template_dispose (GTK_WIDGET (object), WM_TYPE_MEET_CARD);
  G_OBJECT_CLASS (wm_meet_card_parent_class)->dispose (object);
}

#define bind(name) gtk_widget_class_bind_template_child (widget_class, WmMeetCard, name)

static void
wm_meet_card_class_init (WmMeetCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_meet_card_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "meet-card.ui");
  bind (progress_row);
  bind (facts);
  bind (buttons);
  bind (waiting_row);
  bind (progress);
  bind (words);
  bind (fit);
  bind (overlap_label);
  bind (overlap);
  bind (found);
  bind (waiting);
  bind (stop);
  bind (accept);
  bind (by_hand);
  bind (again);
  bind (leave);
  bind (refine);
  bind (confirm);
}

static void
wm_meet_card_init (WmMeetCard *self)
{
  static const struct
  {
    gsize offset;
    const char *action;
  } tips[] = {
    { G_STRUCT_OFFSET (WmMeetCard, accept), "desk.accept" },
    { G_STRUCT_OFFSET (WmMeetCard, by_hand), "desk.by-hand" },
    { G_STRUCT_OFFSET (WmMeetCard, again), "desk.again" },
    { G_STRUCT_OFFSET (WmMeetCard, leave), "desk.stop" },
    { G_STRUCT_OFFSET (WmMeetCard, stop), "desk.stop" },
    { G_STRUCT_OFFSET (WmMeetCard, refine), "desk.refine" },
    { G_STRUCT_OFFSET (WmMeetCard, confirm), "desk.confirm" },
  };

  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < G_N_ELEMENTS (tips); i++)
    {
      g_autofree char *text = wm_action_describe (tips[i].action);

      gtk_widget_set_tooltip_text (G_STRUCT_MEMBER (GtkWidget *, self, tips[i].offset),
                                   text);
    }
}

/* stack-window.c: photos are chosen, and merged into one sharp photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/stack/stack-window.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "report/take-stack.h"
#include "window/photo-tile.h"
#include "window/problem.h"
#include "window/stack/stack-rule.h"
#include "window/thumbnail-view.h"

#define PROGRESS_MS 100

typedef struct
{
  GtkWidget *window, *grid, *merge, *close;
  GtkLabel *status;
  GtkProgressBar *bar;
  WmArchive *archive;
  GPtrArray *candidates, *toggles; /* GtkToggleButton, borrowed, one a candidate */
  GCancellable *cancellable;       /* while merging */
  guint timer;
  WmStackDone done;
  gpointer user_data;
  GDestroyNotify destroy;
} Stack;

/* What the worker gets. */
typedef struct
{
  WmArchive *archive;
  GPtrArray *frames;
  gint permille; /* atomic */
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  g_object_unref (job->archive);
  g_ptr_array_unref (job->frames);
  g_free (job);
}

static void
stack_free (gpointer data, GClosure *closure)
{
  Stack *stack = data;

  g_clear_handle_id (&stack->timer, g_source_remove);
  if (stack->destroy != NULL)
    stack->destroy (stack->user_data);
  g_clear_object (&stack->cancellable);
  g_object_unref (stack->archive);
  g_ptr_array_unref (stack->candidates);
  g_ptr_array_unref (stack->toggles);
  g_free (stack);
}

static GPtrArray *
list_chosen (Stack *stack)
{
  GPtrArray *chosen = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < stack->toggles->len; i++)
    if (gtk_toggle_button_get_active (g_ptr_array_index (stack->toggles, i)))
      g_ptr_array_add (chosen, g_object_ref (g_ptr_array_index (stack->candidates, i)));
  return chosen;
}

static void
show_choice (Stack *stack)
{
  g_autoptr (GPtrArray) chosen = list_chosen (stack);
  guint n = chosen->len;
  g_autofree char *text =
      g_strdup_printf (ngettext ("Merge %u photo", "Merge %u photos", n), n);

  gtk_button_set_label (GTK_BUTTON (stack->merge), text);
  gtk_widget_set_sensitive (stack->merge, stack->cancellable == NULL
                                              && n >= WM_STACK_LEAST
                                              && n <= WM_STACK_MOST);
  gtk_widget_set_sensitive (stack->grid, stack->cancellable == NULL);
  gtk_widget_set_visible (GTK_WIDGET (stack->bar), stack->cancellable != NULL);
  gtk_button_set_label (GTK_BUTTON (stack->close),
                        stack->cancellable != NULL ? _ ("Cancel") : _ ("Close"));
  if (n > WM_STACK_MOST)
    gtk_label_set_text (stack->status, _ ("At most 30 photos are merged at once."));
  else if (stack->cancellable == NULL && n < WM_STACK_LEAST)
    gtk_label_set_text (stack->status, _ ("Choose the frames: 5 to 30 are usual."));
  else if (stack->cancellable == NULL)
    gtk_label_set_text (stack->status, _ ("The frames are kept, folded behind the "
                                          "merged photo."));
}

/* ---- merging -------------------------------------------------------------------- */

/* On the worker. */
static void
note_progress (double done, gpointer user_data)
{
  Job *job = user_data;

  g_atomic_int_set (&job->permille, (int)(1000 * done));
}

/* Runs on a worker. */
static void
merge (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;
  WmPhoto *photo =
      wm_take_stack (job->archive, job->frames, note_progress, job, cancellable, &error);

  if (photo != NULL)
    g_task_return_pointer (task, photo, g_object_unref);
  else
    g_task_return_error (task, error);
}

static gboolean
on_progress (gpointer data)
{
  Stack *stack = data;
  Job *job = g_object_get_data (G_OBJECT (stack->window), "job");

  if (job != NULL)
    gtk_progress_bar_set_fraction (stack->bar,
                                   g_atomic_int_get (&job->permille) / 1000.0);
  return G_SOURCE_CONTINUE;
}

static void
tell_problem (Stack *stack, const GError *error)
{
  g_autofree char *line = error->domain == WM_ARCHIVE_ERROR ? wm_problem_line (error)
                                                            : g_strdup (error->message);

  gtk_label_set_text (stack->status, line);
}

static void
on_merged (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Job *job = g_task_get_task_data (G_TASK (result));
  Stack *stack = g_object_get_data (source, "stack");
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPhoto) photo = g_task_propagate_pointer (G_TASK (result), &error);

  g_object_set_data (source, "job", NULL);
  if (stack == NULL) /* the window was closed meanwhile */
    return;
  g_clear_handle_id (&stack->timer, g_source_remove);
  g_clear_object (&stack->cancellable);
  show_choice (stack);
  if (photo != NULL)
    {
      stack->done (photo, job->frames, stack->user_data);
      gtk_window_close (GTK_WINDOW (source));
    }
  else if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    gtk_label_set_text (stack->status, _ ("Cancelled. Nothing was changed."));
  else
    tell_problem (stack, error);
}

static void
on_merge (GtkButton *button, Stack *stack)
{
  Job *job = g_new0 (Job, 1);
  g_autoptr (GTask) task = NULL;

  job->archive = g_object_ref (stack->archive);
  job->frames = list_chosen (stack);
  stack->cancellable = g_cancellable_new ();
  gtk_progress_bar_set_fraction (stack->bar, 0);
  gtk_label_set_text (stack->status, _ ("Merging …"));
  show_choice (stack);
  task = g_task_new (stack->window, stack->cancellable, on_merged, NULL);
  g_task_set_task_data (task, job, job_free);
  g_object_set_data (G_OBJECT (stack->window), "job", job);
  stack->timer = g_timeout_add (PROGRESS_MS, on_progress, stack);
  g_task_run_in_thread (task, merge);
}

/* Cancels what runs; closes what does not. */
static void
on_close (GtkButton *button, Stack *stack)
{
  if (stack->cancellable != NULL)
    g_cancellable_cancel (stack->cancellable);
  else
    gtk_window_close (GTK_WINDOW (stack->window));
}

static gboolean
on_close_request (GtkWindow *window, Stack *stack)
{
  if (stack->cancellable != NULL)
    g_cancellable_cancel (stack->cancellable);
  g_object_set_data (G_OBJECT (window), "stack", NULL);
  return FALSE;
}

/* ---- the window ------------------------------------------------------------------ */

static void
on_toggled (GtkToggleButton *button, Stack *stack)
{
  show_choice (stack);
}

static GtkWidget *
make_toggle (Stack *stack, WmPhoto *photo, gboolean chosen)
{
  GtkWidget *toggle = gtk_toggle_button_new ();
  GtkWidget *view = wm_thumbnail_view_new (WM_TILE_WIDTH, WM_TILE_HEIGHT);
  const char *name = photo->original_name != NULL ? photo->original_name : _ ("Photo");

  wm_thumbnail_view_set_photo (WM_THUMBNAIL_VIEW (view), stack->archive, photo->sha256,
                               photo->format);
  gtk_button_set_child (GTK_BUTTON (toggle), view);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (toggle), chosen);
  gtk_widget_add_css_class (toggle, "flat");
  gtk_widget_add_css_class (toggle, "photo-tile");
  gtk_widget_set_tooltip_text (toggle, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (toggle), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  g_signal_connect (toggle, "toggled", G_CALLBACK (on_toggled), stack);
  return toggle;
}

static void
fill_grid (Stack *stack, WmPhoto *shown)
{
  for (guint i = 0; i < stack->candidates->len; i++)
    {
      WmPhoto *photo = g_ptr_array_index (stack->candidates, i);
      GtkWidget *toggle = make_toggle (
          stack, photo, wm_stack_is_of_one_go (stack->candidates, shown, photo));

      g_ptr_array_add (stack->toggles, toggle);
      gtk_flow_box_append (GTK_FLOW_BOX (stack->grid), toggle);
      gtk_widget_set_focusable (gtk_widget_get_parent (toggle), FALSE);
    }
}

static GtkWidget *
make_label (const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static GtkWidget *
make_foot (Stack *stack)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  stack->bar = GTK_PROGRESS_BAR (gtk_progress_bar_new ());
  gtk_accessible_update_property (GTK_ACCESSIBLE (stack->bar),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Merging"), -1);
  gtk_widget_set_valign (GTK_WIDGET (stack->bar), GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (GTK_WIDGET (stack->bar), TRUE);
  stack->close = gtk_button_new_with_label (_ ("Close"));
  stack->merge = gtk_button_new_with_label (_ ("Merge"));
  gtk_widget_add_css_class (stack->merge, "suggested-action");
  gtk_widget_set_halign (stack->close, GTK_ALIGN_END);
  gtk_widget_set_hexpand (stack->close, TRUE);
  g_signal_connect (stack->close, "clicked", G_CALLBACK (on_close), stack);
  g_signal_connect (stack->merge, "clicked", G_CALLBACK (on_merge), stack);
  gtk_box_append (GTK_BOX (foot), GTK_WIDGET (stack->bar));
  gtk_box_append (GTK_BOX (foot), stack->close);
  gtk_box_append (GTK_BOX (foot), stack->merge);
  return foot;
}

static GtkWidget *
make_content (Stack *stack)
{
  GtkWidget *outer = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  stack->grid = gtk_flow_box_new ();
  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (stack->grid), GTK_SELECTION_NONE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (stack->grid), 6);
  gtk_widget_set_valign (stack->grid, GTK_ALIGN_START);
  gtk_accessible_update_property (GTK_ACCESSIBLE (stack->grid),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Frames"), -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), stack->grid);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_widget_set_vexpand (scroller, TRUE);
  stack->status = GTK_LABEL (make_label (NULL, "second-line"));
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  gtk_widget_set_margin_top (box, 12);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_box_append (
      GTK_BOX (box),
      make_label (_ ("Photos of one view, each sharp at another depth, become "
                     "one photo that is sharp throughout. Those taken in one "
                     "go with the shown photo are chosen."),
                  NULL));
  gtk_box_append (GTK_BOX (box), scroller);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (stack->status));
  gtk_box_append (GTK_BOX (box), make_foot (stack));
  gtk_box_append (GTK_BOX (outer), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (outer), box);
  return outer;
}

static gboolean
on_escape (GtkWidget *window, GVariant *unused, gpointer user_data)
{
  gtk_window_close (GTK_WINDOW (window));
  return TRUE;
}

void
wm_stack_window_present (GtkWindow *parent, WmArchive *archive, GPtrArray *candidates,
                         WmPhoto *shown, WmStackDone done, gpointer user_data,
                         GDestroyNotify destroy)
{
  Stack *stack = g_new0 (Stack, 1);
  GtkEventController *keys = gtk_shortcut_controller_new ();

  stack->archive = g_object_ref (archive);
  stack->candidates = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < candidates->len; i++)
    g_ptr_array_add (stack->candidates, g_object_ref (g_ptr_array_index (candidates, i)));
  stack->toggles = g_ptr_array_new ();
  stack->done = done;
  stack->user_data = user_data;
  stack->destroy = destroy;
  stack->window = g_object_new (ADW_TYPE_WINDOW, "transient-for", parent, "modal", TRUE,
                                "title", _ ("Merge a focus stack"), "default-width", 780,
                                "default-height", 480, NULL);
  g_object_set_data (G_OBJECT (stack->window), "stack", stack);
  adw_window_set_content (ADW_WINDOW (stack->window), make_content (stack));
  fill_grid (stack, shown);
  show_choice (stack);
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                        gtk_callback_action_new (on_escape, NULL, NULL)));
  gtk_widget_add_controller (stack->window, keys);
  g_signal_connect_data (stack->window, "close-request", G_CALLBACK (on_close_request),
                         stack, stack_free, 0);
  gtk_window_present (GTK_WINDOW (stack->window));
}

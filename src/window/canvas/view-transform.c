/* view-transform.c: from photo pixels to view pixels and back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/view-transform.h"

#include <math.h>

/* Quarter turns clockwise, y down: (1, 0) goes to (0, 1). */
static WmPoint
turn (WmPoint p, int turns)
{
  switch (turns & 3)
    {
    case 1:
      return (WmPoint) { -p.y, p.x };
    case 2:
      return (WmPoint) { -p.x, -p.y };
    case 3:
      return (WmPoint) { p.y, -p.x };
    default:
      return p;
    }
}

static gboolean
is_sideways (const WmViewTransform *self)
{
  return (self->turns & 1) != 0;
}

/* Keeps @centre (photo px, along one axis of the photo) so that the edges of a photo
 * of @photo px stay within the slack of a view of @view px. */
static double
keep_axis (double centre, double photo, double view, double zoom, double slack_view)
{
  double half = view / 2 / zoom;
  double slack = slack_view / zoom;

  if (photo * zoom <= view)
    return photo / 2;
  return CLAMP (centre, half - slack, photo - half + slack);
}

void
wm_view_transform_init (WmViewTransform *self, double photo_width, double photo_height,
                        int turns)
{
  *self = (WmViewTransform) { .photo_width = MAX (photo_width, 1),
                              .photo_height = MAX (photo_height, 1),
                              .turns = turns & 3,
                              .zoom = 1 };
  self->centre = (WmPoint) { self->photo_width / 2, self->photo_height / 2 };
}

WmPoint
wm_view_transform_to_view (const WmViewTransform *self, WmPoint photo)
{
  WmPoint d = turn ((WmPoint) { photo.x - self->centre.x, photo.y - self->centre.y },
                    self->turns);

  return (WmPoint) { self->view_width / 2 + d.x * self->zoom,
                     self->view_height / 2 + d.y * self->zoom };
}

WmPoint
wm_view_transform_to_photo (const WmViewTransform *self, WmPoint view)
{
  WmPoint d = wm_view_transform_step_to_photo (
      self, (WmPoint) { view.x - self->view_width / 2, view.y - self->view_height / 2 });

  return (WmPoint) { self->centre.x + d.x, self->centre.y + d.y };
}

WmPoint
wm_view_transform_step_to_photo (const WmViewTransform *self, WmPoint step_view)
{
  return turn ((WmPoint) { step_view.x / self->zoom, step_view.y / self->zoom },
               4 - self->turns);
}

void
wm_view_transform_box_to_view (const WmViewTransform *self, const double photo[4],
                               double view[4])
{
  WmPoint a = wm_view_transform_to_view (self, (WmPoint) { photo[0], photo[1] });
  WmPoint b = wm_view_transform_to_view (
      self, (WmPoint) { photo[0] + photo[2], photo[1] + photo[3] });

  view[0] = MIN (a.x, b.x);
  view[1] = MIN (a.y, b.y);
  view[2] = fabs (a.x - b.x);
  view[3] = fabs (a.y - b.y);
}

void
wm_view_transform_box_to_photo (const WmViewTransform *self, const double view[4],
                                double photo[4])
{
  WmPoint a = wm_view_transform_to_photo (self, (WmPoint) { view[0], view[1] });
  WmPoint b = wm_view_transform_to_photo (
      self, (WmPoint) { view[0] + view[2], view[1] + view[3] });

  photo[0] = MIN (a.x, b.x);
  photo[1] = MIN (a.y, b.y);
  photo[2] = fabs (a.x - b.x);
  photo[3] = fabs (a.y - b.y);
}

double
wm_view_transform_fit_zoom (const WmViewTransform *self)
{
  double width = is_sideways (self) ? self->photo_height : self->photo_width;
  double height = is_sideways (self) ? self->photo_width : self->photo_height;
  double zoom = MIN (self->view_width / width, self->view_height / height);

  /* A view of no size yet: any zoom above 0 will do. */
  return CLAMP (zoom, 1e-6, WM_VIEW_ZOOM_MAX);
}

double
wm_view_transform_least_zoom (const WmViewTransform *self, double px)
{
  return MIN (wm_view_transform_fit_zoom (self), px);
}

void
wm_view_transform_fit (WmViewTransform *self)
{
  self->zoom = wm_view_transform_fit_zoom (self);
  self->centre = (WmPoint) { self->photo_width / 2, self->photo_height / 2 };
}

void
wm_view_transform_zoom_at (WmViewTransform *self, WmPoint anchor, double zoom,
                           double least)
{
  WmPoint photo = wm_view_transform_to_photo (self, anchor);
  WmPoint now;

  self->zoom = CLAMP (zoom, least, WM_VIEW_ZOOM_MAX);
  now = wm_view_transform_to_photo (self, anchor);
  self->centre.x += photo.x - now.x;
  self->centre.y += photo.y - now.y;
  wm_view_transform_keep_in_sight (self);
}

void
wm_view_transform_pan (WmViewTransform *self, double dx, double dy)
{
  WmPoint step = wm_view_transform_step_to_photo (self, (WmPoint) { dx, dy });

  self->centre.x -= step.x;
  self->centre.y -= step.y;
  wm_view_transform_keep_in_sight (self);
}

void
wm_view_transform_turn (WmViewTransform *self, int quarter)
{
  self->turns = (self->turns + quarter) & 3;
  wm_view_transform_keep_in_sight (self);
}

static void
keep (WmViewTransform *self, double slack)
{
  double along_x = is_sideways (self) ? self->view_height : self->view_width;
  double along_y = is_sideways (self) ? self->view_width : self->view_height;

  self->centre.x =
      keep_axis (self->centre.x, self->photo_width, along_x, self->zoom, slack);
  self->centre.y =
      keep_axis (self->centre.y, self->photo_height, along_y, self->zoom, slack);
}

void
wm_view_transform_keep_in_sight (WmViewTransform *self)
{
  keep (self, WM_VIEW_SLACK);
}

void
wm_view_transform_fill (WmViewTransform *self)
{
  keep (self, 0);
}

gboolean
wm_view_transform_is_on_photo (const WmViewTransform *self, WmPoint view)
{
  WmPoint p = wm_view_transform_to_photo (self, view);

  return p.x >= 0 && p.y >= 0 && p.x < self->photo_width && p.y < self->photo_height;
}

/* align-decide.c: whether an answer may be given, and which
 *
 * A match is believed when places of the middle level, on the before photo looked
 * for on the after photo and the other way round, agree over most parts of the
 * piece, and no other way of laying the photos on each other does nearly as well.
 *
 * The numbers were set on the campaign's pairs (tests/align/README.md): right
 * answers reached a share of 0.26 to 1.00, one in eight of them below 0.42;
 * different pieces 0.00 to 0.40, the highest of these two earrings with the same
 * hook and bar. A no costs the jeweller three pairs of points, a wrong yes more.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-decide.h"

#include <math.h>

/* Share of the places that must agree; below LIKELY nothing fits at all. */
#define LEAST_SHARE 0.42
#define LIKELY_SHARE 0.22
#define LEAST_SHARE_START 0.15

/* Share of the parts of the piece in which places must agree. */
#define LEAST_SPREAD 0.50
#define LEAST_SPREAD_START 0.25

/* A rival as good as this share of the best makes it ambiguous; goodness is share
 * times spread. Plain bangles reach 0.39 to 1, answers that were right up to 0.35. */
#define RIVAL 0.36

/* Candidates nearer than this share of the piece's radius (but at least so many
 * level 0 pixels) are one answer, found more or less well: what speaks against such an
 * answer is for the second look to say, after it was finished. */
#define SAME_SHARE 0.25
#define SAME_PX 20.0

/* Most of the piece that may lie together elsewhere. Right answers: up to 0.16, one
 * of them 0.25; the one that was wrong: 0.27. */
#define MOST_ELSEWHERE 0.20

/* Most of the piece that may be barren. Right answers: up to 0.25, one 0.31; two
 * pairs of earrings of one type: 0.35. */
#define MOST_BARREN 0.28

/* Share that must agree inside the outline, where so many places are inside on both
 * photos. Right answers: from 0.43, but pendants under other light or tilt 0.17 to
 * 0.27; signets with other letters: 0.31 and 0.33. */
#define LEAST_INSIDE 0.38
#define LEAST_INSIDE_PLACES 40

/* So much agrees: nothing large enough to speak against it is left. */
#define BEYOND_DOUBT 0.90

/* Level 0 pixels of standard uncertainty on the piece: three of them would be
 * the demand of 3 pixels. */
#define MOST_DOUBT 1.5

/* Fewer places than this on a photo are too few to judge by. */
#define LEAST_PLACES 24

static double
share_of (const WmCandidate *c)
{
  return 0.5 * (c->middle.share + c->back.share);
}

static double
spread_of (const WmCandidate *c)
{
  return 0.5 * (c->middle.spread + c->back.spread);
}

static int
compare_shares (gconstpointer a, gconstpointer b)
{
  double p = share_of (a);
  double q = share_of (b);

  return p > q ? -1 : p < q ? 1 : 0;
}

double
wm_matrix_difference (const double a[9], const double b[9], const WmPieceMask *piece)
{
  double most = 0;

  for (int k = 0; k < 4; k++)
    {
      WmPoint p = { piece->centre.x + (k & 1 ? 1 : -1) * piece->radius,
                    piece->centre.y + (k & 2 ? 1 : -1) * piece->radius };
      WmPoint x = wm_align_map (a, p);
      WmPoint y = wm_align_map (b, p);

      most = fmax (most, hypot (x.x - y.x, x.y - y.y));
    }
  return most;
}

static gboolean
is_too_plain (const WmSide *before, const WmSide *after)
{
  return before->places[1]->len < LEAST_PLACES || after->places[1]->len < LEAST_PLACES;
}

WmAlignReason
wm_align_decide (GArray *candidates, const WmSide *before, const WmSide *after)
{
  const WmCandidate *best;
  double same = fmax (SAME_PX, SAME_SHARE * before->piece->radius);
  double share, spread;

  if (is_too_plain (before, after))
    return WM_ALIGN_TOO_PLAIN;
  if (candidates->len == 0)
    return WM_ALIGN_NO_MATCH;

  g_array_sort (candidates, compare_shares);
  best = &g_array_index (candidates, WmCandidate, 0);
  share = share_of (best);
  spread = spread_of (best);
  if (!(share >= LIKELY_SHARE))
    return WM_ALIGN_NO_MATCH;
  for (guint k = 1; k < candidates->len; k++)
    {
      const WmCandidate *rival = &g_array_index (candidates, WmCandidate, k);

      if (share_of (rival) * spread_of (rival) > RIVAL * share * spread
          && wm_matrix_difference (best->to_after, rival->to_after, before->piece) > same)
        return WM_ALIGN_AMBIGUOUS;
    }
  if (share < LEAST_SHARE || spread < LEAST_SPREAD)
    return WM_ALIGN_UNSURE;
  if (!(best->middle.doubt_px < MOST_DOUBT) || !(best->back.doubt_px < MOST_DOUBT))
    return WM_ALIGN_AMBIGUOUS;
  return WM_ALIGN_FOUND;
}

WmAlignReason
wm_align_decide_finished (const WmCandidate *finished, const WmSide *before,
                          const WmSide *after)
{
  WmInspection seen;

  if (share_of (finished) > BEYOND_DOUBT)
    return WM_ALIGN_FOUND;
  if (!wm_candidate_inspect (finished, before, after, &seen)
      || seen.elsewhere > MOST_ELSEWHERE || seen.barren > MOST_BARREN)
    return WM_ALIGN_UNSURE;
  /* without ground there is no outline to be inside of */
  if (before->piece->share > 0 && after->piece->share > 0
      && seen.inside_places >= LEAST_INSIDE_PLACES && seen.inside < LEAST_INSIDE)
    return WM_ALIGN_UNSURE;
  return WM_ALIGN_FOUND;
}

WmAlignReason
wm_align_decide_start (const WmCandidate *candidate, const WmSide *before,
                       const WmSide *after)
{
  if (is_too_plain (before, after))
    return WM_ALIGN_TOO_PLAIN;
  if (!(share_of (candidate) >= LEAST_SHARE_START)
      || !(spread_of (candidate) >= LEAST_SPREAD_START))
    return WM_ALIGN_UNSURE;
  return candidate->middle.doubt_px < MOST_DOUBT ? WM_ALIGN_FOUND : WM_ALIGN_AMBIGUOUS;
}

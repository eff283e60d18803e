"""score.py: how right an answer is, for the campaign and the bench

SPDX-License-Identifier: GPL-3.0-or-later
"""
import collections

import numpy as np

# The demand: under 3 pixels on the piece at 1600 wide, beyond what no single matrix
# can do for a piece that is not flat (the floor, from the known cameras).
RIGHT_PX = 3.0


def error_px(pair, matrix):
    """Median distance over the details of the piece, before photo pixels."""
    m = np.array(matrix, float).reshape(3, 3)
    after = np.array(pair['points_after'])
    mapped = np.c_[after, np.ones(len(after))] @ m.T
    with np.errstate(all='ignore'):
        distance = np.linalg.norm(mapped[:, :2] / mapped[:, 2:] - np.array(pair['points_before']), axis=1)
    distance = np.where(np.isfinite(distance), distance, 1e6)
    return float(np.median(distance))


def judge(pair, matrix):
    """(verdict, error): matrix is None for a no.

    right; wrong: a yes that is not right; false yes: a yes for two pieces; no: the
    piece could have been aligned; right no: two pieces, or nothing to decide by.
    """
    if not pair['same']:
        return ('right no' if matrix is None else 'false yes'), None
    if matrix is None:
        return ('no' if pair['decidable'] else 'right no'), None
    error = error_px(pair, matrix)
    return ('right' if error - error_px(pair, pair['matrix']) < RIGHT_PX else 'wrong'), error


def table(pairs, verdicts):
    """Lines of text: one a family, and one for all."""
    columns = ['right', 'right no', 'no', 'wrong', 'false yes']
    lines = ['%-22s %5s  %s   median px' % ('family', 'pairs', '  '.join('%9s' % c for c in columns))]
    families = list(dict.fromkeys(pair['family'] for pair in pairs))
    for family in families + ['all']:
        chosen = [v for pair, v in zip(pairs, verdicts) if family in ('all', pair['family'])]
        counts = collections.Counter(v for v, _ in chosen)
        errors = [e for v, e in chosen if v == 'right']
        lines.append('%-22s %5d  %s   %s' % (family, len(chosen), '  '.join('%9d' % counts[c] for c in columns),
                                             '%.2f' % np.median(errors) if errors else '-'))
    return lines

"""campaign.py: align-measure over all rendered pairs, and the table

Usage: campaign.py ALIGN-MEASURE FOLDER [LISTING.json]. Exit status 1 when there is a confident
wrong answer or a false yes.

SPDX-License-Identifier: GPL-3.0-or-later
"""
import json
import os
import subprocess
import sys

import numpy as np

import score


def main():
    tool, folder = sys.argv[1:3]
    listing = sys.argv[3] if len(sys.argv) > 3 else 'pairs.json'
    with open(os.path.join(folder, listing)) as file:
        pairs = json.load(file)
    lines = ''.join('%s %s\n' % (pair['before'], pair['after']) for pair in pairs)
    done = subprocess.run([tool], input=lines, capture_output=True, text=True)
    if done.returncode:
        sys.exit(done.stderr)
    answers = [json.loads(line) for line in done.stdout.splitlines()]
    verdicts = []
    for pair, answer in zip(pairs, answers):
        verdict, error = score.judge(pair, answer['matrix'] if answer['aligned'] else None)
        verdicts.append((verdict, error))
        print('%3d %-20s %-8s %-10s %-10s %s' % (
            pair['number'], pair['family'], pair['piece'], verdict, answer['reason'],
            '' if error is None else 'error %.2f px, floor %.2f, said %.2f' % (
                error, score.error_px(pair, pair['matrix']), answer['residual_px'])))
    print()
    print('\n'.join(score.table(pairs, verdicts)))
    print('seconds a pair: median %.3f, of processor time %.3f' % (
        np.median([a['seconds'] for a in answers]), np.median([a['cpu_seconds'] for a in answers])))
    sys.exit(any(v in ('wrong', 'false yes') for v, _ in verdicts))


if __name__ == '__main__':
    main()

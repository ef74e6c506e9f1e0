"""Processor time that scipy takes for exact limits of rates and of ratios of rates, over columns of counts.

Reads the path of a file of doubles: how many rows, then a's events, a's days, b's events, b's days. Prints JSON:
version, milliseconds of each, and the first row's answers.
"""
import json
import sys
import time

import numpy as np
import scipy
from scipy import special

data = np.fromfile(sys.argv[1])
n = int(data[0])
a, days_a, b, days_b = data[1:].reshape(4, n)
TAIL = 0.025


def rate():
    low = np.where(a == 0, 0, special.gammaincinv(np.maximum(a, 1), TAIL))
    high = special.gammainccinv(a + 1, TAIL)
    return a / days_a * 1000, low / days_a * 1000, high / days_a * 1000


def ratio():
    """Ratio, limits, and two tails for p; where the second tail begins would have to be searched for each row."""
    with np.errstate(divide="ignore", invalid="ignore"):
        low = np.where(a == 0, 0, special.betaincinv(np.maximum(a, 1), b + 1, TAIL))
        high = np.where(b == 0, 1, special.betaincinv(a + 1, np.maximum(b, 1), 1 - TAIL))
        per = days_b / days_a
        share = days_a / (days_a + days_b)
        at_most = special.betainc(np.maximum(b, 1), a + 1, 1 - share)
        at_least = special.betainc(np.maximum(a, 1), b + 1, share)
        return a / b * per, low / (1 - low) * per, high / (1 - high) * per, at_most + at_least


def milliseconds(work):
    start = time.process_time()
    work()
    return (time.process_time() - start) * 1000


print(
    json.dumps(
        {
            "version": f"scipy {scipy.__version__}",
            "rate": milliseconds(rate),
            "ratio": milliseconds(ratio),
            "firstRate": [float(x[0]) for x in rate()],
            "firstRatio": [float(x[0]) for x in ratio()[:3]],
        }
    )
)

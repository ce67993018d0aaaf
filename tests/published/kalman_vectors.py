"""Writes tests/fixtures/kalman.json: what statsmodels' Kalman filter makes of some weeks of a pan whose growth rate is known.

Given the rate, and nothing but readings with a known spread, the estimator of src/domain/oil_life/belief.rs is a Kalman
filter. src/domain/oil_life/belief/kalman.rs takes it through the same steps and holds every mean and covariance to
these within 1e-9.

To run it again, anywhere Python is:

    pip install statsmodels
    python tests/published/kalman_vectors.py

The weeks are invented, their noise drawn with a fixed seed. The same version gives the same file; another may differ in
last digits.
"""

import json
import math
from pathlib import Path

import numpy as np
import statsmodels
from statsmodels.tsa.statespace.kalman_filter import KalmanFilter

FIXTURE = Path(__file__).parent.parent / "fixtures" / "kalman.json"

# Level, this fill's fresh value, the shop's fresh value, the constant error of instruments 1 and 2.
STATES = 5
LEVEL, FRESH, BIAS = 0, 1, 3
# 32 kJ/mol over the gas constant (CODATA 2018), from 175 degrees Celsius.
ARRHENIUS_K = 32_000.0 / 8.314462618
REFERENCE_K = 448.15
# The estimator takes a reading further off than 3 standard deviations for a larger error. The vectors stay well inside.
NEAR_SDS = 2.9


def heat(temp_dc):
    """How much faster oil wears than at 175 degrees."""
    return 1.0 if temp_dc is None else math.exp(ARRHENIUS_K * (1 / REFERENCE_K - 1 / (temp_dc / 10 + 273.15)))


def moves(case, event):
    """What an event does to the state: transition, intercept, noise."""
    transition, intercept, noise = np.eye(STATES), np.zeros(STATES), np.zeros((STATES, STATES))
    kind = event["kind"]
    if kind in ("fried", "unlogged"):
        hours = event["minutes"] / 60 if kind == "fried" else case["usual_h"]
        an_hour = case["rate"] * heat(event["temp_dc"])
        intercept[LEVEL] = an_hour * hours
        noise[LEVEL, LEVEL] = case["straying"] * an_hour**2 * hours
        if kind == "unlogged":
            noise[LEVEL, LEVEL] += (an_hour * case["usual_sd_h"]) ** 2
    if kind in ("topped", "moved_in"):
        share = event["ml"] / event["after_ml"]
        transition[LEVEL, LEVEL] = 1 - share
        if kind == "topped":
            transition[LEVEL, FRESH] = share
        else:
            intercept[LEVEL] = share * event["percent"]
            noise[LEVEL, LEVEL] = (share * event["sd"]) ** 2
    return transition, intercept, noise


def filtered(case):
    """The case with the state after every step."""
    events = case["events"]
    n = len(events)
    seen = np.full((1, n), np.nan)
    design, spread = np.zeros((1, STATES, n)), np.ones((1, 1, n))
    transition, intercept = np.zeros((STATES, STATES, n)), np.zeros((STATES, n))
    noise = np.zeros((STATES, STATES, n))
    for t, event in enumerate(events):
        transition[:, :, t], intercept[:, t], noise[:, :, t] = moves(case, event)
        if event["kind"] == "read":
            seen[0, t] = event["cpc"] / 100
            design[0, LEVEL, t] = design[0, BIAS + event["instrument"] - 1, t] = 1
            spread[0, 0, t] = (event["spread_cpc"] / 100) ** 2
    model = KalmanFilter(1, STATES, STATES, tolerance=0)
    model.bind(np.asfortranarray(seen))
    model["design"], model["obs_cov"] = design, spread
    model["transition"], model["state_intercept"] = transition, intercept
    model["selection"], model["state_cov"] = np.eye(STATES), noise
    model.initialize_known(np.array(case["mean"]), lower_to_full(case["cov"]))
    result = model.filter()
    off = result.forecasts_error[0] / np.sqrt(result.forecasts_error_cov[0, 0])
    assert np.nanmax(np.abs(off)) < NEAR_SDS, off
    steps = [
        {
            "event": event,
            # Of what it moved to for the next step: after a reading nothing moves, and it is what was filtered.
            "mean": result.predicted_state[:, t + 1].tolist(),
            "cov": full_to_lower(result.predicted_state_cov[:, :, t + 1]),
        }
        for t, event in enumerate(events)
    ]
    return {key: value for key, value in case.items() if key != "events"} | {"steps": steps}


def lower_to_full(lower):
    full = np.zeros((STATES, STATES))
    full[np.tril_indices(STATES)] = lower
    return full + np.tril(full, -1).T


def full_to_lower(full):
    return full[np.tril_indices(STATES)].tolist()


def prior(fresh, between_shops, between_deliveries, bias_sds):
    """Fresh oil: level, fill and shop alike but for the delivery; instruments apart from it and from each other."""
    cov = np.zeros((STATES, STATES))
    cov[:3, :3] = between_shops
    cov[:2, :2] += between_deliveries
    for i, sd in enumerate(bias_sds):
        cov[BIAS + i, BIAS + i] = sd**2
    return {"mean": [fresh, fresh, fresh, 0.0, 0.0], "cov": full_to_lower(cov)}


def weeks(rng, case, days, instruments, spreads_cpc, true_bias, other_oil):
    """A pan as it might be logged, read with noise about a level that grows as the case says."""
    events, level, fresh = [], case["mean"][LEVEL] + 0.6, case["mean"][FRESH] + 0.6

    def read():
        tool = int(rng.integers(len(instruments)))
        sd = spreads_cpc[tool] / 100
        shown = level + true_bias[tool] + sd * float(np.clip(rng.normal(), -1.8, 1.8))
        cpc = max(0, round(100 * shown))
        events.append({"kind": "read", "cpc": cpc, "instrument": instruments[tool], "spread_cpc": spreads_cpc[tool]})

    read()
    for day in range(1, days + 1):
        temp_dc = None if day % 5 == 0 else int(1700 + 10 * rng.integers(0, 16))
        if day % 7 == 4:
            events.append({"kind": "unlogged", "temp_dc": temp_dc})
            hours = case["usual_h"]
        else:
            minutes = int(rng.integers(180, 540))
            events.append({"kind": "fried", "minutes": minutes, "temp_dc": temp_dc})
            hours = minutes / 60
        level += case["rate"] * heat(temp_dc) * hours
        if day % 2 == 0:
            read()
        if day % 9 == 0:
            read()
        if day % 3 != 0:
            ml = int(rng.integers(200, 2600))
            events.append({"kind": "topped", "ml": ml, "after_ml": 24000})
            level += ml / 24000 * (fresh - level)
        if other_oil and day % 8 == 5:
            events.append({"kind": "moved_in", "ml": 3000, "after_ml": 24000, "percent": 14.5, "sd": 2.25})
            level += 3000 / 24000 * (14.5 - level)
    return events


def main():
    rng = np.random.default_rng(8420)
    one = {
        "name": "one instrument, every reading with the same spread",
        "rate": 0.32,
        "straying": 0.0,
        # The estimator takes the hours of an unlogged service for at least a third wide: so are these.
        "usual_h": 6.0,
        "usual_sd_h": 2.5,
    } | prior(5.09, 0.5, 0.5, [2.0, 2.0])
    one["events"] = weeks(rng, one, 24, [1], [300], [1.4], other_oil=False)
    two = {
        "name": "two instruments, services that differ, other oil",
        "rate": 0.24,
        "straying": 0.204,
        "usual_h": 6.5,
        "usual_sd_h": 2.25,
    } | prior(7.5, 0.5, 0.5, [2.0, 1.5])
    two["events"] = weeks(rng, two, 40, [1, 2], [150, 300], [1.8, -1.2], other_oil=True)
    made = {
        "made_by": f"statsmodels {statsmodels.__version__}, by tests/published/kalman_vectors.py",
        "states": ["level", "fresh value of the fill", "fresh value of the shop", "error of 1", "error of 2"],
        "cov": "lower triangles, row by row",
    }
    cases = []
    for case in map(filtered, (one, two)):
        steps = ",\n".join(json.dumps(step) for step in case.pop("steps"))
        cases.append(json.dumps(case)[:-1] + ', "steps": [\n' + steps + "\n]}")
    FIXTURE.write_text(json.dumps(made)[:-1] + ', "cases": [\n' + ",\n".join(cases) + "\n]}\n")


if __name__ == "__main__":
    main()

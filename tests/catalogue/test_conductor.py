"""What makes a conductor's row."""

from __future__ import annotations

import pytest

from anchorwatt.catalogue import find
from anchorwatt.catalogue.conductor import Conductor
from anchorwatt.units import WireGauge

ROW = {"gauge": "8 AWG", "insulations": ["60 °C", "105 °C"], "ampacities": ["55 A", "80 A"], "source": "tests"}


def test_a_gauge_sets_the_area() -> None:
    assert Conductor.model_validate(ROW).area == WireGauge.parse("8 AWG").area


def test_a_metric_size_has_its_nominal_area() -> None:
    found = find("conductor", "70 mm²")
    assert isinstance(found, Conductor)
    assert found.area == pytest.approx(70e-6)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"section": "10 mm²"}, "one of the two"),
        ({"gauge": None}, "one of the two"),
        ({"ampacities": ["55 A"]}, "two lists of the same length"),
        ({"insulations": ["105 °C", "60 °C"]}, "temperatures that rise"),
        ({"ampacities": ["80 A", "55 A"]}, "no less with insulation that bears more"),
    ],
)
def test_a_row_that_does_not_hang_together_is_refused(changes: dict[str, object], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        Conductor.model_validate({**ROW, **changes})

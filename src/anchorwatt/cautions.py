"""What every page, paper and drawing says of the danger."""

from __future__ import annotations

CAUTIONS = (
    "Anchorwatt advises; it does not certify. Local codes and licensed or certified people decide.",
    (
        "Lithium batteries, shore power, refrigerant, running engines and through-hull work can kill or sink: "
        "leave them to people who are qualified for them."
    ),
    "Keep carbon-monoxide alarms working: a quiet night of your own does not stop a neighbour's exhaust.",
)

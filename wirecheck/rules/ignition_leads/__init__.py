"""Ignition leads: the spark lead to the electrode and the sense lead from the rod."""

from __future__ import annotations

from wirecheck.rules.ignition_leads import (
    electrode_on_sense,
    ignition_lead_spliced,
    ignition_lead_too_long,
    ordinary_wire_as_ignition_cable,
    pilot_not_as_drawn,
    rod_on_spark,
    sense_from_another_burner,
    sense_lead_earthed,
    sense_lead_missing,
    sense_lead_on_control_circuit,
    sense_link_wrong,
    spark_and_sense_exchanged,
    spark_lead_earthed,
    spark_lead_missing,
    spark_lead_on_control_circuit,
)
from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (rod_on_spark.RULE, rod_on_spark.check),
    (spark_and_sense_exchanged.RULE, spark_and_sense_exchanged.check),
    (electrode_on_sense.RULE, electrode_on_sense.check),
    (spark_lead_missing.RULE, spark_lead_missing.check),
    (spark_lead_earthed.RULE, spark_lead_earthed.check),
    (spark_lead_on_control_circuit.RULE, spark_lead_on_control_circuit.check),
    (sense_lead_missing.RULE, sense_lead_missing.check),
    (sense_lead_earthed.RULE, sense_lead_earthed.check),
    (sense_lead_on_control_circuit.RULE, sense_lead_on_control_circuit.check),
    (sense_from_another_burner.RULE, sense_from_another_burner.check),
    (sense_link_wrong.RULE, sense_link_wrong.check),
    (pilot_not_as_drawn.RULE, pilot_not_as_drawn.check),
    (ordinary_wire_as_ignition_cable.RULE, ordinary_wire_as_ignition_cable.check),
    (ignition_lead_spliced.RULE, ignition_lead_spliced.check),
    (ignition_lead_too_long.RULE, ignition_lead_too_long.check),
)

"""The bench tables are whole, and say where they come from."""

from __future__ import annotations

import pytest

from pullcord.readings.tables import Table, bench_tables


@pytest.mark.parametrize("table", bench_tables(), ids=lambda table: table.title)
def test_tables_are_rectangular_and_sourced(table: Table) -> None:
    """Each row fills each column, and the source is named."""
    assert table.rows
    assert {len(row) for row in table.rows} == {len(table.columns)}
    assert table.source


def test_a_few_cells() -> None:
    """The figures are those of the formulas, rounded for paper."""
    tables = {table.title: {row[0]: row for row in table.rows} for table in bench_tables()}
    assert tables["Copper wire by American gauge"]["18"][4] == "6.38 ohm"
    assert tables["Compression by height above the sea"]["1000 m"][2:] == ("89.9 kPa", "0.89")
    assert tables["A tyre set at 20 °C that loses no air"]["35 kPa"][1] == "26 kPa"
    assert tables["Sprocket pitch diameter"]["48"][1] == "15.2898"

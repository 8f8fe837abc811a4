"""The points of a worksheet's chart: one field swept while the others stay, in the reader's units."""

from typing import NamedTuple

from calc.engine.sheet import Sheet
from calc.engine.steps import Step
from calc.engine.texts import Texts
from calc.engine.values import changed_value, moved, record, work_out
from calc.engine.words import Chart, Track
from calc.units import System, Unit, said_unit, show, shown_unit, unit_named

_ROWS = 24  # a chart's table of a year has about so many


class Line(NamedTuple):
    """One line: its words, its role in the look, its points in the reader's units (None where there is no value)."""

    label: str
    role: str
    points: tuple[tuple[float, float | None], ...]


class Series(NamedTuple):
    """A chart as data: axis words, lines, the reader's own place on it, one sentence, a table of the same numbers."""

    title: str
    x_label: str
    y_label: str
    lines: tuple[Line, ...]
    here_x: float
    summary: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def series(sheet: Sheet) -> Series | None:
    """The chart of a sheet; None when the worksheet has none, or nothing could be worked out."""
    chart = sheet.worksheet.chart
    if chart is None or sheet.problems:
        return None
    return _track(sheet, chart) if isinstance(chart, Track) else _sweep(sheet, chart)


def _track(sheet: Sheet, track: Track) -> Series | None:
    """What was recorded over days; the reader's place is where the last line is lowest."""
    recorded = record(sheet.course.steps, track.of, sheet.values)
    run = next(step.law.run for step in sheet.course.steps if step.key == track.of and isinstance(step, Step))
    if recorded is None or run is None:
        return None
    unit = shown_unit(run.series[track.lines[0].series].kind, sheet.system)
    hours = [getattr(recorded, trace.series) for trace in track.lines]
    lowest = min(range(len(hours[-1])), key=hours[-1].__getitem__)
    a_day = getattr(recorded, track.a_day) if track.a_day else 24
    row = max(a_day, len(hours[0]) // _ROWS)
    return Series(
        title=track.title,
        x_label=track.across,
        y_label=_axis("", unit),
        lines=tuple(
            Line(trace.label, trace.role, tuple((at / a_day, unit.from_si(value)) for at, value in enumerate(values)))
            for trace, values in zip(track.lines, hours, strict=True)
        ),
        here_x=lowest / a_day,
        summary=_summary(sheet, track.say),
        heads=(track.across, *(trace.label for trace in track.lines)),
        rows=tuple(
            (str(at // a_day), *(_cell(values[at], unit, sheet.system) for values in hours))
            for at in range(0, len(hours[0]), row)
        ),
    )


def _sweep(sheet: Sheet, chart: Chart) -> Series | None:
    if chart.across not in sheet.inputs:
        return None
    field = sheet.inputs[chart.across].field
    current = sheet.values[chart.across]
    low, high = (changed_value(field, end, current) for end in (chart.low, chart.high))
    # A chart runs across a number, never across a choice.
    assert isinstance(low, float | int)
    assert isinstance(current, float | int)
    assert isinstance(high, float | int)
    low, high = max(low, field.low_si), min(high, field.high_si)
    named = chart.us if sheet.system == "us" else chart.si
    x_unit = field.unit(sheet.system)
    kinds = {step.key: step.kind for step in sheet.course.steps}
    kind = next(kinds[line.key] if line.key in kinds else sheet.inputs[line.key].field.kind for line in chart.lines)
    y_unit = unit_named(named, kind) if named else _unit_of(sheet, chart.lines[0].key)
    worked = work_out(sheet.worksheet, sheet.reading)
    places = [low + (high - low) * step / (chart.points - 1) for step in range(chart.points)]
    runs = [moved(sheet.worksheet, sheet.reading, worked, {chart.across: place}) for place in places]
    lines = []
    for line in chart.lines:
        points: list[tuple[float, float | None]] = []
        for place, values in zip(places, runs, strict=True):
            value = values.get(line.key) if values else None
            points.append((x_unit.from_si(place), y_unit.from_si(value) if isinstance(value, float | int) else None))
        lines.append(Line(line.label, line.role, tuple(points)))
    if not any(y is not None for line in lines for _, y in line.points):
        return None
    return Series(
        title=chart.title,
        x_label=_axis(field.label, x_unit),
        y_label=_axis("", y_unit),
        lines=tuple(lines),
        here_x=x_unit.from_si(current),
        summary=_summary(sheet, chart.say),
        heads=(field.label, *(line.label for line in chart.lines)),
        rows=tuple(
            (
                show(place, x_unit, sheet.system),
                *(_cell(values.get(line.key) if values else None, y_unit, sheet.system) for line in chart.lines),
            )
            for place, values in list(zip(places, runs, strict=True))[:: max(1, (chart.points - 1) // 6)]
        ),
    )


def _cell(value: float | str | None, unit: Unit, system: System) -> str:
    return show(value, unit, system) if isinstance(value, float | int) else "–"


def _axis(label: str, unit: Unit) -> str:
    words = said_unit(unit)
    return f"{label}, {words}" if label and words else label or words


def _unit_of(sheet: Sheet, key: str) -> Unit:
    result = next((result for result in sheet.worksheet.results if result.key == key), None)
    step = next((step for step in sheet.course.steps if step.key == key), None)
    named = (result.us if sheet.system == "us" else result.si) if result else ""
    kind = step.kind if step else sheet.inputs[key].field.kind
    if named:
        return unit_named(named, kind)
    return step.unit(sheet.system) if step else shown_unit(kind, sheet.system)


def _summary(sheet: Sheet, template: str) -> str:
    return Texts(sheet.worksheet, sheet.reading, sheet.values, sheet.system).fill(template)

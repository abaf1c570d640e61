"""Written quantities: what each form means, what is refused and what is offered instead; what is written reads back."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.base.interval import UNKNOWN, Interval, Measure
from engine.base.span import Span
from grammar import values
from grammar.values import Fault

exact, between = Interval.exact, Interval.between


def around(value: float, below: float, above: float) -> Interval:
    return Interval(value - below, value + above, value)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("17.526 mm", exact(17.526)),
        ("17.526mm", exact(17.526)),
        ("  17.526 mm ", exact(17.526)),
        ("17.526 mm ±0.02", Interval(17.506, 17.546, 17.526)),
        ("17.526 mm +-0.02", Interval(17.506, 17.546, 17.526)),
        ("17.526 mm +/-0.02 mm", Interval(17.506, 17.546, 17.526)),
        ("17.526 ±0.02 mm", Interval(17.506, 17.546, 17.526)),
        ("17.5 mm +0/-0.06", Interval(17.44, 17.5, 17.5)),
        ("17.5 mm -0.06/+0", Interval(17.44, 17.5, 17.5)),
        ("12..17 mm", Interval(12, 17, 14.5)),
        ("12 mm .. 17 mm", Interval(12, 17, 14.5)),
        ("1 cm..17 mm", Interval(10, 17, 13.5)),
        ("5/8 in", exact(15.875)),
        ("1 1/4 in", exact(31.75)),
        ('1/4"', exact(6.35)),
        ("0.690 in", exact(17.526)),
        (".690 in", exact(17.526)),
        ("0.690 in ±0.001 in", Interval(17.5006, 17.5514, 17.526)),
        ("1.2 cm", exact(12)),
        ("0.5 m", exact(500)),
        ("20 um", exact(0.02)),
        ("3 ft", exact(914.4)),
        ("-0.474 mm", exact(-0.474)),
        ("−0.474 mm", exact(-0.474)),
        ("-0.05..0.05 mm", Interval(-0.05, 0.05, 0)),
        ("17 MM", exact(17)),
        ("0 mm", exact(0)),
        ("unknown", UNKNOWN),
    ],
)
def test_length_is_read_as_the_trade_writes_it(text: str, expected: Measure) -> None:
    assert values.length_mm(text) == expected


@pytest.mark.parametrize(
    ("text", "nearest", "offset"),
    [
        ("17.526", "17.526 mm", 6),
        ("O.75 mm", "0.75 mm", 0),
        ("1O mm", "10 mm", 1),
        ("l7.5 mm", "17.5 mm", 0),
        ("17,526 mm", "17.526 mm", 2),
        ("17,5", "17.5 mm", 2),
        ("12. mm", "12 mm", 2),
        ("12-17 mm", "12..17 mm", 2),
        ("12 to 17 mm", "12..17 mm", 2),
        ("17..12 mm", "12..17 mm", 1),
        ("17.5 mn", "17.5 mm", 6),
        ("unkown", "unknown", 3),
        ("1e400 mm", None, 0),
        ("1e3 mm", None, 0),
        ("nan mm", None, 0),
        ("inf", None, 0),
        ("", None, 0),
        ("1/0 in", None, 0),
        ("17.5 mm mm", None, 0),
        ("17.5 M", None, 0),
        ("١٧ mm", None, 0),
        ("9" * 400 + " mm", None, 0),
        ("17.5 g", None, 0),
        ("17.5 mm ±-0.1", None, 0),
        ("1.000.000 mm", None, 0),
    ],
)
def test_what_is_no_length_is_refused_with_the_nearest(text: str, nearest: str | None, offset: int) -> None:
    fault = values.length_mm(text)
    assert isinstance(fault, Fault)
    assert (fault.found, fault.nearest, fault.offset) == (text, nearest, offset)


def test_length_without_unit_is_told_what_a_length_is() -> None:
    fault = values.length_mm("0.75")
    assert fault == Fault("0.75", "a length with its unit, such as '17.526 mm'", "0.75 mm", 4)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("17..31 mm", Span(exact(17), exact(31))),
        ("17..31 mm ±0.1", Span(around(17, 0.1, 0.1), Interval(30.9, 31.1, 31))),
        ("27.46 mm", Span.fixed(exact(27.46))),
        ("unknown", Span.fixed(UNKNOWN)),
    ],
)
def test_settable_length_keeps_its_ends_apart(text: str, expected: Span) -> None:
    assert values.settable_mm(text) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("f/1.4", exact(1.4)),
        ("F/1.4", exact(1.4)),
        ("f1.4", exact(1.4)),
        ("1.4", exact(1.4)),
        ("1:1.4", exact(1.4)),
        ("f/2..2.8", Interval(2, 2.8, 2.4)),
        ("f/2..f/2.8", Interval(2, 2.8, 2.4)),
        ("unknown", UNKNOWN),
    ],
)
def test_f_number_is_read(text: str, expected: Measure) -> None:
    assert values.f_number(text) == expected


@pytest.mark.parametrize(("text", "nearest"), [("f/1,4", "f/1.4"), ("f/l.4", "f/1.4"), ("f/0", None), ("f/", None)])
def test_what_is_no_f_number_is_refused(text: str, nearest: str | None) -> None:
    fault = values.f_number(text)
    assert isinstance(fault, Fault)
    assert (fault.found, fault.nearest) == (text, nearest)


@pytest.mark.parametrize("text", ["T2.2", "t/2.2", "T 2.2"])
def test_t_stop_is_no_f_number_and_it_is_said_why(text: str) -> None:
    fault = values.f_number(text)
    assert isinstance(fault, Fault)
    assert "light lost in the glass" in fault.expected
    assert fault.nearest is None


def test_weights_angles_numbers_prices_and_sizes_are_read() -> None:
    assert values.weight_g("120 g") == exact(120)
    assert values.weight_g("1.8 kg") == exact(1800)
    assert values.angle_deg("60") == exact(60)
    assert values.angle_deg("55°") == exact(55)
    assert values.number("0.71") == exact(0.71)
    assert values.number("0.65..1.1") == Interval(0.65, 1.1, 0.875)
    assert values.number("1/4") == exact(0.25)
    assert values.price_usd("12") == (12, 12)
    assert values.price_usd("8..25") == (8, 25)
    assert values.price_usd("$8.50") == (8.5, 8.5)
    assert values.size_px("6000 x 4000") == (6000, 4000)
    assert values.size_px("6000×4000") == (6000, 4000)


@pytest.mark.parametrize(
    ("read", "text"),
    [
        (values.weight_g, "120"),
        (values.weight_g, "120 mm"),
        (values.angle_deg, "60 mm"),
        (values.number, "3 mm"),
        (values.number, "nan"),
        (values.price_usd, "-3"),
        (values.price_usd, "25..8"),
        (values.size_px, "6000"),
        (values.size_px, "0 x 4000"),
    ],
)
def test_other_quantities_refuse_what_they_are_not(read: object, text: str) -> None:
    assert isinstance(read(text), Fault)  # type: ignore[operator]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("-0.05..0.05 mm", (Interval(-0.05, 0.05, 0), "mm")),
        ("0.002 in", (exact(0.0508), "mm")),
        ("120 g", (exact(120), "g")),
        ("30 deg", (exact(30), "deg")),
        ("f/2", (exact(2), "f")),
        ("1442", (exact(1442), "")),
        ("15 EV", (exact(15), "EV")),
    ],
)
def test_any_quantity_is_read_with_its_unit(text: str, expected: tuple[Interval, str]) -> None:
    assert values.measured(text) == expected


@pytest.mark.parametrize("text", ["unknown", "some", "1e400", "3 mm 4"])
def test_what_is_no_quantity_at_all_is_refused(text: str) -> None:
    assert isinstance(values.measured(text), Fault)


def written(value: Measure) -> str:
    """As people write such a length: `17.526 mm`, `12..17 mm`, `17.5 mm +0/-0.06`, `unknown`."""
    if not isinstance(value, Interval):
        return "unknown"
    if value.is_exact:
        return f"{values.decimal(value.nominal)} mm"
    if value == between(value.least, value.greatest):
        return f"{values.decimal(value.least)}..{values.decimal(value.greatest)} mm"
    above, below = round(value.greatest - value.nominal, 6), round(value.nominal - value.least, 6)
    return f"{values.decimal(round(value.nominal, 6))} mm +{values.decimal(above)}/-{values.decimal(below)}"


lengths = st.floats(-30, 400).map(lambda value: round(value, 6))


@given(lengths)
def test_exact_length_reads_back_the_same(value: float) -> None:
    assert values.length_mm(written(exact(value))) == exact(value)


@given(lengths, lengths)
def test_range_reads_back_the_same(one: float, other: float) -> None:
    assert values.length_mm(written(between(one, other))) == between(one, other)


@given(lengths, st.floats(0, 5), st.floats(0, 5))
def test_tolerance_reads_back_within_a_nanometre(value: float, below: float, above: float) -> None:
    told = around(value, round(below, 6), round(above, 6))
    read = values.length_mm(written(told))
    assert isinstance(read, Interval)
    for was, now in ((told.least, read.least), (told.greatest, read.greatest), (told.nominal, read.nominal)):
        assert math.isclose(was, now, abs_tol=1e-6)


def test_unknown_length_reads_back_unknown() -> None:
    assert values.length_mm(written(UNKNOWN)) == UNKNOWN


@given(st.text(max_size=120))
def test_no_text_whatever_raises_or_is_read_as_more_than_a_finite_length(text: str) -> None:
    for read in (values.length_mm, values.f_number, values.number, values.weight_g, values.angle_deg):
        value = read(text)
        if isinstance(value, Interval):
            assert all(map(math.isfinite, (value.least, value.greatest, value.nominal)))
    values.price_usd(text)
    values.size_px(text)
    values.measured(text)
    values.settable_mm(text)


@given(st.from_regex(r"[+-]?[0-9]{1,4}(\.[0-9]{1,4})? ?(mm|cm|in|ft)", fullmatch=True))
def test_offered_text_is_always_readable(text: str) -> None:
    fault = values.length_mm(text.replace(".", ",").replace("0", "O"))
    if isinstance(fault, Fault) and fault.nearest is not None:
        assert not isinstance(values.length_mm(fault.nearest), Fault)


@pytest.mark.parametrize(("value", "text"), [(12.0, "12"), (17.526, "17.526"), (0.0000001, "0.0000001"), (-0.0, "0")])
def test_number_is_written_without_exponent(value: float, text: str) -> None:
    assert values.decimal(value) == text

"""A whole report, word for word, and what happens where there is much to say."""

from wirecheck.check.engine import Checked
from wirecheck.circuit.nets import Nets
from wirecheck.language.load import load_text
from wirecheck.model.finding import Assumed, Breaks, Edit, Finding, NotChecked, Problem, Related
from wirecheck.model.text import Span
from wirecheck.report.check_text import CAUTIONS, MOST_LISTED, check_text
from wirecheck.report.checks import CheckedFile, tally
from wirecheck.report.page import Page

TEXT = 'diagram "Bench heater"\npart limit is high-limit\nwire limit to earth\n'


def checked(
    *findings: Finding, assumed: tuple[Assumed, ...] = (), not_checked: tuple[NotChecked, ...] = ()
) -> Checked:
    diagram = load_text(TEXT, "heater.wiring").diagram
    return Checked(diagram, Nets(diagram), findings, assumed, not_checked)


def place(text: str) -> Span:
    source = load_text(TEXT, "heater.wiring").diagram.source
    start = TEXT.rindex(text)
    return Span(source, start, start + len(text))


def finding() -> Finding:
    edit = Edit("remove", "take the lead from limit.1 to earth out", place("wire"), "")
    return Finding(
        rule="limit-earthed",
        fault="earthed",
        breaks=Breaks.SAFETY,
        also_breaks=(Breaks.OPERATION,),
        message="limit.1 lies on earth: land it elsewhere",
        span=place("limit"),
        seen_at_unit="The burner goes on past the limit.",
        leads=("limit.1 to earth",),
        lead_numbers=(0,),
        terminals=("limit.1",),
        at_terminals=(),
        caution="Let the unit cool.",
        source="common practice, no source",
        edits=(edit,),
        related=(Related(place("high-limit"), "the limit"),),
    )


def test_a_report_word_for_word() -> None:
    result = checked(
        finding(),
        assumed=(Assumed("limit: reset automatic", "common practice, no source"),),
        not_checked=(NotChecked("volts", "none are computed"),),
    )
    problem = Problem("no unit is written Vx; write V", place("earth"), "24 V")
    file = CheckedFile("heater.wiring", (problem,), result)
    assert "\n".join(check_text([file], 41, Page(60))) == "\n".join(
        [
            "heater.wiring: Bench heater",
            *(line for caution in CAUTIONS for line in Page(60).item(f"! {caution}", "")),
            "",
            "heater.wiring:3:6: safety: limit.1 lies on earth: land it elsewhere [limit-earthed]",
            "   3 | wire limit to earth",
            "     |      ^^^^^",
            "  seen at the unit: The burner goes on past the limit.",
            "  also breaks: operation",
            "  caution: Let the unit cool.",
            "  to mend: take the lead from limit.1 to earth out",
            "  see: heater.wiring:2:15: the limit",
            "  source: common practice, no source",
            "",
            "heater.wiring:3:15: problem: no unit is written Vx; write V; did you mean 24 V?",
            "   3 | wire limit to earth",
            "     |               ^^^^^",
            "",
            "taken as given (common practice, no source):",
            "  limit: reset automatic",
            "",
            "not checked:",
            "  volts: none are computed",
            "",
            tally([file], 41).sentence(),
        ]
    )


def test_a_long_list_is_cut_with_its_count() -> None:
    assumed = tuple(Assumed(f"part {n}: as usual", "practice") for n in range(MOST_LISTED + 7))
    file = CheckedFile("heater.wiring", (), checked(assumed=assumed))
    lines = list(check_text([file], 1, Page(), assumed=True))
    assert f"  part {MOST_LISTED - 1}: as usual" in lines
    assert f"  part {MOST_LISTED}: as usual" not in lines
    assert "  and 7 lines more; --as json has all of them" in lines


def test_values_of_several_parts_are_counted_unless_asked_for() -> None:
    assumed = (Assumed("a: 24 V", "practice"), Assumed("b: 24 V", "practice"))
    file = CheckedFile("heater.wiring", (), checked(assumed=assumed))
    short = "taken as given (practice): values of 2 parts; --assumed lists them"
    assert short in list(check_text([file], 1, Page()))
    full = list(check_text([file], 1, Page(), assumed=True))
    assert full[full.index("taken as given (practice):") + 1 :][:2] == ["  a: 24 V", "  b: 24 V"]
    assert short not in full


def test_what_no_diagram_was_checked_for_is_said_once() -> None:
    general = NotChecked("volts", "none are computed")
    here = NotChecked("untraced lead", "it is not traced", place("wire"))
    files = [
        CheckedFile(name, (), checked(not_checked=(general, here))) for name in ("a.wiring", "b")
    ]
    text = "\n".join(check_text(files, 1, Page()))
    assert text.count("volts: none are computed") == 1
    assert text.count("untraced lead: it is not traced") == 2


def test_a_file_that_could_not_be_read_is_not_called_checked() -> None:
    problem = Problem("cannot be read: permission denied", place("diagram"))
    lines = list(check_text([CheckedFile("a.wiring", (problem,), None)], 1, Page()))
    assert lines[0] == "a.wiring: not checked"
    assert lines[-1].startswith("0 leads, 1 rule run: 1 problem")

"""Rosters: whose file is whose."""

from wirecheck.grade.roster import name_of, read_roster


def test_names_come_from_the_roster_with_or_without_a_heading() -> None:
    for text in (
        "a-1.wiring,Ada\nb-2,Björn\n",
        "name,file\nAda,a-1.wiring\nBjörn,b-2\n",
        "\ufeffFile;Name\r\na-1.wiring;Ada\r\nb-2;Björn\r\n",
    ):
        roster, problems = read_roster(text, "class.csv")
        assert not problems
        assert name_of("class/A-1.wiring", roster) == "Ada"
        assert name_of("b-2.wiring", roster) == "Björn"
        assert name_of("class/c-3.wiring", roster) == "c-3"


def test_a_line_that_cannot_be_used_is_told_at_its_line() -> None:
    _roster, problems = read_roster("a,Ada\nb\n\nc,Cem\n", "class.csv")
    assert [str(each.span) for each in problems] == ["class.csv:2:1"]

"""The HTML report: it stands alone, tells everything, and takes every text for text."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from functools import cache
from html.parser import HTMLParser
from itertools import pairwise

import pytest

from tests.contract.source import ROOT
from wirecheck import check, load, load_text, report_page, simulate
from wirecheck.report.html.moments import LIVE_V, moments

WRONG, RIGHT = "sense-on-spark", "furnace-room-heater"
#: Elements that have no end tag (WHATWG HTML, void elements).
VOID = frozenset({"meta", "br", "input", "hr", "img", "link"})


@cache
def page(name: str) -> str:
    built = load(ROOT / "examples" / f"{name}.wiring")
    return report_page(check(built.diagram), f"{name}.wiring", date="2026-11-25")


class Outline(HTMLParser):
    """Every element with its attributes, and whether they are nested well."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def named(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.elements if name == tag]


def text_of(markup: str) -> str:
    """What a reader sees: tags taken away, characters decoded."""
    from html import unescape

    return " ".join(unescape(re.sub(r"<[^>]*>", " ", markup)).split())


@pytest.mark.parametrize("name", [WRONG, RIGHT])
def test_elements_are_nested_well_and_ids_are_its_own(name: str) -> None:
    outline = Outline(page(name))
    assert outline.open == []
    ids = [given["id"] for _tag, given in outline.elements if given.get("id")]
    assert len(ids) == len(set(ids))
    targets = [given["href"] for given in outline.named("a")]
    assert {str(target).removeprefix("#") for target in targets} <= set(ids)


@pytest.mark.parametrize("name", [WRONG, RIGHT])
def test_nothing_is_fetched_and_only_its_own_script_runs(name: str) -> None:
    outline = Outline(page(name))
    for tag, given in outline.elements:
        for attribute in ("src", "href", "xlink:href", "action", "data"):
            value = given.get(attribute) or ""
            assert value == "" or value.startswith("#"), (tag, value)
        assert "style" not in given
        assert not any(attribute.startswith("on") for attribute in given)
    (policy,) = [m["content"] for m in outline.named("meta") if "http-equiv" in m]
    assert policy is not None
    assert policy.startswith("default-src 'none'")
    for tag in ("style", "script"):
        (text,) = re.findall(rf"<{tag}>(.*?)</{tag}>", page(name), re.DOTALL)
        digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
        assert f"{tag}-src 'sha256-{digest}'" in policy


def test_what_the_sheets_refer_to_is_there() -> None:
    """Letters and hatchings of the timeline are drawn once and used by their ids."""
    ids = set(re.findall(r'\bid="([^"]+)"', page(WRONG)))
    used = re.findall(r'href="#([^"]+)"|url\(#([^)]+)\)', page(WRONG))
    assert len(used) > 20
    assert {one or other for one, other in used} <= ids
    assert "<style" not in "".join(re.findall(r"(?s)<svg.*?</svg>", page(WRONG)))


def test_every_finding_is_told_with_its_leads() -> None:
    checked = check(load(ROOT / "examples" / f"{WRONG}.wiring").diagram)
    outline, told = Outline(page(WRONG)), text_of(page(WRONG))
    listed = [each for each in outline.named("li") if "data-leads" in each]
    assert len(listed) == len(checked.findings)
    for finding, entry in zip(checked.findings, listed, strict=True):
        assert entry["data-leads"] == " ".join(map(str, finding.lead_numbers))
        for text in (finding.message, finding.seen_at_unit, finding.caution, finding.rule):
            assert " ".join(text.split()) in told


def test_the_leads_of_findings_are_in_the_sheets() -> None:
    leads = {n for each in Outline(page(WRONG)).named("li") for n in
             (each.get("data-leads") or "").split()}  # fmt: skip
    assert leads
    drawn = re.findall(r'class="edge lead lead-(\d+)"', page(WRONG))
    assert leads <= set(drawn)


def test_a_wrong_unit_has_its_correction_beside_it_and_a_right_one_has_none() -> None:
    assert "To correct it" in page(WRONG)
    assert len(Outline(page(WRONG)).named("figure")) == 5
    assert "To correct it" not in page(RIGHT)
    assert len(Outline(page(RIGHT)).named("figure")) == 3
    assert "does not make an installation safe" in page(RIGHT)


def test_every_picture_is_described_and_headings_go_down_one_by_one() -> None:
    outline = Outline(page(WRONG))
    pictures = [each for each in outline.named("svg") if each.get("aria-hidden") != "true"]
    assert pictures
    assert all(each["role"] == "img" and each["aria-label"] for each in pictures)
    levels = [int(tag[1]) for tag, _given in outline.elements if re.fullmatch(r"h\d", tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(below - above <= 1 for above, below in pairwise(levels))
    assert all("scope" in each for each in outline.named("th"))


def test_the_script_steps_through_the_moments_that_are_listed() -> None:
    (data,) = re.findall(r'id="moments"[^>]*>(.*?)</script>', page(RIGHT), re.DOTALL)
    steps = json.loads(data)
    assert len(steps) == page(RIGHT).count('<li class="moment">') > 3
    diagram = load(ROOT / "examples" / f"{RIGHT}.wiring").diagram
    (main,) = (
        str(number)
        for number, lead in enumerate(diagram.leads)
        if {diagram.show(lead.a), diagram.show(lead.b)} == {"box.MV", "valve.MV"}
    )
    assert steps[0]["volts"][main] == 0
    assert max(step["volts"][main] for step in steps) == pytest.approx(25.1, abs=0.5)


def test_what_is_live_is_what_a_run_makes_live() -> None:
    """24 V at the call only while it lasts; the line always; nothing on a common."""
    diagram = load(ROOT / "examples" / f"{RIGHT}.wiring").diagram
    told = moments(simulate(diagram))
    shown = {
        moment.time_s: {
            diagram.lead_name(diagram.leads[n]) for n, v in moment.volts.items() if v > LIVE_V
        }
        for moment in told
    }
    call, end = 0.0, told[-1].time_s
    assert all("line.L1 to service.1" in live for live in shown.values())
    assert "stat.W to box.TH" in shown[call]
    assert "stat.W to box.TH" not in shown[end]
    assert not any("xfmr.C to box.COM" in live for live in shown.values())


HOSTILE = '"</script><script>alert(1)</script><img src=x onerror=alert(1)>&{{ 7*7 }}"'


def test_hostile_names_stay_text() -> None:
    text = f"""\
diagram {HOSTILE}
part {HOSTILE} is transformer
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
labels box: TH as {HOSTILE.replace("7", "8")}
wire {HOSTILE}.R to stat to box.{HOSTILE.replace("7", "8")}
wire {HOSTILE}.C to box.COM
wire box.SPARK to pilot.SPARK: ignition-cable
note {HOSTILE}
"""
    built = load_text(text, "<b>.wiring")
    assert not built.problems
    written = report_page(check(built.diagram), "<b>.wiring", date="")
    outline = Outline(written)
    assert len(outline.named("script")) == 2
    assert outline.named("img") == []
    assert "49" not in text_of(re.sub(r"(?s)<svg.*?</svg>|<style.*?</style>", "", written))[:300]

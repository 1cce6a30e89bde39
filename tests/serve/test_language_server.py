"""The language server, spoken to in its protocol by a client in another process."""

from pathlib import Path

import pytest
from lsprotocol import types as lsp
from pygls.exceptions import JsonRpcException

from tests.cli.command_line import BURNER_GROUND, NO_BURNER_GROUND, UNKNOWN_KIND
from tests.serve.client import Editor, applied, edit
from wirecheck import format_text

TEXT = NO_BURNER_GROUND


def at(text: str, words: str, inside: int = 1) -> lsp.Position:
    """The place so many characters into the first of some words."""
    before = text[: text.index(words) + inside]
    line = before.count("\n")
    return lsp.Position(line, len(before.rpartition("\n")[2]))


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "bench heater.wiring"


def test_findings_come_and_go_as_one_types(path: Path) -> None:
    async def act(editor: Editor) -> tuple[list[lsp.Diagnostic], ...]:
        return await editor.open(TEXT), await editor.type(BURNER_GROUND)

    (missing,), mended = edit(path, act)
    assert missing.code == "burner-ground-missing"
    assert missing.severity is lsp.DiagnosticSeverity.Warning
    assert missing.range.start == at(TEXT, "part box is", 5)
    assert "run a green lead" in missing.message
    assert mended == []


def test_a_problem_has_the_right_word_as_a_quick_fix(path: Path) -> None:
    async def act(editor: Editor) -> tuple[list[lsp.Diagnostic], list[object]]:
        told = await editor.open(UNKNOWN_KIND)
        context = lsp.CodeActionContext(told)
        params = lsp.CodeActionParams(editor.document, told[0].range, context)
        return told, list(await editor.client.text_document_code_action_async(params) or [])

    (problem,), (fix, *_more) = edit(path, act)
    assert problem.severity is lsp.DiagnosticSeverity.Error
    assert isinstance(fix, lsp.CodeAction)
    assert fix.title == "write pilot-ignition-control"
    assert fix.edit is not None
    assert fix.edit.changes is not None
    mended = applied(UNKNOWN_KIND, list(fix.edit.changes[path.as_uri()]))
    assert mended == UNKNOWN_KIND.replace("contrl", "control")


def test_a_quick_fix_mends_a_finding(path: Path) -> None:
    async def act(editor: Editor) -> tuple[str, list[lsp.Diagnostic]]:
        (told,) = await editor.open(TEXT)
        params = lsp.CodeActionParams(editor.document, told.range, lsp.CodeActionContext([told]))
        (fix,) = await editor.client.text_document_code_action_async(params) or []
        assert isinstance(fix, lsp.CodeAction)
        assert fix.edit is not None
        assert fix.edit.changes is not None
        mended = applied(TEXT, list(fix.edit.changes[editor.uri]))
        return mended, await editor.type(mended)

    mended, left = edit(path, act)
    assert "wire box.GND to pilot.HOOD: green" in mended
    assert left == []


def test_hover_tells_part_net_and_volts(path: Path) -> None:
    text = """\
part xfmr is transformer: 40 VA
part stat is thermostat
part box is pilot-ignition-control: two-rod
part pilot is pilot-burner: two-rod
part valve is gas-valve-3-wire
wire xfmr.R to stat to box.TH: red
wire xfmr.C to box.COM: blue
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""

    async def act(editor: Editor) -> list[str]:
        await editor.open(text)
        told = []
        for words, inside in (("xfmr.R to", 5), ("box is", 1), ("diagram", 0), ("part stat", 1)):
            if words in text:
                params = lsp.HoverParams(editor.document, at(text, words, inside))
                hover = await editor.client.text_document_hover_async(params)
                content = hover.contents if hover else None
                told.append(content.value if isinstance(content, lsp.MarkupContent) else "")
        return told

    supply, control, nothing = edit(path, act)
    assert "**xfmr**: control transformer" in supply
    assert "joined to stat.R" in supply
    assert "V against its common late in a call" in supply
    assert "pilot ignition control" in control
    assert nothing == ""


def test_completion_offers_what_can_stand_there(path: Path) -> None:
    expected = {
        "part limit is ": "high-limit",
        "wire box.": "SPARK",
        "wire box.GND to pi": "pilot",
        "part other is thermostat: ": "anticipator",
        "wire box.GND to pilot.HOOD: ": "colour",
        "spl": "splice",
    }

    async def act(editor: Editor) -> dict[str, list[str]]:
        await editor.open(TEXT)
        offered = {}
        for typed in expected:
            await editor.type(f"{TEXT}{typed}")
            place = lsp.Position(TEXT.count("\n"), len(typed))
            params = lsp.CompletionParams(editor.document, place)
            answer = await editor.client.text_document_completion_async(params)
            items = answer.items if isinstance(answer, lsp.CompletionList) else answer or []
            offered[typed] = [each.label for each in items]
        return offered

    for typed, offered in edit(path, act).items():
        assert expected[typed] in offered, typed


def test_definition_references_and_rename(path: Path) -> None:
    async def act(editor: Editor) -> tuple[object, int, str, str]:
        await editor.open(TEXT)
        place = at(TEXT, "pilot.ROD")
        client, document = editor.client, editor.document
        declared = await client.text_document_definition_async(
            lsp.DefinitionParams(document, place)
        )
        context = lsp.ReferenceContext(include_declaration=True)
        params = lsp.ReferenceParams(context, document, place)
        uses = await client.text_document_references_async(params) or []
        changed = await client.text_document_rename_async(
            lsp.RenameParams(document, place, "burner 2")
        )
        assert changed is not None
        assert changed.changes is not None
        renamed = applied(TEXT, list(changed.changes[editor.uri]))
        refused = ""
        try:
            await client.text_document_rename_async(lsp.RenameParams(document, place, "BOX"))
        except JsonRpcException as error:
            refused = str(error)
        return declared, len(uses), renamed, refused

    declared, uses, renamed, refused = edit(path, act)
    assert isinstance(declared, list)
    assert [each.range.start for each in declared] == [at(TEXT, "part pilot", 5)]
    assert uses == 3
    assert renamed == (
        TEXT.replace("part pilot is", 'part "burner 2" is').replace("to pilot.", 'to "burner 2".')
    )
    assert "BOX is the name of something else already" in refused


def test_formatting_gives_the_canonical_form(path: Path) -> None:
    untidy = "PART  x is transformer :40VA\r\nwire x.R  to open\r\n"

    async def act(editor: Editor) -> str:
        await editor.open(untidy)
        options = lsp.FormattingOptions(4, insert_spaces=True)
        params = lsp.DocumentFormattingParams(editor.document, options)
        edits = await editor.client.text_document_formatting_async(params)
        return applied(untidy, list(edits or []))

    assert edit(path, act) == format_text(untidy)


def test_places_are_told_in_utf_16(path: Path) -> None:
    """Two units for a character beyond the basic plane (LSP 3.17, position encodings)."""
    text = 'part "\U0001f525" is transformr\n'

    async def act(editor: Editor) -> list[lsp.Diagnostic]:
        return await editor.open(text)

    told = edit(path, act)
    assert any(each.range.start == lsp.Position(0, 13) for each in told)


def test_what_is_included_is_read_beside_the_file(path: Path) -> None:
    path.with_name("parts.wiring").write_text("part box is pilot-ignition-control\n")

    async def act(editor: Editor) -> tuple[list[lsp.Diagnostic], object]:
        text = 'include "parts.wiring"\nwire box.GND to open\n'
        told = await editor.open(text)
        params = lsp.DefinitionParams(editor.document, at(text, "box.GND"))
        return told, await editor.client.text_document_definition_async(params)

    told, declared = edit(path, act)
    assert not [each for each in told if each.severity is lsp.DiagnosticSeverity.Error]
    assert isinstance(declared, list)
    assert [each.uri for each in declared] == [path.with_name("parts.wiring").as_uri()]

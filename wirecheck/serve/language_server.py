"""The language server: what an editor asks of a text, answered over standard input and output.

The protocol is the Language Server Protocol 3.17 by the library; what is answered comes from the
modules beside this one.
"""

from __future__ import annotations

from importlib.metadata import version

from lsprotocol import types as lsp
from pygls.exceptions import JsonRpcInvalidParams
from pygls.lsp.server import LanguageServer

from wirecheck.language.format import format_text
from wirecheck.language.spelling import spell_name
from wirecheck.model.diagram import key_of
from wirecheck.serve.completions import completions
from wirecheck.serve.hover import hover_text
from wirecheck.serve.mentions import Mention, mention_at, mentions
from wirecheck.serve.text import Text, diagnostics, fixes, offset_at, range_of, read, uri_of

_ITEM = {
    "kind": lsp.CompletionItemKind.Class,
    "terminal": lsp.CompletionItemKind.Field,
    "part": lsp.CompletionItemKind.Variable,
    "attribute": lsp.CompletionItemKind.Property,
    "statement": lsp.CompletionItemKind.Keyword,
}


class WiringServer(LanguageServer):
    """The server, with what it last read of each document."""

    def __init__(self) -> None:
        """Start with nothing read."""
        super().__init__("wirecheck", version("wirecheck"))
        self.texts: dict[str, Text] = {}

    def look(self, uri: str, *, at_leisure: bool = False) -> None:
        """Read a document anew and say what is to be said of it."""
        document = self.workspace.get_text_document(uri)
        text = self.texts[uri] = read(document, at_leisure=at_leisure)
        self.text_document_publish_diagnostics(
            lsp.PublishDiagnosticsParams(uri, list(diagnostics(text)), document.version)
        )

    def text(self, uri: str) -> Text:
        """What a document says."""
        if uri not in self.texts:
            self.texts[uri] = read(self.workspace.get_text_document(uri))
        return self.texts[uri]

    def mention(
        self, document: lsp.TextDocumentIdentifier, position: lsp.Position
    ) -> Mention | None:
        """The name at a place of a document."""
        text = self.text(document.uri)
        return mention_at(text.built, text.source, offset_at(text.source, position))


def language_server() -> WiringServer:
    """Make a server that has not started."""
    server = WiringServer()
    _follow_documents(server)
    _answer_questions(server)
    _make_changes(server)
    return server


def _follow_documents(server: WiringServer) -> None:
    @server.feature(lsp.TEXT_DOCUMENT_DID_OPEN)
    def opened(params: lsp.DidOpenTextDocumentParams) -> None:
        server.look(params.text_document.uri, at_leisure=True)

    @server.feature(lsp.TEXT_DOCUMENT_DID_CHANGE)
    def changed(params: lsp.DidChangeTextDocumentParams) -> None:
        server.look(params.text_document.uri)

    @server.feature(lsp.TEXT_DOCUMENT_DID_SAVE)
    def saved(params: lsp.DidSaveTextDocumentParams) -> None:
        server.look(params.text_document.uri, at_leisure=True)

    @server.feature(lsp.TEXT_DOCUMENT_DID_CLOSE)
    def closed(params: lsp.DidCloseTextDocumentParams) -> None:
        server.texts.pop(params.text_document.uri, None)


def _answer_questions(server: WiringServer) -> None:
    @server.feature(lsp.TEXT_DOCUMENT_HOVER)
    def hover(params: lsp.HoverParams) -> lsp.Hover | None:
        mention = server.mention(params.text_document, params.position)
        if mention is None:
            return None
        told = hover_text(server.text(params.text_document.uri).built, mention)
        content = lsp.MarkupContent(lsp.MarkupKind.Markdown, told)
        return lsp.Hover(content, range_of(mention.span)) if told else None

    @server.feature(
        lsp.TEXT_DOCUMENT_COMPLETION, lsp.CompletionOptions(trigger_characters=[".", " ", ":"])
    )
    def complete(params: lsp.CompletionParams) -> list[lsp.CompletionItem]:
        text = server.text(params.text_document.uri)
        offset = offset_at(text.source, params.position)
        line = text.source.text[text.source.line_span(offset)[0] : offset]
        return [
            lsp.CompletionItem(each.text, kind=_ITEM[each.what], detail=each.about or None)
            for each in completions(text.built, line)
        ]

    @server.feature(lsp.TEXT_DOCUMENT_DEFINITION)
    def define(params: lsp.DefinitionParams) -> list[lsp.Location]:
        text, mention = (
            server.text(params.text_document.uri),
            server.mention(params.text_document, params.position),
        )
        alike = _alike(text, mention) if mention else []
        return [_location(text, each) for each in alike if each.declares]

    @server.feature(lsp.TEXT_DOCUMENT_REFERENCES)
    def refer(params: lsp.ReferenceParams) -> list[lsp.Location]:
        text, mention = (
            server.text(params.text_document.uri),
            server.mention(params.text_document, params.position),
        )
        alike = _alike(text, mention) if mention else []
        with_declaration = params.context.include_declaration
        return [_location(text, each) for each in alike if with_declaration or not each.declares]


def _make_changes(server: WiringServer) -> None:
    @server.feature(lsp.TEXT_DOCUMENT_FORMATTING)
    def reformat(params: lsp.DocumentFormattingParams) -> list[lsp.TextEdit]:
        document = server.workspace.get_text_document(params.text_document.uri)
        whole = lsp.Range(lsp.Position(0, 0), lsp.Position(len(document.lines), 0))
        formatted = format_text(document.source)
        return [lsp.TextEdit(whole, formatted)] if formatted != document.source else []

    @server.feature(
        lsp.TEXT_DOCUMENT_CODE_ACTION, lsp.CodeActionOptions([lsp.CodeActionKind.QuickFix])
    )
    def act(params: lsp.CodeActionParams) -> list[lsp.CodeAction]:
        return list(fixes(server.text(params.text_document.uri), params.range))

    @server.feature(lsp.TEXT_DOCUMENT_RENAME, lsp.RenameOptions(prepare_provider=True))
    def rename(params: lsp.RenameParams) -> lsp.WorkspaceEdit | None:
        text, mention = (
            server.text(params.text_document.uri),
            server.mention(params.text_document, params.position),
        )
        if mention is None:
            return None
        new = params.new_name.strip().strip('"')
        _refuse(text, mention, new)
        changes: dict[str, list[lsp.TextEdit]] = {}
        for each in _alike(text, mention):
            edit = lsp.TextEdit(range_of(each.span), spell_name(new))
            changes.setdefault(uri_of(text, each.span.source), []).append(edit)
        return lsp.WorkspaceEdit(changes=changes)

    @server.feature(lsp.TEXT_DOCUMENT_PREPARE_RENAME)
    def prepare(params: lsp.PrepareRenameParams) -> lsp.Range | None:
        mention = server.mention(params.text_document, params.position)
        text = server.text(params.text_document.uri)
        is_ours = mention is not None and any(each.declares for each in _alike(text, mention))
        return range_of(mention.span) if mention and is_ours else None


def _alike(text: Text, mention: Mention) -> list[Mention]:
    return [each for each in mentions(text.built) if each.key == mention.key]


def _location(text: Text, mention: Mention) -> lsp.Location:
    return lsp.Location(uri_of(text, mention.span.source), range_of(mention.span))


def _refuse(text: Text, mention: Mention, new: str) -> None:
    """Say why a name cannot be another one.

    Raises:
        JsonRpcInvalidParams: it is none, it is another thing's already, or it is ``earth``.
    """
    diagram = text.built.diagram
    key = key_of(new)
    if not new or "\n" in new:
        raise JsonRpcInvalidParams("a name is needed")
    taken = key in diagram.parts or key in diagram.splices or key in diagram.cables
    if key != mention.key and (taken or key in ("earth", "open", "unknown")):
        raise JsonRpcInvalidParams(f"{new} is the name of something else already")

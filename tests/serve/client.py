"""A language client of the library that the server is written with, talking to a real process."""

from __future__ import annotations

import asyncio
import sys
from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import Any, TypeVar

from lsprotocol import types as lsp
from pygls.lsp.client import LanguageClient

_Result = TypeVar("_Result")
#: Seconds in which an answer comes, on a machine that does much else.
PATIENCE_S = 60.0


class Editor:
    """An editor with one document open."""

    def __init__(self, client: LanguageClient, path: Path) -> None:
        self.client = client
        self.uri = path.as_uri()
        self.version = 1
        self.told: asyncio.Queue[list[lsp.Diagnostic]] = asyncio.Queue()

        @client.feature(lsp.TEXT_DOCUMENT_PUBLISH_DIAGNOSTICS)  # type: ignore[untyped-decorator]
        def tell(params: lsp.PublishDiagnosticsParams) -> None:
            if params.uri == self.uri:
                self.told.put_nowait(list(params.diagnostics))

    @property
    def document(self) -> lsp.TextDocumentIdentifier:
        return lsp.TextDocumentIdentifier(self.uri)

    async def open(self, text: str) -> list[lsp.Diagnostic]:
        """Open the document, and wait for what is said of it."""
        item = lsp.TextDocumentItem(self.uri, "wiring", self.version, text)
        self.client.text_document_did_open(lsp.DidOpenTextDocumentParams(item))
        return await self.said()

    async def type(self, text: str) -> list[lsp.Diagnostic]:
        """Replace the whole text."""
        self.version += 1
        which = lsp.VersionedTextDocumentIdentifier(self.version, self.uri)
        change = lsp.TextDocumentContentChangeWholeDocument(text)
        self.client.text_document_did_change(lsp.DidChangeTextDocumentParams(which, [change]))
        return await self.said()

    async def said(self) -> list[lsp.Diagnostic]:
        return await asyncio.wait_for(self.told.get(), PATIENCE_S)


def edit(path: Path, act: Callable[[Editor], Awaitable[_Result]]) -> _Result:
    """Start the server, let an editor do something with a document, and stop it."""

    async def session() -> _Result:
        client = LanguageClient("tests", "1")
        editor = Editor(client, path)
        await client.start_io(sys.executable, "-m", "wirecheck", "lsp")
        capabilities: Any = lsp.ClientCapabilities()
        await client.initialize_async(lsp.InitializeParams(capabilities))
        client.initialized(lsp.InitializedParams())
        try:
            return await asyncio.wait_for(act(editor), PATIENCE_S)
        finally:
            await client.shutdown_async(None)
            client.exit(None)
            await client.stop()  # type: ignore[no-untyped-call]

    return asyncio.run(session())


def applied(text: str, edits: list[lsp.TextEdit]) -> str:
    """A text of characters of the basic plane after some edits."""
    starts = [0]
    for line in text.splitlines(keepends=True):
        starts.append(starts[-1] + len(line))

    def offset(position: lsp.Position) -> int:
        return min(starts[min(position.line, len(starts) - 1)] + position.character, len(text))

    for one in sorted(edits, key=lambda each: offset(each.range.start), reverse=True):
        start, end = offset(one.range.start), offset(one.range.end)
        text = text[:start] + one.new_text + text[end:]
    return text

"""Files that were made for a page, each at an address of its own that nobody can guess, so that a link can lead there."""

import mimetypes
import secrets
from pathlib import Path
from urllib.parse import quote

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import FileResponse, Response

# What is opened from such an address may not speak for the page: it is kept apart from its origin.
_APART = (
    "sandbox allow-scripts allow-downloads allow-popups; default-src 'none'; script-src 'unsafe-inline' blob:; "
    "style-src 'unsafe-inline'; img-src data: blob:; media-src data: blob:; font-src data:; connect-src data: blob:; "
    "worker-src blob:"
)


class MadeFiles:
    """The files, by the words in their addresses."""

    def __init__(self) -> None:
        self._paths: dict[str, Path] = {}
        self._words: dict[Path, str] = {}

    def __repr__(self) -> str:
        return f"<MadeFiles: {len(self._paths)}>"

    def address(self, path: Path) -> str:
        """Where a file can be asked for, without the secret."""
        word = self._words.get(path)
        if word is None:
            word = self._words[path] = secrets.token_urlsafe(24)
            self._paths[word] = path
        return f"/made/{word}/{quote(path.name)}"

    async def answer(self, request: Request) -> Response:
        """The file at an address."""
        path = self._paths.get(request.path_params["word"])
        if path is None or path.name != request.path_params["name"] or not path.is_file():
            raise HTTPException(404)
        media = mimetypes.guess_type(path.name)[0] or "application/octet-stream"
        shown = media in {"application/pdf", "text/html", "audio/mpeg", "audio/x-wav", "audio/wav"}
        headers = {"content-security-policy": _APART} if media == "text/html" else {}
        if media == "application/pdf":
            headers = {"content-security-policy": "frame-ancestors 'none'"}
        kind = "inline" if shown and "save" not in request.query_params else "attachment"
        return FileResponse(
            path,
            media_type=media,
            filename=path.name,
            content_disposition_type=kind,
            headers=headers,
        )

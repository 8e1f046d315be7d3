"""Makes the README's pictures from the demo shows: `python docs/pictures.py`.

- sheet.png: a page of a performer's run sheet
- stage-plan.png: the stage from above, two performers changing sides
- toroid.png: the wheel of the group show, a pro-bend of four lobes

Run it after the pages' look has changed, and look at what it made.
"""

import io
import tempfile
from pathlib import Path

import numpy as np
import pypdfium2
from PIL import Image
from reportlab.platypus import SimpleDocTemplate

from sequencer import tasks
from sequencer.files import write_bytes
from sequencer.findings import Report
from sequencer.outputs.patterns.one_pattern import one_pattern
from sequencer.outputs.patterns.pattern_drawing import pattern_figure
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import scene_of
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan
from sequencer.staging.staged import Staged

ROOT = Path(__file__).parents[1]
SHOW = ROOT / "shows" / "lantern_round.yaml"
FOLDER = Path(__file__).parent / "pictures"
LARGEST = 250_000  # bytes of one picture: the repository is cloned by people on a phone's network
WIDTH = 900  # pixels
COLOURS = 64


def sheet_page(show: Path = SHOW, *, page: int = 0) -> Image.Image:
    """One page of the first performer's sheet."""
    with tempfile.TemporaryDirectory() as folder:
        _, paths = tasks.print_sheets(show, Path(folder))
        (path,) = [p for p in paths if p.stem.endswith("performer-wren")]
        return _rendered(path.read_bytes(), page)


def _rendered(pdf: bytes, page: int) -> Image.Image:
    document = pypdfium2.PdfDocument(pdf)
    try:
        scale = WIDTH / document[page].get_width()
        return document[page].render(scale=scale).to_pil()
    finally:
        document.close()


def plan(staged: Staged, formation: str = "crossed") -> Image.Image:
    """One formation from above with the ways walked to it, drawn as on the crew's sheets."""
    names = [standing.formation for standing in staged.standings]
    report = Report(
        show=staged.file, findings=(), clearances=(), not_checked=()
    )  # a plan prints none
    scene = scene_of(Edition(staged=staged, report=report), names.index(formation))
    page = io.BytesIO()
    picture = StagePlan(scene, tall=500.0, wide=460.0)
    SimpleDocTemplate(
        page, pagesize=(480, 505), leftMargin=4, rightMargin=4, topMargin=2, bottomMargin=2
    ).build([picture])
    return _rendered(page.getvalue(), 0)


def toroid() -> Image.Image:
    """The drawing of a four-lobe toroid."""
    return _drawn(pattern_figure(one_pattern("pro-bend-4", {"tether": 0.45})))


def _drawn(figure: object) -> Image.Image:
    data = io.BytesIO()
    figure.savefig(data, format="png", dpi=140)  # type: ignore[attr-defined]
    return Image.open(data)


def write(image: Image.Image, path: Path) -> None:
    """Save a picture in few colours, no larger than it may be."""
    flat = image.convert("RGB")
    if flat.width > WIDTH:
        flat = flat.resize(
            (WIDTH, round(flat.height * WIDTH / flat.width)), Image.Resampling.LANCZOS
        )
    data = io.BytesIO()
    few = flat.quantize(COLOURS, dither=Image.Dither.NONE)
    few.save(data, format="PNG", optimize=True)
    if np.asarray(few).std() == 0 or len(data.getvalue()) > LARGEST:
        raise SystemExit(f"{path.name}: empty, or larger than {LARGEST} bytes")
    write_bytes(path, data.getvalue())
    print(f"{path.relative_to(ROOT)}  {flat.width} × {flat.height}, {len(data.getvalue())} bytes")


def main() -> None:
    """Make all of them."""
    staged = tasks.stage_show(SHOW)
    write(sheet_page(), FOLDER / "sheet.png")
    write(plan(staged), FOLDER / "stage-plan.png")
    write(toroid(), FOLDER / "toroid.png")


if __name__ == "__main__":
    main()

"""How far the work for a page is, as HTML, with the button that stops it."""

from __future__ import annotations

from anchorwatt.simulation.watched import Progress
from anchorwatt.web.escaped import text

STOPPED = (
    '<p class="empty">Stopped: this page is not worked out. Its fields can be changed all the same.</p>'
    '<button type="button" data-do="work-again">Work it out</button>'
)


def progress_html(progress: Progress | None) -> str:
    """What is being worked out; None where nothing is known of it but that it takes long."""
    stop = '<button type="button" data-do="stop-working">Stop</button>'
    if progress is None:
        return f"<p>Working it out …</p>{stop}"
    words = f"Working it out: {progress.words}, {progress.done + 1} of {progress.of} …"
    bar = f'<progress aria-label="Done" max="{progress.of}" value="{progress.done}"></progress>'
    return f"<p>{text(words)}</p>{bar}{stop}"

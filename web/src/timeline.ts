// The song from end to end: sections, the followed performer's blocks, burns, findings, marks.
import type { Document } from "./document";
import type { Schedule } from "./schedule";
import * as C from "./palette";

export class Timeline {
  private readonly paper: CanvasRenderingContext2D;
  private width = 0;
  private height = 0;
  colours: C.Palette = C.NIGHT;

  constructor(
    private readonly canvas: HTMLCanvasElement,
    private readonly playhead: HTMLElement,
    private readonly marks: HTMLElement,
    private readonly doc: Document,
    private readonly schedule: Schedule,
    seek: (seconds: number) => void,
  ) {
    this.paper = canvas.getContext("2d")!;
    const surface = canvas.parentElement!;
    const to = (event: PointerEvent) => {
      const box = canvas.getBoundingClientRect();
      seek(((event.clientX - box.left) / box.width) * doc.duration);
    };
    surface.addEventListener("pointerdown", (event) => {
      surface.setPointerCapture(event.pointerId);
      to(event);
    });
    surface.addEventListener("pointermove", (event) => {
      if (surface.hasPointerCapture(event.pointerId)) to(event);
    });
  }

  at(seconds: number): void {
    this.playhead.style.transform = `translateX(${(seconds / this.doc.duration) * this.width}px)`;
  }

  span(a: number | null, b: number | null): void {
    const share = (seconds: number) => (seconds / this.doc.duration) * this.width;
    this.marks.hidden = a === null && b === null;
    const from = share(a ?? 0), to = share(b ?? this.doc.duration);
    this.marks.style.transform = `translateX(${from}px)`;
    this.marks.style.width = `${Math.max(2, to - from)}px`;
  }

  /** `share` is how large words are, 1 as usual. */
  draw(who: number, share: number): void {
    const box = this.canvas.getBoundingClientRect();
    const ratio = Math.min(window.devicePixelRatio || 1, 2);
    this.width = box.width;
    this.height = box.height;
    this.canvas.width = Math.max(1, Math.round(box.width * ratio));
    this.canvas.height = Math.max(1, Math.round(box.height * ratio));
    const { paper, doc, width, height } = this;
    paper.setTransform(ratio, 0, 0, ratio, 0, 0);
    paper.clearRect(0, 0, width, height);
    const X = (seconds: number) => (seconds / doc.duration) * width;
    const size = Math.max(11, parseFloat(getComputedStyle(document.documentElement).fontSize) * 0.75) * share;
    paper.font = `600 ${size}px system-ui, sans-serif`;
    paper.textBaseline = "middle";
    const lanes = { sections: height * 0.4, blocks: height * 0.42 };
    const { colours } = this, text = C.css(colours.text), tints = colours.part.section;
    const tint = new Map<string, string>();
    doc.sections.forEach(([name, start, end]) => {
      const family = name.replace(/ \d+$/, "");
      if (!tint.has(family)) tint.set(family, C.css(tints[tint.size % tints.length]));
      paper.fillStyle = tint.get(family)!;
      paper.fillRect(X(start) + 0.5, 0, X(end) - X(start) - 1, lanes.sections - 2);
      this.words(name, X(start), X(end), lanes.sections / 2 - 1, text);
    });
    for (const part of this.schedule.of(who)) {
      if (part.kind === "rest") continue;
      const a = X(this.schedule.tempo.secondsAt(part.start)), b = X(this.schedule.tempo.secondsAt(part.end));
      paper.fillStyle = C.css(part.kind === "block" ? colours.part.block : colours.part.link);
      paper.fillRect(a + 0.5, lanes.sections, Math.max(b - a - 1, 0.5), lanes.blocks - 2);
      if (part.kind === "block") this.words(part.title, a, b, lanes.sections + lanes.blocks / 2 - 1, text);
    }
    paper.fillStyle = C.css(colours.right);
    for (const [start, end] of doc.cast[who]?.lit ?? []) paper.fillRect(X(start), height * 0.84, X(end) - X(start), 3);
    for (const finding of doc.findings) {
      if (finding.start === null) continue;
      const x = X(finding.start);
      paper.fillStyle = C.css({ stop: colours.alert, warn: colours.warn, note: colours.note }[finding.severity]);
      paper.beginPath();
      paper.moveTo(x, height * 0.88);
      paper.lineTo(x + 5, height);
      paper.lineTo(x - 5, height);
      paper.fill();
    }
  }

  private words(text: string, from: number, to: number, y: number, colour: string): void {
    const { paper } = this;
    const room = to - from - 8;
    if (room < 14) return;
    let shown = text;
    if (paper.measureText(shown).width > room) {
      while (shown.length > 1 && paper.measureText(shown + "…").width > room) shown = shown.slice(0, -1);
      if (shown.length < 2) return;
      shown += "…";
    }
    paper.fillStyle = colour;
    paper.fillText(shown, from + 5, y);
  }
}

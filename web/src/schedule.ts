// The schedule: blocks and stops of one performer, what comes next, who is lit, what the checks found.
import { lastUpTo, type TempoMap } from "./count";
import type { Document, Finding } from "./document";

export interface Part { start: number; end: number; title: string; lines: string[]; mirror: string[]; kind: "block" | "link" | "rest" | "stop" }

const BRIDGE = "the way from one move into the next";
const REST = "props hang still";

export class Schedule {
  private readonly parts: Part[][] = [];
  private readonly starts: number[][] = [];
  private readonly timed: Finding[];

  constructor(readonly doc: Document, readonly tempo: TempoMap) {
    doc.cast.forEach((entry, who) => {
      const blocks: Part[] = doc.blocks
        .filter((block) => block[0] === who)
        .map(([, start, end, words, link]) => {
          const [title, ...lines] = doc.texts[words], [, ...mirror] = doc.mirrored[words];
          return { start, end, title, lines, mirror, kind: link === 2 ? "stop" : link ? "link" : "block" };
        });
      const filled: Part[] = [];
      let at = -Infinity;
      const bridges = (entry.spans.right ?? entry.spans.left ?? []).filter((span) => span[2] === "link");
      const gap = (from: number, to: number) => {
        for (const [start, end] of bridges) {
          if (start < from - 1e-6 || end > to + 1e-6) continue;
          if (start > from + 1e-6) filled.push(rest(from, start));
          filled.push({ start, end, title: "link", lines: [BRIDGE], mirror: [BRIDGE], kind: "link" });
          from = end;
        }
        if (to > from + 1e-6) filled.push(rest(from, to));
      };
      for (const block of blocks) {
        if (block.start > at + 1e-6) gap(at, block.start);
        filled.push(block);
        at = Math.max(at, block.end);
      }
      gap(at, Infinity);
      this.parts.push(filled);
      this.starts.push(filled.map((part) => part.start));
    });
    this.timed = doc.findings.filter((finding) => finding.start !== null);
  }

  of(who: number): Part[] {
    return this.parts[who] ?? [];
  }

  index(who: number, beat: number): number {
    return Math.max(0, lastUpTo(this.starts[who] ?? [], beat + 1e-6));
  }

  /** Beats at which steps of one performer begin: blocks and stops, or the stations of a pattern. */
  steps(who: number): number[] {
    if (this.doc.stations.length) return this.doc.stations.map(([beat]) => beat);
    return this.of(who).filter((part) => part.kind === "block" || part.kind === "stop").map((part) => part.start);
  }

  station(beat: number, mirrored: boolean): string {
    const found = lastUpTo(this.doc.stations.map(([at]) => at), beat + 0.02);
    return found >= 0 ? this.doc.stations[found][mirrored ? 2 : 1] : "";
  }

  section(seconds: number): string {
    return this.doc.sections.find(([, start, end]) => start <= seconds + 1e-6 && seconds < end)?.[0] ?? "";
  }

  lit(who: number, seconds: number): [number, number] | undefined {
    return this.doc.cast[who].lit.find(([start, end]) => start <= seconds && seconds <= end);
  }

  nextLit(who: number, seconds: number): [number, number] | undefined {
    return this.doc.cast[who].lit.find(([start]) => start > seconds);
  }

  /** Findings that apply at a moment, extended a little so that instants can be read. */
  active(seconds: number): Finding[] {
    return this.timed.filter((f) => f.start! - 0.25 <= seconds && seconds <= Math.max(f.end ?? f.start!, f.start! + 1.5));
  }

  walk(beat: number): number {
    const ahead = this.doc.standings.findIndex((s) => s.start > beat && s.walk - 16 <= beat && s.start - s.walk > 0.01);
    return ahead;
  }
}

function rest(start: number, end: number): Part {
  return { start, end, title: "rest", lines: [REST], mirror: [REST], kind: "rest" };
}

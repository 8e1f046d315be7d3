// The show danced, by the rehearsal page's stage and bodies, where the song is.
import { effect } from "@preact/signals";
import { useEffect, useRef, useState } from "preact/hooks";
import { TempoMap } from "../src/count";
import type { Document } from "../src/document";
import type { Framing } from "../src/framing";
import type { Mover } from "../src/motion";
import type { Drawn, Stage } from "../src/scene";
import { VIEWS, type Box, type Eye, type View as Seen } from "../src/views";
import { Refused, get } from "./api";
import { player } from "./playing";
import { readOnly, view } from "./store";

type Scene = typeof import("./dance_scene");
let loading: Promise<Scene> | null = null;

/** The script that draws it, fetched from the same place as the page when it is first needed. */
function scene(): Promise<Scene> {
  return (loading ??= new Promise((done, failed) => {
    const script = document.createElement("script");
    script.src = "dance.js";
    script.onload = () => done((globalThis as unknown as { danceScene: Scene }).danceScene);
    script.onerror = () => {
      loading = null;
      failed(new Error("The program behind this page does not answer."));
    };
    document.head.append(script);
  }));
}

class Dancing {
  stage: Stage | null = null;
  eye: Eye | null = null;
  doc: Document | null = null;
  counts: TempoMap | null = null;
  movers: Mover[] = [];
  framing: Framing | null = null;

  constructor() {
    player.drawn.push((now) => this.draw(now));
  }

  show(canvas: HTMLCanvasElement, doc: Document, { Eye, Framing, Mover, Stage, tracksOf }: Scene): void {
    this.doc = doc;
    this.counts = new TempoMap(doc.tempo.times, doc.tempo.first, doc.tempo.bars, doc.tempo.metre);
    const tracks = tracksOf(doc);
    this.movers = doc.cast.map((entry, i) => new Mover(entry, tracks[i]));
    this.framing = new Framing(this.movers);
    this.stage = new Stage(canvas, doc, this.movers);
    const box = floorOf(doc);
    this.eye = new Eye(this.stage.camera, canvas, box, box);
    this.eye.orbit.addEventListener("change", () => player.touch());
    this.resize(canvas);
  }

  resize(canvas: HTMLCanvasElement): void {
    const box = canvas.parentElement!.getBoundingClientRect();
    this.stage?.resize(Math.max(1, box.width), Math.max(1, box.height), Math.min(window.devicePixelRatio || 1, 2));
    player.touch();
  }

  look(from: Seen): void {
    this.eye?.choose(from);
    player.touch();
  }

  leave(): void {
    this.stage?.renderer.dispose();
    this.stage = this.eye = this.doc = null;
  }

  private draw(now: number): void {
    if (!this.stage || !this.doc || !this.counts || !this.eye) return;
    const beat = this.counts.beatAt(now);
    const drawn: Drawn = {
      beat, shown: this.doc.cast.map(() => true),
      lit: this.doc.cast.map((entry) => entry.lit.some(([start, end]) => now >= start && now < end)),
      alert: this.doc.cast.map(() => false), follow: 0, hideBody: -1, trail: 1, planes: true, front: null, walk: -1,
      flicker: !matchMedia("(prefers-reduced-motion: reduce)").matches,
    };
    this.stage.place(beat);
    this.eye.aim(this.movers[0], this.stage.poses[0], this.doc.cast.length === 1, this.framing?.around(beat, drawn.shown) ?? null);
    this.stage.camera.updateMatrixWorld();
    this.stage.draw(drawn);
  }
}

function floorOf(doc: Document): Box {
  const xs = doc.place.outline.map(([x]) => x), ys = doc.place.outline.map(([, y]) => y);
  for (const each of doc.standings) for (const [x, y] of each.spots) {
    xs.push(x - 1, x + 1);
    ys.push(y - 1, y + 1);
  }
  return xs.length ? { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) } : { x0: -2, x1: 2, y0: -1, y1: 2 };
}

const dancing = new Dancing();

export function Dance() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [words, setWords] = useState(view.value ? "The dance is being drawn …" : "There is nothing to dance yet.");
  const [turn, setTurn] = useState(0);
  const [from, setFrom] = useState<Seen>("audience");
  useEffect(() => {
    let live = true;
    // A newer revision of the show is fetched once it is staged.
    const stop = effect(() => {
      const revision = view.value?.revision;
      if (revision !== undefined) void fetchDance();
    });
    async function fetchDance(): Promise<void> {
      try {
        const [code, doc] = await Promise.all([scene(), get<Document>("dance?flown=0")]);
        if (!live) return;
        setTurn((last) => last + 1);
        setTimeout(() => {
          if (!live || !canvas.current) return;
          dancing.leave();
          try {
            dancing.show(canvas.current, doc, code);
            dancing.look(from);
            setWords("");
          } catch {
            setWords("This browser cannot draw in three dimensions; the stage from above shows where everybody stands.");
          }
        });
      } catch (error) {
        if (live && !(error instanceof Refused && error.status === 409)) setWords(error instanceof Error ? error.message : String(error));
        else if (live && !view.value) setWords("There is nothing to dance yet.");
      }
    }
    const resized = new ResizeObserver(() => canvas.current && dancing.resize(canvas.current));
    if (canvas.current) resized.observe(canvas.current.parentElement!);
    return () => {
      live = false;
      stop();
      resized.disconnect();
      dancing.leave();
    };
  }, []);
  return (
    <>
      <div class="dance">
        <canvas key={turn} ref={canvas} aria-label="The performers in motion, as drawn" />
        {words && <p class="quiet">{words}</p>}
      </div>
      <p class="row" role="group" aria-label="Seen from">
        {VIEWS.map((each) => <button key={each.name} type="button" aria-pressed={from === each.name} title={each.help} onClick={() => { setFrom(each.name); dancing.look(each.name); }}>{each.label}</button>)}
      </p>
      <p class="quiet">Danced as drawn.{readOnly.value ? "" : " The page to rehearse with shows it as flown: it is made under Print."}</p>
    </>
  );
}

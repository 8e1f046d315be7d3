// The show danced, by the rehearsal page's stage, bodies and clock; and the song's transport.
import { effect } from "@preact/signals";
import { useEffect, useRef, useState } from "preact/hooks";
import { SilentClock, type Clock } from "../src/clock";
import { TempoMap } from "../src/count";
import { tracksOf, type Document } from "../src/document";
import { Mover } from "../src/motion";
import { Stage, type Drawn } from "../src/scene";
import { SoundClock } from "../src/sound";
import { Eye, VIEWS, type Box, type View as Seen } from "../src/views";
import { Refused, bytes, get } from "./api";
import { notice, playBy, playing, seconds, tempo, view } from "./store";

class Player {
  clock: Clock = new SilentClock(1);
  stage: Stage | null = null;
  eye: Eye | null = null;
  doc: Document | null = null;
  counts: TempoMap | null = null;
  movers: Mover[] = [];
  private loaded = false;
  private dirty = true;

  constructor() {
    effect(() => {
      // Until it is played the song needs no sound, but its length: it can be gone through at once.
      const long = view.value?.duration;
      if (long && !this.loaded && this.clock.duration !== long) {
        this.clock = new SilentClock(long);
        this.clock.seek(seconds.peek());
      }
    });
    playBy((to) => {
      this.clock.seek(to);
      seconds.value = this.clock.now();
      this.dirty = true;
    });
    const loop = () => {
      this.frame();
      requestAnimationFrame(loop);
    };
    requestAnimationFrame(loop);
  }

  /** The song, once it is needed: browsers make no sound before somebody presses a key or a button. */
  async toggle(): Promise<void> {
    if (this.clock.playing) this.clock.pause();
    else {
      await this.load();
      await this.clock.play();
    }
    playing.value = this.clock.playing;
    this.dirty = true;
  }

  private async load(): Promise<void> {
    if (this.loaded) return;
    this.loaded = true;
    const duration = view.value?.duration ?? 1;
    const at = this.clock.now();
    try {
      this.clock = new SoundClock(await bytes("track.mp3"), duration, (why) => notice(why, true));
    } catch (error) {
      notice(`${error instanceof Error ? error.message : error} The show plays without sound.`, true);
      this.clock = new SilentClock(duration);
    }
    this.clock.seek(at);
  }

  show(canvas: HTMLCanvasElement, doc: Document): void {
    this.doc = doc;
    this.counts = new TempoMap(doc.tempo.times, doc.tempo.first, doc.tempo.bars, doc.tempo.metre);
    const tracks = tracksOf(doc);
    this.movers = doc.cast.map((entry, i) => new Mover(entry, tracks[i]));
    this.stage = new Stage(canvas, doc, this.movers);
    const box = floorOf(doc);
    this.eye = new Eye(this.stage.camera, canvas, box, box);
    this.eye.orbit.addEventListener("change", () => (this.dirty = true));
    this.resize(canvas);
  }

  resize(canvas: HTMLCanvasElement): void {
    const box = canvas.parentElement!.getBoundingClientRect();
    this.stage?.resize(Math.max(1, box.width), Math.max(1, box.height), Math.min(window.devicePixelRatio || 1, 2), 0);
    this.dirty = true;
  }

  look(from: Seen): void {
    this.eye?.choose(from);
    this.dirty = true;
  }

  leave(): void {
    this.stage?.renderer.dispose();
    this.stage = this.eye = this.doc = null;
  }

  private frame(): void {
    const on = this.clock.playing;
    if (on) seconds.value = this.clock.now();
    if (playing.value !== on) playing.value = on;
    if (on) follow();
    if (!this.stage || !this.doc || !this.counts || !this.eye || !(on || this.dirty)) return;
    this.dirty = false;
    const now = this.clock.now(), beat = this.counts.beatAt(now);
    const drawn: Drawn = {
      beat, shown: this.doc.cast.map(() => true),
      lit: this.doc.cast.map((entry) => entry.lit.some(([start, end]) => now >= start && now < end)),
      alert: this.doc.cast.map(() => false), follow: 0, hideBody: -1, trail: 1, planes: true, front: null, walk: -1,
    };
    this.stage.place(beat);
    this.eye.aim(this.movers[0], this.stage.poses[0], this.doc.cast.length === 1, this.stage.size);
    this.stage.camera.updateMatrixWorld();
    this.stage.draw(drawn);
  }
}

let shown: Element | null = null;

/** Keeps the row that sounds in sight. */
function follow(): void {
  const row = document.querySelector(".head")?.closest(".eight") ?? null;
  if (row && row !== shown) row.scrollIntoView({ block: "nearest" });
  shown = row;
}

function floorOf(doc: Document): Box {
  const xs = doc.place.outline.map(([x]) => x), ys = doc.place.outline.map(([, y]) => y);
  for (const each of doc.standings) for (const [x, y] of each.spots) {
    xs.push(x - 1, x + 1);
    ys.push(y - 1, y + 1);
  }
  return xs.length ? { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) } : { x0: -2, x1: 2, y0: -1, y1: 2 };
}

export const player = new Player();

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
        const doc = await get<Document>("dance?flown=0");
        if (!live) return;
        setTurn((last) => last + 1);
        setTimeout(() => {
          if (!live || !canvas.current) return;
          player.leave();
          try {
            player.show(canvas.current, doc);
            player.look(from);
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
    const resized = new ResizeObserver(() => canvas.current && player.resize(canvas.current));
    if (canvas.current) resized.observe(canvas.current.parentElement!);
    return () => {
      live = false;
      stop();
      resized.disconnect();
      player.leave();
    };
  }, []);
  return (
    <>
      <div class="dance">
        <canvas key={turn} ref={canvas} aria-label="The performers in motion, as drawn" />
        {words && <p class="quiet">{words}</p>}
      </div>
      <p class="row" role="group" aria-label="Seen from">
        {VIEWS.map((each) => <button key={each.name} type="button" aria-pressed={from === each.name} title={each.help} onClick={() => { setFrom(each.name); player.look(each.name); }}>{each.label}</button>)}
      </p>
      <p class="quiet">Danced as drawn. “sequencer rehearse” writes the page to rehearse with, as flown.</p>
    </>
  );
}

export function Transport() {
  const counts = tempo.value, now = view.value;
  if (!counts || !now) return null;
  const at = seconds.value, beat = counts.beatAt(at);
  const { bar, beat: inBar } = counts.position(Math.max(beat, counts.first) + 1e-6);
  const bars = (by: number) => player.clock.seek(Math.max(0, counts.secondsAt(counts.barStart(bar + by)))); // the frame tells where it is
  return (
    <footer class="transport" aria-label="The song">
      <button type="button" title="A bar back" onClick={() => { bars(-1); seconds.value = player.clock.now(); }}>‹ bar</button>
      <button type="button" class="main" onClick={() => void player.toggle()} title="Play or stop (Space)">{playing.value ? "Stop" : "Play"}</button>
      <button type="button" title="A bar on" onClick={() => { bars(1); seconds.value = player.clock.now(); }}>bar ›</button>
      <p class="where"><b>{bar}</b> . {Math.floor(inBar)}</p>
      <input
        type="range" min={0} max={now.duration} step={0.1} value={at} aria-label="Where the song is" aria-valuetext={`bar ${bar}, count ${Math.floor(inBar)}`}
        onInput={(event) => { player.clock.seek(Number(event.currentTarget.value)); seconds.value = player.clock.now(); }}
      />
      <p class="time">{clock(at)} of {clock(now.duration)}</p>
    </footer>
  );
}

const clock = (total: number) => `${Math.floor(total / 60)}:${String(Math.floor(total % 60)).padStart(2, "0")}`;

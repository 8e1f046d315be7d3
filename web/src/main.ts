// The rehearsal page: reads the document, keeps the clock, draws, and shows text beside the drawing.
import { openAsked } from "./asked";
import { Awake } from "./awake";
import { begins } from "./carriage";
import { SilentClock, SongClock, type Clock } from "./clock";
import { Controls } from "./controls";
import { SIDES, bytesFromBase64, readDocument, tempoOf, tracksOf, type Document, type Side } from "./document";
import { Labels } from "./labels";
import { Distances } from "./distance";
import { $, make } from "./dom";
import { Film } from "./film";
import { Framing, type Room } from "./framing";
import { Mover, placeOn, type Vec } from "./motion";
import { Panel } from "./panel";
import { Plan } from "./plan";
import { Player } from "./player";
import { Quality } from "./quality";
import { SoundClock } from "./sound";
import { Schedule } from "./schedule";
import { Stage, type Drawn } from "./scene";
import { Timeline } from "./timeline";
import { Eye, type Box } from "./views";
import { Wishes } from "./wishes";

const TRAILS = [1, 2, 4, 0, 0.5];
const LARGE = 1.25; // how much larger words on the line of the song are with large type

/** A notice is shown for a while, then stays in the list in the Keys dialog. */
function notice(text: string): void {
  const line = make("p", text);
  $("notices").append(line);
  setTimeout(() => line.remove(), 12_000);
  $("about").prepend(make("li", text));
}

function songClock(doc: Document, fail: (why: string) => void): Clock {
  if (doc.audio.kind === "none") return new SilentClock(doc.duration);
  const text = $("song").textContent ?? "";
  if (doc.audio.kind === "embedded") {
    try {
      return new SoundClock(bytesFromBase64(text).buffer, doc.duration, fail);
    } catch {
      setTimeout(() => fail("This browser cannot play sound on this page."));
      return new SilentClock(doc.duration);
    }
  }
  const element = new Audio();
  element.preload = "auto";
  element.src = JSON.parse(text) as string;
  element.addEventListener("error", () => fail(`The song was not found where this page looks for it (${decodeURIComponent(element.src)}).`));
  return new SongClock(element, doc.duration);
}

class Page {
  readonly doc = readDocument();
  readonly tempo = tempoOf(this.doc);
  readonly schedule = new Schedule(this.doc, this.tempo);
  readonly distances = new Distances(this.doc);
  readonly movers: Mover[];
  readonly stage: Stage | Plan;
  readonly eye: Eye | null = null;
  readonly labels: Labels;
  readonly panel: Panel;
  readonly timeline: Timeline;
  readonly player: Player;
  readonly film: Film;
  follow = 0;
  shown: boolean[];
  only = false;
  mirrored = false;
  planes = true;
  trail = 0;
  private dirty = true;
  readonly quality = new Quality();
  readonly wishes: Wishes;
  private readonly awake = new Awake();
  private readonly framing: Framing;
  private readonly floorBox: Box;
  readonly stats = { frames: 0, spent: 0, ratio: 1 };

  constructor() {
    const { doc } = this;
    const tracks = tracksOf(doc);
    this.movers = doc.cast.map((entry, i) => new Mover(entry, tracks[i]));
    this.framing = new Framing(this.movers);
    this.shown = doc.cast.map(() => true);
    this.wishes = new Wishes(() => this.wished());
    const clock = songClock(doc, (why) => {
      this.player.take(new SilentClock(doc.duration));
      notice(`${why} The show plays without sound.`);
      this.touch();
    });
    this.player = new Player(clock, this.tempo, {
      changed: () => {
        this.panel.playing();
        this.touch();
      },
      counted: (count) => {
        $("counting").hidden = count === null;
        $("counting").textContent = String(count ?? "");
      },
      notice,
    });
    const canvas = $<HTMLCanvasElement>("view");
    const box = this.box();
    this.floorBox = this.floor(box);
    const flat = location.hash === "#flat";
    let stage: Stage | Plan;
    try {
      if (flat) throw new Error("requested");
      stage = new Stage(canvas, doc, this.movers, this.wishes.colours);
      this.eye = new Eye(stage.camera, canvas, box, this.floorBox);
      this.eye.orbit.addEventListener("change", () => this.touch());
    } catch {
      // A canvas that has provided one kind of context provides no other, so a new one replaces it.
      const fresh = canvas.cloneNode() as HTMLCanvasElement;
      canvas.replaceWith(fresh);
      stage = new Plan(fresh, doc, this.movers, this.floorBox, this.wishes.colours);
      $("viewbar").hidden = $("labels").hidden = true;
      if (!flat) notice("This browser cannot draw in 3-D: the show is drawn flat, from the front and from above.");
    }
    this.stage = stage;
    this.labels = new Labels($("labels"), doc);
    this.panel = new Panel(this);
    this.timeline = new Timeline($("timeline"), $("playhead"), $("span"), doc, this.schedule, (t) => this.seek(t));
    if (doc.audio.notice) notice(doc.audio.notice);
    new Controls(this);
    document.addEventListener("visibilitychange", () => this.quality.pause());
    new ResizeObserver(() => this.resize()).observe($("stage"));
    new ResizeObserver(() => this.redrawTimeline()).observe($("line"));
    if (doc.kind === "pattern") {
      [this.player.a, this.player.b] = [0, doc.duration];
      this.player.repeat = true;
    } else if (doc.part) {
      [this.player.a, this.player.b] = doc.part;
      this.player.repeat = true;
      this.seek(doc.part[0]);
    }
    this.film = new Film(this, notice);
    if (location.hash.includes("=")) openAsked(this, location.hash, notice);
    this.resize();
    this.wished();
    const loop = (stamp: number) => {
      this.frame(stamp);
      requestAnimationFrame(loop);
    };
    requestAnimationFrame(loop);
  }

  /** Extent of the cast on the plan over the whole show. */
  private box(): Box {
    const box = { x0: Infinity, x1: -Infinity, y0: Infinity, y1: -Infinity };
    const beats = [0, this.tempo.beatAt(0), this.tempo.beatAt(this.doc.duration)];
    for (const s of this.doc.standings) beats.push(s.walk, (s.walk + s.start) / 2, s.start);
    for (const mover of this.movers) {
      const pose = { x: 0, y: 0, cos: 1, sin: 0 } as Parameters<Mover["stand"]>[1];
      for (const beat of beats) {
        mover.stand(beat, pose);
        box.x0 = Math.min(box.x0, pose.x);
        box.x1 = Math.max(box.x1, pose.x);
        box.y0 = Math.min(box.y0, pose.y);
        box.y1 = Math.max(box.y1, pose.y);
      }
    }
    return Number.isFinite(box.x0) ? box : { x0: -1, x1: 1, y0: 0, y1: 1 };
  }

  /** The stage and the cast's paths together. */
  private floor(box: Box): Box {
    const xs = [box.x0 - 0.8, box.x1 + 0.8], ys = [box.y0 - 0.8, box.y1 + 0.8];
    for (const [x, y] of this.doc.place.outline) {
      xs.push(x);
      ys.push(y);
    }
    return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
  }

  touch(): void {
    this.dirty = true;
  }

  resize(): void {
    const box = $("view").getBoundingClientRect();
    const device = Math.min(window.devicePixelRatio || 1, 2);
    this.stats.ratio = device * this.quality.ratio;
    this.labels.again();
    this.stage.resize(Math.max(1, box.width), Math.max(1, box.height), this.stats.ratio);
    this.touch();
  }

  /** Light or dark, large type, mirror image: everything that is drawn follows. */
  wished(): void {
    if (!this.timeline) return; // before the page is put together
    const { colours } = this.wishes;
    this.stage.recolour(colours, this.mirrored);
    this.timeline.colours = colours;
    this.labels.again();
    this.panel.again();
    this.redrawTimeline();
    this.touch();
  }

  redrawTimeline(): void {
    this.timeline.draw(this.follow, this.wishes.large ? LARGE : 1);
    this.timeline.span(this.player.a, this.player.b);
    this.timeline.at(this.clock.now());
  }

  get clock(): Clock {
    return this.player.clock;
  }

  /** Dance as drawn, or as it is flown. */
  danceDrawn(on: boolean): boolean {
    for (const mover of this.movers) mover.drawn = on;
    this.distances.drawn = on;
    this.framing.again();
    this.panel.again();
    return on;
  }

  seek(seconds: number): void {
    this.clock.seek(Math.min(Math.max(seconds, 0), this.doc.duration));
    this.touch();
  }

  followed(): string {
    return this.doc.cast[this.follow]?.name ?? "";
  }

  /** The dance as its mirror image: drawing, colours and words. */
  mirror(): boolean {
    this.mirrored = !this.mirrored;
    this.wished();
    return this.mirrored;
  }

  visible(): boolean[] {
    return this.only ? this.shown.map((_, i) => i === this.follow) : this.shown;
  }

  /** What the view from the audience shows; it never moves for those who wish for less motion. */
  private room(beat: number, shown: boolean[]): Room | null {
    const { tempo, doc } = this;
    return this.wishes.calm ? this.framing.all(tempo.beatAt(0), tempo.beatAt(doc.duration)) : this.framing.around(beat, shown);
  }

  private frame(stamp: number): void {
    const { playing } = this.clock;
    const seconds = this.player.frame();
    this.awake.keep(playing || this.player.counting !== null);
    if (!playing) this.quality.pause();
    if (!playing && !this.dirty && !this.player.counting) return;
    this.dirty = false;
    const begun = performance.now();
    const beat = this.tempo.beatAt(seconds);
    const shown = this.visible();
    const active = this.schedule.active(seconds);
    const troubled = new Set(active.filter((f) => f.severity !== "note").flatMap((f) => f.who));
    const drawn: Drawn = {
      beat,
      shown,
      lit: this.doc.cast.map((_, i) => this.schedule.lit(i, seconds) !== undefined),
      alert: this.doc.cast.map((entry) => troubled.has(entry.name)),
      follow: this.follow,
      hideBody: this.eye?.view === "eye" ? this.follow : -1,
      trail: TRAILS[this.trail],
      planes: this.planes,
      flicker: !this.wishes.calm,
      front: this.eye?.view === "audience" ? this.floorBox.y0 : null,
      walk: this.schedule.walk(beat),
    };
    this.stage.place(beat);
    if (this.stage instanceof Stage && this.eye) {
      const solo = shown.filter(Boolean).length === 1;
      this.eye.aim(this.movers[this.follow], this.stage.poses[this.follow], solo, this.eye.view === "audience" ? this.room(beat, shown) : null);
      this.stage.camera.updateMatrixWorld();
      this.stage.draw(drawn);
      this.labels.place(this.stage.camera, this.stage.poses, this.movers, drawn, this.mirrored, this.eye.view);
    } else {
      this.stage.draw(drawn);
    }
    this.panel.show(seconds, beat, active, this.stage.poses[this.follow], drawn);
    this.timeline.at(seconds);
    this.measure(stamp, performance.now() - begun, playing);
  }

  /** Counts frames, and draws fewer pixels if the machine cannot keep up. */
  private measure(stamp: number, spent: number, playing: boolean): void {
    this.stats.frames += 1;
    this.stats.spent += spent;
    if (playing && this.stage instanceof Stage && this.quality.frame(stamp)) this.resize();
  }

  /** Distances of every two performers at a moment [m], for checking from outside. */
  apart(seconds: number): [string, string, number][] {
    const beat = this.tempo.beatAt(seconds), { cast } = this.doc;
    this.stage.place(beat);
    this.distances.take(beat, this.stage.poses, cast.map((_, i) => this.schedule.lit(i, seconds) !== undefined));
    this.touch();
    return cast.flatMap((one, i) => cast.slice(i + 1).map((other, k): [string, string, number] => [one.name, other.name, this.distances.between(i, i + 1 + k)]));
  }

  /** Hands and heads in the stage frame [m], for checking from outside. */
  positions(seconds: number): Record<string, unknown>[] {
    this.stage.place(this.tempo.beatAt(seconds));
    const out = this.movers.map((mover, i) => {
      const at = this.stage.poses[i];
      const heads: Partial<Record<Side, Vec[]>> = {};
      for (const side of SIDES) heads[side] = mover.entry.props[side]?.heads.map((spot) => placeOn(at, side, spot, [0, 0, 0]));
      const head = { left: heads.left?.[0], right: heads.right?.[0] };
      return { name: mover.entry.name, hand: structuredClone(at.hand), head, heads, place: [at.x, at.y] };
    });
    this.touch();
    return out;
  }

  /** Angles of every body [rad] and where its arms begin in the body frame [m], for checking from outside. */
  bodies(seconds: number): Record<string, unknown>[] {
    this.stage.place(this.tempo.beatAt(seconds));
    const out = this.movers.map(({ entry: { body } }, i) => {
      const { angles, bodyHand } = this.stage.poses[i];
      const from = (side: Side) => begins(body, angles, side, bodyHand[side]);
      return { angles: [...angles], shoulders: { left: from("left"), right: from("right") } };
    });
    this.touch();
    return out;
  }
}

export type { Page };

const page = new Page();
Object.assign(window, { rehearsal: page });
document.documentElement.dataset.ready = "yes";

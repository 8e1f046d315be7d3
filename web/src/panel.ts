// The text panel: current and next block in words, count, stations and planes, fire, findings.
import { $, list, make, say } from "./dom";
import { SIDES, type Finding, type Side } from "./document";
import type { Page } from "./main";
import { emptyPose, type Pose, type Vec } from "./motion";
import type { Drawn } from "./scene";
import type { Part } from "./schedule";
import { clockText, planeWords, reflected, shortClock, stationWords } from "./words";

const metres = (value: number) => `${value < 0 ? "−" : ""}${Math.abs(value).toFixed(2)} m`;
const MOST = 200; // entries in the list
const MOST_NOW = 12; // findings told at once

export class Panel {
  private part: Part | null = null;
  private nextKey = "";
  private through: string[] = [];
  private who = -1;
  private metre = 0;
  private alerts = "";
  private serious: Finding[] = [];
  private readonly away = new Set<Finding>(); // findings that somebody has put away
  private pairs: { first: number; second: number; element: HTMLElement }[] = [];
  private handsAt = 0;
  private readonly centres: Record<Side, Vec> = { left: [0, 0, 0], right: [0, 0, 0] };
  private readonly items: { findings: Finding[]; element: HTMLElement }[] = [];
  private readonly words: Partial<Record<Side, HTMLElement>> = {};

  constructor(private readonly page: Page) {
    const { doc } = page;
    document.title = `${doc.title} · rehearsal`;
    say($("title"), doc.title);
    $("title").title = doc.title; // two lines of it are seen
    say($("edition"), [doc.version && doc.kind === "show" ? `version ${doc.version}` : "", doc.date].filter(Boolean).join(" · "));
    const box = $("findings");
    for (const entry of doc.entries.slice(0, MOST)) {
      const item = make("li", "", entry.severity);
      const button = make("button");
      button.setAttribute("type", "button");
      button.append(make("b", entry.severity), document.createTextNode(`${entry.position ?? "whole show"} · ${entry.message}`));
      if (entry.remedies[0]) button.append(make("small", `mend: ${entry.remedies[0]}`));
      button.addEventListener("click", () => entry.start !== null && page.seek(entry.start));
      item.append(button);
      box.append(item);
      this.items.push({ findings: entry.of.map((k) => doc.findings[k]), element: button });
    }
    this.oneStop(box);
    const extra = doc.entries.length - MOST;
    if (extra > 0) box.append(make("li", `and ${extra} more: run sequencer check for the full list`));
    const stops = doc.entries.filter((each) => each.severity === "stop").length;
    say($("findings-title"), doc.entries.length ? `Findings: ${doc.entries.length}, ${stops} to mend before you dance it` : "Findings: none");
    $("findings-box").hidden = $("next-box").hidden = doc.kind === "pattern";
    list($("about"), [
      `Hands and heads are drawn within ${(doc.error.measured * 1000).toFixed(1)} mm of the motion laws (2 mm guaranteed), checked 24 times a beat.`,
      "Bodies, steps and flames are only drawings; rely on the checks for distances.",
      ...doc.not_checked.map((one) => `Not looked at: ${one}`),
    ]);
    const hands = $("hands");
    for (const side of SIDES) {
      const words = make("dd");
      hands.append(make("dt", `${side} hand`, side), words);
      this.words[side] = words;
    }
    $("put-away").addEventListener("click", () => this.putAway());
    this.playing();
  }

  /** A long list is one stop of the tab key; arrows go through it. */
  private oneStop(box: HTMLElement): void {
    this.items.forEach(({ element }, i) => (element.tabIndex = i ? -1 : 0));
    box.addEventListener("keydown", (event) => {
      const way = { ArrowDown: 1, ArrowUp: -1 }[event.key];
      const at = this.items.findIndex(({ element }) => element === document.activeElement);
      const next = way === undefined || at < 0 ? undefined : this.items[at + way];
      if (!next) return;
      event.preventDefault();
      this.items[at].element.tabIndex = -1;
      next.element.tabIndex = 0;
      next.element.focus();
    });
  }

  /** Words are worked out anew: the motion is another. */
  again(): void {
    this.part = null;
    this.nextKey = "";
    this.handsAt = 0;
  }

  playing(): void {
    const on = this.page.clock.playing || this.page.player.counting !== null;
    say($("play"), on ? "Stop" : "Play");
    $("play").setAttribute("aria-label", on ? "Stop" : "Play");
  }

  show(seconds: number, beat: number, active: Finding[], pose: Pose, drawn: Drawn): void {
    const { page } = this;
    const { schedule, tempo, doc } = page;
    const station = schedule.station(beat, page.mirrored);
    const { bar, beat: inBar, inBar: length } = tempo.position(beat + 1e-6);
    const count = Math.floor(inBar);
    const section = schedule.section(seconds);
    say($("where"), `${clockText(seconds)} / ${clockText(doc.duration)}${section ? ` · ${section}` : ""}`);
    $("station").hidden = station === "";
    say($("station"), station);
    say($("bar"), String(bar));
    this.beats(count, length);
    this.playing();

    const line = $("line");
    line.setAttribute("aria-valuenow", seconds.toFixed(1));
    line.setAttribute("aria-valuetext", `bar ${bar} beat ${count}${section ? `, ${section}` : ""}`);

    const parts = schedule.of(page.follow);
    const index = schedule.index(page.follow, beat);
    const part = parts[index];
    let ahead = index + 1;
    while (ahead < parts.length && parts[ahead].kind !== "block") ahead += 1;
    const next = parts[ahead];
    this.through = parts.slice(index + 1, ahead).map((p) => p.title);
    if (part && (part !== this.part || this.who !== page.follow)) this.now(part);
    const key = `${index}>${ahead}`;
    if (key !== this.nextKey || this.who !== page.follow) this.then(next ?? null, key);
    this.who = page.follow;
    if (part) {
      const left = part.end - beat;
      const count = Math.max(0, Math.ceil(left - 1e-6));
      say($("left-over"), Number.isFinite(left) ? `${count} ${count === 1 ? "beat" : "beats"} left` : "");
      const share = Number.isFinite(part.end - part.start) ? (beat - part.start) / (part.end - part.start) : 0;
      ($("progress").firstElementChild as HTMLElement).style.transform = `scaleX(${Math.min(1, Math.max(0, share))})`;
    }
    const stamp = performance.now();
    if (!page.clock.playing || stamp - this.handsAt > 120) {
      this.handsAt = stamp;
      this.hands(pose, part);
      this.fire(seconds);
      this.alert(active);
      this.apart(beat, drawn);
    }
  }

  private beats(count: number, length: number): void {
    const box = $("beats");
    if (this.metre !== length) {
      this.metre = length;
      box.replaceChildren(...Array.from({ length }, (_, i) => make("i", String(i + 1))));
    }
    [...box.children].forEach((child, i) => {
      child.classList.toggle("on", i + 1 === count);
      child.classList.toggle("one", i === 0);
    });
  }

  private now(part: Part): void {
    this.part = part;
    const { mirrored } = this.page;
    say($("who"), `${this.page.followed()}${mirrored ? " · mirror image" : ""}`);
    say($("now"), part.title);
    list($("now-lines"), mirrored ? part.mirror : part.lines);
    // The middle of each hand's path through this block, so that the hand's place on it can be named.
    const pose = emptyPose();
    const from = Number.isFinite(part.start) ? part.start : this.page.tempo.beatAt(this.page.clock.now());
    const span = Math.min(8, Number.isFinite(part.end) ? part.end - from : 1);
    for (const side of SIDES) this.centres[side] = [0, 0, 0];
    const low: Record<Side, Vec> = { left: [9, 9, 9], right: [9, 9, 9] }, high: Record<Side, Vec> = { left: [-9, -9, -9], right: [-9, -9, -9] };
    for (let i = 0; i < 48; i++) {
      this.page.movers[this.page.follow].at(from + (span * (i + 0.5)) / 48, pose);
      for (const side of SIDES) for (let k = 0; k < 3; k++) {
        low[side][k] = Math.min(low[side][k], pose.bodyHand[side][k]);
        high[side][k] = Math.max(high[side][k], pose.bodyHand[side][k]);
      }
    }
    for (const side of SIDES) for (let k = 0; k < 3; k++) this.centres[side][k] = (low[side][k] + high[side][k]) / 2;
  }

  private then(next: Part | null, key: string): void {
    this.nextKey = key;
    say($("next"), next ? next.title : "the end");
    say($("next-when"), next && Number.isFinite(next.start) ? `at ${this.page.tempo.text(next.start)}` : "");
    list($("next-lines"), next ? [...(this.through.length ? [`after ${this.through.join(", ")}`] : []), ...(this.page.mirrored ? next.mirror : next.lines)] : []);
    if (this.page.clock.playing && this.part) {
      say($("voice"), `${this.part.title}${next ? `, next ${next.title} at ${this.page.tempo.text(next.start)}` : ""}`);
    }
  }

  private hands(pose: Pose, part: Part | undefined): void {
    const entry = this.page.doc.cast[this.page.follow];
    const { mirrored } = this.page;
    for (const side of SIDES) {
      const at = this.words[mirrored ? (side === "left" ? "right" : "left") : side]!;
      const prop = entry?.props[side];
      at.hidden = prop === undefined;
      (at.previousElementSibling as HTMLElement).hidden = at.hidden;
      if (!prop) continue;
      if (part?.kind === "rest") {
        say(at, "hangs still");
        continue;
      }
      // Stage back to body: the transpose of the turn that motion.ts applies.
      const [dx, dy, dz] = pose.tether[side];
      const tether: Vec = [-pose.cos * dx - pose.sin * dy, pose.sin * dx - pose.cos * dy, dz];
      const seen = (v: Vec, plane = false) => (mirrored ? reflected(v, plane) : v);
      const words = stationWords(seen(pose.bodyHand[side]), seen(this.centres[side]), seen(tether), prop.kind);
      say(at, `${words} · ${planeWords(seen(pose.bodyPlane[side], true))}`);
    }
  }

  private fire(seconds: number): void {
    const { doc, schedule, follow } = this.page;
    const at = $("fire");
    if (!doc.cast[follow] || doc.kind === "pattern") {
      at.hidden = true;
      return;
    }
    const lit = schedule.lit(follow, seconds), soon = schedule.nextLit(follow, seconds);
    if (lit) {
      const planned = shortClock(lit[1] - seconds);
      const burn = doc.burn ? `, burn time left ${shortClock(lit[0] + doc.burn.seconds - seconds)} (${doc.burn.measured ? "timed by you" : "not timed yet"})` : ", burn time unknown";
      say(at, `Lit · out in ${planned}${burn}`);
    } else {
      say(at, soon ? `Out · lit in ${shortClock(soon[0] - seconds)}` : "Out");
    }
  }

  /** The closest two of those shown, and every pair in an alert, at this moment. */
  private apart(beat: number, { shown, lit }: Drawn): void {
    const { distances, stage, doc } = this.page;
    if (doc.cast.length < 2) return;
    distances.take(beat, stage.poses, lit);
    const near = distances.nearest(shown);
    $("apart").hidden = near === null;
    if (near) {
      const names = [near.first, near.second].map((who) => doc.cast[who].name).join(" – ");
      say($("apart"), `Closest: ${names}, ${metres(near.distance)}${doc.apart === null ? "" : ` (${metres(doc.apart)} required)`}`);
      $("apart").classList.toggle("under", doc.apart !== null && near.distance < doc.apart);
    }
    for (const { first, second, element } of this.pairs) say(element, ` Now ${metres(distances.between(first, second))}.`);
  }

  /** Puts away what is told of this moment; what comes new is told. Or shows again what was put away. */
  putAway(): void {
    const shown = this.serious.filter((each) => !this.away.has(each));
    if (shown.length) for (const each of shown) this.away.add(each);
    else this.away.clear();
    this.alerts = "";
    this.page.touch();
  }

  private alert(active: Finding[]): void {
    this.serious = active.filter((f) => f.severity !== "note");
    const told = this.serious.filter((each) => !this.away.has(each));
    const key = [told, active].map((each) => each.map((f) => f.code + f.start + f.message).join()).join("|");
    if (key === this.alerts) return;
    this.alerts = key;
    this.pairs = [];
    const many = this.serious.length;
    $("put-away").hidden = many === 0;
    $("put-away").setAttribute("aria-expanded", String(told.length > 0));
    $("put-away").classList.toggle("stop", this.serious.some((f) => f.severity === "stop"));
    say($("put-away"), `${many} ${many === 1 ? "finding" : "findings"} now: ${told.length ? "put away" : "show"}`);
    $("alert").hidden = told.length === 0;
    $("alert").replaceChildren(...told.slice(0, MOST_NOW).map((finding) => {
      const line = make("p", "", finding.severity);
      line.append(make("b", finding.severity), document.createTextNode(finding.message));
      const [first, second] = finding.who.map((name) => this.page.doc.cast.findIndex((entry) => entry.name === name));
      if (finding.code === "too-close" && first >= 0 && second >= 0) {
        const element = make("span", "", "now");
        line.append(element);
        this.pairs.push({ first, second, element });
      }
      return line;
    }));
    for (const { findings, element } of this.items) element.classList.toggle("active", findings.some((each) => active.includes(each)));
  }
}

// Buttons, keys and touch. Every action has a button and a key.
import { $, make, say } from "./dom";
import { lastUpTo } from "./count";
import type { Page } from "./main";
import { VIEWS, type View } from "./views";

const KEYS: [string, string][] = [
  ["Space", "play or stop"],
  ["← →", "previous or next bar"],
  ["Shift + ← →", "previous or next block (or station)"],
  ["Page Up, Page Down", "previous or next section"],
  ["Home, End", "go to the start or the end"],
  [", .", "slower, faster"],
  ["0", "full speed"],
  ["[ ]", "set marks A and B; L repeats between them, X clears them"],
  ["C, K", "one-bar count-in, click on the beats"],
  ["1 2 3 4 5", "view from the audience, from behind, performer’s eye, above, free"],
  ["+ −", "zoom in, zoom out"],
  ["M", "mirror the view"],
  ["N, P", "follow the next or previous performer; O shows only that one"],
  ["D, R", "show planes, change trail length"],
  ["F", "dance as drawn, or as a passive prop really flies"],
  ["T, B", "large type, light or dark"],
  ["V", "put away what was found now, or show it again"],
  ["↑ ↓", "through the list of findings, once you are in it"],
  ["Y", "a video of yourself beside the figure"],
  ["G", "save a picture"],
  ["?", "this list of keys"],
];

export class Controls {
  private readonly names: HTMLElement[] = [];

  constructor(private readonly page: Page) {
    const { doc } = page;
    const step = doc.stations.length ? "station" : "block";
    say($("step-word-1"), step);
    say($("step-word-2"), step);
    $("as-drawn").hidden = !doc.cast.some((entry) => entry.drawn);
    $("back-section").hidden = $("on-section").hidden = doc.sections.length === 0;
    $("line").setAttribute("aria-valuemax", doc.duration.toFixed(1));
    const buttons: [string, () => void][] = [
      ["play", () => void page.player.toggle()],
      ["back-bar", () => this.bar(-1)],
      ["on-bar", () => this.bar(1)],
      ["back-step", () => this.step(-1)],
      ["on-step", () => this.step(1)],
      ["back-section", () => this.section(-1)],
      ["on-section", () => this.section(1)],
      ["mark-a", () => this.mark("a")],
      ["mark-b", () => this.mark("b")],
      ["repeat", () => this.repeat()],
      ["count-in", () => this.press("count-in", (page.player.countIn = !page.player.countIn))],
      ["click", () => this.press("click", (page.player.clicks.on = !page.player.clicks.on))],
      ["mirror", () => this.mirror()],
      ["discs", () => this.press("discs", (page.planes = !page.planes))],
      ["trail", () => this.trail()],
      ["as-drawn", () => this.press("as-drawn", page.danceDrawn(!page.movers[0].drawn))],
      ["large", () => this.large()],
      ["colours", () => this.colours()],
      ["more", () => this.more()],
      ["picture", () => this.picture()],
      ["help", () => $<HTMLDialogElement>("keys").showModal()],
      ["only", () => this.only()],
    ];
    for (const [id, act] of buttons) $(id).addEventListener("click", act);
    // After a click or tap the space bar plays again; with keys the focus stays where it is.
    document.addEventListener("click", (event) => {
      if (event.detail > 0 && event.target instanceof Element) event.target.closest("button")?.blur();
    });
    this.press("large", page.wishes.large);
    const views = $("views");
    for (const { name, label, help } of VIEWS) {
      const button = make("button", label);
      button.setAttribute("type", "button");
      button.id = `view-${name}`;
      button.title = `${help} (${VIEWS.findIndex((v) => v.name === name) + 1})`;
      button.addEventListener("click", () => this.view(name));
      views.append(button);
    }
    const speed = $<HTMLInputElement>("speed");
    speed.addEventListener("input", () => this.speed(Number(speed.value)));
    const volume = $<HTMLInputElement>("volume");
    volume.addEventListener("input", () => (page.clock.volume = Number(volume.value) / 100));
    if (page.clock.silent) {
      volume.hidden = true;
      (volume.previousElementSibling as HTMLElement).hidden = true;
    }
    this.cast();
    this.view(doc.kind === "pattern" ? "behind" : "audience");
    this.follow(0);
    if (page.movers.length < 2) $("cast-box").hidden = true;
    if (page.player.repeat) this.press("repeat", true);
    const keys = $("key-list");
    for (const [key, what] of KEYS) keys.append(make("dt", key), make("dd", what));
    document.addEventListener("keydown", (event) => this.key(event));
    // A closed dialog may leave the focus on an element inside it, which the space bar would then press.
    $("keys").addEventListener("close", () => {
      if (document.activeElement instanceof HTMLElement && document.activeElement.closest("dialog")) document.activeElement.blur();
    });
    this.fingers();
    // Another loop is asked for, or the flat drawing; a link within the page is none.
    window.addEventListener("hashchange", () => /=|^#flat$/.test(location.hash) && location.reload());
  }

  private press(id: string, on: boolean): void {
    $(id).setAttribute("aria-pressed", String(on));
    this.page.touch();
  }

  private cast(): void {
    const { page } = this;
    const box = $("cast");
    page.doc.cast.forEach((entry, i) => {
      const row = make("div");
      const shown = document.createElement("input");
      shown.type = "checkbox";
      shown.checked = true;
      shown.setAttribute("aria-label", `show ${entry.name}`);
      shown.addEventListener("change", () => {
        page.shown[i] = shown.checked;
        page.touch();
      });
      const name = make("button", entry.name);
      name.setAttribute("type", "button");
      name.addEventListener("click", () => this.follow(i));
      const tick = make("label", "", "tick");
      tick.append(shown);
      row.append(tick, name);
      box.append(row);
      this.names.push(name);
    });
  }

  private follow(i: number): void {
    const n = this.page.movers.length;
    if (n === 0) return;
    this.page.follow = ((i % n) + n) % n;
    this.names.forEach((name, k) => name.setAttribute("aria-pressed", String(k === this.page.follow)));
    this.page.redrawTimeline();
    this.page.touch();
  }

  private only(): void {
    this.press("only", (this.page.only = !this.page.only));
  }

  private view(name: View): void {
    this.page.eye?.choose(name);
    for (const view of VIEWS) $(`view-${view.name}`).setAttribute("aria-pressed", String(view.name === name));
    this.page.touch();
  }

  private mirror(): void {
    const on = this.page.mirror();
    $("stage").classList.toggle("mirrored", on);
    this.press("mirror", on);
  }

  private trail(): void {
    this.page.trail = (this.page.trail + 1) % 5;
    const beats = ["1 beat", "2 beats", "4 beats", "off", "½ beat"][this.page.trail];
    say($("trail"), `Trails ${beats}`);
    this.page.touch();
  }

  private large(): void {
    this.page.wishes.enlarge();
    this.press("large", this.page.wishes.large);
  }

  private colours(): void {
    this.page.wishes.turn();
    say($("voice"), this.page.wishes.light ? "light" : "dark");
  }

  /** On a small screen, what is seldom needed is out of the way until it is asked for. */
  private more(): void {
    $("more").setAttribute("aria-expanded", String(document.documentElement.classList.toggle("more")));
  }

  private picture(): void {
    const canvas = $<HTMLCanvasElement>("view");
    this.page.touch();
    requestAnimationFrame(() => (this.page.mirrored ? flipped(canvas) : canvas).toBlob((blob) => {
      if (!blob) return;
      const link = document.createElement("a");
      link.href = URL.createObjectURL(blob);
      link.download = `rehearsal-${this.page.tempo.text(this.page.tempo.beatAt(this.page.clock.now()))}.png`;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
    }));
  }

  private beat(): number {
    return this.page.tempo.beatAt(this.page.clock.now());
  }

  private toBeat(beat: number): void {
    this.page.seek(this.page.tempo.secondsAt(beat));
  }

  private bar(way: 1 | -1): void {
    const { tempo } = this.page;
    const beat = this.beat();
    const { bar, beat: inBar } = tempo.position(beat + 0.02);
    // Going back within the first beat of a bar goes to the previous bar.
    const target = way > 0 ? bar + 1 : inBar > 1.6 ? bar : bar - 1;
    this.toBeat(tempo.barStart(target));
  }

  private step(way: 1 | -1): void {
    const starts = this.page.schedule.steps(this.page.follow);
    const beat = this.beat();
    if (way > 0) {
      const next = starts.find((start) => start > beat + 0.02);
      if (next !== undefined) this.toBeat(next);
      else if (this.page.doc.stations.length) this.toBeat(starts[0]);
    } else {
      // During playback, a press soon after a start goes to the previous one.
      const at = lastUpTo(starts, beat - (this.page.clock.playing ? 0.6 : 0.02));
      this.toBeat(at >= 0 ? starts[at] : this.page.doc.stations.length ? starts[starts.length - 1] : 0);
    }
  }

  private section(way: 1 | -1): void {
    const starts = this.page.doc.sections.map(([, start]) => start);
    const now = this.page.clock.now();
    const next = way > 0 ? starts.find((start) => start > now + 0.02) : starts[lastUpTo(starts, now - 0.6)];
    this.page.seek(next ?? (way > 0 ? this.page.doc.duration : 0));
  }

  private mark(which: "a" | "b"): void {
    const { page } = this;
    page.player.mark(which, page.tempo.secondsAt(Math.round(this.beat())));
    this.spanned();
    say($("voice"), `mark ${which.toUpperCase()} at ${page.tempo.text(Math.round(this.beat()))}`);
  }

  private lift(): void {
    this.page.player.lift();
    this.spanned();
  }

  private repeat(): void {
    this.page.player.turn();
    this.spanned();
  }

  private spanned(): void {
    const { player, timeline } = this.page;
    this.press("repeat", player.repeat);
    timeline.span(player.a, player.b);
  }

  private speed(percent: number): void {
    const value = this.page.player.pace(percent);
    $<HTMLInputElement>("speed").value = String(value);
    $("speed").setAttribute("aria-valuetext", `${value} percent`);
    say($("speed-text"), `${value} %`);
    this.page.touch();
  }

  private zoom(by: number): void {
    const { eye } = this.page;
    if (!eye) return;
    if (eye.view === "free") {
      const { camera, orbit } = eye;
      camera.position.sub(orbit.target).multiplyScalar(1 / by).add(orbit.target);
    } else eye.zoom = Math.min(6, Math.max(0.4, eye.zoom * by));
    this.page.touch();
  }

  private fingers(): void {
    const surface = $("stage");
    const down = new Map<number, PointerEvent>();
    let spread = 0;
    surface.addEventListener("wheel", (event) => {
      if (this.page.eye?.view === "free" || (event.target as HTMLElement).id !== "view") return;
      event.preventDefault();
      this.zoom(Math.exp(-event.deltaY * 0.0012));
    }, { passive: false });
    surface.addEventListener("pointerdown", (event) => {
      if ((event.target as HTMLElement).id !== "view") return;
      down.set(event.pointerId, event);
      spread = 0;
    });
    const lift = (event: PointerEvent) => down.delete(event.pointerId);
    for (const name of ["pointerup", "pointercancel", "pointerleave"] as const) surface.addEventListener(name, lift);
    surface.addEventListener("pointermove", (event) => {
      const before = down.get(event.pointerId);
      const eye = this.page.eye;
      if (!before || !eye || eye.view === "free") return;
      down.set(event.pointerId, event);
      if (down.size === 2) {
        const [one, two] = [...down.values()];
        const now = Math.hypot(one.clientX - two.clientX, one.clientY - two.clientY);
        if (spread > 0) this.zoom(now / spread);
        spread = now;
      } else if (eye.view === "eye") {
        const way = this.page.mirrored ? -1 : 1;
        eye.look.yaw -= (way * (event.clientX - before.clientX)) / 250;
        eye.look.pitch = Math.max(-1.3, Math.min(1.3, eye.look.pitch + (event.clientY - before.clientY) / 250));
        this.page.touch();
      }
    });
  }

  private key(event: KeyboardEvent): void {
    const target = event.target as HTMLElement;
    if (event.ctrlKey || event.metaKey || event.altKey || $<HTMLDialogElement>("keys").open) return;
    const range = target instanceof HTMLInputElement && target.type === "range";
    // The focus may stay in the dialog for a while after it closes; that counts as no focus.
    const press = !target.closest("dialog") && (target instanceof HTMLButtonElement || target instanceof HTMLInputElement);
    const { page } = this;
    const always: Record<string, () => void> = {
      PageUp: () => this.section(-1),
      PageDown: () => this.section(1),
      ...(range ? {} : {
        ArrowLeft: () => (event.shiftKey ? this.step(-1) : this.bar(-1)),
        ArrowRight: () => (event.shiftKey ? this.step(1) : this.bar(1)),
        Home: () => page.seek(0),
        End: () => page.seek(page.doc.duration),
      }),
      ...(press ? {} : { " ": () => void page.player.toggle() }),
    };
    const letters: Record<string, () => void> = {
      ",": () => this.speed(page.clock.speed * 100 - 5),
      ".": () => this.speed(page.clock.speed * 100 + 5),
      "0": () => this.speed(100),
      "[": () => this.mark("a"),
      "]": () => this.mark("b"),
      l: () => this.repeat(),
      x: () => this.lift(),
      c: () => $("count-in").click(),
      k: () => $("click").click(),
      m: () => this.mirror(),
      n: () => this.follow(page.follow + 1),
      p: () => this.follow(page.follow - 1),
      o: () => this.only(),
      d: () => $("discs").click(),
      r: () => this.trail(),
      f: () => $("as-drawn").click(),
      t: () => this.large(),
      b: () => this.colours(),
      v: () => page.panel.putAway(),
      y: () => $("own-video").click(),
      g: () => this.picture(),
      "+": () => this.zoom(1.2),
      "=": () => this.zoom(1.2),
      "-": () => this.zoom(1 / 1.2),
      "?": () => $<HTMLDialogElement>("keys").showModal(),
    };
    VIEWS.forEach(({ name }, i) => (letters[String(i + 1)] = () => this.view(name)));
    const on = $<HTMLInputElement>("keys-on").checked;
    const act = always[event.key] ?? (on ? letters[event.key.toLowerCase()] : undefined);
    if (!act) return;
    event.preventDefault();
    act();
  }
}

/** A picture as it is seen under Mirror. */
function flipped(canvas: HTMLCanvasElement): HTMLCanvasElement {
  const image = document.createElement("canvas");
  [image.width, image.height] = [canvas.width, canvas.height];
  const paper = image.getContext("2d")!;
  paper.setTransform(-1, 0, 0, 1, canvas.width, 0);
  paper.drawImage(canvas, 0, 0);
  return image;
}

// One's own film beside the figure: a file that a person chooses, shown from this machine's memory, never sent anywhere. It is
// lined up with the song by its sound, or by hand, and then follows the page's clock: slowed, stopped and repeated with it.
import { $, make, say } from "./dom";
import { ENOUGH, linedUp, onsets, type Lining } from "./lining";
import type { Page } from "./main";
import { SoundClock } from "./sound";

const LARGEST = 600e6; // [bytes] whose sound is listened to: it is decoded in memory
const OFF = 0.12; // [s] beside its place it is put there at once; nearer, it catches up
const STILL = 0.02; // [s] the same while nothing plays
const CATCH = 0.8; // of a gap is made up for in a second
const TOLD = 20_000; // [ms] that what was found stands before the words of the dance; after that under Keys
const NUDGES: [string, number, string][] = [["−1 s", -1, "a second earlier"], ["−", -0.04, "a frame earlier"], ["+", 0.04, "a frame later"], ["+1 s", 1, "a second later"]];

export class Film {
  readonly lining = { linedUp, onsets }; // for checking from outside
  start = 0; // [s] of the film at which the song begins
  speed = 1; // of the song in the film
  private readonly video = document.createElement("video");
  private readonly panel = make("section");
  private readonly tools = make("div");
  private readonly words = make("p");
  private readonly file = document.createElement("input");
  private address = "";
  private turn = 0;
  private hiding = 0;

  constructor(private readonly page: Page, private readonly notice: (text: string) => void) {
    const { panel, tools, words, video, file } = this;
    panel.id = "film";
    panel.setAttribute("aria-label", "Your video");
    words.id = "film-words";
    words.setAttribute("role", "status");
    video.muted = video.playsInline = true;
    video.preload = "auto";
    video.setAttribute("aria-label", "Your video, in step with the song");
    video.addEventListener("error", () => this.address && this.refused());
    file.type = "file";
    file.accept = "video/*";
    file.hidden = true;
    file.setAttribute("aria-label", "A video of yourself");
    file.addEventListener("change", () => file.files?.[0] && void this.show(file.files[0]));
    tools.id = "film-tools";
    tools.setAttribute("role", "group");
    tools.setAttribute("aria-label", "Line up by hand");
    for (const [label, by, help] of NUDGES) tools.append(this.button(label, `The video ${help}`, () => this.nudge(-by)));
    tools.append(
      this.button("Flip", "Left and right of the video changed over", () => void video.classList.toggle("flipped")),
      this.button("Close", "Put the video away", () => this.close()),
    );
    panel.append(video, file);
    $("stage").before(panel);
    $("dance").append(tools);
    $("words").prepend(words);
    this.there(false);
    const open = this.button("Video", "Show a video of yourself beside the figure; it stays on this machine (Y)", () => file.click());
    open.id = "own-video";
    open.className = "seldom";
    $("trail").after(open);
  }

  private button(label: string, help: string, act: () => void): HTMLElement {
    const button = make("button", label);
    button.setAttribute("type", "button");
    button.title = help;
    if (label !== "Video") button.setAttribute("aria-label", `${label}: ${help}`);
    button.addEventListener("click", act);
    return button;
  }

  private there(on: boolean): void {
    clearTimeout(this.hiding);
    this.panel.hidden = this.tools.hidden = this.words.hidden = !on;
    document.documentElement.classList.toggle("filmed", on);
    this.page.resize();
  }

  /** Show a file, and line it up by its sound. */
  async show(file: File): Promise<void> {
    this.close();
    const turn = ++this.turn;
    this.address = URL.createObjectURL(file);
    this.video.src = this.address;
    [this.start, this.speed] = [0, 1];
    this.there(true);
    if (document.documentElement.classList.contains("more")) $("more").click(); // the video needs its room
    say(this.words, "Listening for the song …");
    this.follow(turn);
    const told = await this.listened(file);
    if (turn !== this.turn) return;
    this.tell(told);
    $("about").prepend(make("li", told));
  }

  private tell(text: string): void {
    const { words } = this;
    words.hidden = false;
    say(words, text);
    $("words").scrollTop = 0;
    clearTimeout(this.hiding);
    this.hiding = setTimeout(() => (words.hidden = true), TOLD);
  }

  /** Line it up by its sound; what to say of that. */
  private async listened(file: File): Promise<string> {
    const byHand = "line it up with the buttons.";
    const { clock } = this.page;
    const song = clock instanceof SoundClock ? await clock.samples() : null;
    if (!song) return `This page does not hold the song itself: ${byHand}`;
    if (file.size > LARGEST) return `This video is too large to listen to: ${byHand}`;
    let film: AudioBuffer;
    try {
      film = await song.context.decodeAudioData(await file.arrayBuffer());
    } catch {
      return `No sound could be read from this video: ${byHand}`;
    }
    const mono = new Float32Array(film.length);
    for (let c = 0; c < film.numberOfChannels; c++) film.getChannelData(c).forEach((value, i) => (mono[i] += value));
    const found = linedUp(onsets(song.mono, song.rate), onsets(mono, film.sampleRate));
    if (!found || found.strength < ENOUGH) return `The song was not found in this video: ${byHand}`;
    this.take(found);
    if (!found.sure) return "Lined up where it fits best, but the song sounds alike elsewhere: look, and put it right with the buttons.";
    const slow = found.speed === 1 ? "" : `, played at ${Math.round(100 * found.speed)} %`;
    return `Lined up by its sound${slow}.`;
  }

  private take(found: Lining): void {
    [this.start, this.speed] = [found.start, found.speed];
  }

  private nudge(by: number): void {
    this.start += by;
    const at = `${Math.abs(this.start).toFixed(2)} s`;
    this.tell(`Lined up by hand: ${this.start < 0 ? `the video begins ${at} into the song` : `the song begins ${at} into the video`}.`);
  }

  private refused(): void {
    this.close();
    this.notice("This browser cannot play that video; the page goes on without it.");
  }

  close(): void {
    this.turn++;
    const { video, address } = this;
    this.address = "";
    video.removeAttribute("src");
    video.load();
    if (address) URL.revokeObjectURL(address);
    this.file.value = "";
    this.there(false);
  }

  /** Second of the film at a second of the song. */
  placeOf(seconds: number): number {
    return this.start + seconds / this.speed;
  }

  /** Keep the film where the song is, frame by frame, until it is put away. */
  private follow(turn: number): void {
    const step = () => {
      if (turn !== this.turn) return;
      this.keep();
      requestAnimationFrame(step);
    };
    step();
  }

  private keep(): void {
    const { video, page: { clock } } = this;
    if (video.readyState < 1 || video.seeking) return;
    const place = this.placeOf(clock.now()), there = place >= 0 && place < video.duration;
    video.classList.toggle("away", !there);
    const off = place - video.currentTime, plays = clock.playing && there;
    if (there && Math.abs(off) > (plays ? OFF : STILL)) video.currentTime = place;
    if (plays) video.playbackRate = Math.min(4, Math.max(0.1, (clock.speed / this.speed) * (1 + CATCH * Math.max(-OFF, Math.min(OFF, off)))));
    if (plays && video.paused) void video.play().catch(() => undefined);
    else if (!plays && !video.paused) video.pause();
  }
}

// How many of a screen's pixels are drawn: fewer where the machine cannot keep up, judged by time and not by the number of
// frames, so that the slowest machine is helped as soon as any other.
const LOOK = 600; // [ms] of playing that are judged together
const SLOW = 24; // [ms] a frame; slower than this, fewer pixels are drawn
const WANTED = 18; // [ms] a frame
const LEAST = 0.4; // share of the pixels along each side

export class Quality {
  ratio = 1;
  private since: number | null = null;
  private frames = 0;

  /** A frame at a time [ms] while the song plays; true if the number of pixels has changed. */
  frame(stamp: number): boolean {
    if (this.since === null) {
      this.since = stamp;
      return false;
    }
    this.frames += 1;
    const gone = stamp - this.since;
    if (gone < LOOK) return false;
    const each = gone / this.frames;
    this.since = stamp;
    this.frames = 0;
    if (each <= SLOW || this.ratio <= LEAST) return false;
    // The work goes with the pixels, which go with the square of the ratio; at most half of a side at once.
    this.ratio = Math.max(LEAST, this.ratio * Math.max(0.5, Math.sqrt(WANTED / each)));
    return true;
  }

  /** It stopped, or was not on the screen: what comes next is judged by itself. */
  pause(): void {
    this.since = null;
    this.frames = 0;
  }
}

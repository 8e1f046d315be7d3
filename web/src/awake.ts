// Keeps a phone's screen lit while the show plays. Where the browser cannot, nothing else changes.
// Source: W3C, Screen Wake Lock API: a lock is lost whenever the page is not seen, and has to be asked for again.
export class Awake {
  private wanted = false;
  private lock: Promise<WakeLockSentinel | null> | null = null;

  constructor() {
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") this.lock = null;
      this.ask();
    });
  }

  keep(wanted: boolean): void {
    if (wanted === this.wanted) return;
    this.wanted = wanted;
    if (wanted) this.ask();
    else {
      void this.lock?.then((held) => held?.release());
      this.lock = null;
    }
  }

  private ask(): void {
    if (!this.wanted || this.lock || document.visibilityState === "hidden" || !("wakeLock" in navigator)) return;
    this.lock = navigator.wakeLock.request("screen").catch(() => null); // refused: battery low, or no such right
  }
}

// What somebody wishes of the page: light or dark, large type, less motion. The system says it first; what is chosen by hand
// goes before it, and is remembered by browsers that let a page do so.
import { DAY, NIGHT, type Palette } from "./palette";

const KEY = "sequencer rehearsal: ";

function recalled(name: string): string | null {
  try {
    return localStorage.getItem(KEY + name);
  } catch {
    return null; // a page from disk may have no memory
  }
}

function remember(name: string, value: string): void {
  try {
    localStorage.setItem(KEY + name, value);
  } catch {
    // it is so until the page is closed
  }
}

export class Wishes {
  private readonly bright = matchMedia("(prefers-color-scheme: light)");
  private readonly still = matchMedia("(prefers-reduced-motion: reduce)");
  private chosen = recalled("colours");
  large = recalled("type") === "large";

  constructor(private readonly told: () => void) {
    this.bright.addEventListener("change", () => this.apply());
    this.still.addEventListener("change", () => this.told());
    this.apply();
  }

  get light(): boolean {
    return this.chosen === null ? this.bright.matches : this.chosen === "light";
  }

  get calm(): boolean {
    return this.still.matches;
  }

  get colours(): Palette {
    return this.light ? DAY : NIGHT;
  }

  /** Light instead of dark, or the other way round. */
  turn(): void {
    this.chosen = this.light ? "dark" : "light";
    remember("colours", this.chosen);
    this.apply();
  }

  enlarge(): void {
    this.large = !this.large;
    remember("type", this.large ? "large" : "usual");
    this.apply();
  }

  private apply(): void {
    document.documentElement.classList.toggle("light", this.light);
    document.documentElement.classList.toggle("large", this.large);
    this.told();
  }
}

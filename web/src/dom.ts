// All words reach the page through here: as text, never as markup.
export const $ = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;

export function say(at: HTMLElement, text: string): void {
  if (at.textContent !== text) at.textContent = text;
}

export function make(tag: string, text = "", kind = ""): HTMLElement {
  const element = document.createElement(tag);
  if (text) element.textContent = text;
  if (kind) element.className = kind;
  return element;
}

export function list(at: HTMLElement, lines: string[]): void {
  at.replaceChildren(...lines.map((line) => make("li", line)));
}

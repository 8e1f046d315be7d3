// The way from elsewhere on the page to a heading of the forms.
import { beside, side } from "./store";

/** Opens a heading of the forms, as soon as they are made. */
export function showForm(heading: string, tries = 50): void {
  beside("forms");
  setTimeout(() => {
    const all = [...document.querySelectorAll<HTMLElement>(".forms > details > summary")];
    const own = all.find((each) => each.textContent === heading);
    if (!own) {
      if (tries > 0 && side.value === "forms") showForm(heading, tries - 1);
      return;
    }
    (own.parentElement as HTMLDetailsElement).open = true;
    own.scrollIntoView({ block: "start" });
    own.focus();
  }, 60);
}

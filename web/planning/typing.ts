// What somebody is typing into a field whose value is the file's.
import { useLayoutEffect, useRef, useState } from "preact/hooks";

/** The words of a field: the file's, until somebody types; a newer value of the file takes their place, but never while others are being typed. */
export function useTyping<Box extends HTMLElement>(given: string[], put: (now: string[]) => Promise<boolean>) {
  const [now, type] = useState(given);
  const box = useRef<Box>(null);
  const before = useRef(given);
  const sent = useRef<string[] | null>(null);
  // Before anybody can type into what is drawn: an effect that came later would wipe out the first letters.
  useLayoutEffect(() => {
    if (same(before.current, given)) return;
    const untouched = same(now, before.current) || (sent.current !== null && same(now, sent.current));
    before.current = given;
    if (untouched || !box.current?.contains(document.activeElement)) type(given);
  });
  const leave = async () => {
    if (same(now, given)) return;
    sent.current = now;
    if (!(await put(now))) type(before.current);
  };
  /** Left as it was found, it says what the file says by now. */
  const left = () => {
    if (!same(now, given) && !(sent.current !== null && same(now, sent.current))) type(given);
  };
  return { now, type, leave, left, box };
}

const same = (a: string[], b: string[]) => a.length === b.length && a.every((each, k) => each === b[k]);

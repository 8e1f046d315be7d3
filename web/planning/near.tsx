// Rows of a long sheet are made where somebody looks: all others are as tall as they will be, and empty.
import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

const AROUND = 900; // [px] above and below what is seen
const watched = new WeakMap<Element, (near: boolean) => void>();
const observers = new Map<Element | null, IntersectionObserver>();

/** The part of the page that scrolls with an element; null for the page itself. */
function scrollerOf(element: Element): Element | null {
  for (let at = element.parentElement; at; at = at.parentElement) {
    if (at !== document.body && /auto|scroll/.test(getComputedStyle(at).overflowY)) return at;
  }
  return null;
}

function observer(root: Element | null): IntersectionObserver {
  let own = observers.get(root);
  if (!own) {
    own = new IntersectionObserver((entries) => entries.forEach((each) => watched.get(each.target)?.(each.isIntersecting)), { root, rootMargin: `${AROUND}px 0px` });
    observers.set(root, own);
  }
  return own;
}

/** Something that is made once it is near what is seen, or has to be there; `tall` [rem] as long as it is not. */
export function Near({ on, must, tall, children }: { on: boolean; must: boolean; tall: number; children: () => ComponentChildren }) {
  const own = useRef<HTMLDivElement>(null);
  const [near, setNear] = useState(false);
  const [printed, setPrinted] = useState(false);
  const height = useRef<number | null>(null);
  useEffect(() => {
    const element = own.current;
    if (!on || !element) return;
    const watch = observer(scrollerOf(element));
    const print = () => setPrinted(true), after = () => setPrinted(false);
    watched.set(element, (now) => {
      if (!now && element.firstElementChild) height.current = element.getBoundingClientRect().height;
      setNear(now);
    });
    watch.observe(element);
    addEventListener("beforeprint", print);
    addEventListener("afterprint", after);
    return () => {
      watch.unobserve(element);
      removeEventListener("beforeprint", print);
      removeEventListener("afterprint", after);
    };
  }, [on]);
  if (!on) return <>{children()}</>;
  const made = near || must || printed;
  return <div ref={own} style={made ? undefined : { height: height.current !== null ? `${height.current}px` : `${tall}rem` }}>{made && children()}</div>;
}

// What the checks look at, in plain words; many of them look at one subject.
const FIRE = ["burning-time", "handling", "crew", "posts", "watch", "hand-overs", "lines-of-sight", "heat", "equipment", "extinguishers", "fuel-point", "fuel", "wind", "house-rules", "downwind", "exits", "audience-room", "to-confirm", "not-planned"];

const WORDS: Record<string, string> = {
  "who-is-there": "who is there", "in-the-wings": "entrances and exits", joins: "how the moves join", accents: "the accents", wishes: "what you wished for", feasible: "tethers and reach", distances: "distances",
  walks: "walks", "let-go": "where a prop would fly if it were let go", "listen-again": "the song’s count", "other-count": "the song’s count", "named-sections": "the sections that are named", "as-flown": "how the props really fly", "as-danced": "the dance with small errors", mends: "mends",
  ...Object.fromEntries(FIRE.map((name) => [name, "fire and crew"])),
};

/** What some checks look at, each subject once. A check that somebody added is told by its own name. */
export const subjects = (checks: string[]): string => [...new Set(checks.map((name) => WORDS[name] ?? name))].join(", ");

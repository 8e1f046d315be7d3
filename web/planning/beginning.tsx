// A show where there is none yet: one form for its song and who dances. And the song of a show that lacks it.
import { signal } from "@preact/signals";
import { useEffect, useRef, useState } from "preact/hooks";
import { Refused, bring, get, post, type Pattern, type State } from "./api";
import { doing, take } from "./doing";
import { Progressing, sentence, useHeading } from "./drafting";
import { errand, type Errand } from "./errands";
import { beside, checking, fault, patterns, state } from "./store";

interface Begin extends Errand { title: string; track: string | null; songs: string[]; props: string[] }
interface Dancer { name: string; stature: string; prop: string; level: number }

const begun = signal<Begin | null>(null);

const LEVELS = ["", "1: first moves", "2: easy", "3: middling", "4: hard", "5: everything"];

export async function askBegin(): Promise<void> {
  begun.value = await get<Begin>("begin");
}

/** What the server tells of the first text: once it is there, it becomes the show. */
export function beginTold(said: Errand): void {
  if (begun.value?.state === "working" && said.state === "working") {
    begun.value = { ...begun.value, ...said };
    return;
  }
  if (said.state === "done") void takeIt(said.number);
  else void askBegin().catch(() => {});
}

async function takeIt(number: number): Promise<void> {
  try {
    take(await post<State>("begin/take", { number }));
    beside("draft");
  } catch (error) {
    // Another page of this show may have been quicker: then it is there.
    take(await get<State>("show"));
    if (!state.value?.text.trim()) fault.value = { words: (error as Error).message, anyway: null };
  }
  void get<{ patterns: Pattern[] }>("patterns").then((found) => (patterns.value = found.patterns), () => {});
}

export function Beginning() {
  const now = begun.value;
  useEffect(() => void askBegin().catch(() => {}), []);
  const [title, setTitle] = useState<string | null>(null);
  const [song, setSong] = useState<string | null>(null);
  const [cast, setCast] = useState<Dancer[]>([{ name: "", stature: "1.70 m", prop: "poi", level: 2 }]);
  const [floor, setFloor] = useState<[string, string] | null>(null);
  const rows = useRef<HTMLFieldSetElement>(null);
  const hearing = useRef<HTMLDivElement>(null);
  useHeading(hearing, now?.state);
  if (!now || !state.value) return <main class="opening"><p>Looking for songs …</p></main>;
  const songNow = song ?? now.track ?? now.songs[0] ?? "";
  const room: [string, string] = floor ?? [`${Math.max(8, 4 * cast.length)} m`, "8 m"];
  const set = (k: number, values: Partial<Dancer>) => setCast(cast.map((each, n) => (n === k ? { ...each, ...values } : each)));
  const add = () => {
    setCast([...cast, { ...cast[cast.length - 1], name: "" }]);
    setTimeout(() => [...(rows.current?.querySelectorAll<HTMLInputElement>("input.name") ?? [])].pop()?.focus());
  };
  const make = async () => {
    if (await errand("begin", { title: title ?? now.title, track: songNow, cast, floor: room })) await askBegin();
  };
  if (now.state === "working" || now.state === "done")
    return (
      <>
        <Head />
        <main class="beginning">
          <div ref={hearing} class="hearing">
            <h2 tabIndex={-1}>Hearing the song</h2>
            <p>Beats, bars and sections are found. That takes a while, once for each song.</p>
            <Progressing now={now} />
            <p class="row"><button type="button" onClick={() => void errand("begin/stop").then(askBegin)}>Give it up</button></p>
          </div>
        </main>
      </>
    );
  return (
    <>
    <Head />
    <main class="beginning">
      <form onSubmit={(event) => { event.preventDefault(); void make(); }}>
        <p>Say which song it is and who dances. All of this can be changed later.</p>
        {now.state === "failed" && <p class="fault" role="alert">{sentence(now.error ? [now.error.what, now.error.mend].filter(Boolean).join("; ") : "")}</p>}
        <p class="field"><label for="new-title">Title</label><input id="new-title" type="text" value={title ?? now.title} onInput={(event) => setTitle(event.currentTarget.value)} /></p>
        <SongChoice songs={now.songs} value={songNow} choose={setSong} />
        <fieldset ref={rows} class="dancers"><legend>Who dances</legend>
          {cast.map((each, k) => (
            <div key={k} class="dancer" role="group" aria-label={each.name || `Performer ${k + 1}`}>
              <label>Name <input class="name" type="text" required value={each.name} onInput={(event) => set(k, { name: event.currentTarget.value })} /></label>
              <label>Height <input type="text" required value={each.stature} size={7} onInput={(event) => set(k, { stature: event.currentTarget.value })} /></label>
              <label>Prop <select value={each.prop} onChange={(event) => set(k, { prop: event.currentTarget.value })}>{now.props.map((prop) => <option key={prop} value={prop}>{prop}</option>)}</select></label>
              <label>Level <select value={String(each.level)} onChange={(event) => set(k, { level: Number(event.currentTarget.value) })}>{[1, 2, 3, 4, 5].map((level) => <option key={level} value={level}>{LEVELS[level]}</option>)}</select></label>
              {cast.length > 1 && <button type="button" aria-label={`Take out ${each.name || `performer ${k + 1}`}`} onClick={() => setCast(cast.filter((_, n) => n !== k))}>Take out</button>}
            </div>
          ))}
          <p class="row"><button type="button" onClick={add}>Add somebody</button></p>
          <p class="quiet">Heights can be in metres, centimetres or feet: 1.70 m, 170 cm or 5 ft 7 in. The level says which moves a draft may use.</p>
        </fieldset>
        <fieldset><legend>The floor</legend>
          <label>Width <input type="text" size={6} value={room[0]} onInput={(event) => setFloor([event.currentTarget.value, room[1]])} /></label>
          <label>Depth <input type="text" size={6} value={room[1]} onInput={(event) => setFloor([room[0], event.currentTarget.value])} /></label>
        </fieldset>
        <p class="row"><button type="submit" class="main" disabled={!songNow.trim()}>Make the show</button></p>
      </form>
    </main>
    </>
  );
}

const Head = () => (
  <header class="top">
    <h1>A new show</h1>
    <p class="file">becomes {state.value!.file} in {state.value!.folder}</p>
  </header>
);

/** A song: one that lies beside the show, one by its path, or one that is brought here from elsewhere. */
function SongChoice({ songs, value, choose }: { songs: string[]; value: string; choose: (song: string) => void }) {
  const [said, setSaid] = useState("");
  const bringIt = async (file: File | undefined) => {
    if (!file) return;
    setSaid(`${file.name} is being put beside the show …`);
    try {
      const { file: name } = await bring(file);
      choose(name);
      setSaid(`${name} lies beside the show now.`);
    } catch (error) {
      setSaid(error instanceof Refused || !(error instanceof TypeError) ? (error as Error).message : "The program behind this page does not answer.");
    }
  };
  return (
    <fieldset class="song"><legend>The song</legend>
      {songs.length > 0 && (
        <p><label>Beside the show <select value={songs.includes(value) ? value : ""} onChange={(event) => event.currentTarget.value && choose(event.currentTarget.value)}>
          {!songs.includes(value) && <option value="" />}{songs.map((each) => <option key={each} value={each}>{each}</option>)}
        </select></label></p>
      )}
      <p><label>Its path <input type="text" value={value} placeholder="my-song.mp3" onInput={(event) => choose(event.currentTarget.value)} /></label></p>
      <p><label>Or bring one from elsewhere <input type="file" accept="audio/*,.wav,.flac,.ogg,.mp3" onChange={(event) => void bringIt(event.currentTarget.files?.[0])} /></label></p>
      {said && <p class="quiet" role="status">{said}</p>}
    </fieldset>
  );
}

/** Another song for a show: where it names one that is not there, or a person wants another cut. */
export function SongFile({ cut = false }: { cut?: boolean }) {
  const now = begun.value;
  const [song, setSong] = useState<string | null>(null);
  useEffect(() => void askBegin().catch(() => {}), [state.value?.revision]);
  const file: string = state.value?.values?.track?.file ?? "";
  const value = song ?? file;
  const choose = (anyway = false) =>
    doing(() => post<State>("track", { file: value, revision: state.value!.revision, anyway }), `${value} is the song now.`, () => void choose(true)).then((done) => done && setSong(null));
  return (
    <form class="song-file" onSubmit={(event) => { event.preventDefault(); void choose(); }}>
      <SongChoice songs={now?.songs ?? []} value={value} choose={setSong} />
      <p class="row"><button type="submit" disabled={!value.trim() || (value === file && !cut)}>Take this song</button></p>
    </form>
  );
}

/** Over the sheet of a show whose song is not there, or is another cut. */
export function MissingSong() {
  const cut = checking.value?.error?.code === "another-cut", gone = state.value?.track_there === false;
  if (!cut && !gone) return null;
  return (
    <div class="first">
      <p>{gone ? "The song of this show is not where the file says. Say where it is, or take another one." : "The song is not the cut that this show was made for. Put the old file back, or take the new one: then every move is on its count in the new cut."}</p>
      <SongFile cut={cut} />
    </div>
  );
}

// Who is there tonight: somebody away, somebody in their place; and when each comes in, who leads a canon.
import { useLayoutEffect, useState } from "preact/hooks";
import { RunCues } from "./cues";
import { operate } from "./doing";
import { blocksBy, state, view } from "./store";
import { LastSwitch } from "./switched";
import { showForm } from "./show_form";

type Row = Record<string, any>;
type Where = "here" | "away" | "other";

const listed = (value: unknown): string[] => (value === undefined || value === null ? [] : [value].flat().map(String));

export function WhoIsThere() {
  const values = state.value?.values, now = view.value;
  if (!values || !now) return <p class="quiet">{values === null ? "The file cannot be read: mend it under Text." : "The show is being put on its song …"}</p>;
  const away = listed(values.tonight?.away), standIns: Row[] = values.tonight?.stand_ins ?? [];
  const cast: Row[] = values.cast ?? [], crew: Row[] = values.crew ?? [];
  const whereIs = (name: string): Where => (away.includes(name) ? "away" : standIns.some((each) => each.for === name) ? "other" : "here");
  const person = (row: Row, group: "cast" | "crew") => (
    <Person key={row.name} name={row.name} group={group} where={whereIs(row.name)} standIn={standIns.find((each) => each.for === row.name)} stature={row.stature}>
      {group === "cast" ? <Part name={row.name} timeline={values.timeline ?? []} everybody={cast.map((each) => each.name)} /> : <Post row={row} away={whereIs(row.name) === "away"} lit={values.fire?.lit ?? []} />}
    </Person>
  );
  return (
    <div class="who">
      <p class="quiet">For tonight only: the show stays as it is written, and everybody who is there keeps their counts and spots. Everything is looked at again without those who are away, and with the bodies of those who stand in.</p>
      <p class="row"><span class="quiet">For good:</span> <button type="button" class="small" onClick={() => showForm("Cast")}>Add, rename or take out performers</button> <button type="button" class="small" onClick={() => showForm("Crew")}>The crew</button></p>
      {(away.length > 0 || standIns.length > 0) && <p class="row"><button type="button" onClick={() => void operate({ do: "set-there" }, "Everybody is there.")}>Everybody is there</button></p>}
      <LastSwitch />
      <h3>Cast</h3>
      {cast.map((row) => person(row, "cast"))}
      {crew.length > 0 && <h3>Crew</h3>}
      {crew.map((row) => person(row, "crew"))}
      <h3>Run cues</h3>
      <p class="quiet">What sound and light do, and when: as their sheet prints it. A time leads there in the song. Who comes on and goes off is put in under Stage.</p>
      <RunCues />
    </div>
  );
}

/** What a member of the crew does; what falls out if they are away. */
function Post({ row, away, lit }: { row: Row; away: boolean; lit: Row[] }) {
  const watched = listed(row.watches), own = lit.filter((each) => [each.lit_by, each.put_out_by].includes(row.name));
  const words = `${row.duty ?? "spotter"}${watched.length ? `, watches ${watched.join(", ")}` : ""}`;
  if (!away) return <li>{words}</li>;
  return <li>falls out: {words}{own.length ? `; lights or puts out ${own.map((each) => `${listed(each.who).join(", ") || "all"} (${each.from} to ${each.until})`).join(", ")}` : ""}: whether the others are enough is looked at anew</li>;
}

function Person({ name, group, where, standIn, stature, children }: { name: string; group: "cast" | "crew"; where: Where; standIn?: Row; stature?: string; children: any }) {
  const [asked, setAsked] = useState(where);
  useLayoutEffect(() => setAsked(where), [where]);
  const choose = async (to: Where) => {
    setAsked(to);
    if (to === "other" || to === where) return;
    const done = await operate(to === "away" ? { do: "set-away", name } : { do: "set-there", name }, to === "away" ? `${name} is away tonight.` : `${name} is there.`);
    if (!done) setAsked(where);
  };
  const choices: [Where, string][] = [["here", "is here"], ["away", "is away"], ["other", "has a stand-in"]];
  return (
    <section class={`person ${where}`} aria-label={name}>
      <h4>{name}{where === "other" && standIn ? <small> tonight {standIn.name}</small> : ""}</h4>
      <div class="choice" role="radiogroup" aria-label={`${name} tonight`} onKeyDown={walk}>
        {choices.map(([to, words]) => (
          <label key={to}><input type="radio" name={`tonight ${group} ${name}`} checked={asked === to} onChange={() => void choose(to)} /> {words}</label>
        ))}
      </div>
      {asked === "other" && <StandIn part={name} group={group} known={standIn} stature={stature} />}
      <ul class="words">{children}</ul>
    </section>
  );
}

/** The arrows go from one choice to the next without taking it, which Space does: a switch is more than a choice in a form. */
function walk(event: KeyboardEvent): void {
  const by = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 }[event.key];
  if (!by) return;
  event.preventDefault();
  const all = [...(event.currentTarget as HTMLElement).querySelectorAll("input")];
  all[(all.indexOf(event.target as HTMLInputElement) + by + all.length) % all.length].focus();
}

function StandIn({ part, group, known, stature }: { part: string; group: "cast" | "crew"; known?: Row; stature?: string }) {
  const [name, setName] = useState(String(known?.name ?? ""));
  const [tall, setTall] = useState(String(known?.stature ?? ""));
  const [born, setBorn] = useState(String(known?.birth_year ?? ""));
  const put = () => {
    // What else the file says of the same person stays: arm, prop, posture.
    const { for: _, ...rest } = known && known.name === name.trim() ? known : {} as Row;
    const person: Row = { ...rest, name: name.trim() };
    if (group === "cast") Object.assign(person, { stature: tall.trim() }, born.trim() ? { birth_year: Number(born) } : {});
    void operate({ do: "set-stand-in", part, person }, `${name} takes the part of ${part} tonight.`);
  };
  return (
    <form class="row" onSubmit={(event) => { event.preventDefault(); put(); }}>
      <label>Who takes the {group === "cast" ? "part" : "post"} <input type="text" required value={name} onInput={(event) => setName(event.currentTarget.value)} /></label>
      {group === "cast" && <label>Height <input type="text" required value={tall} placeholder={String(stature ?? "1.70 m")} onInput={(event) => setTall(event.currentTarget.value)} /></label>}
      {group === "cast" && <label>Born in <input type="text" inputMode="numeric" pattern="[0-9]{4}" title="a year, such as 1994: rules set a minimum age" value={born} onInput={(event) => setBorn(event.currentTarget.value)} /></label>}
      <button type="submit" disabled={!name.trim() || (group === "cast" && !tall.trim())}>{known ? "Change" : "Takes it tonight"}</button>
    </form>
  );
}

/** When a performer comes in and ends, what they lead, when they burn; what falls out if they are away. */
function Part({ name, timeline, everybody }: { name: string; timeline: Row[]; everybody: string[] }) {
  const own = (blocksBy.value.get(name) ?? []).filter((each) => each.path !== null && each.kind !== "link");
  const missed = view.value!.missing.filter((each) => each.who === name);
  const lit = view.value!.cast.find((each) => each.name === name)?.lit ?? [];
  const leads = timeline.filter((row) => row.canon && (listed(row.who).length === 0 || listed(row.who).includes("all") ? everybody : listed(row.who))[0] === name);
  const comings = view.value!.entrances.filter((each) => each.who === name);
  const moves = missed.filter((each) => each.kind !== "link").length;
  if (missed.length) return <li>falls out: {moves} {moves === 1 ? "move" : "moves"}, from {missed[0].position} to {missed[missed.length - 1].end_position}</li>;
  const walks = comings.map((each) => <li key={each.start}>{each.words} at {each.position}</li>);
  if (!own.length) return <>{walks}<li>dances nothing yet</li></>;
  return (
    <>
      {walks}
      <li>comes in at {own[0].position} ({own[0].title}), ends at {own[own.length - 1].end_position}</li>
      {leads.length > 0 && <li>begins {leads.length === 1 ? "a canon" : `${leads.length} canons`}: {leads.map((row) => row.phrase ?? row.pattern ?? (row.link ? "a link" : "a rest")).join(", ")}</li>}
      {lit.length > 0 && <li>lit {lit.length === 1 ? "once" : `${lit.length} times`}</li>}
    </>
  );
}

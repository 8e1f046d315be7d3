// Run cues: what the operators' sheet prints, in the order of the track; a click goes there.
import { useEffect, useState } from "preact/hooks";
import { get } from "./api";
import { clock } from "./playing";
import { fresh, seconds, seek, view } from "./store";

interface Cue { seconds: number; position: string; what: string; who: string; kind: string }

export function RunCues() {
  const [cues, setCues] = useState<Cue[] | null>(null);
  const revision = view.value?.revision;
  useEffect(() => {
    let wanted = true;
    void get<{ cues: Cue[] }>("cues").then((found) => wanted && setCues(found.cues), () => {});
    return () => { wanted = false; };
  }, [revision]);
  if (!cues) return <p class="quiet">The cues are being put together …</p>;
  const later = cues.findIndex((each) => each.seconds > seconds.value + 0.01);
  const next = later < 0 ? cues.length : later;
  return (
    <table class={fresh.value ? "cues" : "cues older"}>
      <thead><tr><th scope="col">time</th><th scope="col">count</th><th scope="col">cue</th><th scope="col">for</th></tr></thead>
      <tbody>
        {cues.map((each, k) => (
          <tr key={k} class={k === next - 1 ? "cue-now" : `cue-${each.kind}`}>
            <td><button type="button" class="small" onClick={() => seek(each.seconds)}>{clock(each.seconds)}<span class="unseen">, {each.what}</span></button></td>
            <td>{each.position}</td><td>{each.what}</td><td>{{ both: "sound and light" }[each.who] ?? each.who}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

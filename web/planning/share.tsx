// That the show is shared: with whom, by which code, and what that exposes.
import { useEffect, useState } from "preact/hooks";
import { get, post, type State } from "./api";
import { doing } from "./doing";
import { shared, type Shared } from "./store";

export function ShareBanner() {
  useEffect(() => void get<Shared | null>("share").then((now) => (shared.value = now), () => {}), []);
  const [asked, setAsked] = useState(false);
  const now = shared.value;
  if (!now || now.over) return null;
  return (
    <aside class="shared" aria-label="The show is shared">
      <p><b>Shared with the network</b> at <span class="copy">{now.address}</span>, code <span class="copy">{now.code}</span></p>
      <p role="status">{now.watching === 0 ? "no page watches" : now.watching === 1 ? "1 page watches" : `${now.watching} pages watch`}</p>
      {now.shut && <p class="fault">Wrong codes came too often: nobody can join any more until it is shared anew.</p>}
      <details><summary>What that exposes</summary>
        <p>Whoever has the code sees {now.exposed}; nobody can change anything. Nothing is encrypted: others on this network may read along. It ends with this program.</p>
      </details>
      {asked ? (
        <p class="fault" role="alert">
          Everybody who watches is sent away, and the code is good no longer. <button type="button" class="small" onClick={() => void doing(() => post<State>("unshare", {}), "It is shared no longer.")}>Stop it now</button> <button type="button" class="small" onClick={() => setAsked(false)}>Go on sharing</button>
        </p>
      ) : <button type="button" class="small" onClick={() => setAsked(true)}>Stop sharing</button>}
    </aside>
  );
}

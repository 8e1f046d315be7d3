// Bundles the pages into the Python package: the rehearsal page, the planning page, and the one that watches. `npm ci && npm run build`.
import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { build } from "esbuild";

/** A script with all that it needs; its exports go by `name` where it has one. */
async function script(source, to, banner, name) {
  const result = await build({
    entryPoints: [source],
    bundle: true,
    minify: true,
    write: false,
    format: "iife",
    globalName: name,
    target: ["es2022"],
    charset: "ascii",
    legalComments: "none",
  });
  const text = banner + result.outputFiles[0].text;
  if (/<\/script|<!--/i.test(text)) throw new Error("the bundle would end its own script element");
  writeFileSync(to, text);
  console.log(`${to} ${(text.length / 1024).toFixed(0)} KiB`);
}

/** One page: its script, style and shell, and a hash of its sources, so that a test can tell that nobody ships an old one. */
async function page({ from, entry, out, sources, banner, later }) {
  mkdirSync(out, { recursive: true });
  await script(`${from}/${entry}`, out + "page.js", banner);
  if (later) await script(later, out + "dance.js", SCENE, "danceScene");
  const style = await build({ entryPoints: [`${from}/page.css`], bundle: true, minify: true, write: false });
  writeFileSync(out + "page.css", style.outputFiles[0].text);
  writeFileSync(out + "page.html", readFileSync(`${from}/page.html`, "utf8"));

  const hash = createHash("sha256");
  for (const folder of sources)
    for (const name of readdirSync(folder).sort()) {
      hash.update(name + "\0");
      hash.update(readFileSync(`${folder}/${name}`, "utf8").replaceAll("\r\n", "\n"));
    }
  hash.update(readFileSync("package-lock.json", "utf8").replaceAll("\r\n", "\n"));
  writeFileSync(out + "built-from.txt", hash.digest("hex") + "\n");
}

const SCENE = "/*! Bundles three.js and fflate, both under the MIT licence: see THIRD-PARTY.md. */\n";
const VIEW = "/*! Bundles Preact and its signals, both under the MIT licence: see THIRD-PARTY.md. */\n";
const LATER = "planning/dance_scene.ts"; // fetched once somebody looks at the dance

await page({
  from: "src",
  entry: "main.ts",
  out: "../sequencer/outputs/rehearsal/assets/",
  sources: ["src"],
  banner: SCENE,
});
await page({
  from: "planning",
  entry: "main.tsx",
  out: "../sequencer/desk/assets/",
  sources: ["planning", "src"],
  banner: VIEW,
  later: LATER,
});
await page({
  from: "watching",
  entry: "main.tsx",
  out: "../sequencer/desk/assets/watch/",
  sources: ["watching", "planning", "src"],
  banner: VIEW,
  later: LATER,
});

// Bundles the pages into the Python package: the rehearsal page, the planning page, and the one that watches. `npm ci && npm run build`.
import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { build } from "esbuild";

/** One page: its script, style and shell, and a hash of its sources, so that a test can tell that nobody ships an old one. */
async function page({ from, entry, out, sources, banner }) {
  const result = await build({
    entryPoints: [`${from}/${entry}`],
    bundle: true,
    minify: true,
    write: false,
    format: "iife",
    target: ["es2022"],
    charset: "ascii",
    legalComments: "none",
  });
  const script = banner + result.outputFiles[0].text;
  if (/<\/script|<!--/i.test(script)) throw new Error("the bundle would end its own script element");
  mkdirSync(out, { recursive: true });
  writeFileSync(out + "page.js", script);
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
  console.log(`${out}page.js ${(script.length / 1024).toFixed(0)} KiB`);
}

await page({
  from: "src",
  entry: "main.ts",
  out: "../sequencer/outputs/rehearsal/assets/",
  sources: ["src"],
  banner: "/*! Bundles three.js and fflate, both under the MIT licence: see THIRD-PARTY.md. */\n",
});
await page({
  from: "planning",
  entry: "main.tsx",
  out: "../sequencer/desk/assets/",
  sources: ["planning", "src"],
  banner: "/*! Bundles three.js, fflate, Preact and its signals, all under the MIT licence: see THIRD-PARTY.md. */\n",
});
await page({
  from: "watching",
  entry: "main.tsx",
  out: "../sequencer/desk/assets/watch/",
  sources: ["watching", "planning", "src"],
  banner: "/*! Bundles three.js, fflate, Preact and its signals, all under the MIT licence: see THIRD-PARTY.md. */\n",
});

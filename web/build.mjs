// Bundles the rehearsal page into the Python package. `npm ci && npm run build`.
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { build } from "esbuild";

const out = "../sequencer/outputs/rehearsal/assets/";

const result = await build({
  entryPoints: ["src/main.ts"],
  bundle: true,
  minify: true,
  write: false,
  format: "iife",
  target: ["es2022"],
  charset: "ascii",
  legalComments: "none",
});
const banner =
  "/*! Bundles three.js and fflate, both under the MIT licence: see THIRD-PARTY.md. */\n";
const script = banner + result.outputFiles[0].text;
if (/<\/script|<!--/i.test(script)) throw new Error("the bundle would end its own script element");
writeFileSync(out + "page.js", script);

const style = await build({ entryPoints: ["src/page.css"], minify: true, write: false });
writeFileSync(out + "page.css", style.outputFiles[0].text);
writeFileSync(out + "page.html", readFileSync("src/page.html", "utf8"));

// A test compares this with the sources, so that nobody ships an old bundle.
const hash = createHash("sha256");
for (const name of readdirSync("src").sort()) {
  hash.update(name + "\0");
  hash.update(readFileSync("src/" + name, "utf8").replaceAll("\r\n", "\n"));
}
hash.update(readFileSync("package-lock.json", "utf8").replaceAll("\r\n", "\n"));
writeFileSync(out + "built-from.txt", hash.digest("hex") + "\n");
console.log(`page.js ${(script.length / 1024).toFixed(0)} KiB`);

/** Rewrites the `exports` field of package.json from the rooms under src. Run it after adding a room. */
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { exportsMap, rooms } from "./rooms.mjs";

const file = new URL("../package.json", import.meta.url);
const manifest = JSON.parse(readFileSync(file, "utf8"));
manifest.exports = exportsMap(rooms(fileURLToPath(new URL("../src", import.meta.url))));
writeFileSync(file, `${JSON.stringify(manifest, null, 2)}\n`);

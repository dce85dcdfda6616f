/**
 * Builds, packs and installs the package once, in a temporary folder, before the tests of this folder run.
 * The working tree is never touched: its dist may be missing, stale or in use.
 */
import { execFile } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import type { TestProject } from "vitest/node";
import { root } from "../support/house.ts";

const run = promisify(execFile);

export interface Packed {
  /** A copy of the project in which the package was built. */
  readonly project: string;
  /** The tarball, and a second one built in another folder. */
  readonly tarball: string;
  readonly secondTarball: string;
  /** A folder where the tarball is installed twice: as `electroheat` and as `electroheat-two`. */
  readonly consumer: string;
}

declare module "vitest" {
  export interface ProvidedContext {
    packed: Packed | { readonly problem: string };
  }
}

const parts = [
  "package.json",
  "tsconfig.json",
  "tsup.config.ts",
  "scripts",
  "src",
  "shared",
  "examples",
  "README.md",
  "CHANGELOG.md",
  "LICENSE",
];

async function npm(cwd: string, ...args: string[]): Promise<void> {
  try {
    await run("npm", [...args, "--no-audit", "--no-fund", "--prefer-offline"], { cwd });
  } catch (error) {
    const { stdout, stderr } = error as { stdout?: string; stderr?: string };
    throw new Error(`npm ${args.join(" ")} failed\n${stdout ?? ""}\n${stderr ?? ""}`);
  }
}

/** Copies the project and packs it there; `npm pack` builds first, as it would before publishing. */
async function pack(folder: string): Promise<string> {
  mkdirSync(folder, { recursive: true });
  for (const part of parts) {
    if (existsSync(join(root, part))) cpSync(join(root, part), join(folder, part), { recursive: true });
  }
  symlinkSync(join(root, "node_modules"), join(folder, "node_modules"));
  await npm(folder, "pack");
  const tarball = readdirSync(folder).find((name) => name.endsWith(".tgz"));
  if (tarball === undefined) throw new Error("npm pack wrote no tarball");
  return join(folder, tarball);
}

async function packAndInstall(folder: string): Promise<Packed> {
  const first = join(folder, "one");
  // A longer path on purpose: nothing of it may end up in the tarball.
  const [tarball, secondTarball] = await Promise.all([
    pack(first),
    pack(join(folder, "deeper", "second-copy")),
  ]);
  const consumer = join(folder, "consumer");
  mkdirSync(consumer);
  writeFileSync(join(consumer, "package.json"), JSON.stringify({ name: "consumer", private: true }));
  await npm(consumer, "install", tarball, `electroheat-two@file:${tarball}`);
  return { project: first, tarball, secondTarball, consumer };
}

export default async function setup(project: TestProject): Promise<() => void> {
  const folder = mkdtempSync(join(tmpdir(), "electroheat-package-"));
  try {
    project.provide("packed", await packAndInstall(folder));
  } catch (error) {
    // Thrown from here it would stop the whole run, the tests of the rooms included.
    project.provide("packed", { problem: error instanceof Error ? error.message : String(error) });
  }
  return () => rmSync(folder, { recursive: true, force: true });
}

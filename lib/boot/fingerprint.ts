/**
 * Fingerprints of sources: what was made from them (a build, the database client) is made again only when they changed.
 */
import crypto from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { root } from './project.mjs';

function* filesIn(place: string): Generator<string> {
  const found = fs.statSync(place, { throwIfNoEntry: false });
  if (!found) return;
  if (!found.isDirectory()) {
    yield place;
    return;
  }
  for (const name of fs.readdirSync(place).sort()) yield* filesIn(path.join(place, name));
}

/** SHA-256 over names and bytes of all files in `places` (relative to the checkout) that are not below `except`. */
export function fingerprint(places: readonly string[], except?: string): string {
  const hash = crypto.createHash('sha256');
  for (const place of places) {
    for (const file of filesIn(path.join(root, place))) {
      if (except && file.startsWith(path.join(root, except))) continue;
      hash
        .update(`${path.relative(root, file)}\0`)
        .update(fs.readFileSync(file))
        .update('\0');
    }
  }
  return hash.digest('hex');
}

/** Runs `make` unless `stamp` says that it already ran for this `wanted`. A broken-off run leaves no stamp. */
export async function makeOnce(stamp: string, wanted: string, make: () => Promise<void>): Promise<boolean> {
  const file = path.join(root, stamp);
  if (fs.existsSync(file) && fs.readFileSync(file, 'utf8') === wanted) return false;
  fs.rmSync(file, { force: true });
  await make();
  fs.mkdirSync(path.dirname(file), { recursive: true });
  fs.writeFileSync(file, wanted);
  return true;
}

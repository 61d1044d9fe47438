import fs from 'node:fs';

/** Removes the data folder that the run had to itself. */
export default function teardown(): void {
  const folder = process.env.CUEWRIGHT_E2E_DATA;
  if (folder) fs.rmSync(folder, { recursive: true, force: true });
}

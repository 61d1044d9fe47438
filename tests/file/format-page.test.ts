import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readProcedureFile, writeProcedureFile } from '../../lib/file/procedure-file.ts';

const page = readFileSync(new URL('../../lib/file/format.md', import.meta.url), 'utf8');

test('the example of the format page is a file, and stands as it is written', () => {
  const example = /```yaml\n([\s\S]*?)```/.exec(page)![1]!;
  const read = readProcedureFile(example, 'example');
  expect(read).toMatchObject({ ok: true, value: { steps: [{ label: 'CX-01' }, { label: 'CX-02' }] } });
  expect(read.ok && writeProcedureFile(read.value)).toBe(example);
});

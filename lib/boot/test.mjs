// npm test (everything), npm run check (--quick: no browser), npm run bench (--bench). Starts on any Node from 20 on.
import { handOver } from './hand-over.mjs';

await handOver('test-run.ts', process.argv.slice(2));

// A server process of its own, to be killed: the collaboration door alone, on the port and database it is told.
import { createServer } from 'node:http';
import { attach } from '../../lib/collab/serve.ts';

const collab = await attach();
const server = createServer();
server.on('upgrade', collab.upgrade);
server.listen(Number(process.env.PORT), '127.0.0.1', () => console.log('ready'));

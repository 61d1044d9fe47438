// npm start. Starts on whatever Node the machine has, so this file keeps to what old ones understand: it says when one is
// too old, and hands over to the Node that the project installs for itself.
const oldest = 20;

if (Number(process.versions.node.split('.')[0]) < oldest) {
  console.error(
    `This is Node ${process.versions.node}; Cuewright needs Node ${oldest} or later to install itself. Install one (https://nodejs.org), then run the same command again.`,
  );
  process.exitCode = 1;
} else {
  // Written without await at the top: a Node too old for that must still get as far as the sentence above.
  import('./hand-over.mjs').then(({ handOver }) => handOver('up.ts', process.argv.slice(2)));
}

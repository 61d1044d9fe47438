// What the screen shows while something takes its time: a line at the start, a sign of life, a line with the time at the end.

const SIGN_OF_LIFE_MS = 10_000;
const seconds = (since) => `${((Date.now() - since) / 1000).toFixed(1)} s`;

/**
 * Runs `deed` and shows it as `title`.
 * @template T
 * @param {string} title
 * @param {() => Promise<T>} deed
 * @returns {Promise<T>}
 */
export async function step(title, deed) {
  const since = Date.now();
  console.log(`· ${title} …`);
  const sign = setInterval(() => console.log(`  still at it, ${seconds(since)}`), SIGN_OF_LIFE_MS);
  sign.unref();
  try {
    const result = await deed();
    console.log(`  done in ${seconds(since)}`);
    return result;
  } finally {
    clearInterval(sign);
  }
}

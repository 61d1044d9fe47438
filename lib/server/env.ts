// The environment, read when it is asked for and nowhere else: `next build` has neither a database nor a secret.

function wanted(name: string): string {
  const value = process.env[name];
  if (!value) throw new Error(`${name} is not set. Start with "npm start", which sets it.`);
  return value;
}

/** The database as the app's own role, which is neither owner nor superuser. */
export const databaseUrl = (): string => wanted('DATABASE_URL');
/** Signs the session token. */
export const sessionSecret = (): string => wanted('NEXTAUTH_SECRET');
/** Whether the token's cookie carries the `__Secure-` prefix, as next-auth decides it. */
export const secureCookies = (): boolean => (process.env.NEXTAUTH_URL ?? '').startsWith('https:');
/** Whether demo passwords exist: the screens then say so, and the server listens on this machine only. */
export const demoPasswords = (): boolean => process.env.CUEWRIGHT_DEMO === '1';

// next-auth's part: the form's credentials in, a signed cookie out. Who the person is stays with the rows.
import type { NextAuthOptions } from 'next-auth';
import credentials from 'next-auth/providers/credentials';
import { sessionSecret } from './env.ts';
import { SESSION_MS, signIn, signOut } from './sign-in.ts';
import { sessionName } from './viewer.ts';

/** The sign-in form gets the problem's code as next-auth's error. */
export const authOptions = (): NextAuthOptions => ({
  secret: sessionSecret(),
  session: { strategy: 'jwt', maxAge: SESSION_MS / 1000 },
  pages: { signIn: '/sign-in' },
  providers: [
    credentials({
      credentials: { name: {}, password: {} },
      async authorize(given) {
        const signedIn = await signIn(given?.name ?? '', given?.password ?? '');
        if (!signedIn.ok) throw new Error(signedIn.error.code);
        return { id: sessionName(signedIn.value) };
      },
    }),
  ],
  callbacks: {
    jwt: ({ token, user }) => (user ? { session: user.id } : token),
    session: ({ session }) => ({ expires: session.expires }),
  },
  events: {
    async signOut({ token }) {
      const [operatorId = '', sessionId = ''] = String(token?.session ?? '').split('/');
      await signOut({ operatorId, sessionId, personId: '' });
    },
  },
});

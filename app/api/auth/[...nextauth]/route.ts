import type { NextRequest } from 'next/server';
import nextAuth from 'next-auth';
import { authOptions } from '../../../../lib/server/auth-options.ts';

type Context = { params: Promise<{ nextauth: string[] }> };

// The options are made for each request: `next build` has no secret.
const handler = (request: NextRequest, context: Context) => nextAuth(request, context as never, authOptions());

export { handler as GET, handler as POST };

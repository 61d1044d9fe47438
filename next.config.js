import path from 'node:path';

const development = process.env.NODE_ENV === 'development';

// One static policy: nothing comes from another host. Next puts its own start-up script in the page, hence 'unsafe-inline';
// the development server evaluates code besides.
const policy = [
  "default-src 'self'",
  `script-src 'self' 'unsafe-inline'${development ? " 'unsafe-eval'" : ''}`,
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  "object-src 'none'",
  "frame-src 'none'",
  "frame-ancestors 'none'",
  "base-uri 'self'",
  "form-action 'self'",
].join('; ');

const headers = [
  { key: 'Content-Security-Policy', value: policy },
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'X-Frame-Options', value: 'DENY' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
  { key: 'Cross-Origin-Resource-Policy', value: 'same-origin' },
  { key: 'Permissions-Policy', value: 'camera=(), microphone=(), geolocation=(), payment=(), usb=()' },
];

/** @type {import('next').NextConfig} */
export default {
  poweredByHeader: false,
  reactStrictMode: true,
  devIndicators: false,
  // Who may not see a page gets app/forbidden.tsx.
  experimental: { authInterrupts: true },
  // npm test checks types with the project's own settings; a build need not do it a second time.
  typescript: { ignoreBuildErrors: true },
  turbopack: { root: path.resolve(import.meta.dirname) },
  // One copy of each in the process: the collaboration server and the pages share documents and pools.
  serverExternalPackages: [
    '@hocuspocus/server',
    '@node-rs/argon2',
    '@prisma/adapter-pg',
    '@prisma/client',
    '@tiptap/y-tiptap',
    'lib0',
    'pg',
    'y-protocols',
    'yjs',
  ],
  headers: async () => [{ source: '/:path*', headers }],
};

/** @type {import('next').NextConfig} */
const config = {
  reactStrictMode: true,
  poweredByHeader: false,
  // The server and the browser are one machine: nothing is gained, and a stream of events is held back.
  compress: false,
  // Native or dynamic parts that must not be bundled.
  serverExternalPackages: ['libsql', '@libsql/client', '@prisma/adapter-libsql', 'pg'],
  typescript: { ignoreBuildErrors: false },
};

export default config;

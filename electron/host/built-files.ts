import { readFile } from 'node:fs/promises'
import { extname, resolve, sep } from 'node:path'

/** What a page of this app may load and where it may send: itself, and nothing else. */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  'frame-src blob:',
  'object-src blob:',
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  // No text becomes markup or script, whoever writes it: the browser refuses innerHTML, eval and their like.
  "require-trusted-types-for 'script'",
  "trusted-types 'none'",
].join('; ')

/** Sent with every built file, by both transports. */
export const PAGE_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': CONTENT_SECURITY_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), usb=(), serial=()',
  'Cache-Control': 'no-store',
}

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
}

export interface BuiltFile {
  readonly body: Buffer<ArrayBuffer>
  readonly type: string
}

/**
 * The file inside `root` that a request's path names, or null where it names nothing inside.
 *
 * The path is decoded once and resolved; what lies outside is refused whatever way it was written, and so is a
 * neighbouring folder whose name begins alike.
 */
export function pathInside(root: string, pathname: string): string | null {
  let decoded: string
  try {
    decoded = decodeURIComponent(pathname)
  } catch {
    return null
  }
  if (/[\0\\]/.test(decoded)) return null
  const folder = resolve(root)
  const file = resolve(folder, `.${decoded.startsWith('/') ? '' : '/'}${decoded}`)
  return file.startsWith(folder + sep) ? file : null
}

/** Reads the built file that a path names; '/' is the page. Null where there is none. */
export async function readBuiltFile(root: string, pathname: string): Promise<BuiltFile | null> {
  const file = pathInside(root, pathname === '/' ? '/index.html' : pathname)
  const type = file === null ? undefined : TYPES[extname(file)]
  if (file === null || type === undefined) return null
  try {
    return { body: await readFile(file), type }
  } catch (thrown) {
    const code = thrown instanceof Error && 'code' in thrown ? thrown.code : ''
    if (code === 'ENOENT' || code === 'EISDIR' || code === 'ENOTDIR') return null
    throw thrown
  }
}

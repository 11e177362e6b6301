import { createReadStream } from 'node:fs'
import { stat } from 'node:fs/promises'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import { extname, join, normalize } from 'node:path'
import { fileURLToPath } from 'node:url'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import type { Terminal } from '../terminal.ts'

export const SERVE_USAGE = 'reelwright serve [--port N]'

const LOOPBACK = '127.0.0.1'
const FIRST_PORT = 8765
const PORTS_TRIED = 20

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
  '.mp4': 'video/mp4',
  '.png': 'image/png',
}

/** Cross-origin isolation, and nothing from anywhere but this server. */
const HEADERS = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Content-Security-Policy':
    "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; img-src 'self' blob: data:; media-src 'self' blob:; worker-src 'self' blob:; connect-src 'self' blob:; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cache-Control': 'no-cache',
} as const

/** The built app lies beside the built command line: dist/app beside dist/cli. */
const APP_FOLDER = fileURLToPath(new URL('../app/', import.meta.url))

const isLoopbackHost = (request: IncomingMessage): boolean =>
  /^(127\.0\.0\.1|localhost|\[::1\])(:\d+)?$/u.test(request.headers.host ?? '')

/** The file a request asks for, always inside the app folder; undefined where it names none. */
const fileFor = (url: string): string | undefined => {
  try {
    const path = decodeURIComponent(new URL(url, 'http://localhost').pathname)
    if (path.includes('\0')) return undefined
    const inside = normalize(join(APP_FOLDER, path === '/' ? 'index.html' : path))
    return inside.startsWith(APP_FOLDER) ? inside : undefined
  } catch {
    return undefined
  }
}

const refuse = (response: ServerResponse, status: number): void => {
  response.writeHead(status, { 'Content-Type': 'text/plain' })
  response.end(status === 404 ? 'Not found' : 'Refused')
}

const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
  if (!isLoopbackHost(request)) return refuse(response, 403)
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405)
  const path = fileFor(request.url ?? '/')
  const found = path === undefined ? undefined : await stat(path).catch(() => undefined)
  if (path === undefined || !found?.isFile()) return refuse(response, 404)
  const type = TYPES[extname(path)] ?? 'application/octet-stream'
  response.writeHead(200, { ...HEADERS, 'Content-Type': type, 'Content-Length': found.size })
  if (request.method === 'HEAD') response.end()
  else
    createReadStream(path)
      .on('error', () => response.destroy())
      .pipe(response)
}

/** Serves the built app to this machine only, until it is stopped. */
export const serveCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const args = readArguments(argv, { port: { type: 'string' } }, SERVE_USAGE)
  if (!args.ok) return args
  const asked = textOption(args.value, 'port')
  const port = asked === undefined ? FIRST_PORT : Number(asked)
  if (!Number.isInteger(port) || port < 1 || port > 65_535)
    return wrongUse(`“${asked}” is not a port.`, SERVE_USAGE)
  const ports =
    asked === undefined ? Array.from({ length: PORTS_TRIED }, (_, i) => port + i) : [port]
  for (const candidate of ports) {
    const isUp = await listen(candidate)
    if (!isUp) continue
    terminal.print(`Reelwright is at http://${LOOPBACK}:${candidate}/ (Ctrl C stops it)`)
    return ok(EXIT.fine)
  }
  return fail(
    problem('conflict', `Port ${port} is taken; choose another with --port N.`, { field: 'port' }),
  )
}

/** Starts the server on a port; false where the port is taken. */
const listen = (port: number): Promise<boolean> =>
  new Promise((resolve) => {
    const server = createServer((request, response) => void answer(request, response))
    server.once('error', () => resolve(false))
    server.listen(port, LOOPBACK, () => resolve(true))
  })

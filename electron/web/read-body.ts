/** A message's body as JSON. */
import type { IncomingMessage } from 'node:http'

/** Undefined where it is too long, cut short, or not JSON in UTF-8. */
export async function readBody(request: IncomingMessage, limitBytes: number): Promise<unknown> {
  const bytes = await collect(request, limitBytes)
  if (bytes === null) return undefined
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
  } catch (cause) {
    if (cause instanceof SyntaxError || cause instanceof TypeError) return undefined
    throw cause
  }
}

function collect(request: IncomingMessage, limitBytes: number): Promise<Buffer | null> {
  return new Promise((resolve) => {
    const chunks: Buffer[] = []
    let length = 0
    request.on('data', (chunk: Buffer) => {
      length += chunk.length
      if (length > limitBytes) {
        resolve(null)
        request.destroy()
        return
      }
      chunks.push(chunk)
    })
    request.on('end', () => resolve(request.complete ? Buffer.concat(chunks) : null))
    request.on('error', () => resolve(null))
    request.on('close', () => resolve(null))
  })
}

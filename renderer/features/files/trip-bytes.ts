/** A file that the page was given, as the host takes it: a copy without a path. */
import type { OpenSource } from '../../stores/files.ts'

export async function tripBytes(file: File): Promise<OpenSource> {
  const bytes = new Uint8Array(await file.arrayBuffer())
  let binary = ''
  for (const byte of bytes) binary += String.fromCharCode(byte)
  return { kind: 'bytes', name: file.name, base64: btoa(binary) }
}

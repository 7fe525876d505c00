/** The window's way to its host. */
export { connectHost } from './client.ts'

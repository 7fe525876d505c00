/** Command-line switches that would take the window's protection away: with one of them the planner does not start. */
import type { CommandLine } from 'electron'

const REFUSED = [
  'no-sandbox',
  'disable-web-security',
  'disable-site-isolation-trials',
  'allow-running-insecure-content',
  'enable-blink-features',
  'enable-experimental-web-platform-features',
  'ignore-certificate-errors',
  'disable-features',
] as const

/** The first such switch; null for none. */
export const whyUnsafe = (commandLine: Pick<CommandLine, 'hasSwitch'>): string | null =>
  REFUSED.find((name) => commandLine.hasSwitch(name)) ?? null

/** Open waits of pages: each event reaches its page once, in order, and none grows without bound. */
import { expect, it } from 'vitest'
import { createWaits } from '../../../electron/files/waits.ts'
import type { HostEvent } from '../../../shared/host/index.ts'

const opened = (number: number): HostEvent => ({
  kind: 'open-requested',
  token: `token-${number}`,
  name: 'a',
})
const quiet: HostEvent = { kind: 'quiet' }
/** Longer than any test runs. */
const NEVER_MS = 1e9

it('an event answers the page that waits, and only that one', async () => {
  const waits = createWaits(NEVER_MS)
  const [a, b] = [waits.next('a'), waits.next('b')]
  waits.emit('a', opened(1))
  waits.emit('b', opened(2))
  expect([await a, await b]).toEqual([opened(1), opened(2)])
  expect(waits.callers()).toEqual(['a', 'b'])
})

it('events of a page that is not waiting are kept in order, the first thirty-two', async () => {
  const waits = createWaits(0)
  for (let number = 1; number <= 40; number += 1) waits.emit('a', opened(number))
  const got: HostEvent[] = []
  for (let asked = 0; asked < 34; asked += 1) got.push(await waits.next('a'))
  expect(got).toEqual([...Array.from({ length: 32 }, (_, index) => opened(index + 1)), quiet, quiet])
})

it('a page that asks again has given up its earlier wait; the later one gets the event', async () => {
  const waits = createWaits(NEVER_MS)
  const earlier = waits.next('a')
  const later = waits.next('a')
  waits.emit('a', opened(1))
  expect([await earlier, await later]).toEqual([quiet, opened(1)])
})

it('a page that is gone is answered, forgotten with what was kept for it, and may come back', async () => {
  const waits = createWaits(NEVER_MS)
  const open = waits.next('a')
  waits.emit('b', opened(1))
  for (const caller of ['a', 'b', 'nobody']) waits.forget(caller)
  expect(await open).toEqual(quiet)
  expect(waits.callers()).toEqual([])
  const again = waits.next('b')
  waits.emit('b', opened(2))
  expect(await again).toEqual(opened(2))
})

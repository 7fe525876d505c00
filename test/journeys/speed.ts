/** How quickly the window answers: printed, not judged, since the machine's own load is part of it. */
import type { Page } from 'playwright-core'
import { check, openPlanner, planSettled } from './steps.ts'

const DIALS = ['Warmth while asleep', 'Current asked']
const TURNS = 30

/** Milliseconds from a key on either dial to the frame that shows the night's new curve: median and 95th percentile. */
export async function dialAnswers(page: Page, base: string): Promise<string> {
  await openPlanner(page, base)
  await planSettled(page)
  const times: number[] = []
  for (const name of DIALS) {
    await page.getByRole('slider', { name }).focus()
    times.push(...(await turnDial(page)))
  }
  check(times.length === DIALS.length * TURNS, 'a dial could not be turned')
  const sorted = [...times].sort((a, b) => a - b)
  const at = (share: number): string =>
    (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0).toFixed(0)
  const first = (times[0] ?? 0).toFixed(0)
  return `dial to painted answer: first ${first} ms, median ${at(0.5)} ms, 95th percentile ${at(0.95)} ms over ${times.length} turns of two dials`
}

/** Turns the dial in focus to and fro and times each answer, ms. */
async function turnDial(page: Page): Promise<number[]> {
  return await page.evaluate(async (turns) => {
    const thumb = document.activeElement
    const chart = document.querySelector('.night-charts')
    if (thumb === null || chart === null) return []
    const taken: number[] = []
    for (let turn = 0; turn < turns; turn += 1) {
      const startMs = performance.now()
      const painted = new Promise<number>((resolve) => {
        const watcher = new MutationObserver((changes) => {
          if (!changes.some(({ attributeName }) => attributeName === 'd')) return
          watcher.disconnect()
          requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - startMs)))
        })
        watcher.observe(chart, { attributes: true, subtree: true, attributeFilter: ['d'] })
        setTimeout(() => resolve(5000), 5000)
      })
      thumb.dispatchEvent(
        new KeyboardEvent('keydown', { key: turn % 12 < 6 ? 'ArrowLeft' : 'ArrowRight', bubbles: true }),
      )
      taken.push(await painted)
    }
    return taken
  }, TURNS)
}

const FRAMES = 60
const IDLE_MS = 1500
const MOST_DRAW_CALLS = 10
const LEAST_UNITS = 150

/** Frames of the solid drawing while it is turned: draw calls are judged, times are printed, and nothing is drawn while nothing changes. */
export async function solidFrames(page: Page, base: string): Promise<string> {
  await openPlanner(page, base)
  await page.keyboard.press('Control+.')
  await page.keyboard.press('Shift+Digit1')
  const canvas = page.locator('.scene canvas')
  await canvas.focus()
  await page.waitForTimeout(IDLE_MS)
  const measured = await canvas.evaluate(
    async (of, { frames, idleMs }) => {
      const told = (of as HTMLCanvasElement).dataset
      const works: number[] = []
      const startMs = performance.now()
      for (let turn = 0; turn < frames; turn += 1) {
        of.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true }))
        await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)))
        works.push(Number(told['workMs']))
      }
      const tookMs = performance.now() - startMs
      const drawn = Number(told['frames'])
      await new Promise((resolve) => setTimeout(resolve, idleMs))
      return { works, tookMs, calls: Number(told['drawCalls']), idleFrames: Number(told['frames']) - drawn, drawn }
    },
    { frames: FRAMES, idleMs: IDLE_MS },
  )
  const units = await page.locator('.unit-list .unit-row').count()
  check(units >= LEAST_UNITS, `only ${units} units are listed`)
  check(measured.drawn >= FRAMES, `only ${measured.drawn} frames were drawn`)
  check(measured.calls <= MOST_DRAW_CALLS, `${measured.calls} draw calls`)
  check(measured.idleFrames === 0, `${measured.idleFrames} frames were drawn while nothing changed`)
  const sorted = [...measured.works].sort((a, b) => a - b)
  const at = (share: number): string => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(1)
  const perSecond = ((FRAMES * 1000) / measured.tookMs).toFixed(0)
  return `${units} units: ${measured.calls} draw calls, work of a frame ${at(0.5)} ms median and ${at(0.95)} ms at the 95th percentile, ${perSecond} frames a second drawn by software`
}

/** Milliseconds from asking for the page, in a browser that knows it, to the first button that can be pressed, and to the first plan. */
export async function start(page: Page, base: string): Promise<string> {
  await openPlanner(page, base)
  await planSettled(page)
  const { origin } = new URL(base)
  // The old window is put away first: taking its drawing down is no part of a start.
  await page.goto('about:blank')
  const startMs = Date.now()
  await page.goto(origin, { waitUntil: 'commit' })
  await page.getByRole('button', { name: 'Workbench' }).waitFor()
  const interactiveMs = Date.now() - startMs
  await page.locator('.verdict-head').waitFor({ timeout: 90_000 })
  return `warm start: controls after ${interactiveMs} ms, first plan after ${Date.now() - startMs} ms`
}

/** Elements of the kit screen with any kit: a row has some sixty, and only those in view are there. */
const MOST_ELEMENTS = 5000
const SCROLLS = 20
const SCROLL_PX = 300

/** The kit table of a huge trip: what is in the page is judged, times are printed. Edits reach rows far down. */
export async function hugeKit(page: Page, base: string): Promise<string> {
  await page.goto(base)
  const kit = page.getByRole('button', { name: 'Kit', exact: true })
  await page.locator('.window-screen h1').waitFor({ state: 'attached' })
  const openedMs = Date.now()
  await kit.click()
  await page.locator('[data-row="0"]').waitFor()
  const shownMs = Date.now() - openedMs
  const scroller = page.locator('.kit-scroll')
  const frames = await scroller.evaluate(
    async (of, { scrolls, byPx }) => {
      const took: number[] = []
      for (let turn = 0; turn < scrolls; turn += 1) {
        const startMs = performance.now()
        of.scrollTop += byPx
        await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)))
        took.push(performance.now() - startMs)
      }
      of.scrollTop = of.scrollHeight
      return took.sort((a, b) => a - b)
    },
    { scrolls: SCROLLS, byPx: SCROLL_PX },
  )
  const last = page.locator('[data-row="4999"]')
  await last.waitFor()
  const mass = last.getByRole('textbox').last()
  const editedMs = Date.now()
  await mass.fill('333 g')
  await mass.press('Enter')
  await page.waitForFunction(() => document.title.startsWith('•'))
  const editMs = Date.now() - editedMs
  check(/333/.test(await mass.inputValue()), 'the last row took its mass')
  const elements = await page.evaluate(() => document.querySelectorAll('*').length)
  check(elements < MOST_ELEMENTS, `${elements} elements are in the page`)
  const median = (frames[Math.floor(frames.length / 2)] ?? 0).toFixed(0)
  return `kit of 5,000 shown after ${shownMs} ms, ${elements} elements, ${median} ms a frame while scrolling, ${editMs} ms from typing a mass to the trip changed`
}

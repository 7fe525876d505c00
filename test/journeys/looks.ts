/** Every screen in every theme: axe finds nothing, night-red emits red only, nothing overflows; screenshots are kept. */
import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { check, command, openPlanner, planSettled } from './steps.ts'

const SCREENS = [
  { name: 'workbench', keys: 'Control+1' },
  { name: 'load', keys: 'Shift+Digit1' },
  { name: 'night', keys: 'Shift+Digit2' },
  { name: 'checklist', keys: 'Shift+Digit3' },
  { name: 'kit', keys: 'Control+2' },
  { name: 'vehicle', keys: 'Control+3' },
  { name: 'nights', keys: 'Control+4' },
  { name: 'travellers', keys: 'Control+5' },
] as const

const THEMES = [
  { name: 'light', letters: 'Day theme' },
  { name: 'dark', letters: 'Evening theme' },
  { name: 'red', letters: 'Night theme' },
] as const

const SIZES = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
] as const

/** Each dialog and a few letters of the command that opens it. */
const DIALOGS = [
  ['palette', ''],
  ['files', 'Open a trip'],
  ['versions', 'Earlier versions'],
  ['export', 'Make sheets'],
  ['keys', 'List the keys'],
  ['findings', 'plan rests on'],
  ['what-if', 'what if'],
  ['preferences', 'Preferences'],
  ['about', 'About this'],
  ['diagnostics', 'diagnostics'],
] as const

const SETTLE_MS = 350

async function show(page: Page, screen: (typeof SCREENS)[number]): Promise<void> {
  await page.keyboard.press('Control+1')
  await page.keyboard.press('0')
  if (screen.name !== 'workbench') await page.keyboard.press(screen.keys)
  await page.waitForTimeout(SETTLE_MS)
}

/**
 * What axe finds on the page, each with its place. All in one call: axe's usual way by Playwright, frame by frame and
 * finished in a page of its own, took 24 s for a screen that this takes 6 s for, and this window has no frames.
 */
async function breaches(page: Page, name: string): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode(true)
    .options({ resultTypes: ['violations'] })
    .analyze()
  return violations.map(({ id, nodes }) => {
    const places = nodes.slice(0, 2).map(({ target }) => String(target))
    return `${name}: ${id} at ${places.join(', ')}`
  })
}

/** Every screen as it opens, by axe alone: short enough for each change. The search is stopped, the kit's alike rows are left out. */
export async function everyScreen(page: Page, base: string): Promise<void> {
  await openPlanner(page, base)
  await page.keyboard.press('Control+.')
  const faults: string[] = []
  for (const screen of SCREENS) {
    await show(page, screen)
    if (screen.name === 'kit') await page.getByLabel('Filter by name').fill('bag')
    faults.push(...(await breaches(page, screen.name)))
  }
  check(faults.length === 0, faults.join('\n'))
}

const LANGUAGES = [
  { name: 'en', letters: 'Switch to English', themes: THEMES.map(({ letters }) => letters) },
  { name: 'de', letters: 'Switch to German', themes: ['Tagfarben', 'Abendfarben', 'Nachtfarben'] },
] as const

/** `out`: folder for the screenshots; null keeps none. Axe looks in English: the other language changes words, not colours or roles. */
export async function screensAndThemes(page: Page, base: string, out: string | null): Promise<void> {
  await openPlanner(page, base)
  await planSettled(page)
  const faults: string[] = []
  for (const language of LANGUAGES) {
    await command(page, language.letters)
    await show(page, SCREENS[0])
    await planSettled(page)
    for (const [at, theme] of THEMES.entries()) {
      await command(page, language.themes[at] ?? '')
      for (const screen of SCREENS) {
        await show(page, screen)
        const name = `${screen.name}-${theme.name}-${language.name}`
        if (language.name === 'en') faults.push(...(await breaches(page, name)))
        faults.push(...(await picturesOf(page, name, out)))
      }
    }
  }
  check(faults.length === 0, faults.join('\n'))
}

/** The screen at both sizes; what sticks out, and what is not red in night-red. */
async function picturesOf(page: Page, name: string, out: string | null): Promise<readonly string[]> {
  const faults: string[] = []
  for (const size of SIZES) {
    await page.setViewportSize(size)
    await page.waitForTimeout(SETTLE_MS / 2)
    const picture = await page.screenshot()
    if (out !== null) await keep(out, `${name}-${size.width}`, picture)
    if (await pageScrolls(page)) faults.push(`${name} at ${size.width}: the page itself scrolls`)
    if (name.includes('-red-') && size.width === 1280) {
      const wrong = await pixelsNotRed(page, picture)
      if (wrong > 0) faults.push(`${name}: ${wrong} pixels with green or blue`)
    }
  }
  await page.setViewportSize(SIZES[0])
  return faults
}

const pageScrolls = async (page: Page): Promise<boolean> =>
  await page.evaluate(
    () => document.documentElement.scrollWidth > innerWidth || document.body.scrollHeight > innerHeight,
  )

/** German, the smallest window, and the dialogs. */
export async function germanAndSmall(page: Page, base: string, out: string | null): Promise<void> {
  await openPlanner(page, base)
  await planSettled(page)
  await page.setViewportSize({ width: 1024, height: 700 })
  const faults: string[] = []
  const look = async (name: string): Promise<void> => {
    await page.waitForTimeout(SETTLE_MS)
    if (out !== null) await keep(out, name, await page.screenshot())
    if (await pageScrolls(page)) faults.push(`${name}: the page itself scrolls`)
    faults.push(...(await breaches(page, name)))
  }
  for (const screen of SCREENS) {
    await show(page, screen)
    await look(`small-${screen.name}-en`)
  }
  await show(page, SCREENS[0])
  for (const [name, letters] of DIALOGS) {
    if (name === 'palette') await page.keyboard.press('Control+k')
    else await command(page, letters, false)
    await page.getByRole('dialog').waitFor()
    await look(`dialog-${name}`)
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
  }
  await command(page, 'German')
  await planSettled(page)
  for (const screen of SCREENS) {
    await show(page, screen)
    await look(`small-${screen.name}-de`)
  }
  const left = await page.evaluate(() => document.documentElement.lang)
  check(left === 'de', `the page says its language is ${left}`)
  check(faults.length === 0, faults.join('\n'))
}

async function keep(out: string, name: string, picture: Buffer): Promise<void> {
  await mkdir(out, { recursive: true })
  await writeFile(join(out, `${name}.png`), picture)
}

/** Pixels of a picture in which green or blue shines, counted in a blank page beside. */
async function pixelsNotRed(page: Page, picture: Buffer): Promise<number> {
  const blank = await page.context().newPage()
  try {
    return await blank.evaluate(async (base64) => {
      const image = new Image()
      image.src = `data:image/png;base64,${base64}`
      await image.decode()
      const canvas = new OffscreenCanvas(image.width, image.height)
      const context = canvas.getContext('2d')
      if (context === null) return -1
      context.drawImage(image, 0, 0)
      const { data } = context.getImageData(0, 0, image.width, image.height)
      let wrong = 0
      for (let at = 0; at < data.length; at += 4) if ((data[at + 1] ?? 0) > 2 || (data[at + 2] ?? 0) > 2) wrong += 1
      return wrong
    }, picture.toString('base64'))
  } finally {
    await blank.close()
  }
}

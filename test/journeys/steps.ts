/** Small moves that several journeys share, in a user's terms. */
import type { Page } from 'playwright-core'

const PLAN_LIMIT_MS = 90_000

/** Opens the planner and waits for its first plan. */
export async function openPlanner(page: Page, base: string): Promise<void> {
  await page.goto(base)
  await planShown(page)
}

export async function planShown(page: Page): Promise<void> {
  await page.locator('.verdict-head').waitFor({ timeout: PLAN_LIMIT_MS })
}

/** Waits until no search is running any more. */
export async function planSettled(page: Page): Promise<void> {
  await planShown(page)
  await page.waitForFunction(
    () => document.querySelector('.verdict-progress') === null && document.querySelector('[data-planning]') === null,
    undefined,
    { timeout: PLAN_LIMIT_MS },
  )
}

/** A command by a few letters of its name, through the palette, by keys alone. `closes`: no other dialog comes of it. */
export async function command(page: Page, letters: string, closes = true): Promise<void> {
  await page.keyboard.press('Control+k')
  await page.getByRole('dialog').getByRole('combobox').fill(letters)
  await page.locator('.palette-item[data-highlighted]').waitFor()
  await page.keyboard.press('Enter')
  await page.locator('.palette').waitFor({ state: 'hidden' })
  if (closes) await page.getByRole('dialog').waitFor({ state: 'hidden' })
}

export async function expectText(page: Page, selector: string, wanted: RegExp): Promise<void> {
  const place = page.locator(selector).first()
  await place.waitFor()
  const limit = Date.now() + 30_000
  for (;;) {
    const said = (await place.textContent()) ?? ''
    if (wanted.test(said)) return
    if (Date.now() > limit) throw new Error(`${selector} says “${said.slice(0, 160)}”, not ${String(wanted)}`)
    await page.waitForTimeout(100)
  }
}

export function check(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(message)
}

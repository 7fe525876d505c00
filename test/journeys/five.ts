/** The five journeys that the planner is for, each by keyboard as far as a keyboard goes. */
import type { Page } from 'playwright-core'
import { command, expectText, openPlanner, planSettled, planShown } from './steps.ts'

export type Journey = { readonly name: string; readonly run: (page: Page, base: string) => Promise<void> }

/** Nothing, then a shape, a tape measure, a plan. */
export async function newCarToPlan(page: Page, base: string): Promise<void> {
  await openPlanner(page, base)
  await page.keyboard.press('Control+o')
  await page.getByRole('dialog').getByRole('button', { name: 'Small hatchback' }).press('Enter')
  await page.getByRole('heading', { name: 'Vehicle and masses' }).waitFor()
  const length = page.locator('.bays-detail').getByLabel('Length', { exact: true }).first()
  await length.fill('2 ft 6')
  await length.press('Tab')
  await page.waitForFunction(() => /76/.test(document.querySelector('.bay-measure')?.textContent ?? ''))
  const bad = page.locator('.bays-detail').getByLabel('Width', { exact: true }).first()
  await bad.fill('four apples')
  await bad.press('Tab')
  await page.getByRole('alert').waitFor()
  await bad.press('Escape')
  await page.keyboard.press('Control+1')
  await planShown(page)
  await expectText(page, '.verdict-line', /moves? at dusk/)
  await expectText(page, '.top-title', /New trip/)
}

/** What is where, what is in the way, the moves at dusk, and a tick taken back. */
export async function packingBeforeLeaving(page: Page, base: string): Promise<void> {
  await openPlanner(page, base)
  await page.keyboard.press('Shift+Digit1')
  const list = page.locator('.unit-list')
  await list.waitFor()
  await list.locator('button.unit-row').first().focus()
  await page.keyboard.press('Enter')
  await expectText(page, '.chosen-unit', /Reach|At hand|Nothing to reach/)
  const drive = page.getByRole('group', { name: 'Layout' }).getByRole('button', { name: 'Drive' })
  await drive.focus()
  await page.keyboard.press('Enter')
  await expectText(page, '.panel-moment', /Drive layout/)
  await page.getByRole('button', { name: 'Next move' }).focus()
  await page.keyboard.press('Enter')
  await expectText(page, '.panel-moment', /Move 1 of|Bed layout/)
  await page.keyboard.press('0')
  const box = page.locator('.step-tick input').first()
  await box.focus()
  await page.keyboard.press('Space')
  await page.waitForFunction(
    () => document.querySelector<HTMLInputElement>('.step-tick input')?.checked === true,
    undefined,
    { timeout: 60_000 },
  )
  await page.keyboard.press('Control+z')
  await page.waitForFunction(
    () => document.querySelector<HTMLInputElement>('.step-tick input')?.checked === false,
    undefined,
    { timeout: 60_000 },
  )
}

/** A colder night, a rule of one's own for it, a step left out with a reason. */
export async function coldNightChecklist(page: Page, base: string): Promise<void> {
  await openPlanner(page, base)
  await page.keyboard.press('Control+4')
  const low = page.getByLabel(/^low$/i)
  await low.fill('5 F')
  await low.press('Tab')
  await page.waitForFunction(() => [...document.querySelectorAll('input')].some((input) => /^[−-]15/.test(input.value)))
  await page.keyboard.press('Control+1')
  await page.keyboard.press('Shift+Digit3')
  await page.getByLabel('Step to do').fill('Put the diary under the pillow')
  await page.getByLabel('Step to do').press('Tab')
  await page.getByRole('button', { name: 'Add rule' }).press('Enter')
  await page.locator('.step', { hasText: 'Put the diary under the pillow' }).waitFor({ timeout: 60_000 })
  await page.getByRole('button', { name: 'Skip: Put the diary under the pillow' }).press('Enter')
  await page.getByLabel('Reason').last().fill('Left at home')
  await page.keyboard.press('Enter')
  await page.locator('.step--skipped', { hasText: 'Put the diary' }).waitFor({ timeout: 60_000 })
}

/** The heater against the post: the dials answer while they move, and every number says how. */
export async function heaterAgainstHookup(page: Page, base: string): Promise<void> {
  await openPlanner(page, base)
  await planSettled(page)
  await page.keyboard.press('Shift+Digit2')
  const dial = page.getByRole('slider', { name: 'Warmth while asleep' })
  await dial.focus()
  const before = await page.locator('.verdict-line').textContent()
  for (let press = 0; press < 6; press += 1) await page.keyboard.press('ArrowRight')
  await page.waitForFunction((was) => document.querySelector('.verdict-line')?.textContent !== was, before, {
    timeout: 30_000,
  })
  const how = page.getByRole('button', { name: /Current worth asking for: how/ })
  await how.focus()
  await page.keyboard.press('Enter')
  await expectText(page, '.how-sheet', /Source:/)
  await page.keyboard.press('Escape')
  await command(page, 'undo')
  await page.waitForFunction((was) => document.querySelector('.verdict-line')?.textContent === was, before, {
    timeout: 60_000,
  })
}

/** The morning after: a lesson becomes a rule, the trip is saved, the sheets are made. */
export async function morningAfter(page: Page, base: string): Promise<void> {
  await openPlanner(page, base)
  await page.keyboard.press('Shift+Digit3')
  await page.getByLabel('What did this night teach?').fill('Bring the second torch')
  await page.getByRole('button', { name: 'Keep the lesson' }).press('Enter')
  await page.getByRole('button', { name: 'Make it a rule' }).press('Enter')
  await page.locator('.step', { hasText: 'Bring the second torch' }).first().waitFor({ timeout: 60_000 })
  await page.keyboard.press('Control+s')
  const name = page.getByLabel('File name')
  await name.waitFor()
  await name.fill(`journey-${Date.now()}.trip.json`)
  await page.keyboard.press('Enter')
  await expectText(page, '.toasts', /Saved: journey/)
  await planSettled(page)
  await page.keyboard.press('Control+p')
  await page.getByRole('dialog').getByRole('button', { name: 'Make them' }).press('Enter')
  await page
    .getByRole('dialog')
    .getByText(/Made: /)
    .waitFor({ timeout: 90_000 })
}

export const FIVE: readonly Journey[] = [
  { name: 'a new car to a plan', run: newCarToPlan },
  { name: 'packing the car before leaving', run: packingBeforeLeaving },
  { name: 'building a cold-night checklist', run: coldNightChecklist },
  { name: 'checking heater energy against the hookup', run: heaterAgainstHookup },
  { name: 'the morning after, with a lesson', run: morningAfter },
]

/** What is done by hand: a unit dragged over the drawing and moved by keys, a failure's hour dragged over the night. */
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { check, expectText, openPlanner, planSettled } from './steps.ts'

const WAIT_MS = 60_000

/** Drags a unit over the plan drawing with the verdict live, fixes it, frees it; then the same by keys alone. */
export async function moveByHand(page: Page, base: string, out: string | null): Promise<void> {
  await openPlanner(page, base)
  await planSettled(page)
  await page.getByRole('group', { name: 'Drawing' }).getByRole('button', { name: 'Above' }).press('Enter')
  const face = page.locator('.flat-unit').last()
  const box = await face.boundingBox()
  check(box !== null, 'a unit is drawn')
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width / 2 - 14, box.y + box.height / 2 - 4, { steps: 4 })
  await page.locator('.flat-held').waitFor()
  if (out !== null) await page.screenshot({ path: join(out, 'hand-dragging.png') })
  await page.keyboard.press('Escape')
  await page.mouse.up()
  await page.locator('.flat-held').waitFor({ state: 'hidden' })

  await page.getByRole('button', { name: 'List', exact: true }).press('Enter')
  await page.locator('button.unit-row').first().press('Enter')
  const chosen = page.locator('.chosen-unit')
  await chosen.getByRole('button', { name: 'Move by hand' }).press('Enter')
  await page.locator('.flat-held').waitFor()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowLeft')
  await expectText(page, '.chosen-unit', /It may stand here|Not here|Nowhere/)
  if (out !== null) await page.screenshot({ path: join(out, 'hand-keys.png') })
  await chosen.getByRole('button', { name: 'Put it down' }).press('Enter')
  await expectText(page, '.chosen-unit', /Fixed here by hand/)
  await planSettled(page)
  await chosen.getByRole('button', { name: 'Let the planner choose' }).press('Enter')
  await chosen.getByText('Fixed here by hand').waitFor({ state: 'hidden', timeout: WAIT_MS })
}

/** Drags the hour of a failure over the temperature curve, and moves it by keys; the answer follows. */
export async function faultByHand(page: Page, base: string, out: string | null): Promise<void> {
  await openPlanner(page, base)
  await planSettled(page)
  await page.keyboard.press('Shift+Digit2')
  const mark = page.getByRole('slider', { name: 'Hour of the failure' })
  await mark.waitFor()
  const before = await page.locator('.faults [role=status]').textContent()
  const box = await mark.boundingBox()
  check(box !== null, 'the mark is drawn')
  await page.mouse.move(box.x + box.width / 2, box.y + 20)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width / 2 - 90, box.y + 20, { steps: 6 })
  await page.mouse.up()
  await page.waitForFunction((was) => document.querySelector('.faults [role=status]')?.textContent !== was, before, {
    timeout: WAIT_MS,
  })
  await mark.focus()
  const dragged = await page.locator('.faults [role=status]').textContent()
  for (let press = 0; press < 3; press += 1) await page.keyboard.press('Shift+ArrowRight')
  await page.waitForFunction((was) => document.querySelector('.faults [role=status]')?.textContent !== was, dragged, {
    timeout: WAIT_MS,
  })
  if (out !== null) await page.screenshot({ path: join(out, 'hand-fault.png') })
}

/** The solid drawing: a unit is chosen by a press, then dragged over the floor and turned on the way, with the verdict live; a drag beside it turns the whole. */
export async function moveInTheSolid(page: Page, base: string, out: string | null): Promise<void> {
  await openPlanner(page, base)
  await planSettled(page)
  const canvas = page.locator('.scene-canvas')
  const box = await canvas.boundingBox()
  check(box !== null, 'the load is drawn')
  const point = await pointOfAUnit(page, box)
  const name = await page.locator('.chosen-unit h3').textContent()
  await page.mouse.move(point.x, point.y)
  await page.mouse.down()
  await page.mouse.move(point.x - 30, point.y - 10, { steps: 5 })
  await expectText(page, '.chosen-unit', /It may stand here|Not here|Nowhere/)
  await page.keyboard.press('t')
  if (out !== null) await page.screenshot({ path: join(out, 'hand-solid.png') })
  await page.keyboard.press('Escape')
  await page.mouse.up()
  await page.getByRole('button', { name: 'Put it down' }).waitFor({ state: 'hidden' })
  check((await page.locator('.chosen-unit h3').textContent()) === name, 'the unit stays chosen after Escape')
  await page.mouse.move(point.x, point.y)
  await page.mouse.down()
  await page.mouse.move(point.x - 12, point.y - 4, { steps: 4 })
  await page.mouse.up()
  await expectText(page, '.toasts, .chosen-unit', /Fixed here by hand|Nowhere/)
}

/** A point of the drawing that a unit is under: pressed one after the other until one is chosen. */
async function pointOfAUnit(
  page: Page,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): Promise<{ readonly x: number; readonly y: number }> {
  for (const down of [0.4, 0.5, 0.6])
    for (const across of [0.4, 0.5, 0.6, 0.3]) {
      const point = { x: box.x + box.width * across, y: box.y + box.height * down }
      await page.mouse.click(point.x, point.y)
      if (await page.locator('.chosen-unit').isVisible()) return point
    }
  throw new Error('no unit lies under any of the points')
}
